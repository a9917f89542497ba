package org.seamwright.paper;

import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.seamwright.units.UnitSystem;

/** A size of paper, upright. */
public enum PaperSize {
  /** 210 × 297 mm (ISO 216). */
  A4(595.2756f, 841.8898f),
  /** 8.5 × 11 in. */
  LETTER(612, 792);

  private final float width;
  private final float height;

  PaperSize(float width, float height) {
    this.width = width;
    this.height = height;
  }

  /** What is at hand where those units are in use: Letter for inch, else A4. */
  public static PaperSize forUnits(UnitSystem units) {
    return units == UnitSystem.INCH ? LETTER : A4;
  }

  PDRectangle box() {
    return new PDRectangle(width, height);
  }

  /** Width, points (1/72 in). */
  public double width() {
    return width;
  }

  /** Height, points (1/72 in). */
  public double height() {
    return height;
  }
}
