package org.seamwright.plating;

/**
 * A figure that is not known to a point: its least, likely and largest value.
 *
 * <p>Between them it is taken to be triangularly distributed, the usual choice where only these
 * three are known (JCGM 101:2008 has the general case of a known range; quantiles by inverting the
 * piecewise quadratic distribution function, any handbook of distributions). A spread whose three
 * values agree is a point.
 *
 * @param low least value
 * @param likely most likely value
 * @param high largest value
 */
public record Spread(double low, double likely, double high) {
  /** Checks the order. */
  public Spread {
    if (!(low <= likely && likely <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException(
          "A spread runs from low over likely to high: " + low + ", " + likely + ", " + high);
    }
  }

  /** A figure known to a point. */
  public static Spread point(double value) {
    return new Spread(value, value, value);
  }

  /** Whether the three values agree. */
  public boolean isPoint() {
    return low == high;
  }

  /**
   * The value that the figure stays below with a probability.
   *
   * @param p from 0 to 1
   */
  public double quantile(double p) {
    double width = high - low;
    if (width == 0) {
      return low;
    }
    double rising = p * width * (likely - low);
    double falling = (1 - p) * width * (high - likely);
    return p * width <= likely - low ? low + Math.sqrt(rising) : high - Math.sqrt(falling);
  }

  /** Standard deviation of the triangular distribution. */
  public double standardDeviation() {
    double a = likely - low;
    double b = high - likely;
    return Math.sqrt((a * a + b * b + a * b) / 18);
  }

  /** Probability that the figure is at most {@code x}. */
  double atMost(double x) {
    if (x >= high) {
      return 1;
    }
    if (x <= low) {
      return x < low || !isPoint() ? 0 : 1;
    }
    double width = high - low;
    return x <= likely
        ? (x - low) * (x - low) / (width * (likely - low))
        : 1 - (high - x) * (high - x) / (width * (high - likely));
  }

  /** Density at {@code x}, between low and high; of no use for a point. */
  double density(double x) {
    double width = high - low;
    if (x < low || x > high) {
      return 0;
    }
    return x <= likely && likely > low
        ? 2 * (x - low) / (width * (likely - low))
        : 2 * (high - x) / (width * (high - likely));
  }
}
