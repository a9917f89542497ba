package org.seamwright.flatten;

import java.util.Arrays;
import java.util.Optional;

/**
 * Factors a sparse symmetric positive definite matrix as L D Lᵀ and solves with it, as often as
 * wanted.
 *
 * <p>Up-looking: row k of L is one sparse triangular solve whose pattern comes from the elimination
 * tree. Cost as the fill that the order of elimination leaves.
 *
 * <p>Source: T. A. Davis, "Algorithm 849: A concise sparse Cholesky factorization package", ACM
 * TOMS 31 (2005).
 */
final class SparseCholesky {
  /** A pivot below this share of its diagonal entry has lost all its digits. */
  private static final double LOST = 1e-13;

  private final int n;
  private final int[] order;
  private final int[] start;
  private final int[] row;
  private final double[] value;
  private final double[] pivot;

  private SparseCholesky(
      int n, int[] order, int[] start, int[] row, double[] value, double[] pivot) {
    this.n = n;
    this.order = order;
    this.start = start;
    this.row = row;
    this.value = value;
    this.pivot = pivot;
  }

  /**
   * Factors a matrix.
   *
   * @param order the unknown to eliminate first, second, …
   * @return nothing if the matrix is not positive definite as far as its digits tell
   */
  static Optional<SparseCholesky> of(SparseMatrix a, int[] order) {
    int n = a.size();
    int[] place = new int[n];
    for (int i = 0; i < n; i++) {
      place[order[i]] = i;
    }
    int[] parent = new int[n];
    int[] start = symbolic(a, order, place, parent);
    int[] row = new int[start[n]];
    double[] value = new double[start[n]];
    double[] pivot = new double[n];
    int[] filled = new int[n];
    int[] flag = new int[n];
    int[] pattern = new int[n];
    double[] y = new double[n];
    Arrays.fill(flag, -1);
    for (int k = 0; k < n; k++) {
      int top = n;
      flag[k] = k;
      double diagonal = 0;
      for (int p = a.rowStart()[order[k]]; p < a.rowStart()[order[k] + 1]; p++) {
        int i = place[a.column()[p]];
        if (i == k) {
          diagonal += a.value()[p];
        } else if (i < k) {
          y[i] += a.value()[p];
          int length = 0;
          for (; flag[i] != k; i = parent[i]) {
            pattern[length++] = i;
            flag[i] = k;
          }
          while (length > 0) {
            pattern[--top] = pattern[--length];
          }
        }
      }
      double left = diagonal;
      for (; top < n; top++) {
        int i = pattern[top];
        double yi = y[i];
        y[i] = 0;
        int end = start[i] + filled[i];
        for (int p = start[i]; p < end; p++) {
          y[row[p]] -= value[p] * yi;
        }
        double entry = yi / pivot[i];
        left -= entry * yi;
        row[end] = k;
        value[end] = entry;
        filled[i]++;
      }
      if (!(left > LOST * diagonal)) {
        return Optional.empty();
      }
      pivot[k] = left;
    }
    return Optional.of(new SparseCholesky(n, order, start, row, value, pivot));
  }

  /** Elimination tree and where each column of L begins. */
  private static int[] symbolic(SparseMatrix a, int[] order, int[] place, int[] parent) {
    int n = a.size();
    int[] count = new int[n];
    int[] flag = new int[n];
    for (int k = 0; k < n; k++) {
      parent[k] = -1;
      flag[k] = k;
      for (int p = a.rowStart()[order[k]]; p < a.rowStart()[order[k] + 1]; p++) {
        int i = place[a.column()[p]];
        for (; i < k && flag[i] != k; i = parent[i]) {
          if (parent[i] == -1) {
            parent[i] = k;
          }
          count[i]++;
          flag[i] = k;
        }
      }
    }
    int[] start = new int[n + 1];
    for (int k = 0; k < n; k++) {
      start[k + 1] = start[k] + count[k];
    }
    return start;
  }

  /** Solves A x = b; b stays as it is. */
  double[] solve(double[] b) {
    double[] x = new double[n];
    for (int k = 0; k < n; k++) {
      x[k] = b[order[k]];
    }
    for (int k = 0; k < n; k++) {
      double xk = x[k];
      for (int p = start[k]; p < start[k + 1]; p++) {
        x[row[p]] -= value[p] * xk;
      }
    }
    for (int k = n - 1; k >= 0; k--) {
      double xk = x[k] / pivot[k];
      for (int p = start[k]; p < start[k + 1]; p++) {
        xk -= value[p] * x[row[p]];
      }
      x[k] = xk;
    }
    double[] out = new double[n];
    for (int k = 0; k < n; k++) {
      out[order[k]] = x[k];
    }
    return out;
  }

  /** Solves for two right sides at once, interleaved: b[2i] and b[2i + 1] belong to unknown i. */
  double[] solvePairs(double[] b) {
    double[] x = new double[2 * n];
    for (int k = 0; k < n; k++) {
      x[2 * k] = b[2 * order[k]];
      x[2 * k + 1] = b[2 * order[k] + 1];
    }
    for (int k = 0; k < n; k++) {
      double u = x[2 * k];
      double v = x[2 * k + 1];
      for (int p = start[k]; p < start[k + 1]; p++) {
        x[2 * row[p]] -= value[p] * u;
        x[2 * row[p] + 1] -= value[p] * v;
      }
    }
    for (int k = n - 1; k >= 0; k--) {
      double u = x[2 * k] / pivot[k];
      double v = x[2 * k + 1] / pivot[k];
      for (int p = start[k]; p < start[k + 1]; p++) {
        u -= value[p] * x[2 * row[p]];
        v -= value[p] * x[2 * row[p] + 1];
      }
      x[2 * k] = u;
      x[2 * k + 1] = v;
    }
    double[] out = new double[2 * n];
    for (int k = 0; k < n; k++) {
      out[2 * order[k]] = x[2 * k];
      out[2 * order[k] + 1] = x[2 * k + 1];
    }
    return out;
  }
}
