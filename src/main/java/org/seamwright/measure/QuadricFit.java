package org.seamwright.measure;

import java.util.Arrays;

/**
 * Normal at a vertex of the quadric that fits the vertices around it, by least squares of heights
 * over a given tangent plane. Errs in the second order of the edges' length on any smooth surface,
 * however uneven the faces are. Where neighbours are too few for a quadric the roundest one is
 * taken.
 *
 * <p>Source: F. Cazals and M. Pouget, "Estimating differential quantities using polynomial fitting
 * of osculating jets", CAGD 22 (2005).
 */
final class QuadricFit {
  /** Unknowns: two slopes, mean curvature, difference of curvatures, twist. */
  private static final int N = 5;

  /** Share of the curvature terms' weight that pulls towards a round surface. */
  private static final double ROUND = 1e-4;

  /** A pivot below this share of its diagonal entry fixes nothing. */
  private static final double SINGULAR = 1e-9;

  private final double[] normal = new double[3];
  private final double[] first = new double[3];
  private final double[] second = new double[3];
  private final double[] matrix = new double[N * N];
  private final double[] side = new double[N];
  private final double[] row = new double[N];

  /** Begins with a unit normal. */
  void start(double x, double y, double z) {
    normal[0] = x;
    normal[1] = y;
    normal[2] = z;
    NormalFit.tangents(normal, first, second);
    Arrays.fill(matrix, 0);
    Arrays.fill(side, 0);
  }

  /**
   * Adds the chord to a neighbour.
   *
   * @param size a typical length of the chords, to which all are compared
   */
  void add(double x, double y, double z, double size) {
    double u = (x * first[0] + y * first[1] + z * first[2]) / size;
    double v = (x * second[0] + y * second[1] + z * second[2]) / size;
    double height = (x * normal[0] + y * normal[1] + z * normal[2]) / size;
    double length2 = u * u + v * v;
    row[0] = u;
    row[1] = v;
    row[2] = length2;
    row[3] = u * u - v * v;
    row[4] = u * v;
    double weight = 1 / (length2 * length2);
    for (int i = 0; i < N; i++) {
      for (int j = 0; j <= i; j++) {
        matrix[N * i + j] += weight * row[i] * row[j];
      }
      side[i] += weight * row[i] * height;
    }
  }

  /** Solves; false if the neighbours fix no tangent plane. */
  boolean solve(double[] into) {
    double pull = ROUND * matrix[2 * N + 2];
    matrix[3 * N + 3] += pull;
    matrix[4 * N + 4] += pull;
    // Cholesky, the lower half in place.
    for (int j = 0; j < N; j++) {
      double before = matrix[N * j + j];
      for (int k = 0; k < j; k++) {
        matrix[N * j + j] -= matrix[N * j + k] * matrix[N * j + k];
      }
      if (!(matrix[N * j + j] > SINGULAR * before)) {
        return false;
      }
      matrix[N * j + j] = Math.sqrt(matrix[N * j + j]);
      for (int i = j + 1; i < N; i++) {
        for (int k = 0; k < j; k++) {
          matrix[N * i + j] -= matrix[N * i + k] * matrix[N * j + k];
        }
        matrix[N * i + j] /= matrix[N * j + j];
      }
    }
    for (int i = 0; i < N; i++) {
      for (int k = 0; k < i; k++) {
        side[i] -= matrix[N * i + k] * side[k];
      }
      side[i] /= matrix[N * i + i];
    }
    for (int i = N - 1; i >= 0; i--) {
      for (int k = i + 1; k < N; k++) {
        side[i] -= matrix[N * k + i] * side[k];
      }
      side[i] /= matrix[N * i + i];
    }
    double scale = 1 / Math.sqrt(1 + side[0] * side[0] + side[1] * side[1]);
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = (normal[axis] - side[0] * first[axis] - side[1] * second[axis]) * scale;
    }
    return true;
  }
}
