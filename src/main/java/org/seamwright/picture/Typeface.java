package org.seamwright.picture;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The program's own fonts, so that pictures are the same wherever they are made. */
public final class Typeface {
  /** Class-path folder of the fonts and their licence. */
  public static final String FOLDER = "/org/seamwright/fonts/";

  /** Plain face, file name in {@link #FOLDER}. */
  public static final String REGULAR = "LiberationSans-Regular.ttf";

  /** Bold face, file name in {@link #FOLDER}. */
  public static final String BOLD = "LiberationSans-Bold.ttf";

  private static final Font BOLD_FONT = load(BOLD);

  /** Outlines without hints: the same at any place and scale. */
  private static final FontRenderContext PLAIN =
      new FontRenderContext(new AffineTransform(), true, true);

  private Typeface() {}

  /**
   * Opens a font file.
   *
   * @param name {@link #REGULAR} or {@link #BOLD}
   */
  public static InputStream open(String name) {
    InputStream in = Typeface.class.getResourceAsStream(FOLDER + name);
    if (in == null) {
      throw new IllegalStateException("Font is missing from the program: " + name);
    }
    return in;
  }

  private static Font load(String name) {
    try (InputStream in = open(name)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException e) {
      throw new IllegalStateException("Font of the program is damaged: " + name, e);
    }
  }

  /** Outline of bold text of a height in pixels, its ink centred on a point. */
  static Shape centred(String text, float size, double x, double y) {
    Shape outline = BOLD_FONT.deriveFont(size).createGlyphVector(PLAIN, text).getOutline();
    Rectangle2D ink = outline.getBounds2D();
    return AffineTransform.getTranslateInstance(x - ink.getCenterX(), y - ink.getCenterY())
        .createTransformedShape(outline);
  }

  /** Width of the ink of bold text, pixels. */
  static double inkWidth(String text, float size) {
    return BOLD_FONT
        .deriveFont(size)
        .createGlyphVector(PLAIN, text)
        .getOutline()
        .getBounds2D()
        .getWidth();
  }
}
