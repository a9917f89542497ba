package org.seamwright.paper;

import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.seamwright.units.UnitSystem;

/** A size of paper, upright. */
public enum PaperSize {
  /** 210 × 297 mm (ISO 216). */
  A4(PDRectangle.A4),
  /** 8.5 × 11 in. */
  LETTER(PDRectangle.LETTER);

  private final PDRectangle box;

  PaperSize(PDRectangle box) {
    this.box = box;
  }

  /** What is at hand where those units are in use: Letter for inch, else A4. */
  public static PaperSize forUnits(UnitSystem units) {
    return units == UnitSystem.INCH ? LETTER : A4;
  }

  PDRectangle box() {
    return box;
  }

  /** Width, points (1/72 in). */
  public double width() {
    return box.getWidth();
  }

  /** Height, points (1/72 in). */
  public double height() {
    return box.getHeight();
  }
}
