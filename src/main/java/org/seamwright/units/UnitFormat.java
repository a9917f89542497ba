package org.seamwright.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/**
 * Writes amounts briefly for people, in one system of units: "12.4 in²", "80.2 cm²", "6 min 40 s".
 *
 * <p>Values are rounded to the nearest (halves away from zero), never up or down on purpose:
 *
 * <ul>
 *   <li>areas, volumes, charges: three significant digits, but never less than to whole units;
 *   <li>lengths: to 0.1 mm from 10 mm on, 0.01 mm from 1 mm on; 0.01 in from 1 in on, 0.001 in
 *       below; three digits for what is finer; idle zeros dropped ("6 in");
 *   <li>thicknesses: three digits, idle zeros dropped ("0.5 µm");
 *   <li>masses: to 0.01 g, under 0.1 g in mg to three digits;
 *   <li>times: to the second, from an hour on to the minute, under ten seconds to 0.1 s.
 * </ul>
 *
 * <p>A larger unit takes over where rounding would reach it: 99.97 mm² is "1.00 cm²". No thousands
 * marks; decimal comma where the locale has one. A no-break space joins number and unit, unless
 * {@link #withPlainSpaces} is asked for. {@link Amounts} reads all of it back.
 */
public final class UnitFormat {
  private static final int DIGITS = 3;

  /** Finest marks of an inch rule. */
  private static final int RULE_PARTS = 64;

  /** Nobody lays off a width to better than this. */
  private static final double CLOSE_FRACTION = 1e-3;

  private static final char NO_BREAK_SPACE = '\u00a0';

  private final UnitSystem system;
  private final char decimal;
  private final char space;

  /**
   * A format.
   *
   * @param system units to show
   * @param locale decides between decimal point and comma
   */
  public UnitFormat(UnitSystem system, Locale locale) {
    this(system, decimalMark(locale), NO_BREAK_SPACE);
  }

  private static char decimalMark(Locale locale) {
    // The root locale is asked for most, and loading the symbols takes time.
    if (locale.equals(Locale.ROOT)) {
      return '.';
    }
    return DecimalFormatSymbols.getInstance(locale).getDecimalSeparator() == ',' ? ',' : '.';
  }

  private UnitFormat(UnitSystem system, char decimal, char space) {
    this.system = system;
    this.decimal = decimal;
    this.space = space;
  }

  /** The same with ordinary spaces, for terminals and data files. */
  public UnitFormat withPlainSpaces() {
    return new UnitFormat(system, decimal, ' ');
  }

  /** The system of units shown. */
  public UnitSystem system() {
    return system;
  }

  /** A length given in mm, in mm (m from 10 m on) or in. */
  public String length(double mm) {
    double size = Math.abs(mm);
    if (inch()) {
      BigDecimal in = in(mm, KnownUnit.INCH);
      double inches = Math.abs(in.doubleValue());
      return join(
          inches >= 1 ? decimals(in, 2) : inches >= 0.1 ? decimals(in, 3) : digits(in),
          true,
          KnownUnit.INCH);
    }
    if (size >= 9_999.95) {
      return join(decimals(in(mm, KnownUnit.METRE), 2), true, KnownUnit.METRE);
    }
    BigDecimal exact = exact(mm);
    return join(
        size >= 10 ? decimals(exact, 1) : size >= 1 ? decimals(exact, 2) : digits(exact),
        true,
        KnownUnit.MILLIMETRE);
  }

  /**
   * A width that is laid off by hand, given in mm: in mm, or as a fraction of an inch to the
   * nearest 64th as rules are marked ("3/16 in", "1 1/2 in"). Where that is off by more than the
   * share {@value #CLOSE_FRACTION} the width in mm stands first: "2 mm (about 5/64 in)".
   */
  public String width(double mm) {
    if (!inch() || !(mm > 0)) {
      return length(mm);
    }
    long parts = Math.round(in(mm, KnownUnit.INCH).doubleValue() * RULE_PARTS);
    BigDecimal marked = UnitModel.worth(KnownUnit.INCH).multiply(BigDecimal.valueOf(parts));
    double off = Math.abs(marked.doubleValue() / RULE_PARTS / mm - 1);
    String fraction = parts == 0 ? "" : fraction(parts) + space + KnownUnit.INCH.symbol;
    if (off <= CLOSE_FRACTION) {
      return fraction;
    }
    String metric = new UnitFormat(UnitSystem.METRIC, decimal, space).length(mm);
    return parts == 0 ? metric : metric + " (about " + fraction + ")";
  }

  /** 64ths of an inch in lowest terms. */
  private String fraction(long parts) {
    long whole = parts / RULE_PARTS;
    long rest = parts % RULE_PARTS;
    if (rest == 0) {
      return "" + whole;
    }
    long denominator = RULE_PARTS;
    while (rest % 2 == 0) {
      rest /= 2;
      denominator /= 2;
    }
    return (whole == 0 ? "" : "" + whole + space) + rest + "/" + denominator;
  }

  /** An area given in mm², in cm² (mm² under 1 cm²) or in². */
  public String area(double mm2) {
    KnownUnit unit =
        inch()
            ? KnownUnit.SQUARE_INCH
            : Math.abs(mm2) < 99.95 ? KnownUnit.SQUARE_MILLIMETRE : KnownUnit.SQUARE_CENTIMETRE;
    return join(digits(in(mm2, unit)), false, unit);
  }

  /** A thickness given in µm, in µm or µin. */
  public String thickness(double um) {
    KnownUnit unit = inch() ? KnownUnit.MICROINCH : KnownUnit.MICROMETRE;
    BigDecimal mm = exact(um).movePointLeft(3);
    return join(digits(in(mm, unit)), true, unit);
  }

  /** A mass given in g, in g (mg under 0.1 g) in both systems, as gold is sold. */
  public String mass(double g) {
    if (g != 0 && Math.abs(g) < 0.09995) {
      return join(digits(in(g, KnownUnit.MILLIGRAM)), false, KnownUnit.MILLIGRAM);
    }
    return join(decimals(exact(g), 2), false, KnownUnit.GRAM);
  }

  /** A volume given in ml, in ml (l from 1 l on) in both systems. */
  public String volume(double ml) {
    KnownUnit unit = Math.abs(ml) < 999.5 ? KnownUnit.MILLILITRE : KnownUnit.LITRE;
    return join(digits(in(ml, unit)), false, unit);
  }

  /**
   * A time given in s: "4.5 s", "6 min 40 s", "1 h 20 min".
   *
   * @param s not negative
   */
  public String time(double s) {
    if (!(s >= 0) || s > Long.MAX_VALUE) {
      throw new IllegalArgumentException("A time must be finite and not negative: " + s);
    }
    if (s < 9.95) {
      return join(decimals(exact(s), 1), true, KnownUnit.SECOND);
    }
    long seconds = Math.round(s);
    if (seconds < 60) {
      return whole(seconds, KnownUnit.SECOND);
    }
    if (seconds < 3600) {
      return two(seconds / 60, KnownUnit.MINUTE, seconds % 60, KnownUnit.SECOND);
    }
    long minutes = Math.round(s / 60);
    return two(minutes / 60, KnownUnit.HOUR, minutes % 60, KnownUnit.MINUTE);
  }

  /** A charge given in A·h. */
  public String charge(double ampHours) {
    return number(digits(exact(ampHours)), false) + space + "A·h";
  }

  private boolean inch() {
    return system == UnitSystem.INCH;
  }

  private String two(long large, KnownUnit largeUnit, long small, KnownUnit smallUnit) {
    String first = whole(large, largeUnit);
    return small == 0 ? first : first + space + whole(small, smallUnit);
  }

  private String whole(long value, KnownUnit unit) {
    return "" + value + space + unit.symbol;
  }

  private String join(BigDecimal value, boolean dropZeros, KnownUnit unit) {
    return number(value, dropZeros) + space + unit.symbol;
  }

  private String number(BigDecimal value, boolean dropZeros) {
    BigDecimal shown = value.signum() == 0 ? BigDecimal.ZERO : value;
    if (dropZeros && shown.scale() > 0) {
      shown = shown.stripTrailingZeros();
    }
    return shown
        .setScale(Math.max(shown.scale(), 0), RoundingMode.UNNECESSARY)
        .toPlainString()
        .replace('.', decimal);
  }

  /** To three significant digits, but never coarser than units. */
  private static BigDecimal digits(BigDecimal value) {
    BigDecimal three = value.round(new MathContext(DIGITS, RoundingMode.HALF_UP));
    int before = three.signum() == 0 ? DIGITS : three.precision() - three.scale();
    return decimals(value, Math.max(0, DIGITS - before));
  }

  private static BigDecimal decimals(BigDecimal value, int decimals) {
    return value.setScale(decimals, RoundingMode.HALF_UP);
  }

  private static BigDecimal in(double inner, KnownUnit unit) {
    return in(exact(inner), unit);
  }

  private static BigDecimal in(BigDecimal inner, KnownUnit unit) {
    return inner.divide(UnitModel.worth(unit), MathContext.DECIMAL128);
  }

  /** The shortest decimal that names the double, so that 0.145 rounds as it reads. */
  private static BigDecimal exact(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("Only finite amounts can be shown: " + value);
    }
    return BigDecimal.valueOf(value);
  }
}
