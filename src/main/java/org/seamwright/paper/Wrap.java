package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines: at spaces, or inside a word that is wider than a line. */
final class Wrap {
  private static final String MORE = "…";

  private Wrap() {}

  /**
   * Lines of at most a width.
   *
   * @param text settable in the face
   * @param face measures it
   * @param width in points for a size of one point
   * @param mostLines the last of so many lines ends in "…" if text is left over
   */
  static List<String> lines(String text, Face face, double width, int mostLines)
      throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.trim().split(" +")) {
      String rest = word;
      if (line.length() > 0 && face.width(line + " " + rest) <= width) {
        line.append(' ').append(rest);
        continue;
      }
      if (line.length() > 0) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (face.width(rest) > width && rest.length() > 1) {
        int fits = fitting(rest, face, width);
        lines.add(rest.substring(0, fits));
        rest = rest.substring(fits);
      }
      line.append(rest);
    }
    lines.add(line.toString());
    if (lines.size() <= mostLines) {
      return lines;
    }
    List<String> kept = new ArrayList<>(lines.subList(0, mostLines));
    String last = kept.get(mostLines - 1);
    while (!last.isEmpty() && face.width(last + MORE) > width) {
      last = last.substring(0, last.offsetByCodePoints(last.length(), -1));
    }
    kept.set(mostLines - 1, last.stripTrailing() + MORE);
    return kept;
  }

  /** How many chars of a word fit, at least one character. */
  private static int fitting(String word, Face face, double width) throws IOException {
    int fits = word.offsetByCodePoints(0, 1);
    while (fits < word.length()) {
      int next = word.offsetByCodePoints(fits, 1);
      if (face.width(word.substring(0, next)) > width) {
        break;
      }
      fits = next;
    }
    return fits;
  }
}
