package org.seamwright.shop;

import java.util.List;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.plating.Deposit;
import org.seamwright.plating.Spread;

/**
 * What the runs of the book suggest for the next job: offered, never applied by itself.
 *
 * @param lossShare share added for loss, if any run tells it
 * @param secondsPerCm2PerUm plating rate, if any run tells it
 */
public record ShopDefaults(Optional<Estimate> lossShare, Optional<Estimate> secondsPerCm2PerUm) {
  /** The newest runs count: more would carry habits and solutions of long ago. */
  public static final int NEWEST = 1000;

  /**
   * From the newest runs of a deposit.
   *
   * @param operator whose runs; empty for everybody's
   */
  public static ShopDefaults of(ShopBook book, Deposit deposit, String operator)
      throws ShopException {
    List<Run> runs = book.runs("", deposit.id(), operator, NEWEST);
    return new ShopDefaults(Estimate.lossShare(runs), Estimate.secondsPerCm2PerUm(runs, deposit));
  }

  /**
   * The job with the medians in place of its own figures; a figure that no run tells stays. A loss
   * below 0, which only errors of weighing give, counts as 0.
   *
   * @param spread whether P10 and P90 become the low and high values; the likely one stays the
   *     median
   */
  public Job applyTo(Job job, boolean spread) {
    Job.PlatingRules old = job.plating();
    return job.withPlating(
        old.with(
            lossShare.map(e -> spread(e, spread)).orElse(old.loss()),
            secondsPerCm2PerUm.map(e -> spread(e, spread)).orElse(old.pace())));
  }

  private static Spread spread(Estimate e, boolean wide) {
    double likely = Math.max(0, e.median());
    return wide
        ? new Spread(Math.max(0, e.low()), likely, Math.max(0, e.high()))
        : Spread.point(likely);
  }
}
