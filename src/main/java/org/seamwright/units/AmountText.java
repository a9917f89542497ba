package org.seamwright.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads "1 1/2 in", "1 h 20 min", "0,5 µm": numbers with units, as people type them.
 *
 * <p>Works in exact decimals, so "6 in" is the double nearest 152.4, not 6 × 25.4 in binary. A
 * comma is a decimal comma; "1,234 mm" could also mean 1234 mm and is refused. Parts such as feet
 * and inches add up if each unit is smaller than the one before.
 */
final class AmountText {
  /** Longer than any amount; keeps exponents and digits from costing time. */
  private static final int LONGEST = 80;

  private static final Pattern NUMBER =
      Pattern.compile(
          "(?:(?<whole>\\d+)(?:\\s+|\\s*-\\s*))?(?<num>\\d+)\\s*/\\s*(?<den>\\d+)"
              + "|(?<decimal>(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][+-]?\\d{1,2})?)");

  /** A raised 2 or 3 belongs to the unit only if nothing of a number follows it. */
  private static final Pattern UNIT =
      Pattern.compile("[\\p{L}\"'.]+(?:\\s+[\\p{L}\"'.]+)*(?<power>\\^?[23](?![\\p{L}\\d.,/]))?");

  /** Three digits behind a comma and a whole part without a leading zero: perhaps thousands. */
  private static final Pattern PERHAPS_THOUSANDS = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

  private final String typed;
  private final String text;
  private final KnownUnit.Kind kind;
  private final List<KnownUnit> understood;

  private AmountText(String typed, KnownUnit.Kind kind, List<KnownUnit> understood) {
    this.typed = typed;
    this.text = plain(typed);
    this.kind = kind;
    this.understood = understood;
  }

  /**
   * Reads an amount.
   *
   * @param typed what was typed
   * @param kind what it measures
   * @param understood the units allowed
   * @param signed whether it may be below zero
   * @return in the inner unit of the kind, exact but for fractions such as 1/3
   */
  static BigDecimal read(
      String typed, KnownUnit.Kind kind, List<KnownUnit> understood, boolean signed)
      throws AmountException {
    return new AmountText(typed, kind, understood).read(signed);
  }

  private BigDecimal read(boolean signed) throws AmountException {
    if (text.isEmpty() || text.length() > LONGEST) {
      throw refused(text.isEmpty() ? "nothing is given" : "that is too long for an amount");
    }
    boolean negative = text.startsWith("-");
    int at = negative || text.startsWith("+") ? 1 : 0;
    at += spaces(at);
    BigDecimal sum = BigDecimal.ZERO;
    BigDecimal last = null;
    KnownUnit before = null;
    do {
      Matcher number = matcher(NUMBER, at);
      if (!number.lookingAt()) {
        throw refused("a number was expected at \"" + text.substring(at) + "\"");
      }
      at = number.end() + spaces(number.end());
      Matcher unit = matcher(UNIT, at);
      KnownUnit known = unit(unit, at);
      at = unit.end() + spaces(unit.end());
      BigDecimal worth = UnitModel.worth(known);
      if (last != null && worth.compareTo(last) >= 0) {
        throw refused("parts must go from the larger unit to the smaller");
      }
      if (before == KnownUnit.FOOT && known != KnownUnit.INCH) {
        // "1'500 mm" is one and a half metres to those who mark thousands so.
        throw refused("after feet only inches may follow; thousands are not marked");
      }
      before = known;
      last = worth;
      sum = sum.add(times(number, worth));
    } while (at < text.length());
    if (negative && sum.signum() != 0 && !signed) {
      throw refused("it is below zero");
    }
    return negative ? sum.negate() : sum;
  }

  private KnownUnit unit(Matcher unit, int at) throws AmountException {
    String rest = text.substring(at);
    if (rest.isEmpty()) {
      throw refused("the unit is missing");
    }
    if (!unit.lookingAt()) {
      throw refused("a unit was expected at \"" + rest + "\"");
    }
    String spelling = unit.group().replaceAll("\\s+", " ");
    KnownUnit known = KnownUnit.spelled(spelling);
    if (known != null && understood.contains(known)) {
      return known;
    }
    if (kind == KnownUnit.Kind.MASS && spelling.matches("(?i)oz|ounces?")) {
      throw refused("an ounce can be troy or common");
    }
    throw refused(
        known == null
            ? "\"" + spelling + "\" is not a unit known here"
            : "\"" + spelling + "\" does not measure " + kind.phrase + " here");
  }

  private BigDecimal times(Matcher number, BigDecimal worth) throws AmountException {
    String decimal = number.group("decimal");
    if (decimal != null) {
      if (PERHAPS_THOUSANDS.matcher(decimal).matches()) {
        throw new AmountException(
            typed,
            "the comma could be a decimal comma or mark thousands",
            "Write " + decimal.replace(',', '.') + " or " + decimal.replace(",", "") + ".");
      }
      return new BigDecimal(decimal.replace(',', '.')).multiply(worth);
    }
    BigDecimal denominator = new BigDecimal(number.group("den"));
    if (denominator.signum() == 0) {
      throw refused("a fraction cannot have 0 below the line");
    }
    BigDecimal numerator = new BigDecimal(number.group("num"));
    if (number.group("whole") != null) {
      numerator = numerator.add(new BigDecimal(number.group("whole")).multiply(denominator));
    }
    return numerator.multiply(worth).divide(denominator, MathContext.DECIMAL128);
  }

  private Matcher matcher(Pattern pattern, int from) {
    return pattern.matcher(text).region(from, text.length()).useTransparentBounds(true);
  }

  private int spaces(int from) {
    int to = from;
    while (to < text.length() && text.charAt(to) == ' ') {
      to++;
    }
    return to - from;
  }

  private AmountException refused(String problem) {
    return new AmountException(
        typed,
        problem,
        "Give "
            + kind.phrase
            + " with its unit, one of "
            + understood.stream().map(u -> u.symbol).collect(Collectors.joining(", "))
            + ", as in \""
            + example()
            + "\".");
  }

  private String example() {
    return switch (kind) {
      case LENGTH -> understood.contains(KnownUnit.FOOT) ? "152.4 mm\" or \"6 in" : "10 µin";
      case AREA -> "40 in²";
      case MASS -> "1.2 g";
      case VOLUME -> "25 ml";
      case TIME -> "1 h 20 min";
    };
  }

  /** The text with one spelling for each sign that keyboards and papers vary. */
  private static String plain(String typed) {
    StringBuilder plain = new StringBuilder();
    typed.codePoints().forEach(c -> plain.append(plain(c)));
    return plain.toString().strip();
  }

  private static String plain(int codePoint) {
    return switch (codePoint) {
      case 0xB5, 0x3BC -> "u"; // micro sign, Greek mu
      case 0xB2 -> "2";
      case 0xB3 -> "3";
      case 0x2212, 0x2010, 0x2011, 0x2013 -> "-"; // minus, hyphens, dash
      case 0x2033, 0x201D, 0x201C -> "\""; // double prime, quotes
      case 0x2032, 0x2019 -> "'";
      case 0x2044 -> "/"; // fraction slash
      case 0xBC -> " 1/4";
      case 0xBD -> " 1/2";
      case 0xBE -> " 3/4";
      case '\t', 0xA0, 0x2009, 0x202F -> " ";
      default -> Character.toString(codePoint);
    };
  }

  /** The units of one kind, in the order of their table. */
  static List<KnownUnit> all(KnownUnit.Kind kind) {
    List<KnownUnit> units = new ArrayList<>();
    for (KnownUnit unit : KnownUnit.values()) {
      if (unit.kind == kind) {
        units.add(unit);
      }
    }
    return List.copyOf(units);
  }
}
