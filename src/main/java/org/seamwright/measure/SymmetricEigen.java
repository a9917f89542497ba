package org.seamwright.measure;

/**
 * Eigenvalues and eigenvectors of a symmetric 3 by 3 matrix by Jacobi's rotations, which are exact
 * to a few roundings of the largest eigenvalue (Golub and Van Loan, Matrix Computations, ch. 8.5).
 */
public final class SymmetricEigen {
  /** Sweeps after which the rest is below rounding; the method converges quadratically. */
  private static final int SWEEPS = 12;

  private final double[] value = new double[3];
  private final double[][] vector = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};

  /** Decomposes a matrix given by its rows; only read. */
  public SymmetricEigen(double[][] matrix) {
    double[][] a = {matrix[0].clone(), matrix[1].clone(), matrix[2].clone()};
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      rotate(a, 0, 1);
      rotate(a, 0, 2);
      rotate(a, 1, 2);
    }
    for (int i = 0; i < 3; i++) {
      value[i] = a[i][i];
    }
    order(0, 1);
    order(1, 2);
    order(0, 1);
  }

  /** Eigenvalue i; 0 is the smallest. */
  public double value(int i) {
    return value[i];
  }

  /** Unit eigenvector i. */
  public double[] vector(int i) {
    return vector[i];
  }

  /**
   * The shortest solution of matrix · x = right in the least squares sense.
   *
   * @param share eigenvalues below this share of the largest count as 0
   */
  double[] solve(double[] right, double share) {
    double[] x = new double[3];
    for (int i = 0; i < 3; i++) {
      if (value[i] > share * value[2]) {
        double[] v = vector[i];
        double along = (v[0] * right[0] + v[1] * right[1] + v[2] * right[2]) / value[i];
        for (int k = 0; k < 3; k++) {
          x[k] += along * v[k];
        }
      }
    }
    return x;
  }

  private void rotate(double[][] a, int p, int q) {
    if (a[p][q] == 0) {
      return;
    }
    double theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
    double t = Math.copySign(1, theta) / (Math.abs(theta) + Math.hypot(theta, 1));
    double c = 1 / Math.hypot(t, 1);
    double s = t * c;
    for (int k = 0; k < 3; k++) {
      double kp = a[k][p];
      double kq = a[k][q];
      a[k][p] = c * kp - s * kq;
      a[k][q] = s * kp + c * kq;
    }
    for (int k = 0; k < 3; k++) {
      double pk = a[p][k];
      double qk = a[q][k];
      a[p][k] = c * pk - s * qk;
      a[q][k] = s * pk + c * qk;
      double vp = vector[p][k];
      double vq = vector[q][k];
      vector[p][k] = c * vp - s * vq;
      vector[q][k] = s * vp + c * vq;
    }
  }

  private void order(int i, int j) {
    if (value[j] < value[i]) {
      double held = value[i];
      value[i] = value[j];
      value[j] = held;
      double[] heldVector = vector[i];
      vector[i] = vector[j];
      vector[j] = heldVector;
    }
  }
}
