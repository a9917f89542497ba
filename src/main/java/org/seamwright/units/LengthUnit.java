package org.seamwright.units;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** Units that the numbers of a mesh file can be in. The files themselves seldom say. */
public enum LengthUnit {
  /** Micrometre. */
  UM("um", KnownUnit.MICROMETRE),
  /** Millimetre. */
  MM("mm", KnownUnit.MILLIMETRE),
  /** Centimetre. */
  CM("cm", KnownUnit.CENTIMETRE),
  /** Metre. */
  M("m", KnownUnit.METRE),
  /** Inch, 25.4 mm. */
  IN("in", KnownUnit.INCH),
  /** Foot, 304.8 mm. */
  FT("ft", KnownUnit.FOOT);

  private final String symbol;
  private final KnownUnit unit;

  LengthUnit(String symbol, KnownUnit unit) {
    this.symbol = symbol;
    this.unit = unit;
  }

  /** As typed and as kept in job files: "mm", "in". */
  public String symbol() {
    return symbol;
  }

  /** How many mm one of it is. */
  public double mmPer() {
    return UnitModel.worth(unit).doubleValue();
  }

  /**
   * How many mm one of a named unit is.
   *
   * @param symbol "um", "mm", "cm", "m", "in" or "ft", in any case; "inch", "metre" and the like
   *     too
   * @throws AmountException if it is none of them
   */
  public static double mmPer(String symbol) throws AmountException {
    return of(symbol).mmPer();
  }

  /**
   * The unit of a name.
   *
   * @param symbol as for {@link #mmPer(String)}
   * @throws AmountException if it is none of them
   */
  public static LengthUnit of(String symbol) throws AmountException {
    String plain = symbol.strip().replace('µ', 'u').replace('μ', 'u').toLowerCase(Locale.ROOT);
    KnownUnit known = KnownUnit.spelled(plain);
    for (LengthUnit unit : values()) {
      if (unit.unit == known) {
        return unit;
      }
    }
    throw new AmountException(
        symbol, "it is not a unit of length that a mesh file can be in", "Use " + symbols() + ".");
  }

  /** All symbols, for help texts: "um, mm, cm, m, in, ft". */
  public static String symbols() {
    return Arrays.stream(values()).map(LengthUnit::symbol).collect(Collectors.joining(", "));
  }
}
