package org.seamwright.picture;

import java.awt.image.BufferedImage;

/**
 * A picture and what it shows.
 *
 * @param width pixels
 * @param height pixels
 * @param argb colours row by row, 0xAARRGGBB, opaque
 * @param region region number seen in each pixel, {@link #NOTHING} for background
 */
public record Image(int width, int height, int[] argb, int[] region) {
  /** Region number of the background. */
  public static final int NOTHING = -1;

  /** Checks that the arrays fit. */
  public Image {
    if (argb.length != width * height || region.length != width * height) {
      throw new IllegalArgumentException("Arrays of an image don't fit its size");
    }
  }

  /** A copy for Java's own drawing and for papers. */
  public BufferedImage toBufferedImage() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, width, height, argb, 0, width);
    return image;
  }
}
