package org.seamwright.flatten;

import java.util.Arrays;

/**
 * A sparse symmetric matrix by rows, both triangles kept: the stiffness matrix of linear functions
 * on a triangle mesh.
 *
 * @param size unknowns
 * @param rowStart one entry per row and one more: where its entries begin
 * @param column one entry per entry: its column; the diagonal comes first in each row
 * @param value one entry per entry
 */
record SparseMatrix(int size, int[] rowStart, int[] column, double[] value) {

  /**
   * Puts a matrix together from one symmetric 3×3 element per face with rows that sum to zero.
   *
   * @param corner three unknowns per face
   * @param weight three per face: the entry for half-edge h = 3f + k, which joins {@code corner[h]}
   *     to the next corner, is {@code -weight[h]}
   */
  static SparseMatrix stiffness(int size, int[] corner, double[] weight) {
    int[] count = new int[size + 1];
    for (int h = 0; h < corner.length; h++) {
      count[corner[h]]++;
      count[corner[next(h)]]++;
    }
    int[] start = new int[size + 1];
    for (int v = 0; v < size; v++) {
      start[v + 1] = start[v] + count[v] + 1;
    }
    int[] column = new int[start[size]];
    double[] value = new double[start[size]];
    int[] end = new int[size];
    for (int v = 0; v < size; v++) {
      column[start[v]] = v;
      end[v] = start[v] + 1;
    }
    for (int h = 0; h < corner.length; h++) {
      int a = corner[h];
      int b = corner[next(h)];
      value[start[a]] += weight[h];
      value[start[b]] += weight[h];
      add(start, end, column, value, a, b, -weight[h]);
      add(start, end, column, value, b, a, -weight[h]);
    }
    return new SparseMatrix(size, start, column, value).packed(end);
  }

  private static void add(
      int[] start, int[] end, int[] column, double[] value, int row, int col, double by) {
    for (int k = start[row] + 1; k < end[row]; k++) {
      if (column[k] == col) {
        value[k] += by;
        return;
      }
    }
    column[end[row]] = col;
    value[end[row]++] = by;
  }

  private SparseMatrix packed(int[] end) {
    int[] packedStart = new int[size + 1];
    for (int v = 0; v < size; v++) {
      packedStart[v + 1] = packedStart[v] + end[v] - rowStart[v];
    }
    int[] packedColumn = new int[packedStart[size]];
    double[] packedValue = new double[packedStart[size]];
    for (int v = 0; v < size; v++) {
      int length = end[v] - rowStart[v];
      System.arraycopy(column, rowStart[v], packedColumn, packedStart[v], length);
      System.arraycopy(value, rowStart[v], packedValue, packedStart[v], length);
    }
    return new SparseMatrix(size, packedStart, packedColumn, packedValue);
  }

  /** The rows and columns of some unknowns, numbered in the order of the list. */
  SparseMatrix minor(int[] keep) {
    int[] number = new int[size];
    Arrays.fill(number, -1);
    for (int i = 0; i < keep.length; i++) {
      number[keep[i]] = i;
    }
    int[] start = new int[keep.length + 1];
    int[] col = new int[column.length];
    double[] val = new double[column.length];
    int n = 0;
    for (int i = 0; i < keep.length; i++) {
      for (int k = rowStart[keep[i]]; k < rowStart[keep[i] + 1]; k++) {
        if (number[column[k]] >= 0) {
          col[n] = number[column[k]];
          val[n++] = value[k];
        }
      }
      start[i + 1] = n;
    }
    return new SparseMatrix(keep.length, start, Arrays.copyOf(col, n), Arrays.copyOf(val, n));
  }

  /** One entry of the product with a vector. */
  double rowTimes(int row, double[] x) {
    double sum = 0;
    for (int k = rowStart[row]; k < rowStart[row + 1]; k++) {
      sum += value[k] * x[column[k]];
    }
    return sum;
  }

  private static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }
}
