package org.seamwright.mesh;

/**
 * An axis-parallel box, in mm.
 *
 * @param minX smallest x
 * @param minY smallest y
 * @param minZ smallest z
 * @param maxX largest x
 * @param maxY largest y
 * @param maxZ largest z
 */
public record Bounds(double minX, double minY, double minZ, double maxX, double maxY, double maxZ) {

  /** Extent along x, mm. */
  public double sizeX() {
    return maxX - minX;
  }

  /** Extent along y, mm. */
  public double sizeY() {
    return maxY - minY;
  }

  /** Extent along z, mm. */
  public double sizeZ() {
    return maxZ - minZ;
  }

  /** Length of the diagonal, mm: the scale that relative tolerances refer to. */
  public double diagonal() {
    return Math.sqrt(sizeX() * sizeX() + sizeY() * sizeY() + sizeZ() * sizeZ());
  }
}
