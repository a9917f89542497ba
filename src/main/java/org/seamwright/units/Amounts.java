package org.seamwright.units;

import java.math.BigDecimal;
import java.util.List;

/**
 * Amounts as people write them, read into the units used inside the program.
 *
 * <p>Metric and inch units are both understood everywhere: "152.4 mm", "6 in", "1 1/2 in", "6\"",
 * "2 ft 3 in", "10 µin" or "10 uin", "0,5 µm", "40 in²" or "40 sq in", "1 tr oz", "1.5 fl oz" (US),
 * "1 h 20 min". A bare number is refused, and so is what could be read in two ways. Values are the
 * doubles nearest to what was written. {@link UnitFormat} writes what this reads.
 */
public final class Amounts {
  private static final List<KnownUnit> LENGTHS =
      List.of(
          KnownUnit.MILLIMETRE,
          KnownUnit.CENTIMETRE,
          KnownUnit.METRE,
          KnownUnit.MICROMETRE,
          KnownUnit.INCH,
          KnownUnit.FOOT,
          KnownUnit.MIL,
          KnownUnit.MICROINCH);

  private static final List<KnownUnit> THICKNESSES =
      List.of(
          KnownUnit.MICROMETRE,
          KnownUnit.NANOMETRE,
          KnownUnit.MILLIMETRE,
          KnownUnit.MICROINCH,
          KnownUnit.MIL,
          KnownUnit.INCH);

  private static final BigDecimal UM_PER_MM = new BigDecimal(1000);

  private static final double ML_PER_LITRE = 1000;

  private Amounts() {}

  /**
   * A length that cannot be negative.
   *
   * @return mm
   * @throws AmountException if it is not a length with its unit; says which units are understood
   */
  public static double lengthMm(String text) throws AmountException {
    return finite(text, AmountText.read(text, KnownUnit.Kind.LENGTH, LENGTHS, false));
  }

  /**
   * A position along an axis: a length that may be negative.
   *
   * @return mm
   * @throws AmountException if it is not a length with its unit; says which units are understood
   */
  public static double coordinateMm(String text) throws AmountException {
    return finite(text, AmountText.read(text, KnownUnit.Kind.LENGTH, LENGTHS, true));
  }

  /**
   * An area.
   *
   * @return mm²
   * @throws AmountException if it is not an area with its unit; says which units are understood
   */
  public static double areaMm2(String text) throws AmountException {
    return read(text, KnownUnit.Kind.AREA);
  }

  /**
   * Thickness of a deposit or film.
   *
   * @return µm
   * @throws AmountException if it is not a thickness with its unit; says which units are understood
   */
  public static double thicknessUm(String text) throws AmountException {
    BigDecimal mm = AmountText.read(text, KnownUnit.Kind.LENGTH, THICKNESSES, false);
    return finite(text, mm.multiply(UM_PER_MM));
  }

  /**
   * A mass.
   *
   * @return g
   * @throws AmountException if it is not a mass with its unit; says which units are understood
   */
  public static double massG(String text) throws AmountException {
    return read(text, KnownUnit.Kind.MASS);
  }

  /**
   * A volume; fluid ounces and gallons are US ones.
   *
   * @return ml
   * @throws AmountException if it is not a volume with its unit; says which units are understood
   */
  public static double volumeMl(String text) throws AmountException {
    return read(text, KnownUnit.Kind.VOLUME);
  }

  /**
   * A time.
   *
   * @return s
   * @throws AmountException if it is not a time with its unit; says which units are understood
   */
  public static double seconds(String text) throws AmountException {
    return read(text, KnownUnit.Kind.TIME);
  }

  /**
   * A mass per volume, "8 g/l" or "1 tr oz / US gal".
   *
   * @return g/l
   * @throws AmountException if it is not a mass and a volume with their units
   */
  public static double gramsPerLitre(String text) throws AmountException {
    int slash = text.indexOf('/');
    if (slash < 0) {
      throw new AmountException(
          text,
          "it is not a mass per volume",
          "Write it as mass/volume with both units, for example \"8 g/l\".");
    }
    double grams = massG(text.substring(0, slash));
    double ml = volumeMl("1 " + text.substring(slash + 1).strip());
    return grams * (ML_PER_LITRE / ml);
  }

  private static double read(String text, KnownUnit.Kind kind) throws AmountException {
    return finite(text, AmountText.read(text, kind, AmountText.all(kind), false));
  }

  private static double finite(String text, BigDecimal value) throws AmountException {
    double rounded = value.doubleValue();
    if (Double.isInfinite(rounded)) {
      throw new AmountException(text, "that is larger than can be held", "Give a smaller amount.");
    }
    return rounded;
  }
}
