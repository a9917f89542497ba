package org.seamwright.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamwright.shop.Run;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;

/** The shop book as the bench uses it: runs go in, and what the shop chose for its bench. */
final class BenchBook {
  private static final String KEY = "benchKey";
  private static final String MUTED = "benchMuted";

  private final Path file;

  BenchBook(Path file) {
    this.file = file;
  }

  Path file() {
    return file;
  }

  /** What an entry became in the book. */
  record Entered(int section, long id) {}

  /**
   * Enters what is not in the book yet. A run that was entered by a program that was then cut off
   * is known by its mark, and not entered twice.
   */
  List<Entered> enter(BenchRuns runs) throws ShopException {
    List<Entered> entered = new ArrayList<>();
    try (ShopBook book = ShopBook.open(file)) {
      for (int section : runs.sections()) {
        Run run = runs.run(section);
        long there =
            book.runs(run.job(), run.deposit(), "", Integer.MAX_VALUE).stream()
                .filter(r -> r.section().equals(run.section()))
                .filter(r -> r.notes().endsWith(runs.mark()))
                .mapToLong(Run::id)
                .findFirst()
                .orElse(0);
        entered.add(new Entered(section, there > 0 ? there : book.add(run)));
      }
    }
    return entered;
  }

  BenchSettings settings() throws ShopException {
    try (ShopBook book = ShopBook.open(file)) {
      Map<String, String> all = book.settings();
      return new BenchSettings(
          all.getOrDefault(KEY, BenchSettings.FIRST.key()), all.containsKey(MUTED));
    }
  }

  void keep(BenchSettings settings) throws ShopException {
    try (ShopBook book = ShopBook.open(file)) {
      book.set(KEY, settings.key().equals(BenchSettings.FIRST.key()) ? "" : settings.key());
      book.set(MUTED, settings.muted() ? "yes" : "");
    }
  }
}
