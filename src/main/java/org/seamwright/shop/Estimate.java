package org.seamwright.shop;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.seamwright.plating.Deposit;

/**
 * A figure estimated from runs: the median and the 10th and 90th percentile of single runs.
 *
 * <p>Percentiles are by order statistics at p (n + 1), between neighbours in proportion, and the
 * first or last value beyond them (NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.2). They
 * tell how single runs spread, not how well the median is known; below nine runs P10 and P90 are
 * the least and the largest.
 *
 * @param runs how many runs it rests on
 * @param median P50
 * @param low P10
 * @param high P90
 */
public record Estimate(int runs, double median, double low, double high) {
  private static final double SECONDS_PER_MINUTE = 60;
  private static final double ML_PER_L = 1000;
  private static final double CM2_UM_PER_CM3 = 1e4;

  /**
   * Share added for loss: usable metal of the solution used over the gain in weight, less one. Runs
   * without these figures, or without a gain, are left out.
   */
  public static Optional<Estimate> lossShare(List<Run> runs) {
    return over(runs, r -> r.solutionMl() / ML_PER_L * r.gPerL() * r.usableShare() / r.gainG() - 1);
  }

  /**
   * Plating rate, seconds per cm² and µm: the area drops out, since area × thickness is gain over
   * density.
   */
  public static Optional<Estimate> secondsPerCm2PerUm(List<Run> runs, Deposit deposit) {
    return over(
        runs,
        r ->
            r.minutes()
                * SECONDS_PER_MINUTE
                * deposit.densityGCm3()
                / (r.gainG() * CM2_UM_PER_CM3));
  }

  private static Optional<Estimate> over(List<Run> runs, ToDoubleFunction<Run> figure) {
    double[] values =
        runs.stream()
            .filter(r -> r.gainG() > 0)
            .mapToDouble(figure)
            .filter(Double::isFinite)
            .toArray();
    return values.length == 0 ? Optional.empty() : Optional.of(of(values));
  }

  /** Of single values, at least one. */
  static Estimate of(double... values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return new Estimate(
        sorted.length, percentile(sorted, 0.5), percentile(sorted, 0.1), percentile(sorted, 0.9));
  }

  /** Percentile of ascending values; {@code p} from 0 to 1. */
  static double percentile(double[] sorted, double p) {
    double rank = p * (sorted.length + 1);
    int below = (int) rank;
    if (below < 1) {
      return sorted[0];
    }
    if (below >= sorted.length) {
      return sorted[sorted.length - 1];
    }
    return sorted[below - 1] + (rank - below) * (sorted[below] - sorted[below - 1]);
  }
}
