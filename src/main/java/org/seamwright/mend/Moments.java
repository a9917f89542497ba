package org.seamwright.mend;

import org.seamwright.measure.SymmetricEigen;

/**
 * Weighted first and second moments of places, and the plane that fits them best: through their
 * mean, along the two directions in which they spread most (total least squares).
 */
final class Moments {
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
    SymmetricEigen eigen = new SymmetricEigen(m);
    for (int i = 0; i < 3; i++) {
      normal[i] = eigen.vector(0)[i];
      variance[i] = Math.max(0, eigen.value(i));
    }
    mean[0] = ox + x;
    mean[1] = oy + y;
    mean[2] = oz + z;
    return true;
  }
}
