package org.seamwright.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.seamwright.plating.Solution;

/** Rows of the tables to records and back; cells in the order of {@link ShopTable#columns}. */
final class ShopRows {
  private ShopRows() {}

  static List<Object> read(ShopTable table, ResultSet row) throws SQLException {
    List<Object> cells = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      cells.add(
          switch (table.type(i)) {
            case TEXT -> row.getString(i + 1);
            case INTEGER -> row.getLong(i + 1);
            case REAL -> row.getObject(i + 1) == null ? Double.NaN : row.getDouble(i + 1);
          });
    }
    return cells;
  }

  static Bottle bottle(List<Object> c) {
    return new Bottle(
        (Long) c.get(0), text(c, 1), text(c, 2), real(c, 3), real(c, 4), text(c, 5), real(c, 6));
  }

  static Price price(List<Object> c) {
    return new Price(
        (Long) c.get(0), text(c, 1), real(c, 2), text(c, 3), (Long) c.get(4), text(c, 5));
  }

  static Run run(List<Object> c) {
    return new Run(
        (Long) c.get(0),
        text(c, 1),
        text(c, 2),
        text(c, 3),
        text(c, 4),
        text(c, 5),
        real(c, 6),
        real(c, 7),
        real(c, 8),
        real(c, 9),
        real(c, 10),
        real(c, 11),
        real(c, 12),
        text(c, 13),
        text(c, 14),
        text(c, 15));
  }

  static ShopSolution solution(List<Object> c) {
    return new ShopSolution(
        text(c, 1),
        real(c, 3),
        real(c, 4),
        maybe(c, 8),
        new Solution(
            text(c, 0),
            text(c, 2).equals("gel") ? Solution.Form.GEL : Solution.Form.LIQUID,
            maybe(c, 5),
            maybe(c, 6),
            text(c, 7),
            text(c, 9)));
  }

  static List<Object> cells(ShopSolution s) {
    return List.of(
        s.sheet().name(),
        s.deposit(),
        s.sheet().form() == Solution.Form.GEL ? "gel" : "liquid",
        s.gPerL(),
        s.usableShare(),
        s.sheet().fromVolts().orElse(Double.NaN),
        s.sheet().toVolts().orElse(Double.NaN),
        s.sheet().anode(),
        s.mostAhPerL().orElse(Double.NaN),
        s.sheet().keep());
  }

  private static OptionalDouble maybe(List<Object> cells, int column) {
    double value = real(cells, column);
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** Cells of a run that is to be entered; its number is the book's to give. */
  static List<Object> cells(Run r) {
    return Arrays.asList(
        null,
        r.job(),
        r.section(),
        r.deposit(),
        r.operator(),
        r.date(),
        r.solutionMl(),
        r.gPerL(),
        r.usableShare(),
        r.minutes(),
        r.ampHours(),
        r.beforeG(),
        r.afterG(),
        r.readingsUm(),
        r.photos(),
        r.notes());
  }

  private static String text(List<Object> cells, int column) {
    return (String) cells.get(column);
  }

  private static double real(List<Object> cells, int column) {
    return (Double) cells.get(column);
  }
}
