package org.seamwright.units;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.DECI;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;
import static javax.measure.MetricPrefix.NANO;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.EnumMap;
import java.util.Map;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.Units;

/**
 * What each unit is worth, exactly, from the unit definitions of the units library.
 *
 * <p>Loading the library costs some 60 ms, which every command would pay; so it is touched only
 * when an amount in another unit than the inner one is first met (the holder class below).
 *
 * <p>Definitions of the customary units: inch 25.4 mm, foot 12 in, mil 0.001 in, troy ounce 31.103
 * 476 8 g, pennyweight 1/20 of that, US gallon 231 in³, US fluid ounce 1/128 of that (NIST SP 811,
 * appendix B; from memory).
 */
final class UnitModel {
  // By definition; known without the library, since nearly every run shows sizes in them.
  private static final BigDecimal INCH = new BigDecimal("25.4");
  private static final BigDecimal SQUARE_INCH = new BigDecimal("645.16");
  private static final BigDecimal HUNDRED = new BigDecimal(100);

  private UnitModel() {}

  /** What the library makes of a unit: all the figures of {@link #worth} agree with it. */
  static BigDecimal worthByLibrary(KnownUnit unit) {
    return Definitions.WORTH.get(unit);
  }

  /**
   * Worth of one unit in the inner unit of its kind: mm, mm², g, ml or s.
   *
   * @return exact, without rounding
   */
  static BigDecimal worth(KnownUnit unit) {
    return switch (unit) {
      case MILLIMETRE, SQUARE_MILLIMETRE, GRAM, MILLILITRE, SECOND -> BigDecimal.ONE;
      case INCH -> INCH;
      case SQUARE_INCH -> SQUARE_INCH;
      case CENTIMETRE -> BigDecimal.TEN;
      case SQUARE_CENTIMETRE -> HUNDRED;
      default -> Definitions.WORTH.get(unit);
    };
  }

  /** Loaded with the library on first use. */
  private static final class Definitions {
    static final Map<KnownUnit, BigDecimal> WORTH = new EnumMap<>(KnownUnit.class);

    private static final Unit<Length> METRE = Units.METRE;
    private static final Unit<Length> INCH =
        MILLI(METRE).multiply(RationalNumber.of(254, 10)); // 25.4 exactly
    private static final Unit<Length> FOOT = INCH.multiply(12);
    private static final Unit<Mass> TROY_OUNCE =
        Units.GRAM.multiply(RationalNumber.of(311_034_768L, 10_000_000L)); // 31.1034768 exactly
    private static final Unit<Volume> US_GALLON =
        INCH.pow(3).asType(Volume.class).multiply(231); // by definition

    static {
      for (KnownUnit unit : KnownUnit.values()) {
        WORTH.put(unit, exact(definition(unit), inner(unit.kind)));
      }
    }

    private static Unit<?> inner(KnownUnit.Kind kind) {
      return switch (kind) {
        case LENGTH -> MILLI(METRE);
        case AREA -> MILLI(METRE).pow(2);
        case MASS -> Units.GRAM;
        case VOLUME -> MILLI(Units.LITRE);
        case TIME -> Units.SECOND;
      };
    }

    private static Unit<?> definition(KnownUnit unit) {
      return switch (unit) {
        case NANOMETRE -> NANO(METRE);
        case MICROMETRE -> MICRO(METRE);
        case MILLIMETRE -> MILLI(METRE);
        case CENTIMETRE -> CENTI(METRE);
        case METRE -> METRE;
        case MICROINCH -> INCH.divide(1_000_000);
        case MIL -> INCH.divide(1000);
        case INCH -> INCH;
        case FOOT -> FOOT;
        case SQUARE_MILLIMETRE -> MILLI(METRE).pow(2);
        case SQUARE_CENTIMETRE -> CENTI(METRE).pow(2);
        case SQUARE_DECIMETRE -> DECI(METRE).pow(2);
        case SQUARE_METRE -> METRE.pow(2);
        case SQUARE_INCH -> INCH.pow(2);
        case SQUARE_FOOT -> FOOT.pow(2);
        case MILLIGRAM -> MILLI(Units.GRAM);
        case GRAM -> Units.GRAM;
        case KILOGRAM -> KILO(Units.GRAM);
        case PENNYWEIGHT -> TROY_OUNCE.divide(20);
        case TROY_OUNCE -> TROY_OUNCE;
        case MILLILITRE -> MILLI(Units.LITRE);
        case CENTILITRE -> CENTI(Units.LITRE);
        case DECILITRE -> DECI(Units.LITRE);
        case LITRE -> Units.LITRE;
        case US_FLUID_OUNCE -> US_GALLON.divide(128);
        case US_GALLON -> US_GALLON;
        case SECOND -> Units.SECOND;
        case MINUTE -> Units.MINUTE;
        case HOUR -> Units.HOUR;
      };
    }

    private static BigDecimal exact(Unit<?> from, Unit<?> to) {
      try {
        Number worth = from.getConverterToAny(to).convert(BigInteger.ONE);
        if (worth instanceof RationalNumber ratio) {
          return new BigDecimal(ratio.getDividend()).divide(new BigDecimal(ratio.getDivisor()));
        }
        return new BigDecimal(worth.toString());
      } catch (IncommensurableException e) {
        throw new AssertionError(from + " and " + to + " measure different things", e);
      }
    }
  }
}
