package org.seamwright.shop;

import java.util.List;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.plating.Deposit;

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
   * The job with the medians in place of its own figures; a figure that no run tells stays. A
   * median loss below 0, which only errors of weighing give, counts as 0.
   */
  public Job applyTo(Job job) {
    Job.PlatingRules old = job.plating();
    Job.PlatingRules rules =
        new Job.PlatingRules(
            old.recipe(),
            old.deposit(),
            old.flashUm(),
            old.thicknessUm(),
            lossShare.map(e -> Math.max(0, e.median())).orElse(old.lossShare()),
            old.solutionGPerL(),
            old.usableShare(),
            secondsPerCm2PerUm.map(Estimate::median).orElse(old.secondsPerCm2PerUm()),
            old.efficiency());
    return new Job(
        job.piece(),
        job.note(),
        job.mesh(),
        job.cleaning(),
        job.ground(),
        job.marks(),
        job.sections(),
        rules,
        job.masking(),
        job.display());
  }
}
