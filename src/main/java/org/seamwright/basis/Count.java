package org.seamwright.basis;

import java.util.Locale;

/** Counts with their nouns, as messages say them: "1 face", "12,000 faces", "2 vertices". */
public final class Count {
  private Count() {}

  /** A count with a noun whose plural takes an s. */
  public static String of(long count, String noun) {
    return of(count, noun, noun + "s");
  }

  /** A count with a noun, or any other words, for one and for several. */
  public static String of(long count, String one, String several) {
    return String.format(Locale.ROOT, "%,d %s", count, count == 1 ? one : several);
  }
}
