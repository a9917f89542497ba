package org.seamwright.picture;

/**
 * Seven colours that people with any of the common kinds of colour blindness can tell apart, each
 * lightened so that black lines and numbers read on it, and each with a pattern so that a print
 * without colour reads too.
 *
 * <p>Source: M. Okabe and K. Ito, "Color Universal Design: How to make figures and presentations
 * that are friendly to colorblind people", 2008; their black is left for lines.
 */
public final class Palette {
  /** Number of classes of colour and pattern. */
  public static final int SIZE = 7;

  /** Share of white mixed in. Choice of this program. */
  private static final double LIGHTER = 0.38;

  /** Orange, sky blue, bluish green, yellow, blue, vermillion, reddish purple; 0xRRGGBB. */
  private static final int[] PUBLISHED = {
    0xE69F00, 0x56B4E9, 0x009E73, 0xF0E442, 0x0072B2, 0xD55E00, 0xCC79A7
  };

  private Palette() {}

  /** The colour as published, 0xRRGGBB. */
  public static int published(int tone) {
    return PUBLISHED[tone];
  }

  /** The lightened colour, 0xRRGGBB. */
  public static int light(int tone) {
    int rgb = PUBLISHED[tone];
    int light = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int part = rgb >> shift & 255;
      light |= (int) Math.round(part + (255 - part) * LIGHTER) << shift;
    }
    return light;
  }

  /**
   * Whether a place carries ink of the pattern of a class.
   *
   * @param tone class of colour and pattern, 0 to 6
   * @param x place in the picture, in units of the pattern's pitch
   * @param y likewise, down
   */
  static boolean inked(int tone, double x, double y) {
    return switch (tone) {
      case 0 -> stripe((x + y) * DIAGONAL, 1, THIN);
      case 1 -> dot(x, y);
      case 2 -> stripe(y, 1, THIN);
      case 3 -> cross(x, y);
      case 4 -> stripe((x - y) * DIAGONAL, 1, THIN);
      case 5 ->
          stripe((x + y) * DIAGONAL, CROSSED, THIN) || stripe((x - y) * DIAGONAL, CROSSED, THIN);
      case 6 -> stripe(x, 1, THIN);
      default -> throw new IllegalArgumentException("No class " + tone);
    };
  }

  private static final double DIAGONAL = Math.sqrt(0.5);

  /** Width of a line, in pitches. */
  private static final double THIN = 0.16;

  /** Pitch of crossed lines, in pitches: wider, so that all patterns look about as dark. */
  private static final double CROSSED = 1.7;

  private static boolean stripe(double t, double pitch, double width) {
    return fraction(t / pitch) * pitch < width;
  }

  private static boolean dot(double x, double y) {
    double row = Math.floor(y);
    double dx = fraction(x + (((long) row & 1) == 0 ? 0 : 0.5)) - 0.5;
    double dy = y - row - 0.5;
    return dx * dx + dy * dy < 0.055;
  }

  private static boolean cross(double x, double y) {
    double row = Math.floor(y / 1.4);
    double dx = Math.abs(fraction(x / 1.4 + (((long) row & 1) == 0 ? 0 : 0.5)) - 0.5) * 1.4;
    double dy = Math.abs(y / 1.4 - row - 0.5) * 1.4;
    return (dx < THIN / 2 && dy < 0.34) || (dy < THIN / 2 && dx < 0.34);
  }

  private static double fraction(double t) {
    return t - Math.floor(t);
  }
}
