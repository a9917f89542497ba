package org.seamwright.window;

import java.util.List;

/**
 * What is drawn over the picture at once, while exact results are being worked out. Points are x,
 * y, z in mm.
 *
 * @param swath closed rings that a stroke under way has passed over, each a list of coordinates
 * @param ring the ring of the brush; empty if there is none
 * @param line a line through corners so far; empty if there is none
 * @param isClosed whether the line ends where it began
 * @param dots places that were clicked
 */
record Sketch(
    List<double[]> swath, double[] ring, double[] line, boolean isClosed, List<double[]> dots) {
  /** Nothing. */
  static final Sketch NONE = new Sketch(List.of(), new double[0], new double[0], false, List.of());

  /** Points of a ring round the brush. */
  private static final int RING = 40;

  /** How far from its tangent plane the surface is looked for, in radii. */
  private static final double REACH = 0.8;

  /**
   * A ring about a place, laid on the surface: the tangent circle dropped to the nearest place. Off
   * a true circle of distance by what the surface bends within the radius; for the eye alone.
   *
   * @param n normal at the place, of any length but zero
   */
  static double[] ring(PieceModel model, double[] at, double[] n, double radiusMm) {
    double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    if (!(length > 0)) {
      return new double[0];
    }
    double[] w = {n[0] / length, n[1] / length, n[2] / length};
    // Any direction that is not along the normal will do to start the circle with.
    double[] u = Math.abs(w[2]) < 0.8 ? cross(w, 0, 0, 1) : cross(w, 1, 0, 0);
    double size = Math.sqrt(u[0] * u[0] + u[1] * u[1] + u[2] * u[2]);
    for (int axis = 0; axis < 3; axis++) {
      u[axis] /= size;
    }
    double[] v = cross(w, u[0], u[1], u[2]);
    double[] ring = new double[3 * RING];
    for (int i = 0; i < RING; i++) {
      double c = radiusMm * Math.cos(2 * Math.PI * i / RING);
      double s = radiusMm * Math.sin(2 * Math.PI * i / RING);
      double[] p = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        p[axis] = at[axis] + c * u[axis] + s * v[axis];
      }
      double[] on = model.nearest(p[0], p[1], p[2], REACH * radiusMm).orElse(p);
      System.arraycopy(on, 0, ring, 3 * i, 3);
    }
    return ring;
  }

  private static double[] cross(double[] a, double x, double y, double z) {
    return new double[] {a[1] * z - a[2] * y, a[2] * x - a[0] * z, a[0] * y - a[1] * x};
  }
}
