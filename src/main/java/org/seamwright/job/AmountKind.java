package org.seamwright.job;

import java.math.BigDecimal;
import java.math.MathContext;
import org.seamwright.basis.InputException;
import org.seamwright.units.Amounts;
import org.seamwright.units.UnitSystem;

/** The kinds of amounts in a job file, and how each is read and written. */
enum AmountKind {
  LENGTH("a length", "4 mm", "mm", "in", "mm"),
  AREA("an area", "40 in2", "cm2", "in2", "mm2"),
  THICKNESS("a thickness", "0.5 µm", "µm", "µin", "µm"),
  COORDINATE("a coordinate", "-4 mm", "mm", "in", "mm"),
  VOLUME("a volume", "0.5 ml", "ml", "ml", "ml"),
  TIME("a time", "45 s", "s", "s", "s"),
  CONCENTRATION("a concentration", "8 g/l", "g/l", "g/l", "g/l");

  /** Digits up to which an amount is taken to be one that a person wrote. */
  private static final int WRITTEN_BY_HAND = 7;

  private final String words;
  private final String example;
  private final String metric;
  private final String inch;
  private final String own;

  AmountKind(String words, String example, String metric, String inch, String own) {
    this.words = words;
    this.example = example;
    this.metric = metric;
    this.inch = inch;
    this.own = own;
  }

  String words() {
    return words;
  }

  String example() {
    return example;
  }

  /** The amount in the program's unit for this kind: mm, mm², µm, ml, s, g/l. */
  double read(String text) throws InputException {
    return switch (this) {
      case LENGTH -> Amounts.lengthMm(text);
      case AREA -> Amounts.areaMm2(text);
      case THICKNESS -> Amounts.thicknessUm(text);
      case COORDINATE -> Amounts.coordinateMm(text);
      case VOLUME -> Amounts.volumeMl(text);
      case TIME -> Amounts.seconds(text);
      case CONCENTRATION -> Amounts.gramsPerLitre(text);
    };
  }

  /**
   * The amount as text that reads back to exactly the same double: in the display's unit if it is a
   * round figure there, else in the other system's if it is round there, else in full.
   */
  String write(double amount, UnitSystem display) {
    String first = rounded(amount, display == UnitSystem.INCH ? inch : metric);
    if (reads(first, amount)) {
      return first;
    }
    String second = rounded(amount, display == UnitSystem.INCH ? metric : inch);
    return reads(second, amount) ? second : full(amount);
  }

  private String rounded(double amount, String unit) {
    double inUnit = amount / perUnit(unit);
    double round = BigDecimal.valueOf(inUnit).round(new MathContext(WRITTEN_BY_HAND)).doubleValue();
    return PlainNumber.of(round) + " " + unit;
  }

  /** In the program's own unit, for which reading is exact. */
  private String full(double amount) {
    return PlainNumber.of(amount) + " " + own;
  }

  private double perUnit(String unit) {
    try {
      return read("1 " + unit);
    } catch (InputException e) {
      throw new IllegalStateException("The units package does not know " + unit, e);
    }
  }

  private boolean reads(String text, double amount) {
    try {
      return read(text) == amount;
    } catch (InputException e) {
      return false;
    }
  }
}
