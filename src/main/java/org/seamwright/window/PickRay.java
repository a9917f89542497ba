package org.seamwright.window;

/**
 * A ray in the piece's own coordinates.
 *
 * @param ox origin, mm
 * @param oy origin, mm
 * @param oz origin, mm
 * @param dx direction, of length 1 but for rounding
 * @param dy direction
 * @param dz direction
 */
public record PickRay(double ox, double oy, double oz, double dx, double dy, double dz) {
  /** Coordinate along an axis (0 = x, 1 = y, 2 = z) of the point at a distance, mm. */
  public double at(double distance, int axis) {
    return switch (axis) {
      case 0 -> ox + distance * dx;
      case 1 -> oy + distance * dy;
      default -> oz + distance * dz;
    };
  }
}
