package org.seamwright.share;

/**
 * Sums of squared distances to planes, one per vertex (Garland and Heckbert, "Surface
 * Simplification Using Quadric Error Metrics", 1997): ten numbers a vertex, {@code v ↦ vᵀAv + 2bᵀv
 * + c}, and the weight of the planes, by which errors are divided: the mean squared distance to
 * them.
 */
final class Quadrics {
  private static final int SIZE = 11;

  /** Below this the planes at a vertex fix no point. */
  private static final double FLAT = 1e-7;

  private final double[] q;

  Quadrics(int vertices) {
    q = new double[SIZE * vertices];
  }

  /** Adds the plane {@code n·v + d = 0} with unit n, times a weight. */
  void add(int vertex, double nx, double ny, double nz, double d, double weight) {
    int at = SIZE * vertex;
    q[at] += weight * nx * nx;
    q[at + 1] += weight * nx * ny;
    q[at + 2] += weight * nx * nz;
    q[at + 3] += weight * ny * ny;
    q[at + 4] += weight * ny * nz;
    q[at + 5] += weight * nz * nz;
    q[at + 6] += weight * nx * d;
    q[at + 7] += weight * ny * d;
    q[at + 8] += weight * nz * d;
    q[at + 9] += weight * d * d;
    q[at + 10] += weight;
  }

  /** Adds what one vertex gathered to another. */
  void join(int from, int to) {
    for (int i = 0; i < SIZE; i++) {
      q[SIZE * to + i] += q[SIZE * from + i];
    }
  }

  /** Mean squared distance of a place for two vertices made one, mm²; not negative. */
  double error(int a, int b, double x, double y, double z) {
    double[] s = sum(a, b);
    double value =
        s[0] * x * x
            + 2 * s[1] * x * y
            + 2 * s[2] * x * z
            + s[3] * y * y
            + 2 * s[4] * y * z
            + s[5] * z * z
            + 2 * (s[6] * x + s[7] * y + s[8] * z)
            + s[9];
    return s[10] > 0 ? Math.max(0, value) / s[10] : 0;
  }

  /** The place of least error for two vertices made one, or null where the planes fix none. */
  double[] best(int a, int b) {
    double[] s = sum(a, b);
    double c00 = s[3] * s[5] - s[4] * s[4];
    double c01 = s[2] * s[4] - s[1] * s[5];
    double c02 = s[1] * s[4] - s[2] * s[3];
    double det = s[0] * c00 + s[1] * c01 + s[2] * c02;
    double trace = s[0] + s[3] + s[5];
    if (!(det > FLAT * trace * trace * trace)) {
      return null;
    }
    double c11 = s[0] * s[5] - s[2] * s[2];
    double c12 = s[1] * s[2] - s[0] * s[4];
    double c22 = s[0] * s[3] - s[1] * s[1];
    return new double[] {
      -(c00 * s[6] + c01 * s[7] + c02 * s[8]) / det,
      -(c01 * s[6] + c11 * s[7] + c12 * s[8]) / det,
      -(c02 * s[6] + c12 * s[7] + c22 * s[8]) / det
    };
  }

  private double[] sum(int a, int b) {
    double[] s = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      s[i] = q[SIZE * a + i] + q[SIZE * b + i];
    }
    return s;
  }
}
