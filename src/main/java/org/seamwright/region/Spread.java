package org.seamwright.region;

/** The middle of a triangle, how far it reaches from it, and its longest side. */
final class Spread {
  private Spread() {}

  /**
   * Distance from a triangle's middle to its furthest corner, mm.
   *
   * @param corners coordinates of the three corners, mm
   * @param middle receives the middle, mm
   */
  static double of(double[] corners, double[] middle) {
    for (int axis = 0; axis < 3; axis++) {
      middle[axis] = (corners[axis] + corners[3 + axis] + corners[6 + axis]) / 3;
    }
    double furthest2 = 0;
    for (int k = 0; k < 3; k++) {
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = corners[3 * k + axis] - middle[axis];
        sum += d * d;
      }
      furthest2 = Math.max(furthest2, sum);
    }
    return Math.sqrt(furthest2);
  }

  /** The corner that the longest side starts at. */
  static int longestSide(double[] corners) {
    int longest = 0;
    double most2 = -1;
    for (int k = 0; k < 3; k++) {
      int next = (k + 1) % 3;
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = corners[3 * next + axis] - corners[3 * k + axis];
        sum += d * d;
      }
      if (sum > most2) {
        most2 = sum;
        longest = k;
      }
    }
    return longest;
  }
}
