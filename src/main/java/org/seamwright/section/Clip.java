package org.seamwright.section;

import org.seamwright.mesh.Mesh;

/** The part of a face where a field, linear between its corners, is below a level. */
final class Clip {
  private Clip() {}

  /**
   * Share of a face's area below a level.
   *
   * @param field one entry per vertex, finite at the corners
   */
  static double shareBelow(Mesh mesh, int face, double[] field, double level) {
    int[] corner = mesh.corner();
    double a = field[corner[3 * face]] - level;
    double b = field[corner[3 * face + 1]] - level;
    double c = field[corner[3 * face + 2]] - level;
    int below = (a < 0 ? 1 : 0) + (b < 0 ? 1 : 0) + (c < 0 ? 1 : 0);
    return switch (below) {
      case 0 -> 0;
      case 3 -> 1;
      case 1 -> a < 0 ? tip(a, b, c) : b < 0 ? tip(b, c, a) : tip(c, a, b);
      default -> 1 - (a >= 0 ? tip(a, b, c) : b >= 0 ? tip(b, c, a) : tip(c, a, b));
    };
  }

  /** Share of the tip at the corner with value a, whose sign differs from the other two. */
  private static double tip(double a, double b, double c) {
    return a / (a - b) * (a / (a - c));
  }
}
