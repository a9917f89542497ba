package org.seamwright.meshfile;

import java.util.function.IntPredicate;
import org.seamwright.basis.Parallel;

/** Splits a text into runs of whole lines, one a core, that are parsed side by side. */
final class TextRuns {
  private static final int LEAST_PER_RUN = 1 << 18;

  private TextRuns() {}

  /** As many runs as pay for a text. */
  static int[] of(byte[] bytes, int from, IntPredicate mayBegin) {
    return of(bytes, from, Parallel.ranges(bytes.length - (long) from, LEAST_PER_RUN), mayBegin);
  }

  /**
   * Where runs begin, and the end of the text as last entry.
   *
   * @param from where the text begins
   * @param runs how many are wanted; fewer where lines are long
   * @param mayBegin whether a run may begin with the line that begins at a byte
   */
  static int[] of(byte[] bytes, int from, int runs, IntPredicate mayBegin) {
    Growing.Ints begin = new Growing.Ints();
    begin.add(from);
    for (int r = 1; r < runs; r++) {
      int nominal = from + Parallel.begin(bytes.length - from, runs, r);
      int at = Math.max(nominal, begin.get(begin.size() - 1) + 1);
      while (at < bytes.length && !(beginsLine(bytes, at) && mayBegin.test(at))) {
        at++;
      }
      if (at < bytes.length) {
        begin.add(at);
      }
    }
    begin.add(bytes.length);
    return begin.toArray();
  }

  private static boolean beginsLine(byte[] bytes, int at) {
    byte before = bytes[at - 1];
    return before == '\n' || (before == '\r' && bytes[at] != '\n');
  }
}
