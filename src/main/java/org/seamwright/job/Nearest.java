package org.seamwright.job;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * The word that was probably meant: least number of letters added, dropped, changed or swapped
 * (optimal string alignment distance, a restricted form of F. J. Damerau, CACM 7(3), 1964).
 */
final class Nearest {
  private Nearest() {}

  /** The nearest of the known words, unless even that one differs by more than a third. */
  static Optional<String> to(String word, Collection<String> known) {
    String nearest = "";
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int distance = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (distance < least) {
        least = distance;
        nearest = candidate;
      }
    }
    int allowed = Math.max(1, Math.max(word.length(), nearest.length()) / 3);
    return least <= allowed ? Optional.of(nearest) : Optional.empty();
  }

  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
