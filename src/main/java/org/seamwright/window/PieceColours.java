package org.seamwright.window;

import java.util.Arrays;
import java.util.OptionalInt;
import org.seamwright.desk.SectionHands;
import org.seamwright.picture.Palette;
import org.seamwright.picture.Tones;
import org.seamwright.section.SectionPlan;

/**
 * The colour of each {@link FaceClasses class of faces}, as 0xRRGGBB. Sections have the colours
 * that they have in the pictures on the papers.
 */
public final class PieceColours {
  private static final int DARK = 0x26313C;
  private static final int BARE_METAL = 0x9CA6B1;
  private static final int OUT_OF_SCOPE = 0xDCD7CF;
  private static final int GOLD = 0xDDA93F;
  private static final int GOLD_LIT = 0xFBC55A;
  private static final int FADED = 0xE6E8EB;

  /**
   * Activated once, twice, more often: darker with each, so that greys tell them apart too. Three
   * steps of the sequential scheme "YlOrBr" of C. Brewer, M. Harrower, "ColorBrewer.org" (2003).
   */
  private static final int[] AGAIN = {0xFFF7BC, 0xFE9929, 0x8C2D04};

  /** Colours set aside for parts that a draft splits off. */
  private static final int SPARE = SectionHands.MOST_PARTS;

  /** Class of colour per section id. */
  private final int[] tone;

  private PieceColours(int[] tone) {
    this.tone = tone;
  }

  /** How plated faces are coloured. */
  public enum Look {
    /** Each section in its own colour, lap bands darker. */
    SECTIONS,
    /** As the finished piece. */
    GOLD,
    /** By how often a place is activated. */
    AGAIN
  }

  /** The colours of a plan's sections. */
  public static PieceColours of(SectionPlan plan) {
    int sections = plan.sections().size();
    int[] tone = Arrays.copyOf(Tones.of(plan), sections + 1 + SPARE);
    for (int i = 1; i <= SPARE; i++) {
      tone[sections + i] = (sections + 2 * i) % Palette.SIZE;
    }
    return new PieceColours(tone);
  }

  /** The colour that stands for a section in lists. */
  public int swatch(int section) {
    return Palette.light(tone[section]);
  }

  /** The colour that stands for bare metal. */
  public int bare() {
    return BARE_METAL;
  }

  /** The colour that stands for what is not part of the work. */
  public int outOfScope() {
    return OUT_OF_SCOPE;
  }

  /** The colour of what is activated so many times, from 1; 3 stands for more. */
  public static int again(int times) {
    return AGAIN[times - 1];
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
    int[] colours = new int[FaceClasses.count(tone.length - 1)];
    colours[FaceClasses.OUT_OF_SCOPE] = OUT_OF_SCOPE;
    colours[FaceClasses.BARE] = BARE_METAL;
    for (int id = 1; id < tone.length; id++) {
      boolean lit = is(hovered, id) || is(selected, id);
      boolean faded = selected.isPresent() && !lit;
      if (look == Look.AGAIN) {
        for (int times = 1; times <= AGAIN.length; times++) {
          int heat = faded ? mix(AGAIN[times - 1], FADED, 0.62) : AGAIN[times - 1];
          int shown = lit ? mix(heat, 0xFFFFFF, 0.35) : heat;
          if (times == 1) {
            colours[FaceClasses.plain(id)] = shown;
          }
          colours[FaceClasses.plain(id) + times] = shown;
        }
        continue;
      }
      int base = look == Look.GOLD ? goldOf(lit) : sectionOf(id, lit);
      int plain = faded ? mix(base, FADED, 0.62) : base;
      colours[FaceClasses.plain(id)] = plain;
      int lap = look == Look.GOLD ? plain : mix(plain, DARK, faded ? 0.12 : 0.3);
      colours[FaceClasses.lap(id)] = lap;
      colours[FaceClasses.twice(id)] = lap;
      colours[FaceClasses.more(id)] = lap;
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
    return lit ? Palette.published(tone[id]) : Palette.light(tone[id]);
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
