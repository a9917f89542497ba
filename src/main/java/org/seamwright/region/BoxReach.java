package org.seamwright.region;

import java.util.function.IntPredicate;

/**
 * Whether any of a face lies in a box: the face is clipped against the six planes in turn (I.
 * Sutherland and G. Hodgman, "Reentrant Polygon Clipping", 1974). Touching at an edge or corner
 * from outside is no reach; lying in a side is.
 */
final class BoxReach implements IntPredicate {
  /** A triangle gains at most one corner per plane. */
  private static final int MOST_CORNERS = 9;

  /** Coordinates of vertices in the box's own frame. */
  interface Coordinates {
    /** Coordinate of a vertex along an axis, mm. */
    double at(int vertex, int axis);
  }

  private final EditableSurface surface;
  private final Coordinates coordinates;
  private final double[] low;
  private final double[] high;
  private final double snapMm;
  private double[] polygon = new double[3 * MOST_CORNERS];
  private double[] clipped = new double[3 * MOST_CORNERS];

  BoxReach(
      EditableSurface surface,
      Coordinates coordinates,
      double[] low,
      double[] high,
      double snapMm) {
    this.surface = surface;
    this.coordinates = coordinates;
    this.low = low;
    this.high = high;
    this.snapMm = snapMm;
  }

  @Override
  public boolean test(int face) {
    int count = 3;
    for (int k = 0; k < 3; k++) {
      for (int axis = 0; axis < 3; axis++) {
        polygon[3 * k + axis] = coordinates.at(surface.from(3 * face + k), axis);
      }
    }
    for (int side = 0; side < 6 && count > 2; side++) {
      count = clip(side % 3, side < 3, count);
    }
    return count > 2;
  }

  private double inside(int corner, int axis, boolean lower) {
    double value = polygon[3 * corner + axis];
    double distance = lower ? value - low[axis] : high[axis] - value;
    return Math.abs(distance) <= snapMm ? 0 : distance;
  }

  private int clip(int axis, boolean lower, int count) {
    int kept = 0;
    boolean reaches = false;
    boolean lies = true;
    for (int i = 0; i < count; i++) {
      int j = (i + 1) % count;
      double a = inside(i, axis, lower);
      double b = inside(j, axis, lower);
      reaches |= a > 0;
      lies &= a == 0;
      if (a >= 0) {
        System.arraycopy(polygon, 3 * i, clipped, 3 * kept++, 3);
      }
      if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
        double share = a / (a - b);
        for (int k = 0; k < 3; k++) {
          double p = polygon[3 * i + k];
          clipped[3 * kept + k] = p + share * (polygon[3 * j + k] - p);
        }
        kept++;
      }
    }
    double[] swap = polygon;
    polygon = clipped;
    clipped = swap;
    return reaches || lies ? kept : 0;
  }
}
