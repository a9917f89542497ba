package org.seamwright.paper;

/**
 * How text is set.
 *
 * @param bold face
 * @param size points
 * @param rgb colour, 0xRRGGBB
 */
record Style(boolean bold, double size, int rgb) {
  static final int INK = 0x14181D;
  static final int SOFT = 0x59626D;
  static final int ACCENT = 0x8A5A00;
  static final int ALARM = 0xA62B00;
  static final int PANEL = 0xF6F3EA;
  static final int HAIRLINE = 0xC9CDD2;
  static final int GOLD = 0xC8961E;

  static final Style TITLE = new Style(true, 30, INK);
  static final Style HEADING = new Style(true, 19, INK);
  static final Style SUBHEADING = new Style(true, 13.5, INK);
  static final Style BODY = new Style(false, 11.5, INK);
  static final Style STRONG = new Style(true, 11.5, INK);
  static final Style SMALL = new Style(false, 9, SOFT);
  static final Style LABEL = new Style(false, 9.5, SOFT);
  static final Style FIGURE = new Style(true, 17, INK);
  static final Style LARGE_FIGURE = new Style(true, 24, INK);
  static final Style WARNING = new Style(true, 11.5, ALARM);

  /** Distance from one baseline to the next, points. */
  double leading() {
    return size * 1.3;
  }

  /** Height of the line above its baseline, points: capitals and accents of the face fit. */
  double rise() {
    return size * 0.95;
  }

  Style in(int colour) {
    return new Style(bold, size, colour);
  }

  Style sized(double points) {
    return new Style(bold, points, rgb);
  }
}
