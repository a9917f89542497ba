package org.seamwright.flatten;

import java.util.List;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The turn that lays a shape into the smallest box, its longer side along x (the smallest box has a
 * side along an edge of the convex hull: H. Freeman and R. Shapira, 1975).
 */
final class Upright {
  private Upright() {}

  /** Angle to turn the loops by, radians. */
  static double turn(List<Rim> rims) {
    double[] outer = rims.get(0).point();
    Coordinate[] all = new Coordinate[outer.length / 2];
    for (int i = 0; i < all.length; i++) {
      all[i] = new Coordinate(outer[2 * i], outer[2 * i + 1]);
    }
    Coordinate[] hull = new ConvexHull(all, new GeometryFactory()).getConvexHull().getCoordinates();
    double least = Double.POSITIVE_INFINITY;
    double best = 0;
    for (int i = 0; i + 1 < hull.length; i++) {
      double angle = -Math.atan2(hull[i + 1].y - hull[i].y, hull[i + 1].x - hull[i].x);
      double[] box = box(hull, angle);
      // A hair's breadth, so that rounding does not choose between equals.
      if (box[0] * box[1] < least * (1 - 1e-9)) {
        least = box[0] * box[1];
        best = box[0] >= box[1] ? angle : angle + Math.PI / 2;
      }
    }
    return best;
  }

  private static double[] box(Coordinate[] points, double angle) {
    double[] lo = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] hi = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (Coordinate p : points) {
      double x = p.x * Math.cos(angle) - p.y * Math.sin(angle);
      double y = p.x * Math.sin(angle) + p.y * Math.cos(angle);
      lo[0] = Math.min(lo[0], x);
      lo[1] = Math.min(lo[1], y);
      hi[0] = Math.max(hi[0], x);
      hi[1] = Math.max(hi[1], y);
    }
    return new double[] {hi[0] - lo[0], hi[1] - lo[1]};
  }

  /** Points x, y turned about the origin, then moved. */
  static double[] moved(double[] xy, double angle, double dx, double dy) {
    double[] out = new double[xy.length];
    for (int i = 0; i < xy.length; i += 2) {
      out[i] = xy[i] * Math.cos(angle) - xy[i + 1] * Math.sin(angle) + dx;
      out[i + 1] = xy[i] * Math.sin(angle) + xy[i + 1] * Math.cos(angle) + dy;
    }
    return out;
  }
}
