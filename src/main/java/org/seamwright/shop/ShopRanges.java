package org.seamwright.shop;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import org.seamwright.plating.Deposit;
import org.seamwright.plating.Deposits;

/**
 * What each column of a shop book may hold, looked at before a row is entered, from wherever it
 * comes: a figure that no bench can have noted would spoil every estimate made from it later.
 */
final class ShopRanges {
  private static final String DEPOSITS =
      Deposits.all().stream().map(Deposit::id).collect(Collectors.joining(", "));

  private ShopRanges() {}

  /** What a column's cell must be, in words for a remedy. */
  private record Rule(String remedy, Test test) {}

  @FunctionalInterface
  private interface Test {
    boolean holds(Object cell);
  }

  private static final Rule ABOVE_ZERO =
      new Rule("Write a number above 0.", c -> c instanceof Number n && n.doubleValue() > 0);

  private static final Rule ABOVE_ZERO_OR_NOTHING =
      new Rule(
          "Write a number above 0, or nothing if it was not noted.",
          c -> c instanceof Double d && (Double.isNaN(d) || d > 0));

  private static final Rule NAMED =
      new Rule("Give it a name.", c -> c instanceof String s && !s.isBlank());

  private static final Rule DEPOSIT =
      new Rule(
          "Use one of " + DEPOSITS + ".",
          c -> Deposits.all().stream().anyMatch(d -> d.id().equals(c)));

  private static final Rule DATE =
      new Rule("Write a day as 2026-01-31.", c -> c instanceof String s && isDate(s));

  private static final Rule DATE_OR_NOTHING =
      new Rule(
          "Write a day as 2026-01-31, or nothing.",
          c -> c instanceof String s && (s.isEmpty() || isDate(s)));

  private static final Rule SHARE_OR_NOTHING =
      new Rule(
          "Write a share above 0, to 1, or nothing if it is not known.",
          c -> c instanceof Double d && (Double.isNaN(d) || (d > 0 && d <= 1)));

  private static final Rule SHARE =
      new Rule(
          "Write a share above 0, to 1: 0.8 for 80 in 100.",
          c -> c instanceof Double d && d > 0 && d <= 1);

  private static final Rule FORM =
      new Rule("Write liquid or gel.", c -> "liquid".equals(c) || "gel".equals(c));

  private static final Rule READINGS =
      new Rule(
          "Write readings in µm, each above 0, with blanks between.",
          c -> c instanceof String s && areReadings(s));

  private static final Rule UNIT =
      new Rule("Write g (of metal) or ml.", c -> "g".equals(c) || "ml".equals(c));

  private static final Rule NOT_BELOW_ZERO =
      new Rule("Write 0 or a number above.", c -> c instanceof Double d && d >= 0);

  private static final Rule ANY = new Rule("Write a text.", c -> c instanceof String);

  /** In the order of the columns. */
  private static List<Rule> rules(ShopTable table) {
    return switch (table) {
      case BOTTLES ->
          List.of(
              ABOVE_ZERO, NAMED, DEPOSIT, ABOVE_ZERO, ABOVE_ZERO, DATE_OR_NOTHING, NOT_BELOW_ZERO);
      case PRICES -> List.of(ABOVE_ZERO, NAMED, ABOVE_ZERO, UNIT, ABOVE_ZERO, ANY);
      case RUNS ->
          List.of(
              ABOVE_ZERO,
              NAMED,
              NAMED,
              DEPOSIT,
              ANY,
              DATE,
              ABOVE_ZERO_OR_NOTHING,
              ABOVE_ZERO_OR_NOTHING,
              SHARE_OR_NOTHING,
              ABOVE_ZERO_OR_NOTHING,
              ABOVE_ZERO_OR_NOTHING,
              ABOVE_ZERO_OR_NOTHING,
              ABOVE_ZERO_OR_NOTHING,
              READINGS,
              ANY,
              ANY);
      case SETTINGS -> List.of(NAMED, ANY, ANY);
      case SOLUTIONS ->
          List.of(
              NAMED,
              DEPOSIT,
              FORM,
              ABOVE_ZERO,
              SHARE,
              ABOVE_ZERO_OR_NOTHING,
              ABOVE_ZERO_OR_NOTHING,
              ANY,
              ABOVE_ZERO_OR_NOTHING,
              ANY);
    };
  }

  /**
   * Checks a row.
   *
   * @param cells in the order of the table's columns; a number that the book is to give is null
   * @param source where the row is from, for messages
   * @param place which row it is, for messages
   * @throws ShopException naming the first cell that is out of range
   */
  static void check(ShopTable table, List<Object> cells, String source, String place)
      throws ShopException {
    List<Rule> rules = rules(table);
    for (int i = 0; i < cells.size(); i++) {
      String column = table.columns().get(i);
      Rule rule = rules.get(i);
      boolean toBeGiven = i == 0 && cells.get(i) == null;
      if (!toBeGiven && !rule.test().holds(cells.get(i))) {
        throw new ShopException(
            source,
            place + ", " + column,
            "\"" + shown(cells.get(i)) + "\" is out of range",
            rule.remedy());
      }
    }
    if (table == ShopTable.BOTTLES && (Double) cells.get(6) > (Double) cells.get(3)) {
      throw new ShopException(
          source,
          place + ", remaining_g",
          "more is left in the bottle than it holds when full",
          "Check full_g and remaining_g.");
    }
    if (table == ShopTable.SOLUTIONS && !isRange((Double) cells.get(5), (Double) cells.get(6))) {
      throw new ShopException(
          source,
          place + ", volts_from and volts_to",
          "they are no range of voltages",
          "Give both or neither, the lower one first.");
    }
  }

  private static boolean isRange(double from, double to) {
    return Double.isNaN(from) ? Double.isNaN(to) : to >= from;
  }

  private static String shown(Object cell) {
    return cell instanceof Double d && Double.isNaN(d) ? "" : String.valueOf(cell);
  }

  private static boolean isDate(String text) {
    try {
      LocalDate.parse(text);
      return true;
    } catch (DateTimeException e) {
      return false;
    }
  }

  private static boolean areReadings(String text) {
    for (String reading : text.strip().split("\\s+")) {
      try {
        double um = reading.isEmpty() ? 1 : Double.parseDouble(reading);
        if (!(um > 0) || Double.isInfinite(um)) {
          return false;
        }
      } catch (NumberFormatException e) {
        return false;
      }
    }
    return true;
  }
}
