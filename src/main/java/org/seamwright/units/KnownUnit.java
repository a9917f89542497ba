package org.seamwright.units;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Every unit that can be typed, with its spellings. What it is worth comes from {@link UnitModel}.
 *
 * <p>Spellings stand as {@link AmountText} leaves them: micro signs as u, raised 2 and 3 as plain
 * digits. Letter case does not matter. A unit whose name means two things to people of the trade is
 * absent on purpose: an ounce of gold is a troy ounce to one and 28 g to the next.
 */
enum KnownUnit {
  NANOMETRE(Kind.LENGTH, "nm"),
  MICROMETRE(Kind.LENGTH, "µm", "um", "micron", "microns", "micrometre", "micrometer"),
  MILLIMETRE(Kind.LENGTH, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
  CENTIMETRE(Kind.LENGTH, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
  METRE(Kind.LENGTH, "m", "metre", "metres", "meter", "meters"),
  MICROINCH(Kind.LENGTH, "µin", "uin", "u\"", "microinch", "microinches"),
  MIL(Kind.LENGTH, "mil", "mils", "thou"),
  INCH(Kind.LENGTH, "in", "in.", "\"", "''", "inch", "inches"),
  FOOT(Kind.LENGTH, "ft", "ft.", "'", "foot", "feet"),

  SQUARE_MILLIMETRE(Kind.AREA, "mm²", "mm2", "mm^2", "sq mm"),
  SQUARE_CENTIMETRE(Kind.AREA, "cm²", "cm2", "cm^2", "sq cm"),
  SQUARE_DECIMETRE(Kind.AREA, "dm²", "dm2", "dm^2", "sq dm"),
  SQUARE_METRE(Kind.AREA, "m²", "m2", "m^2", "sq m"),
  SQUARE_INCH(Kind.AREA, "in²", "in2", "in^2", "sq in", "sq. in.", "sq inch", "square inches"),
  SQUARE_FOOT(Kind.AREA, "ft²", "ft2", "ft^2", "sq ft", "sq. ft.", "square feet"),

  MILLIGRAM(Kind.MASS, "mg"),
  GRAM(Kind.MASS, "g", "gram", "grams"),
  KILOGRAM(Kind.MASS, "kg"),
  PENNYWEIGHT(Kind.MASS, "dwt"),
  TROY_OUNCE(Kind.MASS, "tr oz", "troy oz", "oz t", "ozt", "troy ounce", "troy ounces"),

  MILLILITRE(Kind.VOLUME, "ml", "cc", "cm3", "cm^3", "millilitre", "milliliter"),
  CENTILITRE(Kind.VOLUME, "cl"),
  DECILITRE(Kind.VOLUME, "dl"),
  LITRE(Kind.VOLUME, "l", "litre", "litres", "liter", "liters"),
  US_FLUID_OUNCE(Kind.VOLUME, "fl oz", "fl. oz.", "floz", "us fl oz"),
  US_GALLON(Kind.VOLUME, "US gal", "gal us"),

  SECOND(Kind.TIME, "s", "sec", "secs", "second", "seconds"),
  MINUTE(Kind.TIME, "min", "mins", "minute", "minutes"),
  HOUR(Kind.TIME, "h", "hr", "hrs", "hour", "hours");

  /** What a unit measures. */
  enum Kind {
    LENGTH("a length"),
    AREA("an area"),
    MASS("a mass"),
    VOLUME("a volume"),
    TIME("a time");

    /** With its article, for messages. */
    final String phrase;

    Kind(String phrase) {
      this.phrase = phrase;
    }
  }

  private static final Map<String, KnownUnit> BY_SPELLING = spellings();

  final Kind kind;

  /** As shown and as listed in messages. */
  final String symbol;

  @SuppressWarnings("ImmutableEnumChecker") // made by List.of
  private final List<String> others;

  KnownUnit(Kind kind, String symbol, String... others) {
    this.kind = kind;
    this.symbol = symbol;
    this.others = List.of(others);
  }

  private static Map<String, KnownUnit> spellings() {
    Map<String, KnownUnit> map = new HashMap<>();
    for (KnownUnit unit : values()) {
      map.put(unit.symbol.toLowerCase(Locale.ROOT), unit);
      unit.others.forEach(s -> map.put(s, unit));
    }
    return map;
  }

  /** The unit with that spelling, or null. */
  static KnownUnit spelled(String text) {
    return BY_SPELLING.get(text.toLowerCase(Locale.ROOT));
  }
}
