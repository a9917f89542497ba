package org.seamwright.shop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * The shop book: one SQLite file of solutions, bottles, prices, runs and settings.
 *
 * <p>When a method that writes has returned, what it wrote survives a kill or a power cut: rollback
 * journal with {@code synchronous=EXTRA} (sqlite.org, "Atomic Commit In SQLite"), chosen over a
 * write-ahead log so that the book is a single file that can be copied and may lie on a share.
 * Every change is one transaction that takes the write lock first; a second program waits up to ten
 * seconds. Not for use by several threads at once.
 */
public final class ShopBook implements AutoCloseable {
  private static final int PATIENCE_MS = 10_000;

  private final Connection connection;
  private final String source;

  private ShopBook(Connection connection, String source) {
    this.connection = connection;
    this.source = source;
  }

  /**
   * Where the book is unless another is named: what the environment variable SEAMWRIGHT_BOOK says,
   * else seamwright-shop.db in the user's home folder.
   */
  public static Path usual() {
    String named = System.getenv("SEAMWRIGHT_BOOK");
    return named == null || named.isBlank()
        ? Path.of(System.getProperty("user.home"), "seamwright-shop.db")
        : Path.of(named);
  }

  /**
   * Opens a book, making it where there is none, and brings an older one to this version.
   *
   * @throws ShopException if it can't be opened or is no shop book
   */
  public static ShopBook open(Path file) throws ShopException {
    String source = file.toString();
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new ShopException(
          source, "", "the folder for the book does not exist", "Make the folder first.");
    }
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(PATIENCE_MS);
    config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
    Connection connection = null;
    try {
      connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
      try (Statement statement = connection.createStatement()) {
        // The driver's settings stop at FULL, which leaves the journal's removal unsynced.
        statement.execute("PRAGMA synchronous = EXTRA");
      }
      ShopSchema.migrate(connection, source);
      return new ShopBook(connection, source);
    } catch (SQLException e) {
      closeQuietly(connection, e);
      throw refused(source, e);
    } catch (ShopException e) {
      closeQuietly(connection, e);
      throw e;
    }
  }

  private static void closeQuietly(Connection connection, Exception why) {
    try {
      if (connection != null) {
        connection.close();
      }
    } catch (SQLException e) {
      why.addSuppressed(e);
    }
  }

  /** Enters a bottle; returns its number. */
  public long add(Bottle b) throws ShopException {
    return insert(
        ShopTable.BOTTLES,
        Arrays.asList(
            null, b.solution(), b.deposit(), b.fullG(), b.gPerL(), b.openedOn(), b.remainingG()));
  }

  /** All bottles by number. */
  public List<Bottle> bottles() throws ShopException {
    return sound(ShopTable.BOTTLES, "ORDER BY id").stream().map(ShopRows::bottle).toList();
  }

  /**
   * Takes metal from a bottle.
   *
   * @param grams g, above 0
   * @throws ShopException if there is no such bottle or not enough in it; nothing is taken then
   */
  public void use(long bottle, double grams) throws ShopException {
    if (!(grams > 0)) {
      throw new IllegalArgumentException("Nothing to take: " + grams);
    }
    int changed =
        write(
            () ->
                update(
                    "UPDATE bottles SET remaining_g = remaining_g - ?1"
                        + " WHERE id = ?2 AND remaining_g >= ?1",
                    grams,
                    bottle));
    if (changed == 0) {
      throw new ShopException(
          source,
          "bottle " + bottle,
          "there is no such bottle, or less than " + grams + " g left in it",
          "See \"shop bottle list\".");
    }
  }

  /** Enters a line of the price list; returns its number. */
  public long add(Price p) throws ShopException {
    return insert(
        ShopTable.PRICES,
        Arrays.asList(null, p.what(), p.size(), p.unit(), p.hundredths(), p.currency()));
  }

  /** The price list, or the lines of one thing where {@code what} is not empty. */
  public List<Price> prices(String what) throws ShopException {
    List<List<Object>> rows =
        what.isEmpty()
            ? sound(ShopTable.PRICES, "ORDER BY id")
            : sound(ShopTable.PRICES, "WHERE what = ? ORDER BY id", what);
    return rows.stream().map(ShopRows::price).toList();
  }

  /** Enters a solution, in place of one of the same name. */
  public void put(ShopSolution solution) throws ShopException {
    List<Object> cells = ShopRows.cells(solution);
    ShopRanges.check(ShopTable.SOLUTIONS, cells, "Entry for the shop book", "solutions");
    write(
        () -> {
          update("DELETE FROM solutions WHERE name = ?1", solution.sheet().name());
          insertRow(ShopTable.SOLUTIONS, cells);
          return null;
        });
  }

  /** The solutions by name. */
  public List<ShopSolution> solutions() throws ShopException {
    return sound(ShopTable.SOLUTIONS, "ORDER BY name").stream().map(ShopRows::solution).toList();
  }

  /**
   * Takes out an entry.
   *
   * @param table where it is
   * @param key its number, or its name where entries have names
   * @throws ShopException if there is none
   */
  public void drop(ShopTable table, String key) throws ShopException {
    String column = table.columns().get(0);
    String sql = "DELETE FROM " + table.sqlName() + " WHERE " + column + " = ?1";
    if (write(() -> update(sql, key)) == 0) {
      throw new ShopException(
          source,
          table.sqlName() + ", " + column + " " + key,
          "there is no such entry",
          "See the list.");
    }
  }

  /** Enters a run; returns its number. */
  public long add(Run run) throws ShopException {
    return insert(ShopTable.RUNS, ShopRows.cells(run));
  }

  /**
   * Runs, latest first. A filter that is empty lets all pass.
   *
   * @param most how many at most
   */
  public List<Run> runs(String job, String deposit, String operator, int most)
      throws ShopException {
    StringBuilder where = new StringBuilder("WHERE 1");
    List<Object> values = new ArrayList<>();
    String[] filter = {"job", job, "deposit", deposit, "operator", operator};
    for (int i = 0; i < filter.length; i += 2) {
      if (!filter[i + 1].isEmpty()) {
        where.append(" AND ").append(filter[i]).append(" = ?");
        values.add(filter[i + 1]);
      }
    }
    values.add(most);
    where.append(" ORDER BY date DESC, id DESC LIMIT ?");
    return sound(ShopTable.RUNS, where.toString(), values.toArray()).stream()
        .map(ShopRows::run)
        .toList();
  }

  /** The settings by key, in the order of the keys. */
  public Map<String, String> settings() throws ShopException {
    Map<String, String> settings = new LinkedHashMap<>();
    for (List<Object> row : rows(ShopTable.SETTINGS)) {
      settings.put((String) row.get(0), (String) row.get(1));
    }
    return settings;
  }

  /**
   * Sets a setting.
   *
   * @param value its text; empty takes the setting out
   */
  public void set(String key, String value) throws ShopException {
    write(
        () ->
            value.isEmpty()
                ? update("DELETE FROM settings WHERE key = ?1", key)
                : update(
                    "INSERT INTO settings (key, value, unit) VALUES (?1, ?2, '')"
                        + " ON CONFLICT (key) DO UPDATE SET value = ?2",
                    key,
                    value));
  }

  /** Faults that SQLite finds in the file; empty if it is sound. */
  public List<String> faults() throws ShopException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
      List<String> faults = new ArrayList<>();
      while (row.next()) {
        if (!row.getString(1).equals("ok")) {
          faults.add(row.getString(1));
        }
      }
      return faults;
    } catch (SQLException e) {
      throw refused(source, e);
    }
  }

  /** All rows of a table by its first column. */
  public List<List<Object>> rows(ShopTable table) throws ShopException {
    return rows(table, "ORDER BY 1");
  }

  /** Rows whose every cell is in range: another program may have written into the file. */
  private List<List<Object>> sound(ShopTable table, String rest, Object... values)
      throws ShopException {
    List<List<Object>> rows = rows(table, rest, values);
    for (List<Object> row : rows) {
      ShopRanges.check(table, row, source, table.sqlName() + ", id " + row.get(0));
    }
    return rows;
  }

  private List<List<Object>> rows(ShopTable table, String rest, Object... values)
      throws ShopException {
    String sql =
        "SELECT " + String.join(", ", table.columns()) + " FROM " + table.sqlName() + " " + rest;
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, Arrays.asList(values));
      try (ResultSet row = statement.executeQuery()) {
        List<List<Object>> rows = new ArrayList<>();
        while (row.next()) {
          rows.add(ShopRows.read(table, row));
        }
        return rows;
      }
    } catch (SQLException e) {
      throw refused(source, e);
    }
  }

  /**
   * Enters rows of several tables in one transaction. A row that is there already, alike in every
   * cell, is left; one of the same number that differs is refused, and nothing is entered then.
   *
   * @return how many rows are new
   */
  int insertAll(List<ShopExchange.Row> rows) throws ShopException {
    return write(
        () -> {
          int added = 0;
          for (ShopExchange.Row row : rows) {
            String key = row.table().columns().get(0);
            List<List<Object>> there =
                rows(row.table(), "WHERE " + key + " = ?", row.cells().get(0));
            if (there.isEmpty()) {
              insertRow(row.table(), row.cells());
              added++;
            } else if (!there.get(0).equals(row.cells())) {
              throw new ShopException(
                  source,
                  row.table().sqlName() + ", " + key + " " + row.cells().get(0),
                  "the book has another entry under this " + key,
                  "Import into an empty book, or change the " + key + " in the file.");
            }
          }
          return added;
        });
  }

  /**
   * Cells of a table in JSON text, figures as they are written there; SQLite is the parser.
   *
   * @throws ShopException if it isn't JSON, has unknown members or lacks a text
   */
  List<List<String>> jsonRows(ShopTable table, String json, String source) throws ShopException {
    List<String> picks = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      String arrow = table.type(i) == ShopTable.Type.TEXT ? " ->> " : " -> ";
      picks.add("value" + arrow + "'$." + table.columns().get(i) + "'");
    }
    String sql =
        "SELECT " + String.join(", ", picks) + " FROM json_each(?, '$." + table.sqlName() + "')";
    try {
      checkMembers(json, source);
      try (PreparedStatement statement = connection.prepareStatement(sql)) {
        bind(statement, List.of(json));
        try (ResultSet row = statement.executeQuery()) {
          List<List<String>> rows = new ArrayList<>();
          while (row.next()) {
            rows.add(jsonRow(table, row, source));
          }
          return rows;
        }
      }
    } catch (SQLException e) {
      throw new ShopException(
          source, "", "this is not valid JSON", "Take a file that \"shop export\" wrote.", e);
    }
  }

  private void checkMembers(String json, String source) throws SQLException, ShopException {
    try (PreparedStatement statement =
        connection.prepareStatement("SELECT key FROM json_each(?)")) {
      bind(statement, List.of(json));
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          String key = row.getString(1);
          if (Arrays.stream(ShopTable.values()).noneMatch(t -> t.sqlName().equals(key))) {
            throw new ShopException(
                source, "", "\"" + key + "\" is no table of a shop book", "Delete it.");
          }
        }
      }
    }
  }

  private static List<String> jsonRow(ShopTable table, ResultSet row, String source)
      throws SQLException, ShopException {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      String text = row.getString(i + 1);
      boolean real = table.type(i) == ShopTable.Type.REAL;
      if (text == null && !real) {
        throw new ShopException(
            source,
            table.sqlName() + "[" + (row.getRow() - 1) + "]",
            table.columns().get(i) + " is missing",
            "Give it; an empty text is \"\".");
      }
      cells.add(real && (text == null || text.equals("null")) ? "" : text);
    }
    return cells;
  }

  private long insert(ShopTable table, List<Object> cells) throws ShopException {
    ShopRanges.check(table, cells, "Entry for the shop book", table.sqlName());
    return write(
        () -> {
          insertRow(table, cells);
          try (Statement statement = connection.createStatement();
              ResultSet row = statement.executeQuery("SELECT last_insert_rowid()")) {
            return row.getLong(1);
          }
        });
  }

  private void insertRow(ShopTable table, List<Object> cells) throws SQLException {
    String marks = "?" + ", ?".repeat(cells.size() - 1);
    update(
        "INSERT INTO "
            + table.sqlName()
            + " ("
            + String.join(", ", table.columns())
            + ") VALUES ("
            + marks
            + ")",
        cells.toArray());
  }

  private int update(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, Arrays.asList(values));
      return statement.executeUpdate();
    }
  }

  private static void bind(PreparedStatement statement, List<Object> values) throws SQLException {
    for (int i = 0; i < values.size(); i++) {
      Object value = values.get(i);
      boolean missing = value instanceof Double d && d.isNaN();
      statement.setObject(i + 1, missing ? null : value);
    }
  }

  /** What is done in one transaction. */
  @FunctionalInterface
  private interface Change<T> {
    T make() throws SQLException, ShopException;
  }

  private <T> T write(Change<T> change) throws ShopException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try {
        T result = change.make();
        statement.execute("COMMIT");
        return result;
      } catch (SQLException | ShopException e) {
        ShopSchema.rollBack(statement, e);
        throw e;
      }
    } catch (SQLException e) {
      throw refused(source, e);
    }
  }

  /** Limits the file's size, which has the effect of a full disk. */
  void limitPages(int pages) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA max_page_count = " + pages);
    }
  }

  private static ShopException refused(String source, SQLException e) {
    SQLiteErrorCode code =
        e instanceof SQLiteException s ? s.getResultCode() : SQLiteErrorCode.SQLITE_ERROR;
    String problem = "the shop book cannot be used (" + e.getMessage() + ")";
    String remedy = "Check the file's permissions and the disk.";
    if (code == SQLiteErrorCode.SQLITE_FULL) {
      problem = "the disk is full; nothing of this entry was written";
      remedy = "Make space, then enter it again.";
    } else if (code == SQLiteErrorCode.SQLITE_NOTADB) {
      problem = "this file is no shop book";
      remedy = "Name another file.";
    } else if (code == SQLiteErrorCode.SQLITE_BUSY) {
      problem = "another program has kept the book locked";
      remedy = "Wait for it to end, then try again.";
    } else if (code == SQLiteErrorCode.SQLITE_CORRUPT) {
      problem = "the book is damaged";
      remedy = "Go back to a copy or an export.";
    }
    return new ShopException(source, "", problem, remedy, e);
  }

  @Override
  public void close() throws ShopException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw refused(source, e);
    }
  }
}
