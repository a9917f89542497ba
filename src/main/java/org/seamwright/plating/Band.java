package org.seamwright.plating;

/**
 * What a figure is likely to be: one time in ten below {@code p10}, one time in ten above {@code
 * p90}.
 *
 * @param p10 10th percentile
 * @param p90 90th percentile
 */
public record Band(double p10, double p90) {
  private static final double LOW = 0.1;
  private static final double HIGH = 0.9;

  /** Of {@code fixed + factor × spread}; the factor is not negative. */
  static Band of(double fixed, double factor, Spread spread) {
    return new Band(fixed + factor * spread.quantile(LOW), fixed + factor * spread.quantile(HIGH));
  }

  /** Of a sum. */
  static Band of(SpreadSum sum) {
    return new Band(sum.quantile(LOW), sum.quantile(HIGH));
  }

  /** Whether it is wider than nothing. */
  public boolean isWide() {
    return p90 > p10;
  }
}
