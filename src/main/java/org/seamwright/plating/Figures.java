package org.seamwright.plating;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers inside sentences: four significant digits, idle zeros dropped, decimal point. */
final class Figures {
  private static final MathContext FOUR = new MathContext(4);

  private Figures() {}

  static String of(double value) {
    if (!Double.isFinite(value) || value == 0) {
      return value == 0 ? "0" : Double.toString(value);
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    BigDecimal four = exact.round(FOUR);
    if (four.scale() < 0) { // never coarser than units
      four = exact.setScale(0, RoundingMode.HALF_UP);
    }
    four = four.stripTrailingZeros();
    return four.setScale(Math.max(four.scale(), 0)).toPlainString();
  }
}
