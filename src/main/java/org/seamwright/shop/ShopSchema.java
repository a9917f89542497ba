package org.seamwright.shop;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** Tables of the shop book and the way from each earlier version to this one. */
final class ShopSchema {
  /** Marks the file as a shop book ("SmwB"); 0 in any other SQLite file that sets nothing. */
  static final int APPLICATION_ID = 0x536d7742;

  private static final List<String> TO_1 =
      List.of(
          "CREATE TABLE bottles (id INTEGER PRIMARY KEY, solution TEXT NOT NULL,"
              + " deposit TEXT NOT NULL, full_g REAL NOT NULL, g_per_l REAL NOT NULL,"
              + " opened_on TEXT NOT NULL, remaining_g REAL NOT NULL"
              + " CHECK (remaining_g >= 0 AND remaining_g <= full_g))",
          "CREATE TABLE prices (id INTEGER PRIMARY KEY, what TEXT NOT NULL, size REAL NOT NULL,"
              + " unit TEXT NOT NULL, hundredths INTEGER NOT NULL, currency TEXT NOT NULL)",
          "CREATE TABLE runs (id INTEGER PRIMARY KEY, job TEXT NOT NULL, section TEXT NOT NULL,"
              + " deposit TEXT NOT NULL, operator TEXT NOT NULL, date TEXT NOT NULL,"
              + " solution_ml REAL, g_per_l REAL, usable_share REAL, minutes REAL,"
              + " amp_hours REAL, before_g REAL, after_g REAL, readings_um TEXT NOT NULL,"
              + " notes TEXT NOT NULL)",
          "CREATE TABLE settings (key TEXT PRIMARY KEY, value TEXT NOT NULL, unit TEXT NOT NULL)");

  /** Photos, and indexes for the questions that are asked of many runs. */
  private static final List<String> TO_2 =
      List.of(
          "ALTER TABLE runs ADD COLUMN photos TEXT NOT NULL DEFAULT ''",
          "CREATE INDEX runs_by_deposit ON runs (deposit, operator, date, id)",
          "CREATE INDEX runs_by_deposit_date ON runs (deposit, date, id)",
          "CREATE INDEX runs_by_job ON runs (job, date, id)",
          "CREATE INDEX runs_by_date ON runs (date, id)",
          "CREATE INDEX prices_by_what ON prices (what)");

  /** Solutions. */
  private static final List<String> TO_3 =
      List.of(
          "CREATE TABLE solutions (name TEXT PRIMARY KEY, deposit TEXT NOT NULL, form TEXT NOT NULL,"
              + " g_per_l REAL NOT NULL, usable_share REAL NOT NULL, volts_from REAL, volts_to REAL,"
              + " anode TEXT NOT NULL, ah_per_l REAL, keep TEXT NOT NULL)");

  private static final List<List<String>> STEPS = List.of(TO_1, TO_2, TO_3);

  /** Version that this program writes. */
  static final int VERSION = STEPS.size();

  private ShopSchema() {}

  /**
   * Brings a book to this version; all or nothing, also against a second program that does the
   * same.
   *
   * @throws ShopException if the file is another program's, or a later version
   */
  static void migrate(Connection connection, String source) throws SQLException, ShopException {
    if (pragma(connection, "user_version") == VERSION
        && pragma(connection, "application_id") == APPLICATION_ID) {
      return;
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try {
        int version = pragma(connection, "user_version");
        checkOwn(connection, version, source);
        for (List<String> step : STEPS.subList(version, VERSION)) {
          for (String sql : step) {
            statement.execute(sql);
          }
        }
        statement.execute("PRAGMA application_id = " + APPLICATION_ID);
        statement.execute("PRAGMA user_version = " + VERSION);
        statement.execute("COMMIT");
      } catch (SQLException | ShopException e) {
        rollBack(statement, e);
        throw e;
      }
    }
  }

  private static void checkOwn(Connection connection, int version, String source)
      throws SQLException, ShopException {
    int application = pragma(connection, "application_id");
    boolean empty = pragma(connection, "schema_version") == 0;
    if (!empty && application != APPLICATION_ID) {
      throw new ShopException(
          source, "", "this is a database, but no shop book", "Name another file.");
    }
    if (version > VERSION || version < 0) {
      throw new ShopException(
          source,
          "",
          "the book is of version " + version + ", this program knows up to " + VERSION,
          "Use the newer program that wrote it.");
    }
  }

  static int pragma(Connection connection, String name) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA " + name)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }

  /** Rolls back what SQLite has not rolled back by itself, as it does on a full disk. */
  static void rollBack(Statement statement, Exception why) {
    try {
      statement.execute("ROLLBACK");
    } catch (SQLException e) {
      why.addSuppressed(e);
    }
  }
}
