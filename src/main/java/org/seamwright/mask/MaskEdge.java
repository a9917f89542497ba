package org.seamwright.mask;

/**
 * One line between plated and bare.
 *
 * @param points coordinates along the line, 3 per point, mm; a closed line does not repeat its
 *     first
 * @param closed whether the last point joins the first
 * @param lengthMm length along the surface
 * @param normals outward unit normals of the bare side at the points, 3 per point; empty where the
 *     surface beside the line is not known
 */
public record MaskEdge(double[] points, boolean closed, double lengthMm, double[] normals) {
  /** A line of whose surface nothing is known. */
  public MaskEdge(double[] points, boolean closed, double lengthMm) {
    this(points, closed, lengthMm, new double[0]);
  }
}
