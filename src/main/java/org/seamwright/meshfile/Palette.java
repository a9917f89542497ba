package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Count;
import org.seamwright.basis.Notice;

/**
 * The distinct colours of a file's points, as long as they are few: then they part the faces as
 * groups do, and become labels such as {@code #C0C0C0}. Many colours are a painting or a scan and
 * name nothing.
 */
final class Palette {
  /** More colours than this name nothing. */
  static final int MOST = 16;

  /** Number of a point without a colour. */
  static final int NONE = 0;

  private static final int CHANNEL_BITS = 16;
  private static final int FULL = 255;

  /** Colours in the order in which they came: channels in 255ths, sixteen bits each. */
  private final List<Long> colours = new ArrayList<>();

  private long coloured;
  private boolean many;

  /**
   * Number of a colour, from 1; {@link #NONE} once there are too many.
   *
   * @param red from 0 to 1; up to 255 in files that count so. Likewise the others
   */
  int number(double red, double green, double blue) {
    coloured++;
    return numberOf(
        (channel(red) << (2 * CHANNEL_BITS)) | (channel(green) << CHANNEL_BITS) | channel(blue));
  }

  private static long channel(double value) {
    return Math.round(FULL * Math.max(0, Math.min(FULL, value)));
  }

  private int numberOf(long colour) {
    if (many) {
      return NONE;
    }
    int at = colours.indexOf(colour);
    if (at < 0) {
      many = colours.size() == MOST;
      if (many) {
        return NONE;
      }
      colours.add(colour);
      return colours.size();
    }
    return at + 1;
  }

  /** Takes over the colours of another palette; gives the number here for each number there. */
  int[] absorb(Palette other) {
    int[] number = new int[other.colours.size() + 1];
    for (int i = 0; i < other.colours.size(); i++) {
      number[i + 1] = numberOf(other.colours.get(i));
    }
    coloured += other.coloured;
    many |= other.many;
    return number;
  }

  /** Whether there are colours, and few enough to name faces. */
  boolean names() {
    return !many && !colours.isEmpty();
  }

  /** Colour of a face by those of its corners: the one of two of them at least. */
  static int ofFace(int a, int b, int c) {
    return a == b || a == c ? a : b == c ? b : NONE;
  }

  /** Name of a colour as web pages write it; empty for none. */
  String name(int number) {
    if (number == NONE) {
      return "";
    }
    int scale = colours.stream().anyMatch(Palette::countsTo255) ? FULL : 1;
    long colour = colours.get(number - 1);
    return String.format(
        Locale.ROOT,
        "#%02X%02X%02X",
        channelOf(colour, 2) / scale,
        channelOf(colour, 1) / scale,
        channelOf(colour, 0) / scale);
  }

  private static long channelOf(long colour, int place) {
    return (colour >> (place * CHANNEL_BITS)) & ((1L << CHANNEL_BITS) - 1);
  }

  private static boolean countsTo255(long colour) {
    return channelOf(colour, 0) > FULL
        || channelOf(colour, 1) > FULL
        || channelOf(colour, 2) > FULL;
  }

  /** All names by number, the empty one first: labels of faces. */
  List<String> allNames() {
    List<String> all = new ArrayList<>();
    for (int i = 0; i <= colours.size(); i++) {
      all.add(name(i));
    }
    return all;
  }

  /** What there is to tell of coloured vertices or faces: nothing if there are none. */
  List<Notice> notices(String one, String several) {
    if (coloured == 0) {
      return List.of();
    }
    if (!names()) {
      return List.of(
          new Notice(
              "colours-ignored",
              coloured,
              "Colours of "
                  + Count.of(coloured, one, several)
                  + " were not used: there are more than "
                  + MOST
                  + " different ones, too many to name parts of the piece by."));
    }
    return List.of(
        new Notice(
            "colours-named",
            coloured,
            "The file colours "
                + Count.of(coloured, one, several)
                + " in "
                + Count.of(colours.size(), "colour")
                + " ("
                + String.join(", ", allNames().subList(1, colours.size() + 1))
                + "). The faces of each can be marked by the mark named, with the colour as label."));
  }
}
