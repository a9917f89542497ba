package org.seamwright.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/** Figures as they stand on the terminal: plain spaces, decimal point. */
final class Figures {
  private static final UnitFormat METRIC = format(UnitSystem.METRIC);
  private static final UnitFormat INCH = format(UnitSystem.INCH);

  private Figures() {}

  static UnitFormat in(UnitSystem system) {
    return system == UnitSystem.INCH ? INCH : METRIC;
  }

  /** An area in both systems: "80.2 cm² (12.4 in²)". */
  static String area(double mm2) {
    return METRIC.area(mm2) + " (" + INCH.area(mm2) + ")";
  }

  /** "1 section", "3 sections". */
  static String count(long count, String one) {
    return count + " " + one + (count == 1 ? "" : "s");
  }

  /** A number to four digits, without zeros at its end. */
  static String number(double value) {
    return new BigDecimal(value)
        .round(new MathContext(4, RoundingMode.HALF_UP))
        .stripTrailingZeros()
        .toPlainString();
  }

  private static UnitFormat format(UnitSystem system) {
    return new UnitFormat(system, Locale.ROOT).withPlainSpaces();
  }
}
