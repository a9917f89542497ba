package org.seamwright.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.seamwright.basis.InputException;
import org.seamwright.basis.IoReason;

/**
 * Who makes the piece, for the head of papers and pages.
 *
 * @param name of the shop; empty if it isn't to be shown
 * @param address lines below the name
 * @param logo on white
 */
public record Letterhead(String name, List<String> address, Optional<Image> logo) {
  /** Nothing to show. */
  public static final Letterhead NONE = new Letterhead("", List.of(), Optional.empty());

  /** Largest logo file, bytes: a logo is no photograph, and papers are sent by mail. */
  public static final long MOST_BYTES = 1_000_000;

  /** Largest side of a logo, pixels, so that a small file can't ask for much memory. */
  public static final int MOST_PIXELS = 4000;

  /** Longer sides are scaled down to this: 5 cm at 300 dots per inch have 590. */
  private static final int SHOWN_PIXELS = 900;

  /** Copies the list. */
  public Letterhead {
    address = List.copyOf(address);
  }

  /** Whether there is nothing to show. */
  public boolean isEmpty() {
    return name.isEmpty() && address.isEmpty() && logo.isEmpty();
  }

  /**
   * Reads a logo.
   *
   * @param file PNG or JPEG, at most {@link #MOST_BYTES} and {@link #MOST_PIXELS} a side
   * @throws InputException if it is anything else or can't be read
   */
  public static Image logo(Path file) throws InputException {
    byte[] bytes;
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw refused(
            file,
            "The logo has " + Files.size(file) / 1000 + " kB, and may have " + MOST_BYTES / 1000,
            "Save it smaller.");
      }
      bytes = Files.readAllBytes(file);
    } catch (IOException e) {
      throw new InputException(
          file.toString(),
          "",
          "The logo cannot be read (" + IoReason.of(e) + ")",
          "Check the path, or take the logo out with: shop set shopLogo \"\"",
          e);
    }
    return onWhite(decoded(file, bytes));
  }

  private static BufferedImage decoded(Path file, byte[] bytes) throws InputException {
    boolean png = bytes.length > 4 && bytes[0] == (byte) 0x89 && bytes[1] == 'P';
    boolean jpeg = bytes.length > 4 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xD8;
    if (!png && !jpeg) {
      throw refused(file, "The logo is neither PNG nor JPEG", "Save it as PNG or JPEG.");
    }
    ImageReader reader = ImageIO.getImageReadersByFormatName(png ? "png" : "jpeg").next();
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      reader.setInput(in, true, true);
      if (Math.max(reader.getWidth(0), reader.getHeight(0)) > MOST_PIXELS) {
        throw refused(
            file,
            "The logo has "
                + reader.getWidth(0)
                + " × "
                + reader.getHeight(0)
                + " pixels, and may have "
                + MOST_PIXELS
                + " a side",
            "Save it smaller.");
      }
      return reader.read(0);
    } catch (IOException | RuntimeException e) {
      // Readers of damaged files throw either.
      throw new InputException(
          file.toString(), "", "The logo is damaged", "Save it anew as PNG or JPEG.", e);
    } finally {
      reader.dispose();
    }
  }

  private static InputException refused(Path file, String problem, String remedy) {
    return new InputException(file.toString(), "", problem, remedy);
  }

  private static Image onWhite(BufferedImage source) {
    double scale =
        Math.min(1, SHOWN_PIXELS / (double) Math.max(source.getWidth(), source.getHeight()));
    int width = (int) Math.max(1, Math.round(source.getWidth() * scale));
    int height = (int) Math.max(1, Math.round(source.getHeight() * scale));
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, width, height);
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    g.drawImage(source, 0, 0, width, height, null);
    g.dispose();
    int[] argb = image.getRGB(0, 0, width, height, null, 0, width);
    return new Image(width, height, argb, new int[width * height]);
  }
}
