package org.seamwright.paper;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.seamwright.picture.Typeface;

/** One of the program's fonts in a document: embeds what is used and measures text. */
final class Face {
  /** Stands for characters that the font doesn't have. */
  private static final int MISSING = 0x25A1;

  private final PDType0Font font;
  private final Map<Integer, Double> widthOf = new HashMap<>();

  private Face(PDType0Font font) {
    this.font = font;
  }

  static Face load(PDDocument document, String name) throws IOException {
    try (InputStream in = Typeface.open(name)) {
      return new Face(PDType0Font.load(document, in, true));
    }
  }

  PDType0Font font() {
    return font;
  }

  /** The text as it can be set: controls become spaces, unknown characters a box. */
  String settable(String text) throws IOException {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      i += Character.charCount(c);
      boolean blank = Character.isISOControl(c) || c == 0x2028 || c == 0x2029;
      int shown = blank ? ' ' : c;
      out.appendCodePoint(charWidth(shown) < 0 ? MISSING : shown);
    }
    return out.toString();
  }

  /** Width of settable text, in points for a size of one point. */
  double width(String text) throws IOException {
    double width = 0;
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      i += Character.charCount(c);
      width += charWidth(c);
    }
    return width;
  }

  /** Width of a character, or −1 if the font doesn't have it. */
  private double charWidth(int c) throws IOException {
    Double known = widthOf.get(c);
    if (known == null) {
      try {
        known = font.getStringWidth(Character.toString(c)) / 1000.0;
      } catch (IllegalArgumentException e) {
        // How PDFBox says that there is no glyph.
        known = -1.0;
      }
      widthOf.put(c, known);
    }
    return known;
  }
}
