package org.seamwright.window;

import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.paint.ImagePattern;
import javafx.scene.shape.Rectangle;

/** A small rounded patch of colour, hatched like the surface if that is wanted. */
final class Swatch extends Rectangle {
  private static final double ROUNDING = 6;
  private static final int INK = 0xFF2B333B;

  /** Pixels per pixel of the window, for screens of high resolution. */
  private static final int FINE = 3;

  private static final int PITCH = 5;

  private final int rgb;

  Swatch(double width, double height, int rgb) {
    super(width, height, Color.rgb(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF));
    this.rgb = rgb;
    setArcWidth(ROUNDING);
    setArcHeight(ROUNDING);
  }

  /** Hatches it: 0 not at all, 1 one way, 2 crosswise, 3 closely. */
  void hatch(int pattern) {
    if (pattern == 0) {
      return;
    }
    int width = (int) (getWidth() * FINE);
    int height = (int) (getHeight() * FINE);
    int pitch = (pattern == 3 ? PITCH - 2 : PITCH) * FINE;
    WritableImage image = new WritableImage(width, height);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        boolean ink =
            (x + y) % pitch < FINE || (pattern == 2 && Math.floorMod(x - y, pitch) < FINE);
        image.getPixelWriter().setArgb(x, y, ink ? INK : 0xFF000000 | rgb);
      }
    }
    setFill(new ImagePattern(image));
  }
}
