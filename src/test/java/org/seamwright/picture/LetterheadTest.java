package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.InputException;

class LetterheadTest {
  @TempDir Path folder;

  private Path image(String format, int width, int height, int type) throws Exception {
    BufferedImage image = new BufferedImage(width, height, type);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.BLUE);
    g.fillRect(width / 4, height / 4, width / 2, height / 2);
    g.dispose();
    Path file = folder.resolve("logo." + format);
    assertThat(ImageIO.write(image, format, file.toFile())).isTrue();
    return file;
  }

  @Test
  void whatIsTransparentBecomesPaper() throws Exception {
    Image logo = Letterhead.logo(image("png", 200, 100, BufferedImage.TYPE_INT_ARGB));
    assertThat(logo.width()).isEqualTo(200);
    assertThat(logo.argb()[0]).isEqualTo(0xFFFFFFFF);
    assertThat(logo.argb()[50 * 200 + 100]).isEqualTo(0xFF0000FF);
  }

  @Test
  void jpegIsReadAndALargeOneScaledDown() throws Exception {
    Image logo = Letterhead.logo(image("jpg", 1800, 600, BufferedImage.TYPE_INT_RGB));
    assertThat(logo.width()).isEqualTo(900);
    assertThat(logo.height()).isEqualTo(300);
  }

  @ParameterizedTest
  @ValueSource(strings = {"gif", "bmp"})
  void otherKindsAreRefused(String format) throws Exception {
    Path file = image(format, 20, 20, BufferedImage.TYPE_INT_RGB);
    assertThatThrownBy(() -> Letterhead.logo(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("neither PNG nor JPEG")
        .hasMessageContaining(file.getFileName().toString());
  }

  @Test
  void tooManyPixelsAreRefusedBeforeTheyAreUnpacked() throws Exception {
    Path file = image("png", 5000, 10, BufferedImage.TYPE_BYTE_BINARY);
    assertThatThrownBy(() -> Letterhead.logo(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("5000 × 10 pixels");
  }

  @Test
  void tooLargeAFileIsRefused() throws Exception {
    Path file = folder.resolve("large.png");
    Files.write(file, new byte[1_200_000]);
    assertThatThrownBy(() -> Letterhead.logo(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("1200 kB");
  }

  @Test
  void aMissingFileIsRefused() {
    assertThatThrownBy(() -> Letterhead.logo(folder.resolve("none.png")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("none.png");
  }

  @ParameterizedTest
  @ValueSource(strings = {"png", "jpg"})
  void damagedFilesAreRefusedOrReadAndNothingElse(String format) throws Exception {
    byte[] whole = Files.readAllBytes(image(format, 60, 40, BufferedImage.TYPE_INT_RGB));
    Random random = new Random(7);
    for (int i = 0; i < 100; i++) {
      byte[] damaged = Arrays.copyOf(whole, whole.length - random.nextInt(whole.length / 2));
      for (int k = 0; k < 5; k++) {
        damaged[4 + random.nextInt(damaged.length - 4)] = (byte) random.nextInt();
      }
      Path file = Files.write(folder.resolve("damaged." + format), damaged);
      try {
        assertThat(Letterhead.logo(file).width()).isPositive();
      } catch (InputException e) {
        assertThat(e).hasMessageContaining("logo");
      }
    }
  }
}
