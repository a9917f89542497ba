package org.seamwright.shop;

import java.util.ArrayList;
import java.util.List;

/**
 * The whole book as CSV text (RFC 4180), one table after the other, figures to the last bit.
 *
 * <p>Each line starts with the name of its table; the first line of a table names its columns.
 */
public final class ShopExchange {
  private static final String LINE_END = "\r\n";

  /** What some programs put before UTF-8. */
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private ShopExchange() {}

  /** A row for the book. */
  record Row(ShopTable table, List<Object> cells) {}

  /** The book as CSV; the same book gives the same text. */
  public static String csv(ShopBook book) throws ShopException {
    StringBuilder out = new StringBuilder();
    for (ShopTable table : ShopTable.values()) {
      line(table, List.copyOf(table.columns()), out);
      for (List<Object> row : book.rows(table)) {
        line(table, row, out);
      }
    }
    return out.toString();
  }

  private static void line(ShopTable table, List<?> cells, StringBuilder out) {
    out.append(table.sqlName());
    for (Object cell : cells) {
      boolean missing = cell instanceof Double d && d.isNaN();
      String text = missing ? "" : String.valueOf(cell);
      boolean quoted = text.matches("(?s).*[\",\r\n].*");
      out.append(',').append(quoted ? '"' + text.replace("\"", "\"\"") + '"' : text);
    }
    out.append(LINE_END);
  }

  /**
   * Enters what {@link #csv} wrote; all or nothing. Rows that are there already are left.
   *
   * @param source the file's name, for messages
   * @return how many rows are new
   * @throws ShopException if the text is refused
   */
  public static int enterCsv(ShopBook book, String text, String source) throws ShopException {
    List<Row> rows = new ArrayList<>();
    List<ShopTable> named = new ArrayList<>();
    int number = 0;
    String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    for (List<String> line : lines(plain, separator(plain), source)) {
      number++;
      String place = "record " + number;
      ShopTable table = table(line.get(0), source, place);
      List<String> cells = unpadded(line.subList(1, line.size()), table.columns().size());
      if (cells.size() != table.columns().size()) {
        throw new ShopException(
            source,
            place,
            "it has " + cells.size() + " cells where " + table.columns().size() + " belong",
            "Give " + String.join(", ", table.columns()) + ".");
      }
      if (!named.contains(table)) {
        if (!cells.equals(table.columns())) {
          throw new ShopException(
              source,
              place,
              "the first line of a table must name its columns",
              "Write " + table.sqlName() + "," + String.join(",", table.columns()) + ".");
        }
        named.add(table);
        continue;
      }
      List<Object> row = new ArrayList<>();
      for (int i = 0; i < cells.size(); i++) {
        row.add(table.cell(i, cells.get(i), source, place));
      }
      ShopRanges.check(table, row, source, place);
      rows.add(new Row(table, row));
    }
    return book.insertAll(rows);
  }

  /** Spreadsheets of some languages part cells by semicolons. */
  private static char separator(String text) {
    int end = text.indexOf('\n');
    String first = end < 0 ? text : text.substring(0, end);
    return first.indexOf(',') < 0 && first.indexOf(';') >= 0 ? ';' : ',';
  }

  /** Spreadsheets fill shorter lines up with empty cells. */
  private static List<String> unpadded(List<String> cells, int columns) {
    int used = cells.size();
    while (used > columns && cells.get(used - 1).isEmpty()) {
      used--;
    }
    return cells.subList(0, used);
  }

  private static ShopTable table(String name, String source, String place) throws ShopException {
    for (ShopTable table : ShopTable.values()) {
      if (table.sqlName().equals(name)) {
        return table;
      }
    }
    throw new ShopException(
        source,
        place,
        "\"" + name + "\" is no table of a shop book",
        "Start each line with bottles, prices, runs, settings or solutions.");
  }

  /** Splits by RFC 4180; a quoted cell may hold commas, line breaks and doubled quotes. */
  private static List<List<String>> lines(String text, char separator, String source)
      throws ShopException {
    List<List<String>> lines = new ArrayList<>();
    List<String> line = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted) {
        boolean doubled = c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"';
        i += doubled ? 1 : 0;
        if (c != '"' || doubled) {
          cell.append(c);
        } else {
          quoted = false;
        }
      } else if (c == '"') {
        quoted = true;
      } else if (c == separator || c == '\n') {
        line.add(cell.toString());
        cell.setLength(0);
        if (c == '\n') {
          lines.add(List.copyOf(line));
          line.clear();
        }
      } else if (c != '\r') {
        cell.append(c);
      }
    }
    if (quoted || !line.isEmpty() || cell.length() > 0) {
      throw new ShopException(
          source,
          "record " + (lines.size() + 1),
          "the text ends in the middle of it",
          "Take the whole file, with its last line break.");
    }
    return lines;
  }
}
