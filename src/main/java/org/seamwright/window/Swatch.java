package org.seamwright.window;

import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;

/** A small rounded patch of colour. */
final class Swatch extends Rectangle {
  private static final double ROUNDING = 6;

  Swatch(double width, double height, int rgb) {
    super(width, height, Color.rgb(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF));
    setArcWidth(ROUNDING);
    setArcHeight(ROUNDING);
  }
}
