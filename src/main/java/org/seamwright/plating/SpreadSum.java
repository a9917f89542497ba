package org.seamwright.plating;

import java.util.Arrays;

/**
 * The sum of a fixed amount and multiples of two independent figures, {@code fixed + a X + b Y}:
 * what a price is, of metal lost and of time taken.
 *
 * <p>Its distribution function is the integral of a product of polynomial pieces of degree at most
 * three, taken exactly by Gauss's rule on each piece (three points are exact to degree five;
 * Abramowitz and Stegun, 25.4.30); quantiles by bisection down to the last bit. No draws, no seed.
 */
final class SpreadSum {
  private static final double[] NODE = {-Math.sqrt(0.6), 0, Math.sqrt(0.6)};
  private static final double[] WEIGHT = {5.0 / 18, 8.0 / 18, 5.0 / 18};

  private final double fixed;
  private final double a;
  private final Spread x;
  private final double b;
  private final Spread y;

  /**
   * A sum.
   *
   * @param a not negative
   * @param b not negative
   */
  SpreadSum(double fixed, double a, Spread x, double b, Spread y) {
    if (!(a >= 0) || !(b >= 0)) {
      throw new IllegalArgumentException("Factors of a sum are not negative: " + a + ", " + b);
    }
    this.fixed = fixed;
    this.a = a;
    this.x = x;
    this.b = b;
    this.y = y;
  }

  /**
   * The value that the sum stays below with a probability.
   *
   * @param p from 0 to 1
   */
  double quantile(double p) {
    if (a == 0 || x.isPoint()) {
      return fixed + a * x.likely() + b * y.quantile(p);
    }
    if (b == 0 || y.isPoint()) {
      return fixed + a * x.quantile(p) + b * y.likely();
    }
    double low = fixed + a * x.low() + b * y.low();
    double high = fixed + a * x.high() + b * y.high();
    while (true) {
      double middle = low + (high - low) / 2;
      if (middle <= low || middle >= high) {
        return middle;
      }
      if (atMost(middle) < p) {
        low = middle;
      } else {
        high = middle;
      }
    }
  }

  /** Probability that the sum is at most {@code s}. */
  private double atMost(double s) {
    double rest = s - fixed;
    double[] corner = {
      x.low(),
      x.likely(),
      x.high(),
      clamp((rest - b * y.low()) / a),
      clamp((rest - b * y.likely()) / a),
      clamp((rest - b * y.high()) / a)
    };
    Arrays.sort(corner);
    double sum = 0;
    for (int i = 1; i < corner.length; i++) {
      double width = corner[i] - corner[i - 1];
      double centre = (corner[i] + corner[i - 1]) / 2;
      for (int k = 0; k < NODE.length && width > 0; k++) {
        double at = centre + NODE[k] * width / 2;
        sum += WEIGHT[k] * width * x.density(at) * y.atMost((rest - a * at) / b);
      }
    }
    return sum;
  }

  private double clamp(double at) {
    return Math.max(x.low(), Math.min(x.high(), at));
  }
}
