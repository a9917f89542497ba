package org.seamwright.flatten;

import java.util.Arrays;

/**
 * How far a layout is from keeping all lengths: the mean over the surface of (e / unit)^power with
 * e = σ₁² + σ₂² + 1/σ₁² + 1/σ₂² − 4 of each face, which is 0 where lengths are kept, about 4 times
 * the squared strain near there, and endless where a face folds. A power above 1 weighs the worst
 * places up.
 *
 * <p>Source of e: J. Schreiner et al., "Inter-surface mapping" (2004); J. Smith and S. Schaefer,
 * "Bijective parameterization with free boundaries" (2015), which also gives the longest step that
 * folds nothing.
 */
final class Isometry {
  private final RestShapes rest;
  private final double total;
  private final double power;
  private final double unit;

  Isometry(RestShapes rest, double power, double unit) {
    this.rest = rest;
    this.power = power;
    this.unit = unit;
    double sum = 0;
    for (double a : rest.area()) {
      sum += a;
    }
    this.total = sum;
  }

  /** The energy; infinite if a face is folded. */
  double energy(double[] uv) {
    double[] j = new double[4];
    double sum = 0;
    for (int f = 0; f < rest.faceCount(); f++) {
      rest.derivative(f, uv, j);
      double e = ofFace(j);
      if (e == Double.POSITIVE_INFINITY) {
        return e;
      }
      sum += rest.area()[f] * raised(e / unit);
    }
    return sum / total;
  }

  /** e of one face from its derivative. */
  static double ofFace(double[] j) {
    double det = j[0] * j[3] - j[1] * j[2];
    if (!(det > 0)) {
      return Double.POSITIVE_INFINITY;
    }
    double square = j[0] * j[0] + j[1] * j[1] + j[2] * j[2] + j[3] * j[3];
    return Math.max(0, square * (1 + 1 / (det * det)) - 4);
  }

  private double raised(double share) {
    return power == 1 ? share : Math.pow(share, power);
  }

  /** What a face weighs for small changes of its shape, beside its area; 1 for power 1. */
  double weight(int f, double[] uv, double[] j) {
    rest.derivative(f, uv, j);
    return power == 1 ? 1 / unit : power * Math.pow(ofFace(j) / unit, power - 1) / unit;
  }

  /** Writes the gradient by coordinate. */
  void gradient(double[] uv, double[] into) {
    Arrays.fill(into, 0);
    double[] j = new double[4];
    int[] corner = rest.corner();
    double[] inv = rest.inverse();
    for (int f = 0; f < rest.faceCount(); f++) {
      double scale = rest.area()[f] / total * weight(f, uv, j);
      double det = j[0] * j[3] - j[1] * j[2];
      double square = j[0] * j[0] + j[1] * j[1] + j[2] * j[2] + j[3] * j[3];
      double s = 2 * scale * (1 + 1 / (det * det));
      double c = -2 * scale * square / (det * det * det);
      double g0 = s * j[0] + c * j[3];
      double g1 = s * j[1] - c * j[2];
      double g2 = s * j[2] - c * j[1];
      double g3 = s * j[3] + c * j[0];
      double ux = g0 * inv[4 * f] + g1 * inv[4 * f + 1];
      double vx = g0 * inv[4 * f + 2] + g1 * inv[4 * f + 3];
      double uy = g2 * inv[4 * f] + g3 * inv[4 * f + 1];
      double vy = g2 * inv[4 * f + 2] + g3 * inv[4 * f + 3];
      int p = 2 * corner[3 * f];
      int q = 2 * corner[3 * f + 1];
      int r = 2 * corner[3 * f + 2];
      into[q] += ux;
      into[q + 1] += uy;
      into[r] += vx;
      into[r + 1] += vy;
      into[p] -= ux + vx;
      into[p + 1] -= uy + vy;
    }
  }

  /** How far one may go along a direction before the first face folds. */
  double longestStep(double[] uv, double[] step) {
    double longest = Double.POSITIVE_INFINITY;
    int[] corner = rest.corner();
    for (int f = 0; f < rest.faceCount(); f++) {
      int p = 2 * corner[3 * f];
      int q = 2 * corner[3 * f + 1];
      int r = 2 * corner[3 * f + 2];
      double ux = uv[q] - uv[p];
      double uy = uv[q + 1] - uv[p + 1];
      double vx = uv[r] - uv[p];
      double vy = uv[r + 1] - uv[p + 1];
      double dux = step[q] - step[p];
      double duy = step[q + 1] - step[p + 1];
      double dvx = step[r] - step[p];
      double dvy = step[r + 1] - step[p + 1];
      double a = dux * dvy - duy * dvx;
      double b = ux * dvy - uy * dvx + dux * vy - duy * vx;
      double c = ux * vy - uy * vx;
      longest = Math.min(longest, firstRoot(a, b, c));
    }
    return longest;
  }

  /** Least positive root of a t² + b t + c for c above 0. */
  private static double firstRoot(double a, double b, double c) {
    double inside = b * b - 4 * a * c;
    if (inside < 0) {
      return Double.POSITIVE_INFINITY;
    }
    // With c > 0 this form takes the root that is met first, without cancellation.
    double divisor = -b + Math.sqrt(inside);
    return divisor > 0 ? 2 * c / divisor : Double.POSITIVE_INFINITY;
  }
}
