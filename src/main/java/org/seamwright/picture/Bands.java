package org.seamwright.picture;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Work split into numbered parts that write to places of their own: same result on any cores. */
final class Bands {
  private Bands() {}

  /** Runs parts 0 … count − 1, in any order, at the same time where there are cores. */
  static void each(int count, IntConsumer part) {
    IntStream range = IntStream.range(0, count);
    (count > 1 ? range.parallel() : range).forEach(part);
  }

  /** Runs over index ranges of a fixed size. */
  static void ranges(int count, int size, Range work) {
    each(
        (count + size - 1) / size,
        b -> work.over(b * size, (int) Math.min(count, (long) (b + 1) * size)));
  }

  /** Work over indexes from (included) to (excluded). */
  interface Range {
    /** Does it. */
    void over(int from, int to);
  }
}
