package org.seamwright.picture;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes pictures as PNG: 8-bit RGB, no dates or program names inside, so the same picture gives
 * the same bytes.
 *
 * <p>Reference: ISO/IEC 15948, Portable Network Graphics.
 */
public final class Png {
  private static final byte[] SIGNATURE = {(byte) 137, 'P', 'N', 'G', 13, 10, 26, 10};
  private static final byte RGB = 2;
  private static final byte PAETH = 4;
  private static final int LEVEL = 7;

  private Png() {}

  /**
   * Writes a picture to a file, replacing what was there.
   *
   * @throws IOException if it can't be written
   */
  public static void write(Image image, Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      write(image, out);
    }
  }

  /**
   * Writes a picture to a stream and leaves it open.
   *
   * @throws IOException if it can't be written
   */
  public static void write(Image image, OutputStream out) throws IOException {
    out.write(SIGNATURE);
    ByteArrayOutputStream header = new ByteArrayOutputStream();
    DataOutputStream data = new DataOutputStream(header);
    data.writeInt(image.width());
    data.writeInt(image.height());
    data.write(new byte[] {8, RGB, 0, 0, 0});
    chunk("IHDR", header.toByteArray(), out);
    chunk("sRGB", new byte[] {0}, out);
    chunk("IDAT", compressed(image), out);
    chunk("IEND", new byte[0], out);
    out.flush();
  }

  private static byte[] compressed(Image image) throws IOException {
    Deflater deflater = new Deflater(LEVEL);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater, 1 << 16)) {
      int stride = 3 * image.width();
      byte[] above = new byte[stride];
      byte[] row = new byte[stride];
      byte[] filtered = new byte[stride + 1];
      filtered[0] = PAETH;
      for (int y = 0; y < image.height(); y++) {
        for (int x = 0; x < image.width(); x++) {
          int argb = image.argb()[y * image.width() + x];
          row[3 * x] = (byte) (argb >> 16);
          row[3 * x + 1] = (byte) (argb >> 8);
          row[3 * x + 2] = (byte) argb;
        }
        for (int i = 0; i < stride; i++) {
          int left = i >= 3 ? row[i - 3] & 255 : 0;
          int up = above[i] & 255;
          int corner = i >= 3 ? above[i - 3] & 255 : 0;
          filtered[i + 1] = (byte) (row[i] - paeth(left, up, corner));
        }
        out.write(filtered);
        byte[] swap = above;
        above = row;
        row = swap;
      }
    } finally {
      deflater.end();
    }
    return bytes.toByteArray();
  }

  private static int paeth(int left, int up, int corner) {
    int guess = left + up - corner;
    int toLeft = Math.abs(guess - left);
    int toUp = Math.abs(guess - up);
    int toCorner = Math.abs(guess - corner);
    if (toLeft <= toUp && toLeft <= toCorner) {
      return left;
    }
    return toUp <= toCorner ? up : corner;
  }

  private static void chunk(String type, byte[] content, OutputStream out) throws IOException {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(content);
    DataOutputStream data = new DataOutputStream(out);
    data.writeInt(content.length);
    data.write(name);
    data.write(content);
    data.writeInt((int) crc.getValue());
    data.flush();
  }
}
