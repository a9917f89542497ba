package org.seamwright.window;

/**
 * Finds where to stand to see most of a section.
 *
 * <p>Weighs directions by how much of the section's places they see, foreshortened: the mean of the
 * section's normals, and directions spread evenly over the sphere. The mean is taken unless another
 * direction sees clearly more, as within a bowl. A few thousand rays.
 */
final class SectionFacing {
  private static final int DIRECTIONS = 96;

  /** How much more another direction must show before it is preferred to the mean normal. */
  private static final double CLEARLY_MORE = 1.15;

  /** A mean of unit normals shorter than this says nothing: the section faces all ways. */
  private static final double NO_DIRECTION = 0.1;

  /** Horizontal part of a unit vector, about 3 degrees, below which it counts as vertical. */
  private static final double VERTICAL = 0.05;

  private SectionFacing() {}

  /**
   * Where to stand.
   *
   * @param azimuthDegrees as in {@link OrbitCamera.Pose}
   * @param elevationDegrees as in {@link OrbitCamera.Pose}
   */
  record Direction(double azimuthDegrees, double elevationDegrees) {}

  /** The direction that shows most of a section. */
  static Direction of(OpenedPiece piece, int section) {
    double[] mean = meanNormal(piece.places(), section);
    double[] best = {0, -1, 0};
    double most = -1;
    if (mean.length == 3) {
      best = mean;
      most = seen(piece, section, mean) * CLEARLY_MORE;
    }
    for (int i = 0; i < DIRECTIONS; i++) {
      double[] d = SphereSpiral.direction(i, DIRECTIONS);
      double seen = seen(piece, section, d);
      if (seen > most) {
        most = seen;
        best = d;
      }
    }
    // Straight above or below every turn shows the same; the one of the top view is kept.
    boolean vertical = Math.hypot(best[0], best[1]) < VERTICAL;
    return new Direction(
        vertical ? 0 : Math.toDegrees(Math.atan2(best[0], -best[1])),
        Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, best[2])))));
  }

  private static double[] meanNormal(SectionPlaces places, int section) {
    double[] sum = places.meanNormal(section);
    double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
    if (!(length > NO_DIRECTION)) {
      return new double[0];
    }
    return new double[] {sum[0] / length, sum[1] / length, sum[2] / length};
  }

  private static double seen(OpenedPiece piece, int section, double[] d) {
    SectionPlaces places = piece.places();
    double seen = 0;
    for (int i = 0; i < places.count(section); i++) {
      double[] n = places.normal(section, i);
      double cos = n[0] * d[0] + n[1] * d[1] + n[2] * d[2];
      if (cos > 0 && piece.sees(places.place(section, i), d[0], d[1], d[2])) {
        seen += cos;
      }
    }
    return seen;
  }
}
