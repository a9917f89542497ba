package org.seamwright.measure;

import java.util.Arrays;

/**
 * A quadric fitted to heights over a plane by weighted least squares: what moving least squares put
 * in place of a point. Lengths in units of the fit's own radius.
 *
 * <p>Source: D. Levin, "Mesh-independent surface interpolation", Geometric Modeling for Scientific
 * Visualization (2003), for the projection; plain normal equations for the fit.
 */
final class QuadricHeight {
  /** Unknowns: height, two slopes, three second-order terms. */
  private static final int N = 6;

  /** A pivot below this share of its diagonal entry fixes nothing. */
  private static final double SINGULAR = 1e-9;

  private final double[] matrix = new double[N * N];
  private final double[] side = new double[N];

  void start() {
    Arrays.fill(matrix, 0);
    Arrays.fill(side, 0);
  }

  void add(double u, double v, double height, double w) {
    double wu = w * u;
    double wv = w * v;
    double uu = u * u;
    double uv = u * v;
    double vv = v * v;
    double wuu = w * uu;
    double wuv = w * uv;
    double wvv = w * vv;
    double[] m = matrix;
    m[0] += w;
    m[6] += wu;
    m[7] += wuu;
    m[12] += wv;
    m[13] += wuv;
    m[14] += wvv;
    m[19] += wuu * u;
    m[20] += wuu * v;
    m[21] += wuu * uu;
    m[25] += wuv * u;
    m[26] += wuv * v;
    m[27] += wuu * uv;
    m[28] += wuv * uv;
    m[32] += wvv * v;
    m[34] += wuv * vv;
    m[35] += wvv * vv;
    side[0] += w * height;
    side[1] += wu * height;
    side[2] += wv * height;
    side[3] += wuu * height;
    side[4] += wuv * height;
    side[5] += wvv * height;
  }

  /** Solves; false if the points fix no quadric. */
  boolean solve() {
    double[] m = matrix;
    // Entries that occur twice.
    m[18] = m[7];
    m[24] = m[13];
    m[30] = m[14];
    m[31] = m[26];
    m[33] = m[28];
    for (int j = 0; j < N; j++) {
      double before = m[N * j + j];
      for (int k = 0; k < j; k++) {
        m[N * j + j] -= m[N * j + k] * m[N * j + k];
      }
      if (!(m[N * j + j] > SINGULAR * before)) {
        return false;
      }
      m[N * j + j] = Math.sqrt(m[N * j + j]);
      for (int i = j + 1; i < N; i++) {
        for (int k = 0; k < j; k++) {
          m[N * i + j] -= m[N * i + k] * m[N * j + k];
        }
        m[N * i + j] /= m[N * j + j];
      }
    }
    for (int i = 0; i < N; i++) {
      for (int k = 0; k < i; k++) {
        side[i] -= m[N * i + k] * side[k];
      }
      side[i] /= m[N * i + i];
    }
    for (int i = N - 1; i >= 0; i--) {
      for (int k = i + 1; k < N; k++) {
        side[i] -= m[N * k + i] * side[k];
      }
      side[i] /= m[N * i + i];
    }
    return true;
  }

  /** Height over the origin. */
  double height() {
    return side[0];
  }

  /** Writes the six numbers of the quadric: height, slopes, second-order terms. */
  void write(double[] into, int at) {
    System.arraycopy(side, 0, into, at, N);
  }

  /** Height of a quadric written before. */
  static double height(double[] from, int at, double u, double v) {
    return from[at]
        + u * from[at + 1]
        + v * from[at + 2]
        + u * u * from[at + 3]
        + u * v * from[at + 4]
        + v * v * from[at + 5];
  }

  /** The larger second derivative over the origin, any direction, without sign. */
  double bend() {
    double mean = side[3] + side[5];
    return Math.abs(mean) + Math.hypot(side[3] - side[5], side[4]);
  }
}
