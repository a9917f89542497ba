package org.seamwright.region;

import org.seamwright.basis.Progress;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;

/**
 * Marks that consist of whole faces of the piece as read: a fill up to creases, a whole part. They
 * are found on the piece before any cut, so cuts of other marks don't change them.
 */
final class FloodMarks {
  /**
   * Slack on the crease angle, so that a right angle stops a fill up to 90°. Single-precision
   * coordinates turn the normal of a face by about 6e-8 of its distance from the origin over its
   * size: this is enough for faces down to a 300th of the piece.
   */
  private static final double SLACK_DEGREES = 1e-3;

  private static final int REPORT_MASK = (1 << 14) - 1;

  private FloodMarks() {}

  /**
   * Faces that can be reached without crossing a crease.
   *
   * <p>The fill stops at open edges. Where three or more faces meet it goes on to those that
   * continue the face it comes from. Faces without area have no normal: it passes through them as
   * if they were not there.
   *
   * @param ring {@link EdgeRings} of the piece
   * @param seed face where it starts
   * @return one entry per face of the piece
   */
  static boolean[] upToCreases(
      Mesh mesh, int[] ring, int seed, double angleDegrees, Progress progress) {
    int faces = mesh.faceCount();
    boolean[] reached = new boolean[faces];
    double[] normal = new double[3 * faces];
    double[] own = new double[3];
    int[] queue = new int[faces];
    int end = 0;
    queue[end++] = seed;
    reached[seed] = true;
    Faces.normal(mesh, seed, own);
    System.arraycopy(own, 0, normal, 3 * seed, 3);
    for (int begin = 0; begin < end; begin++) {
      if ((begin & REPORT_MASK) == 0) {
        progress.at((double) begin / faces);
      }
      int f = queue[begin];
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        for (int g = ring[h]; g != h; g = ring[g]) {
          int across = g / 3;
          if (reached[across]) {
            continue;
          }
          // Faces turned against each other start the shared edge at the same vertex.
          double turn = mesh.corner()[g] == mesh.corner()[h] ? -1 : 1;
          Faces.normal(mesh, across, own);
          if (isZero(own)) {
            own[0] = turn * normal[3 * f];
            own[1] = turn * normal[3 * f + 1];
            own[2] = turn * normal[3 * f + 2];
          } else if (angleDegrees(normal, 3 * f, own, turn) > angleDegrees - SLACK_DEGREES) {
            continue;
          }
          System.arraycopy(own, 0, normal, 3 * across, 3);
          reached[across] = true;
          queue[end++] = across;
        }
      }
    }
    progress.at(1);
    return reached;
  }

  private static boolean isZero(double[] vector) {
    return vector[0] == 0 && vector[1] == 0 && vector[2] == 0;
  }

  /** Angle between two normals; 0 if the first is unknown. Exact near 0 and 180 degrees too. */
  private static double angleDegrees(double[] n, int at, double[] other, double turn) {
    double x = turn * other[0];
    double y = turn * other[1];
    double z = turn * other[2];
    double cx = n[at + 1] * z - n[at + 2] * y;
    double cy = n[at + 2] * x - n[at] * z;
    double cz = n[at] * y - n[at + 1] * x;
    double sine = Math.sqrt(cx * cx + cy * cy + cz * cz);
    double cosine = n[at] * x + n[at + 1] * y + n[at + 2] * z;
    return Math.toDegrees(Math.atan2(sine, cosine));
  }

  /** Faces of the same part as a face, one entry per face of the piece. */
  static boolean[] part(Parts parts, int face) {
    int[] of = parts.of();
    boolean[] reached = new boolean[of.length];
    for (int f = 0; f < reached.length; f++) {
      reached[f] = of[f] == of[face];
    }
    return reached;
  }
}
