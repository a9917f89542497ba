package org.seamwright.mend;

/**
 * Weighted first and second moments of places, and the plane that fits them best: through their
 * mean, along the two directions in which they spread most (total least squares).
 *
 * <p>The eigenvectors are found by Jacobi's rotations (G. Golub, C. Van Loan, "Matrix
 * Computations", 2013, section 8.5).
 */
final class Moments {
  private static final int SWEEPS = 30;

  private final double ox;
  private final double oy;
  private final double oz;
  private double weight;
  private final double[] first = new double[3];
  private final double[] second = new double[6];

  /** Variances along the principal directions, ascending; set by {@link #solve}. */
  final double[] variance = new double[3];

  /** Unit normal of the plane; set by {@link #solve}. */
  final double[] normal = new double[3];

  /** Mean of the places; set by {@link #solve}. */
  final double[] mean = new double[3];

  /** Collects moments about an origin near the places, which keeps digits. */
  Moments(double ox, double oy, double oz) {
    this.ox = ox;
    this.oy = oy;
    this.oz = oz;
  }

  void add(double w, double px, double py, double pz) {
    double x = px - ox;
    double y = py - oy;
    double z = pz - oz;
    weight += w;
    first[0] += w * x;
    first[1] += w * y;
    first[2] += w * z;
    second[0] += w * x * x;
    second[1] += w * y * y;
    second[2] += w * z * z;
    second[3] += w * x * y;
    second[4] += w * y * z;
    second[5] += w * z * x;
  }

  /** Fits the plane; false if there is nothing to fit. */
  boolean solve() {
    if (!(weight > 0)) {
      return false;
    }
    double x = first[0] / weight;
    double y = first[1] / weight;
    double z = first[2] / weight;
    double xy = second[3] / weight - x * y;
    double yz = second[4] / weight - y * z;
    double zx = second[5] / weight - z * x;
    double[][] m = {
      {second[0] / weight - x * x, xy, zx},
      {xy, second[1] / weight - y * y, yz},
      {zx, yz, second[2] / weight - z * z}
    };
    double[][] v = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      rotate(m, v, 0, 1);
      rotate(m, v, 1, 2);
      rotate(m, v, 0, 2);
    }
    int least = 0;
    for (int i = 1; i < 3; i++) {
      least = m[i][i] < m[least][least] ? i : least;
    }
    for (int i = 0; i < 3; i++) {
      normal[i] = v[i][least];
      variance[i] = Math.max(0, m[i][i]);
    }
    java.util.Arrays.sort(variance);
    mean[0] = ox + x;
    mean[1] = oy + y;
    mean[2] = oz + z;
    return true;
  }

  /** Makes the entry (p, q) zero by turning in that plane. */
  private static void rotate(double[][] m, double[][] v, int p, int q) {
    if (m[p][q] == 0) {
      return;
    }
    double theta = (m[q][q] - m[p][p]) / (2 * m[p][q]);
    double t = Math.copySign(1, theta) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
    double c = 1 / Math.sqrt(t * t + 1);
    double s = t * c;
    for (int k = 0; k < 3; k++) {
      double mkp = m[k][p];
      double mkq = m[k][q];
      m[k][p] = c * mkp - s * mkq;
      m[k][q] = s * mkp + c * mkq;
    }
    for (int k = 0; k < 3; k++) {
      double mpk = m[p][k];
      double mqk = m[q][k];
      m[p][k] = c * mpk - s * mqk;
      m[q][k] = s * mpk + c * mqk;
      double vkp = v[k][p];
      double vkq = v[k][q];
      v[k][p] = c * vkp - s * vkq;
      v[k][q] = s * vkp + c * vkq;
    }
  }
}
