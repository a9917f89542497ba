package org.seamwright.paper;

import java.io.IOException;
import java.util.List;

/**
 * A figure with what it is above it and what belongs to it below.
 *
 * @param label what it is
 * @param value with its unit
 * @param note may be empty
 */
record Figure(String label, String value, String note) {
  private static final double GUTTER = 12;

  /** Sets figures side by side in columns of equal width and returns the height they took. */
  static double row(
      Sheet sheet, List<Figure> figures, Style value, double x, double top, double width)
      throws IOException {
    double column = (width - GUTTER * (figures.size() - 1)) / figures.size();
    double height = 0;
    for (int i = 0; i < figures.size(); i++) {
      Figure figure = figures.get(i);
      double at = x + i * (column + GUTTER);
      double y = top;
      y += sheet.block(figure.label, Style.LABEL, at, y, column, 1);
      y += fitted(sheet, figure.value, value, at, y, column);
      y += sheet.block(figure.note, Style.SMALL, at, y, column, 3);
      height = Math.max(height, y - top);
    }
    return height;
  }

  /** A value is set smaller rather than cut: nobody may misread a figure. */
  private static double fitted(
      Sheet sheet, String text, Style style, double x, double top, double width)
      throws IOException {
    Style fitting = style;
    while (sheet.width(text, fitting) > width && fitting.size() > 9) {
      fitting = fitting.sized(fitting.size() - 0.5);
    }
    if (sheet.width(text, fitting) > width) {
      return sheet.block(text, fitting, x, top, width);
    }
    sheet.line(text, fitting, x, top + style.rise());
    return style.leading();
  }
}
