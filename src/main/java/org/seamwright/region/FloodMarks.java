package org.seamwright.region;

import org.seamwright.basis.Progress;
import org.seamwright.mesh.EdgeRings;
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

  private final double limitSine;
  private final double limitCosine;

  private FloodMarks(double angleDegrees) {
    double limit = Math.toRadians(angleDegrees - SLACK_DEGREES);
    limitSine = Math.sin(limit);
    limitCosine = Math.cos(limit);
  }

  /**
   * Faces that can be reached without crossing a crease.
   *
   * <p>The fill stops at open edges. Where three or more faces meet it goes on to those that
   * continue the face it comes from. Faces without area have no normal: it passes through them as
   * if they were not there.
   *
   * @param ring {@link EdgeRings} of the piece
   * @param normals unit normals, 3 per face; all 0 for a face without area
   * @param seed face where it starts
   * @return one entry per face of the piece
   */
  static boolean[] upToCreases(
      Mesh mesh, int[] ring, double[] normals, int seed, double angleDegrees, Progress progress) {
    return upToCreases(mesh, ring, normals, seed, angleDegrees, 0, progress);
  }

  /**
   * The same, breaks of crease lines up to a length bridged: see {@link CreaseGaps}.
   *
   * @param gapsMm 0 to bridge none
   */
  static boolean[] upToCreases(
      Mesh mesh,
      int[] ring,
      double[] normals,
      int seed,
      double angleDegrees,
      double gapsMm,
      Progress progress) {
    FloodMarks flood = new FloodMarks(angleDegrees);
    boolean[] barrier =
        gapsMm > 0
            ? CreaseGaps.bridged(mesh, ring, flood.creases(mesh, ring, normals), gapsMm)
            : new boolean[0];
    int faces = mesh.faceCount();
    boolean[] reached = new boolean[faces];
    double[] normal = normals;
    int[] corner = mesh.corner();
    int[] queue = new int[faces];
    int end = 0;
    queue[end++] = seed;
    reached[seed] = true;
    for (int begin = 0; begin < end; begin++) {
      if ((begin & REPORT_MASK) == 0) {
        progress.at((double) begin / faces);
      }
      int f = queue[begin];
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        if (barrier.length > 0 && barrier[h]) {
          continue;
        }
        for (int g = ring[h]; g != h; g = ring[g]) {
          int across = g / 3;
          if (reached[across]) {
            continue;
          }
          // Faces turned against each other start the shared edge at the same vertex.
          double turn = corner[g] == corner[h] ? -1 : 1;
          if (isZero(normal, 3 * across)) {
            normal = normal == normals ? normals.clone() : normal;
            for (int axis = 0; axis < 3; axis++) {
              normal[3 * across + axis] = turn * normal[3 * f + axis];
            }
          } else if (flood.exceeds(normal, 3 * f, 3 * across, turn)) {
            continue;
          }
          reached[across] = true;
          queue[end++] = across;
        }
      }
    }
    progress.at(1);
    return reached;
  }

  /** For each half-edge whether a face across is at a crease's angle to its own. */
  private boolean[] creases(Mesh mesh, int[] ring, double[] normals) {
    boolean[] crease = new boolean[ring.length];
    for (int h = 0; h < ring.length; h++) {
      for (int g = ring[h]; g != h && !crease[h]; g = ring[g]) {
        double turn = mesh.corner()[g] == mesh.corner()[h] ? -1 : 1;
        crease[h] =
            !isZero(normals, 3 * (g / 3)) && exceeds(normals, 3 * (h / 3), 3 * (g / 3), turn);
      }
    }
    return crease;
  }

  private static boolean isZero(double[] normal, int at) {
    return normal[at] == 0 && normal[at + 1] == 0 && normal[at + 2] == 0;
  }

  /**
   * Whether the angle between two normals is above a limit; not if the first is unknown. By the
   * sine of the difference, which is exact near 0 and 180 degrees too.
   */
  private boolean exceeds(double[] n, int at, int other, double turn) {
    double x = turn * n[other];
    double y = turn * n[other + 1];
    double z = turn * n[other + 2];
    double cx = n[at + 1] * z - n[at + 2] * y;
    double cy = n[at + 2] * x - n[at] * z;
    double cz = n[at] * y - n[at + 1] * x;
    double sine = Math.sqrt(cx * cx + cy * cy + cz * cz);
    double cosine = n[at] * x + n[at + 1] * y + n[at + 2] * z;
    return sine * limitCosine - cosine * limitSine > 0;
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
