package org.seamwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamwright.basis.InputException;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import picocli.CommandLine.Option;

/** The shop's name, address and logo from the shop book, for commands that make papers. */
final class ShopHeadAccess {
  static final String NAME = "shopName";
  static final String ADDRESS = "shopAddress";
  static final String LOGO = "shopLogo";

  /** Parts the lines of an address. */
  private static final String LINE = ";";

  /** More lines than any address has: papers need their room. */
  private static final int MOST_LINES = 6;

  private static final int LONGEST = 200;

  @Option(
      names = "--book",
      paramLabel = "FILE",
      description =
          "The shop book whose name, address and logo head the papers; else the one that the"
              + " environment variable SEAMWRIGHT_BOOK names, else seamwright-shop.db in your home"
              + " folder, if there is one.")
  private Path book;

  static List<String> keys() {
    return List.of(NAME, ADDRESS, LOGO);
  }

  /**
   * What heads the papers; nothing if there is no book.
   *
   * @throws InputException if a book is named that isn't there, or its logo can't be read
   */
  Letterhead read() throws InputException {
    Path file = book != null ? book : ShopBook.usual();
    if (!Files.exists(file)) {
      if (book != null) {
        throw new ShopException(
            file.toString(), "", "There is no such shop book", "Check the path after --book.");
      }
      return Letterhead.NONE;
    }
    try (ShopBook open = ShopBook.open(file)) {
      return of(open.settings());
    }
  }

  private static Letterhead of(Map<String, String> settings) throws InputException {
    String logo = settings.getOrDefault(LOGO, "");
    Optional<Image> image =
        logo.isEmpty() ? Optional.empty() : Optional.of(Letterhead.logo(Path.of(logo)));
    return new Letterhead(
        settings.getOrDefault(NAME, ""), lines(settings.getOrDefault(ADDRESS, "")), image);
  }

  private static List<String> lines(String address) {
    return Arrays.stream(address.split(LINE)).map(String::strip).filter(l -> !l.isEmpty()).toList();
  }

  /**
   * A value as the book is to hold it.
   *
   * @throws InputException if no paper could show it
   */
  static String checked(String key, String value) throws InputException {
    if (value.isEmpty()) {
      return value;
    }
    if (key.equals(LOGO)) {
      Path file = Path.of(value).toAbsolutePath().normalize();
      Letterhead.logo(file);
      return file.toString();
    }
    if (value.length() > LONGEST || lines(value).size() > MOST_LINES) {
      throw new ShopException(
          key,
          "",
          "it is too long for the head of a paper",
          "Use at most " + LONGEST + " letters and " + MOST_LINES + " lines, parted by \";\".");
    }
    return value;
  }
}
