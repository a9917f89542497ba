package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Rows in columns under a head that is repeated on each page; cells wrap. */
final class Table {
  private static final double PAD = 5;
  private static final double GUTTER = 10;

  private final Sheet sheet;
  private final List<Column> columns;
  private final Style body;

  /**
   * A column.
   *
   * @param title its head
   * @param share of the width, relative to the other columns
   * @param right whether cells end at the right, as figures do
   */
  record Column(String title, double share, boolean right) {}

  Table(Sheet sheet, Style body, Column... columns) {
    this.sheet = sheet;
    this.body = body;
    this.columns = List.of(columns);
  }

  /**
   * Sets the head and the rows; a row is never split over pages, and neither the first nor the last
   * stands alone on one.
   */
  void rows(List<List<String>> rows) throws IOException {
    if (rows.isEmpty()) {
      return;
    }
    int n = rows.size();
    sheet.need(headHeight() + rowHeight(rows.get(0)) + (n > 1 ? rowHeight(rows.get(1)) : 0));
    sheet.begin("Table");
    head();
    for (int i = 0; i < n; i++) {
      double height = rowHeight(rows.get(i));
      boolean leavesOne =
          i == n - 2 && i > 0 && height + rowHeight(rows.get(n - 1)) > sheet.roomLeft();
      if (height > sheet.roomLeft() || leavesOne) {
        sheet.newPage();
        // Said once; on later pages it is there for the eye.
        sheet.beginDecoration();
        head();
        sheet.endDecoration();
      }
      row(rows.get(i));
    }
    sheet.end();
  }

  private double headHeight() {
    return Style.LABEL.leading() + 2 * PAD;
  }

  private void head() throws IOException {
    double x = sheet.left();
    sheet.begin("TR");
    for (Column column : columns) {
      sheet.begin("TH");
      double w = width(column);
      String title = sheet.wrap(column.title(), Style.LABEL, w, 1).get(0);
      double base = sheet.y + Style.LABEL.rise();
      if (column.right()) {
        sheet.lineRight(title, Style.LABEL, x + w, base);
      } else {
        sheet.line(title, Style.LABEL, x, base);
      }
      sheet.end();
      x += w + GUTTER;
    }
    sheet.end();
    sheet.y += Style.LABEL.leading() + PAD;
    sheet.rule(sheet.left(), sheet.y, sheet.width(), 0.9, Style.INK);
    sheet.y += PAD;
  }

  private double width(Column column) {
    double shares = 0;
    for (Column c : columns) {
      shares += c.share();
    }
    return (sheet.width() - GUTTER * (columns.size() - 1)) * column.share() / shares;
  }

  private double rowHeight(List<String> row) throws IOException {
    double height = 0;
    for (int c = 0; c < columns.size(); c++) {
      height = Math.max(height, sheet.height(row.get(c), body, width(columns.get(c))));
    }
    return height + 2 * PAD;
  }

  private void row(List<String> row) throws IOException {
    double height = rowHeight(row);
    double x = sheet.left();
    sheet.begin("TR");
    for (int c = 0; c < columns.size(); c++) {
      sheet.begin("TD");
      Column column = columns.get(c);
      double w = width(column);
      double at = sheet.y;
      List<String> lines =
          row.get(c).isEmpty() ? new ArrayList<>() : sheet.wrap(row.get(c), body, w, 99);
      for (String line : lines) {
        if (column.right()) {
          sheet.lineRight(line, body, x + w, at + body.rise());
        } else {
          sheet.line(line, body, x, at + body.rise());
        }
        at += body.leading();
      }
      sheet.end();
      x += w + GUTTER;
    }
    sheet.end();
    sheet.y += height - PAD;
    sheet.rule(sheet.left(), sheet.y, sheet.width(), 0.5, Style.HAIRLINE);
    sheet.y += PAD;
  }
}
