package org.seamwright.shop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The whole book as JSON: an object with a list of objects for each table, figures to the last bit;
 * what was not noted is null.
 */
public final class ShopJson {
  private ShopJson() {}

  /** The book; the same book gives the same text. */
  public static String of(ShopBook book) throws ShopException {
    StringBuilder out = new StringBuilder("{");
    String comma = "\n";
    for (ShopTable table : ShopTable.values()) {
      out.append(comma).append("\"").append(table.sqlName()).append("\": ");
      out.append(rows(table, book.rows(table)));
      comma = ",\n";
    }
    return out.append("\n}\n").toString();
  }

  /** Rows of a table as a list of objects. */
  public static String rows(ShopTable table, List<List<Object>> rows) {
    StringBuilder out = new StringBuilder("[");
    for (int i = 0; i < rows.size(); i++) {
      out.append(i == 0 ? "\n  {" : ",\n  {");
      for (int c = 0; c < table.columns().size(); c++) {
        out.append(c == 0 ? "" : ", ").append(value(table.columns().get(c))).append(": ");
        out.append(value(rows.get(i).get(c)));
      }
      out.append('}');
    }
    return out.append(rows.isEmpty() ? "]" : "\n]").toString();
  }

  /** Runs as a list of objects. */
  public static String runs(List<Run> runs) {
    return rows(
        ShopTable.RUNS,
        runs.stream()
            .map(
                run -> {
                  List<Object> cells = ShopRows.cells(run);
                  cells.set(0, run.id());
                  return cells;
                })
            .toList());
  }

  /** An object on one line; values are texts, numbers, such objects and lists of them. */
  public static String object(Map<String, ?> members) {
    StringBuilder out = new StringBuilder("{");
    members.forEach(
        (key, value) ->
            out.append(out.length() == 1 ? "" : ", ")
                .append(value(key))
                .append(": ")
                .append(nested(value)));
    return out.append('}').toString();
  }

  private static String nested(Object value) {
    if (value instanceof Map<?, ?> inner) {
      return object(named(inner));
    }
    if (value instanceof List<?> items) {
      return items.stream().map(ShopJson::nested).collect(Collectors.joining(", ", "[", "]"));
    }
    return value(value);
  }

  private static Map<String, Object> named(Map<?, ?> map) {
    Map<String, Object> named = new LinkedHashMap<>();
    map.forEach((key, value) -> named.put(String.valueOf(key), value));
    return named;
  }

  private static String value(Object value) {
    if (value instanceof Double d && !Double.isFinite(d)) {
      return "null";
    }
    if (!(value instanceof String text)) {
      return String.valueOf(value);
    }
    StringBuilder out = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' ') {
        out.append(String.format("\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }

  /**
   * Enters what {@link #of} wrote; all or nothing. Rows that are there already are left.
   *
   * @param source the file's name, for messages
   * @return how many rows are new
   * @throws ShopException if the text is refused
   */
  public static int enter(ShopBook book, String json, String source) throws ShopException {
    List<ShopExchange.Row> rows = new ArrayList<>();
    for (ShopTable table : ShopTable.values()) {
      int number = 0;
      for (List<String> texts : book.jsonRows(table, json, source)) {
        String place = table.sqlName() + "[" + number + "]";
        number++;
        List<Object> cells = new ArrayList<>();
        for (int c = 0; c < texts.size(); c++) {
          cells.add(table.cell(c, texts.get(c), source, place));
        }
        ShopRanges.check(table, cells, source, place);
        rows.add(new ShopExchange.Row(table, cells));
      }
    }
    return book.insertAll(rows);
  }
}
