package org.seamwright.picture;

/** What is behind the piece. */
public enum Background {
  /** White, for paper. */
  WHITE(0xFFFFFF, 0xFFFFFF),
  /** A soft grey that darkens downwards, for the screen. */
  SOFT(0xFBFCFD, 0xD8DEE5);

  private final int top;
  private final int bottom;

  Background(int top, int bottom) {
    this.top = top;
    this.bottom = bottom;
  }

  /** Colour of a row, 0xRRGGBB. */
  int row(int y, int height) {
    int rgb = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int from = top >> shift & 255;
      int to = bottom >> shift & 255;
      rgb |= (from + Math.round((to - from) * (float) y / Math.max(1, height - 1))) << shift;
    }
    return rgb;
  }
}
