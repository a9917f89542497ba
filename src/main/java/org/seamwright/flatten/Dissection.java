package org.seamwright.flatten;

import java.util.Arrays;

/**
 * An order of elimination for a sparse symmetric matrix whose unknowns lie at points of a surface:
 * nested dissection by cutting the points in two halves along their longest extent, again and
 * again. Fill stays near n log n for matrices of triangle meshes.
 *
 * <p>Source: A. George, "Nested dissection of a regular finite element mesh", SIAM J. Numer. Anal.
 * 10 (1973). O(n log² n).
 */
final class Dissection {
  /** Below this many unknowns dissection no longer saves fill. */
  private static final int LEAF = 24;

  private final SparseMatrix matrix;
  private final double[] point;
  private final int dimension;
  private final int[] order;
  private final int[] side;
  private int placed;
  private int stamp;

  private Dissection(SparseMatrix matrix, double[] point, int dimension) {
    this.matrix = matrix;
    this.point = point;
    this.dimension = dimension;
    this.order = new int[matrix.size()];
    this.side = new int[matrix.size()];
  }

  /**
   * Finds the order.
   *
   * @param point coordinates, {@code dimension} per unknown
   * @return the unknown to eliminate first, second, …
   */
  static int[] order(SparseMatrix matrix, double[] point, int dimension) {
    Dissection dissection = new Dissection(matrix, point, dimension);
    int[] all = new int[matrix.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = i;
    }
    dissection.place(all);
    return dissection.order;
  }

  private void place(int[] set) {
    if (set.length <= LEAF) {
      for (int v : set) {
        order[placed++] = v;
      }
      return;
    }
    int axis = longestAxis(set);
    double[] key = new double[set.length];
    for (int i = 0; i < set.length; i++) {
      key[i] = point[dimension * set[i] + axis];
    }
    double[] sorted = key.clone();
    Arrays.sort(sorted);
    double middle = sorted[set.length / 2];
    int low = ++stamp;
    int high = ++stamp;
    int lows = 0;
    for (int i = 0; i < set.length; i++) {
      boolean below = key[i] < middle;
      side[set[i]] = below ? low : high;
      lows += below ? 1 : 0;
    }
    if (lows == 0) {
      // All points alike from the middle down: no cut along this axis.
      for (int v : set) {
        order[placed++] = v;
      }
      return;
    }
    split(set, high);
  }

  private void split(int[] set, int high) {
    int[] left = new int[set.length];
    int[] right = new int[set.length];
    int[] between = new int[set.length];
    int lefts = 0;
    int rights = 0;
    int betweens = 0;
    for (int v : set) {
      if (side[v] == high) {
        right[rights++] = v;
      } else if (touches(v, high)) {
        between[betweens++] = v;
      } else {
        left[lefts++] = v;
      }
    }
    // The separator comes last; it keeps no mark of the left half, which is dissected first.
    place(Arrays.copyOf(left, lefts));
    place(Arrays.copyOf(right, rights));
    for (int i = 0; i < betweens; i++) {
      order[placed++] = between[i];
    }
  }

  private boolean touches(int v, int high) {
    for (int k = matrix.rowStart()[v]; k < matrix.rowStart()[v + 1]; k++) {
      if (side[matrix.column()[k]] == high) {
        return true;
      }
    }
    return false;
  }

  private int longestAxis(int[] set) {
    int best = 0;
    double longest = -1;
    for (int axis = 0; axis < dimension; axis++) {
      double lo = Double.POSITIVE_INFINITY;
      double hi = Double.NEGATIVE_INFINITY;
      for (int v : set) {
        lo = Math.min(lo, point[dimension * v + axis]);
        hi = Math.max(hi, point[dimension * v + axis]);
      }
      if (hi - lo > longest) {
        longest = hi - lo;
        best = axis;
      }
    }
    return best;
  }
}
