package org.seamwright.shop;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The tables with their columns, in the order of the exchange files. */
public enum ShopTable {
  /** Bottles. */
  BOTTLES("id:i", "solution", "deposit", "full_g:r", "g_per_l:r", "opened_on", "remaining_g:r"),
  /** The price list. */
  PRICES("id:i", "what", "size:r", "unit", "hundredths:i", "currency"),
  /** Runs. */
  RUNS(
      "id:i",
      "job",
      "section",
      "deposit",
      "operator",
      "date",
      "solution_ml:r",
      "g_per_l:r",
      "usable_share:r",
      "minutes:r",
      "amp_hours:r",
      "before_g:r",
      "after_g:r",
      "readings_um",
      "photos",
      "notes"),
  /** Settings of the shop. */
  SETTINGS("key", "value", "unit"),
  /** Solutions as their sheets have them. */
  SOLUTIONS(
      "name",
      "deposit",
      "form",
      "g_per_l:r",
      "usable_share:r",
      "volts_from:r",
      "volts_to:r",
      "anode",
      "ah_per_l:r",
      "keep");

  // Lists that cannot be changed, which their type doesn't say.
  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> columns;

  @SuppressWarnings("ImmutableEnumChecker")
  private final List<Type> types;

  /** What a column holds. */
  enum Type {
    TEXT,
    INTEGER,
    REAL
  }

  ShopTable(String... columns) {
    this.columns = Arrays.stream(columns).map(c -> c.split(":", -1)[0]).toList();
    this.types =
        Arrays.stream(columns)
            .map(c -> c.endsWith(":i") ? Type.INTEGER : c.endsWith(":r") ? Type.REAL : Type.TEXT)
            .toList();
  }

  /** Name in the file. */
  public String sqlName() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Names of the columns. */
  public List<String> columns() {
    return columns;
  }

  Type type(int column) {
    return types.get(column);
  }

  /**
   * A cell from its text; empty text in a column of figures is one that was not noted.
   *
   * @throws ShopException if it is not of the column's kind
   */
  Object cell(int column, String text, String source, String place) throws ShopException {
    try {
      return switch (types.get(column)) {
        case TEXT -> text;
        case INTEGER -> Long.valueOf(text);
        case REAL -> text.isEmpty() ? Double.valueOf(Double.NaN) : finite(text);
      };
    } catch (NumberFormatException e) {
      throw new ShopException(
          source,
          place + ", " + columns.get(column),
          "\"" + text + "\" is not a number",
          "Write a number with a point, without unit.",
          e);
    }
  }

  private static Double finite(String text) {
    Double value = Double.valueOf(text);
    if (!Double.isFinite(value)) {
      throw new NumberFormatException(text);
    }
    return value;
  }
}
