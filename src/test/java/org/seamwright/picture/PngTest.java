package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.SplittableRandom;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class PngTest {
  @Test
  void anotherReaderSeesTheSamePixels() throws Exception {
    int w = 37;
    int h = 23;
    SplittableRandom random = new SplittableRandom(5);
    int[] argb = new int[w * h];
    for (int i = 0; i < argb.length; i++) {
      argb[i] = 0xFF000000 | (i % 3 == 0 ? random.nextInt() & 0xFFFFFF : 0x204060 + i);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Png.write(new Image(w, h, argb, new int[w * h]), out);
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(out.toByteArray()));
    assertThat(read.getRGB(0, 0, w, h, null, 0, w)).isEqualTo(argb);
  }
}
