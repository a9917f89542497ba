package org.seamwright.measure;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Mesh;

/**
 * The axis of a turned piece: the line that the normals of its surface meet ({@link AxisFit}).
 *
 * <p>Confidence is the share, from 0 to 1, of the area that goes round the axis whose normals lie
 * within {@link #WITHIN_DEGREES} of meeting it; each place counts by the sine between its normal
 * and the axis, since a flat end says nothing of where the axis is. On facets a turned piece of N
 * columns keeps all of it from N = 18 on. Works on any soup; a mesh of a million faces takes a few
 * seconds. The same mesh gives the same axis on any machine.
 *
 * @param kind whether there is an axis
 * @param point the point of the axis level with the piece's lowest place along it, mm; the middle
 *     of a sphere
 * @param direction unit vector; its largest component is above 0 (of equals z, then y, counts)
 * @param confidence share of the area that fits, 0 to 1
 */
public record Revolution(Kind kind, Vector3D point, Vector3D direction, double confidence) {
  /** A normal that misses the axis by more than this angle doesn't fit. */
  public static final double WITHIN_DEGREES = 10;

  /** Confidence from which an axis is told of and may be used. */
  public static final double ENOUGH = 0.6;

  /** Share of the area that must go round an axis: a flat sheet has none. */
  private static final double LEAST_ROUND = 0.01;

  /** Confidence of an axis across from which a piece is a sphere. */
  private static final double SPHERE = 0.95;

  private static final int SAMPLES = 8000;

  /** Component lengths closer than this count as equal when a direction is chosen. */
  private static final double TIE = 1e-6;

  /** What was found. */
  public enum Kind {
    /** One axis. */
    AXIS,
    /** A sphere: any line through its middle is an axis, and {@code direction} is z. */
    SPHERE,
    /** No axis is told by the surface. */
    NONE
  }

  private static final Revolution NOTHING =
      new Revolution(Kind.NONE, Vector3D.ZERO, Vector3D.Unit.PLUS_Z, 0);

  /** Whether there is one axis, surely enough to be used. */
  public boolean isSure() {
    return kind == Kind.AXIS && confidence >= ENOUGH;
  }

  /**
   * Finds the axis of a piece.
   *
   * @param meshMm any triangle soup, mm
   */
  public static Revolution of(Mesh meshMm) {
    if (meshMm.faceCount() == 0 || !(Area.ofFaces(meshMm) > 0)) {
      return NOTHING;
    }
    Oriented samples = Oriented.spread(meshMm, SAMPLES);
    AxisFit fit = new AxisFit(samples);
    AxisFit.Line best = null;
    double most = 0;
    for (AxisFit.Line start : fit.starts()) {
      AxisFit.Line line = fit.follow(start);
      double confidence = confidence(fit, samples, line);
      // Ties go to the earlier start, however the last digits fall.
      if (confidence > most + 1e-3) {
        most = confidence;
        best = line;
      }
    }
    if (best == null) {
      return NOTHING;
    }
    Vector3D hub = new AxisFit(samples).hub();
    Vector3D across = best.direction().orthogonal();
    Vector3D third = best.direction().cross(across);
    if (confidence(fit, samples, new AxisFit.Line(hub, across)) >= SPHERE
        && confidence(fit, samples, new AxisFit.Line(hub, third)) >= SPHERE) {
      return new Revolution(Kind.SPHERE, hub, Vector3D.Unit.PLUS_Z, most);
    }
    AxisFit.Line line = new AxisFit(Oriented.faces(meshMm)).refine(best);
    double confidence = confidence(fit, samples, line);
    Vector3D direction = turned(line.direction());
    return new Revolution(
        Kind.AXIS, lowest(meshMm, line.point(), direction), direction, confidence);
  }

  private static double confidence(AxisFit fit, Oriented samples, AxisFit.Line line) {
    double within = Math.sin(Math.toRadians(WITHIN_DEGREES));
    double round = 0;
    double fitting = 0;
    double all = 0;
    for (int i = 0; i < samples.count(); i++) {
      double share = samples.weight()[i] * fit.steepness(line, i);
      all += samples.weight()[i];
      round += share;
      fitting += fit.sine(line, i) <= within ? share : 0;
    }
    return round >= LEAST_ROUND * all ? fitting / round : 0;
  }

  private static Vector3D turned(Vector3D direction) {
    double[] d = direction.toArray();
    int largest = 2;
    for (int k = 1; k >= 0; k--) {
      if (Math.abs(d[k]) > Math.abs(d[largest]) + TIE) {
        largest = k;
      }
    }
    return d[largest] < 0 ? direction.negate() : direction;
  }

  private static Vector3D lowest(Mesh mesh, Vector3D point, Vector3D direction) {
    double[] p = mesh.xyz();
    double low = Double.POSITIVE_INFINITY;
    for (int v : mesh.corner()) {
      double along =
          (p[3 * v] - point.getX()) * direction.getX()
              + (p[3 * v + 1] - point.getY()) * direction.getY()
              + (p[3 * v + 2] - point.getZ()) * direction.getZ();
      low = Math.min(low, along);
    }
    return point.add(direction.multiply(low));
  }
}
