package org.seamwright.measure;

/**
 * A cubic Bézier triangle and its area by numerical integration.
 *
 * <p>The ten control points are kept as three coordinates each in the order of {@link #INDEX}. The
 * area is integrated with seven points (exact for polynomials of degree 5), which for a patch that
 * turns by 40 degrees errs by less than the patch itself does.
 *
 * <p>Sources: G. Farin, "Triangular Bernstein–Bézier patches", CAGD 3 (1986); J. Radon, "Zur
 * mechanischen Kubatur", Monatshefte für Mathematik 52 (1948).
 */
final class CurvedPatch {
  /** Exponents of the three barycentric weights for each control point: corners, edges, middle. */
  private static final int[][] INDEX = {
    {3, 0, 0}, {0, 3, 0}, {0, 0, 3}, {2, 1, 0}, {1, 2, 0}, {0, 2, 1}, {0, 1, 2}, {1, 0, 2},
    {2, 0, 1}, {1, 1, 1}
  };

  private static final int POINTS = 7;
  private static final double[] WEIGHT = new double[POINTS];

  /** Derivatives of the ten basis functions along two sides, for each integration point. */
  private static final double[][] ALONG = new double[POINTS][10];

  private static final double[][] ACROSS = new double[POINTS][10];

  static {
    double root = Math.sqrt(15);
    double a = (6 - root) / 21;
    double b = (6 + root) / 21;
    double[][] at = {
      {1.0 / 3, 1.0 / 3},
      {a, a},
      {1 - 2 * a, a},
      {a, 1 - 2 * a},
      {b, b},
      {1 - 2 * b, b},
      {b, 1 - 2 * b}
    };
    double wa = (155 - root) / 1200;
    double wb = (155 + root) / 1200;
    double[] weight = {9.0 / 40, wa, wa, wa, wb, wb, wb};
    for (int q = 0; q < POINTS; q++) {
      WEIGHT[q] = weight[q];
      double v = at[q][0];
      double w = at[q][1];
      for (int k = 0; k < 10; k++) {
        double u = 1 - v - w;
        double byU = derivative(INDEX[k], 0, u, v, w);
        ALONG[q][k] = derivative(INDEX[k], 1, u, v, w) - byU;
        ACROSS[q][k] = derivative(INDEX[k], 2, u, v, w) - byU;
      }
    }
  }

  private static double derivative(int[] index, int by, double... at) {
    if (index[by] == 0) {
      return 0;
    }
    double value = 6;
    for (int i = 0; i < 3; i++) {
      int power = index[i];
      value /= power == 3 ? 6 : power == 2 ? 2 : 1;
      value *= i == by ? power * Math.pow(at[i], power - 1) : Math.pow(at[i], power);
    }
    return value;
  }

  private final double[] control = new double[30];

  /** Sets a corner, k from 0 to 2. */
  void corner(int k, double x, double y, double z) {
    set(k, x, y, z);
  }

  /**
   * Sets one of the two control points of the edge that runs from corner k to the next.
   *
   * @param near whether it is the one near corner k
   */
  void edge(int k, boolean near, double x, double y, double z) {
    set(3 + 2 * k + (near ? 0 : 1), x, y, z);
  }

  private void set(int i, double x, double y, double z) {
    control[3 * i] = x;
    control[3 * i + 1] = y;
    control[3 * i + 2] = z;
  }

  /** Sets the middle point from the others, so that a quadratic patch is reproduced. */
  void middle() {
    for (int axis = 0; axis < 3; axis++) {
      double corners = (control[axis] + control[3 + axis] + control[6 + axis]) / 3;
      double edges = 0;
      for (int i = 3; i < 9; i++) {
        edges += control[3 * i + axis] / 6;
      }
      control[27 + axis] = edges + (edges - corners) / 2;
    }
  }

  /**
   * Area of the patch, in the square of the coordinates' unit.
   *
   * @return NaN if somewhere the patch faces away from the given normal: it is folded over
   */
  double area(double nx, double ny, double nz) {
    double sum = 0;
    for (int q = 0; q < POINTS; q++) {
      double ax = 0;
      double ay = 0;
      double az = 0;
      double bx = 0;
      double by = 0;
      double bz = 0;
      for (int k = 0; k < 10; k++) {
        double along = ALONG[q][k];
        double across = ACROSS[q][k];
        ax += along * control[3 * k];
        ay += along * control[3 * k + 1];
        az += along * control[3 * k + 2];
        bx += across * control[3 * k];
        by += across * control[3 * k + 1];
        bz += across * control[3 * k + 2];
      }
      double x = ay * bz - az * by;
      double y = az * bx - ax * bz;
      double z = ax * by - ay * bx;
      if (x * nx + y * ny + z * nz < 0) {
        return Double.NaN;
      }
      sum += WEIGHT[q] * Math.sqrt(x * x + y * y + z * z);
    }
    return sum / 2;
  }
}
