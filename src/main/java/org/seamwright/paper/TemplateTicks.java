package org.seamwright.paper;

/** How match marks are drawn, alike in every kind of file. */
final class TemplateTicks {
  /** A tick reaches so far to both sides of the seam, mm. */
  static final double HALF_MM = 1.5;

  /** Its number stands so far inside the film, mm. */
  static final double NUMBER_MM = 3.5;

  private TemplateTicks() {}
}
