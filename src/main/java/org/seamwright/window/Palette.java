package org.seamwright.window;

import java.util.List;
import java.util.OptionalInt;
import org.seamwright.section.Seam;

/**
 * The colour of each {@link FaceClasses class of faces}, as 0xRRGGBB.
 *
 * <p>Sections that share a seam get different colours, given out greedily in working order. The
 * colours are those of M. Okabe and K. Ito, "Color Universal Design", 2008 (values from memory),
 * without black, which people with any common colour vision can tell apart; lightened, so that
 * light and shade show.
 */
public final class Palette {
  private static final int[] OKABE_ITO = {
    0x56B4E9, 0xE69F00, 0x009E73, 0xCC79A7, 0xF0E442, 0x0072B2, 0xD55E00
  };
  private static final int WHITE = 0xFFFFFF;
  private static final int DARK = 0x26313C;
  private static final int BARE_METAL = 0x9CA6B1;
  private static final int OUT_OF_SCOPE = 0xDCD7CF;
  private static final int GOLD = 0xDDA93F;
  private static final int GOLD_LIT = 0xFBC55A;
  private static final int FADED = 0xE6E8EB;

  private final int[] hue;

  private Palette(int[] hue) {
    this.hue = hue;
  }

  /** How plated faces are coloured. */
  public enum Look {
    /** Each section in its own colour, lap bands darker. */
    SECTIONS,
    /** As the finished piece. */
    GOLD
  }

  /**
   * Gives out colours.
   *
   * @param sections number of sections
   * @param seams which of them meet
   */
  public static Palette of(int sections, List<Seam> seams) {
    int[] hue = new int[sections + 1];
    int[] used = new int[OKABE_ITO.length];
    for (int id = 1; id <= sections; id++) {
      boolean[] taken = new boolean[OKABE_ITO.length];
      for (Seam seam : seams) {
        if (seam.later() == id && seam.earlier() < id) {
          taken[hue[seam.earlier()]] = true;
        } else if (seam.earlier() == id && seam.later() < id) {
          taken[hue[seam.later()]] = true;
        }
      }
      hue[id] = rarestFree(taken, used);
      used[hue[id]]++;
    }
    return new Palette(hue);
  }

  private static int rarestFree(boolean[] taken, int[] used) {
    int best = -1;
    for (int c = 0; c < used.length; c++) {
      if (!taken[c] && (best < 0 || used[c] < used[best])) {
        best = c;
      }
    }
    if (best >= 0) {
      return best;
    }
    // All colours meet here: the rarest over the piece repeats least.
    int rarest = 0;
    for (int c = 1; c < used.length; c++) {
      rarest = used[c] < used[rarest] ? c : rarest;
    }
    return rarest;
  }

  /** The colour that stands for a section in lists. */
  public int swatch(int section) {
    return mix(OKABE_ITO[hue[section]], WHITE, 0.25);
  }

  /** The colour that stands for bare metal. */
  public int bare() {
    return BARE_METAL;
  }

  /** The colour that stands for what is not part of the work. */
  public int outOfScope() {
    return OUT_OF_SCOPE;
  }

  /** The colour of finished plating. */
  public int gold() {
    return GOLD;
  }

  /**
   * Colours by class.
   *
   * @param look how plated faces are coloured
   * @param hovered section under the pointer, if any: it is lit
   * @param selected section chosen, if any: it keeps its colour and the others fade
   */
  public int[] colours(Look look, OptionalInt hovered, OptionalInt selected) {
    int[] colours = new int[FaceClasses.count(hue.length - 1)];
    colours[FaceClasses.OUT_OF_SCOPE] = OUT_OF_SCOPE;
    colours[FaceClasses.BARE] = BARE_METAL;
    for (int id = 1; id < hue.length; id++) {
      boolean lit = is(hovered, id) || is(selected, id);
      boolean faded = selected.isPresent() && !lit;
      int base = look == Look.GOLD ? goldOf(lit) : sectionOf(id, lit);
      int plain = faded ? mix(base, FADED, 0.62) : base;
      colours[FaceClasses.plain(id)] = plain;
      colours[FaceClasses.lap(id)] =
          look == Look.GOLD ? plain : mix(plain, DARK, faded ? 0.12 : 0.3);
    }
    return colours;
  }

  private static boolean is(OptionalInt section, int id) {
    return section.isPresent() && section.getAsInt() == id;
  }

  private static int goldOf(boolean lit) {
    return lit ? GOLD_LIT : GOLD;
  }

  private int sectionOf(int id, boolean lit) {
    return lit ? mix(OKABE_ITO[hue[id]], WHITE, 0.08) : mix(OKABE_ITO[hue[id]], WHITE, 0.42);
  }

  /** A share of a second colour put into a first, channel by channel. */
  static int mix(int first, int second, double share) {
    int mixed = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      int a = first >> shift & 0xFF;
      int b = second >> shift & 0xFF;
      mixed |= (int) Math.round(a + (b - a) * share) << shift;
    }
    return mixed;
  }
}
