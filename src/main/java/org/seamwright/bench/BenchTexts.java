package org.seamwright.bench;

import java.util.Locale;
import org.seamwright.basis.InputException;
import org.seamwright.desk.Messages;

/** Small texts of the bench. */
final class BenchTexts {
  private static final long SECONDS_PER_MINUTE = 60;
  private static final long MS_PER_SECOND = 1000;

  private BenchTexts() {}

  /** "M1: edge 93 mm, tape 110 mm, lacquer 2 ml"; empty texts are left out. */
  static String mask(int id, String edge, String tape, String lacquer) {
    String line = Messages.text("bench.mask", Integer.toString(id), edge);
    line += tape.isEmpty() ? "" : Messages.text("bench.mask.tape", tape);
    return line + (lacquer.isEmpty() ? "" : Messages.text("bench.mask.lacquer", lacquer));
  }

  /** The problem as a sentence. */
  static String sentence(InputException e) {
    String p = e.problem();
    String start = p.isEmpty() ? p : p.substring(0, 1).toUpperCase(Locale.ROOT) + p.substring(1);
    return start.endsWith(".") ? start : start + ".";
  }

  /** How far a section is. */
  static String status(BenchState.Status status) {
    return Messages.text("bench.status." + status.name().toLowerCase(Locale.ROOT));
  }

  /** A time as clocks show it, "1:07"; with hours "1:02:07". */
  static String clock(long ms) {
    long seconds = Math.max(0, ms) / MS_PER_SECOND;
    long minutes = seconds / SECONDS_PER_MINUTE;
    if (minutes < SECONDS_PER_MINUTE) {
      return String.format(Locale.ROOT, "%d:%02d", minutes, seconds % SECONDS_PER_MINUTE);
    }
    return String.format(
        Locale.ROOT,
        "%d:%02d:%02d",
        minutes / SECONDS_PER_MINUTE,
        minutes % SECONDS_PER_MINUTE,
        seconds % SECONDS_PER_MINUTE);
  }

  /** Time left, a begun second counted whole, so that 0:00 is the end. */
  static String left(long ms) {
    return clock(ms + MS_PER_SECOND - 1);
  }

  /** A figure without needless zeros. */
  static String figure(double value) {
    return new java.math.BigDecimal(value)
        .round(new java.math.MathContext(6))
        .stripTrailingZeros()
        .toPlainString();
  }
}
