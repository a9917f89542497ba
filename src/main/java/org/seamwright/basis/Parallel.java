package org.seamwright.basis;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/**
 * Splits loops over the machine's cores. What is split must give the same result in any number of
 * ranges; nothing here hides an order.
 */
public final class Parallel {
  /** More ranges than this stop paying where each range reads all of the data. */
  private static final int MOST_RANGES = 8;

  private Parallel() {}

  /** A loop body for the indices {@code from … to - 1}. */
  @FunctionalInterface
  public interface Range {
    /** Works through the indices {@code from … to - 1}. */
    void run(int from, int to);
  }

  /** How many ranges pay for so many items when one range should have at least so many. */
  public static int ranges(long items, long least) {
    long worthwhile = Math.max(1, items / Math.max(1, least));
    return (int)
        Math.min(worthwhile, Math.min(MOST_RANGES, Runtime.getRuntime().availableProcessors()));
  }

  /** Runs {@code task(0) … task(count - 1)} side by side. */
  public static void each(int count, IntConsumer task) {
    IntStream tasks = IntStream.range(0, count);
    (count > 1 ? tasks.parallel() : tasks).forEach(task);
  }

  /** Splits {@code 0 … items - 1} into equal ranges and runs them side by side. */
  public static void split(int items, int ranges, Range body) {
    each(ranges, i -> body.run(begin(items, ranges, i), begin(items, ranges, i + 1)));
  }

  /** Where a range begins. */
  public static int begin(int items, int ranges, int range) {
    return (int) ((long) items * range / ranges);
  }
}
