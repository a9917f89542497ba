package org.seamwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShopBookTest {
  @TempDir private Path folder;

  static Run run(String job, String deposit, double gainG) {
    return new Run(
        0, job, "1", deposit, "A", "2026-01-02", 100, 20, 0.5, 10, 1.5, 50, 50 + gainG, "", "", "");
  }

  private static Bottle bottle(double leftG) {
    return new Bottle(0, "invented gold", "gold-hard", 10, 20, "2026-01-01", leftG);
  }

  private Path file() {
    return folder.resolve("book.db");
  }

  @Test
  void keepsWhatIsEntered() throws Exception {
    Run odd =
        new Run(
            0,
            "a",
            "b",
            "gold-hard",
            "Ö",
            "2026-01-01",
            Double.NaN,
            0.1,
            1,
            2,
            3,
            4,
            5,
            "1.2 1.3",
            "x.jpg\ny.jpg",
            "\"so\", he said");
    try (ShopBook book = ShopBook.open(file())) {
      assertThat(book.add(odd)).isEqualTo(1);
      assertThat(book.add(bottle(10))).isEqualTo(1);
      book.use(1, 2.5);
    }
    try (ShopBook book = ShopBook.open(file())) {
      Run back = book.runs("a", "gold-hard", "Ö", 5).get(0);
      assertThat(back.notes()).isEqualTo(odd.notes());
      assertThat(back.solutionMl()).isNaN();
      assertThat(back.gainG()).isEqualTo(1);
      assertThat(book.bottles().get(0).remainingG()).isEqualTo(7.5);
      assertThat(book.runs("b", "", "", 5)).isEmpty();
    }
  }

  @Test
  void moreThanIsLeftIsRefused() throws Exception {
    try (ShopBook book = ShopBook.open(file())) {
      book.add(bottle(1));
      assertThatThrownBy(() -> book.use(1, 1.5)).isInstanceOf(ShopException.class);
      assertThatThrownBy(() -> book.use(2, 0.5)).isInstanceOf(ShopException.class);
      assertThat(book.bottles().get(0).remainingG()).isEqualTo(1);
    }
  }

  /** Text of a file of version 1, as its program made it. */
  @Test
  void bringsVersionOneToThePresent() throws Exception {
    sql(
        "CREATE TABLE bottles (id INTEGER PRIMARY KEY, solution TEXT NOT NULL, deposit TEXT NOT"
            + " NULL, full_g REAL NOT NULL, g_per_l REAL NOT NULL, opened_on TEXT NOT NULL,"
            + " remaining_g REAL NOT NULL CHECK (remaining_g >= 0 AND remaining_g <= full_g))",
        "CREATE TABLE prices (id INTEGER PRIMARY KEY, what TEXT NOT NULL, size REAL NOT NULL, unit"
            + " TEXT NOT NULL, hundredths INTEGER NOT NULL, currency TEXT NOT NULL)",
        "CREATE TABLE runs (id INTEGER PRIMARY KEY, job TEXT NOT NULL, section TEXT NOT NULL,"
            + " deposit TEXT NOT NULL, operator TEXT NOT NULL, date TEXT NOT NULL, solution_ml"
            + " REAL, g_per_l REAL, usable_share REAL, minutes REAL, amp_hours REAL, before_g"
            + " REAL, after_g REAL, readings_um TEXT NOT NULL, notes TEXT NOT NULL)",
        "CREATE TABLE settings (key TEXT PRIMARY KEY, value TEXT NOT NULL, unit TEXT NOT NULL)",
        "INSERT INTO runs VALUES (7, 'cup', 'rim', 'gold-hard', 'A', '2026-01-02', 10, 20, 0.5, 3,"
            + " 1, 50, 51, '', 'kept')",
        "PRAGMA application_id = 1399682882",
        "PRAGMA user_version = 1");
    try (ShopBook book = ShopBook.open(file())) {
      Run run = book.runs("cup", "", "", 9).get(0);
      assertThat(run.id()).isEqualTo(7);
      assertThat(run.notes()).isEqualTo("kept");
      assertThat(run.photos()).isEmpty();
      assertThat(book.add(run("cup", "gold-hard", 1))).isEqualTo(8);
      assertThat(book.faults()).isEmpty();
    }
  }

  @Test
  void aLaterVersionAndAnotherFileAreRefused() throws Exception {
    ShopBook.open(file()).close();
    sql("PRAGMA user_version = 99");
    assertThatThrownBy(() -> ShopBook.open(file())).hasMessageContaining("version 99");
    Path other = folder.resolve("other.db");
    Files.writeString(other, "no database".repeat(500));
    assertThatThrownBy(() -> ShopBook.open(other)).hasMessageContaining("no shop book");
    assertThat(Files.readString(other)).startsWith("no database");
  }

  @Test
  void anotherProgramsDatabaseIsLeftAlone() throws Exception {
    sql("CREATE TABLE theirs (x)");
    byte[] before = Files.readAllBytes(file());
    assertThatThrownBy(() -> ShopBook.open(file())).hasMessageContaining("no shop book");
    assertThat(Files.readAllBytes(file())).isEqualTo(before);
  }

  @Test
  void aFullDiskLosesNothingConfirmed() throws Exception {
    int confirmed = 0;
    try (ShopBook book = ShopBook.open(file())) {
      book.limitPages(14);
      try {
        while (confirmed < 100_000) {
          book.add(run("cup", "gold-hard", 1));
          confirmed++;
        }
      } catch (ShopException e) {
        assertThat(e).hasMessageContaining("disk is full");
      }
      assertThat(confirmed).isBetween(1, 99_999);
      assertThat(book.runs("", "", "", 100_000)).hasSize(confirmed);
    }
    try (ShopBook book = ShopBook.open(file())) {
      assertThat(book.faults()).isEmpty();
      assertThat(book.runs("", "", "", 100_000)).hasSize(confirmed);
      book.add(run("cup", "gold-hard", 1));
    }
  }

  @Test
  void twoWritersLoseNothing() throws Exception {
    try (ShopBook book = ShopBook.open(file())) {
      book.add(bottle(10));
    }
    Callable<Void> writer =
        () -> {
          try (ShopBook book = ShopBook.open(file())) {
            for (int i = 0; i < 40; i++) {
              book.add(run("cup", "gold-hard", 1));
              book.use(1, 0.125);
            }
          }
          return null;
        };
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      for (Future<Void> done : two.invokeAll(List.of(writer, writer))) {
        done.get();
      }
    } finally {
      two.shutdown();
    }
    try (ShopBook book = ShopBook.open(file())) {
      assertThat(book.runs("", "", "", 100)).hasSize(80);
      // Eighths are exact in binary: 80 × 0.125 empties it.
      assertThat(book.bottles().get(0).remainingG()).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void exportAndImportGiveTheSameBook(long seed) throws Exception {
    Random random = new Random(seed);
    String signs = "a,\"\n;é µ'\\";
    try (ShopBook book = ShopBook.open(file());
        ShopBook copy = ShopBook.open(folder.resolve("copy.db"));
        ShopBook again = ShopBook.open(folder.resolve("again.db"))) {
      for (int i = 0; i < 30; i++) {
        StringBuilder note = new StringBuilder();
        random.ints(8, 0, signs.length()).forEach(k -> note.append(signs.charAt(k)));
        double figure = random.nextInt(4) == 0 ? Double.NaN : 1e-5 * (1 - random.nextDouble());
        book.add(
            new Run(
                0,
                "j",
                "s",
                "gold-hard",
                "A",
                "2026-01-01",
                figure,
                random.nextDouble(),
                1,
                2,
                3,
                4,
                5,
                "",
                "",
                note.toString()));
      }
      book.add(bottle(random.nextDouble()));
      book.add(new Price(0, "x", 0.1, "g", 1234, "EUR"));
      String csv = ShopExchange.csv(book);
      assertThat(ShopExchange.enterCsv(copy, csv, "t.csv")).isEqualTo(32);
      assertThat(ShopExchange.enterCsv(copy, csv, "t.csv")).isZero();
      String json = ShopJson.of(book);
      assertThat(ShopJson.enter(again, json, "t.json")).isEqualTo(32);
      for (ShopTable table : ShopTable.values()) {
        assertThat(copy.rows(table)).isEqualTo(book.rows(table));
        assertThat(again.rows(table)).isEqualTo(book.rows(table));
      }
      assertThat(ShopJson.of(again)).isEqualTo(json);
    }
  }

  @Test
  void aClashEntersNothing() throws Exception {
    try (ShopBook book = ShopBook.open(file());
        ShopBook other = ShopBook.open(folder.resolve("other.db"))) {
      book.add(run("cup", "gold-hard", 1));
      other.add(bottle(1));
      other.add(run("bowl", "gold-hard", 1));
      String csv = ShopExchange.csv(other);
      assertThatThrownBy(() -> ShopExchange.enterCsv(book, csv, "t"))
          .hasMessageContaining("another entry");
      assertThat(book.bottles()).isEmpty();
      assertThatThrownBy(() -> ShopJson.enter(book, "{\"bottles\":[{\"id\":1}]}", "t"))
          .isInstanceOf(ShopException.class);
      assertThatThrownBy(() -> ShopJson.enter(book, "{", "t")).hasMessageContaining("JSON");
      assertThatThrownBy(() -> ShopJson.enter(book, "{\"x\":[]}", "t"))
          .hasMessageContaining("\"x\"");
    }
  }

  private void sql(String... lines) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement()) {
      for (String line : lines) {
        statement.execute(line);
      }
    }
  }

  @Test
  void theFileIsOneFile() throws Exception {
    try (ShopBook book = ShopBook.open(file())) {
      book.add(bottle(1));
      try (var files = Files.list(folder)) {
        assertThat(files).hasSize(1);
      }
      assertThat(new String(Files.readAllBytes(file()), 0, 15, StandardCharsets.US_ASCII))
          .isEqualTo("SQLite format 3");
    }
  }

  /** One cell out of range in a file that is right otherwise: refused with its place, all of it. */
  @ParameterizedTest
  @CsvSource({
    "full_g, -10",
    "g_per_l, 0",
    "deposit, gold",
    "opened_on, yesterday",
    "remaining_g, 11",
    "size, 0",
    "unit, oz",
    "hundredths, 0",
    "what, ''",
    "date, 2026-02-30",
    "solution_ml, -1",
    "usable_share, 1.5",
    "minutes, 0",
    "amp_hours, -2",
    "before_g, 0",
    "readings_um, 1.2 thick",
    "readings_um, -1",
    "job, ''",
  })
  void importRefusesWhatNoBenchNotes(String column, String wrong) throws Exception {
    try (ShopBook book = ShopBook.open(file());
        ShopBook other = ShopBook.open(folder.resolve("other.db"))) {
      other.add(bottle(10));
      other.add(new Price(0, "invented gold", 10, "g", 90_000, "EUR"));
      other.add(run("cup", "gold-hard", 1));
      String[] lines = ShopExchange.csv(other).split("\r\n", -1);
      int changed = 0;
      for (int i = 0; i + 1 < lines.length; i++) {
        List<String> cells = new ArrayList<>(List.of(lines[i].split(",", -1)));
        List<String> next = new ArrayList<>(List.of(lines[i + 1].split(",", -1)));
        int at = cells.indexOf(column);
        if (at > 0 && changed == 0) {
          next.set(at, wrong);
          lines[i + 1] = String.join(",", next);
          changed++;
        }
      }
      assertThat(changed).isOne();
      String csv = String.join("\r\n", lines);
      assertThatThrownBy(() -> ShopExchange.enterCsv(book, csv, "t.csv"))
          .isInstanceOf(ShopException.class)
          .hasMessageContainingAll("t.csv", "record", column);
      assertThat(book.bottles()).isEmpty();
      assertThat(book.prices("")).isEmpty();
      assertThat(book.runs("", "", "", 9)).isEmpty();
    }
  }

  /** What another program wrote into the file is named and can still be exported. */
  @Test
  void aSpoiltRowIsNamedAndCanBeExported() throws Exception {
    try (ShopBook book = ShopBook.open(file())) {
      book.add(run("cup", "gold-hard", 1));
    }
    sql("UPDATE runs SET readings_um = 'thick'");
    try (ShopBook book = ShopBook.open(file())) {
      assertThatThrownBy(() -> book.runs("", "", "", 9))
          .isInstanceOf(ShopException.class)
          .hasMessageContainingAll("runs, id 1", "readings_um", "thick");
      assertThat(ShopExchange.csv(book)).contains("thick");
    }
  }

  /** As spreadsheets save it: a mark before the text, semicolons, shorter lines filled up. */
  @Test
  void readsWhatASpreadsheetMakesOfIt() throws Exception {
    try (ShopBook book = ShopBook.open(file());
        ShopBook copy = ShopBook.open(folder.resolve("copy.db"))) {
      book.add(bottle(4));
      book.add(run("cup", "gold-hard", 1));
      StringBuilder saved = new StringBuilder("\uFEFF");
      for (String line : ShopExchange.csv(book).split("\r\n")) {
        List<String> cells = new ArrayList<>(List.of(line.split(",", -1)));
        while (cells.size() < 17) {
          cells.add("");
        }
        saved.append(String.join(";", cells)).append("\r\n");
      }
      assertThat(ShopExchange.enterCsv(copy, saved.toString(), "t.csv")).isEqualTo(2);
      for (ShopTable table : ShopTable.values()) {
        assertThat(copy.rows(table)).isEqualTo(book.rows(table));
      }
    }
  }
}
