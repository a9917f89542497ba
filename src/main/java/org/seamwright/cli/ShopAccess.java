package org.seamwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.seamwright.basis.InputException;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopJson;
import org.seamwright.units.UnitSystem;
import picocli.CommandLine.Option;

/** Which shop book a command uses, and how it prints. */
final class ShopAccess {
  @Option(
      names = "--book",
      paramLabel = "FILE",
      description =
          "The shop book; else the one that the environment variable SEAMWRIGHT_BOOK names, else"
              + " seamwright-shop.db in your home folder.")
  private Path book;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  ShopBook open() throws ShopException {
    return ShopBook.open(file());
  }

  private Path file() {
    return book != null ? book : ShopBook.usual();
  }

  boolean isJson() {
    return json;
  }

  /** A listing of the book. */
  @FunctionalInterface
  interface Listing<T> {
    T of(ShopBook book) throws ShopException;
  }

  /**
   * Opens the book and prints a list from it.
   *
   * @param rows what is listed
   * @param asJson the rows as JSON
   * @param line one row as a line
   */
  <T> int list(
      PrintWriter out, Listing<List<T>> rows, Listing<String> asJson, Function<T, String> line)
      throws ShopException {
    try (ShopBook open = open()) {
      if (json) {
        out.println(Json.forTerminal(asJson.of(open)));
      } else {
        rows.of(open).forEach(row -> out.println(line.apply(row)));
      }
    }
    out.flush();
    return ExitCode.DONE;
  }

  /** A mass as people read it. */
  static String mass(double g) {
    return Figures.in(UnitSystem.METRIC).mass(g);
  }

  /** Prints what was entered, changed or found, as one line or one object. */
  int told(PrintWriter out, String line, Map<String, ?> members) {
    out.println(json ? Json.forTerminal(ShopJson.object(members)) : line);
    out.flush();
    return ExitCode.DONE;
  }

  /** Something that is entered in the book; gives its number. */
  @FunctionalInterface
  interface Entry {
    long into(ShopBook book) throws ShopException;
  }

  /** Enters something and tells its number: "Bottle 3 entered." */
  int enter(PrintWriter out, String what, Entry entry) throws ShopException {
    try (ShopBook book = open()) {
      long id = entry.into(book);
      return told(out, what + " " + id + " entered.", Map.of("id", id));
    }
  }

  /** A charge in A·h: "1.5 Ah". */
  static double ampHours(String text) throws ShopException {
    String figure = text.strip().replaceFirst("(?i)\\s*a[·.\\s]?h$", "");
    if (figure.equals(text.strip()) || !figure.matches("\\d+([.,]\\d+)?")) {
      throw new ShopException(
          "\"" + text + "\"", "", "it is not a charge", "Write it as \"1.5 Ah\".");
    }
    return Double.parseDouble(figure.replace(',', '.'));
  }

  /** Refuses a figure that must be above 0. */
  static double positive(String option, double value) throws ShopException {
    if (!(value > 0)) {
      throw new ShopException(option, "", "it must be above 0", "Give what you measured.");
    }
    return value;
  }

  /** What an amount option holds; NaN where it isn't given. */
  static double noted(Optional<String> text, Reader reader) throws InputException {
    return text.isPresent() ? reader.read(text.get()) : Double.NaN;
  }

  /** Reads an amount. */
  @FunctionalInterface
  interface Reader {
    double read(String text) throws InputException;
  }
}
