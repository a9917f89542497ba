package org.seamwright.window;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.image.WritableImage;
import javax.imageio.ImageIO;

/** Pictures of the window, saved to look at. */
final class Shots {
  private Shots() {}

  /** Saves what a window shows to target/screenshots. */
  static void save(WritableImage shown, String name) throws IOException {
    int width = (int) shown.getWidth();
    int height = (int) shown.getHeight();
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.setRGB(x, y, shown.getPixelReader().getArgb(x, y));
      }
    }
    Path file = Path.of("target", "screenshots", name + ".png");
    Files.createDirectories(file.getParent());
    ImageIO.write(image, "png", file.toFile());
  }
}
