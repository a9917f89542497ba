package org.seamwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.function.Function;
import org.seamwright.bench.BenchDesk.Halt;
import org.seamwright.bench.BenchDesk.Run;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.desk.Messages;
import org.seamwright.shop.ShopException;

/**
 * Keeps the run that is open: an event goes to disk first and counts then. Belongs to the bench's
 * background thread.
 */
final class BenchKeeper {
  private static final DateTimeFormatter ASIDE =
      DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss").withZone(ZoneOffset.UTC);

  private final BenchBook book;
  private final ZoneId zone;
  private Optional<Kept> kept = Optional.empty();

  private record Kept(BenchPlan plan, BenchLog log, BenchRules rules, BenchState state) {}

  BenchKeeper(BenchBook book, ZoneId zone) {
    this.book = book;
    this.zone = zone;
  }

  /** The run, if one is open. */
  Optional<Run> run() {
    return kept.map(k -> new Run(k.plan(), k.state()));
  }

  /**
   * Opens the run of a file, or begins one there.
   *
   * @return why it can't be gone on with, if so
   */
  Optional<Halt> open(Path file, BenchPlan plan, long now) {
    try {
      BenchLog log = BenchLog.open(file, plan.fingerprint());
      if (!log.fingerprint().equals(plan.fingerprint())) {
        log.close();
        return Optional.of(
            new Halt(
                Messages.text("bench.halt.changed", file.toString()),
                Messages.text("bench.halt.undo"),
                true));
      }
      BenchRules rules = new BenchRules(plan);
      BenchState state = rules.replay(log.events());
      kept = Optional.of(new Kept(plan, log, rules, state));
      if (state.startedMs() > 0 && !state.ended()) {
        write(BenchEvent.of(now, What.REOPENED, 0, 0));
      }
      return Optional.empty();
    } catch (BenchException e) {
      boolean damaged = !e.place().isEmpty();
      return Optional.of(new Halt(e.source() + ": " + BenchTexts.sentence(e), e.remedy(), damaged));
    }
  }

  /** Gives the run's file free. */
  void close() throws BenchException {
    try {
      if (kept.isPresent()) {
        kept.get().log().close();
      }
    } finally {
      kept = Optional.empty();
    }
  }

  /** Gives the file of a run that is closed a name with the time. */
  static void setAside(Path file, long now) throws IOException {
    String name = file.getFileName() + "-" + ASIDE.format(Instant.ofEpochMilli(now));
    Path target = file.resolveSibling(name);
    for (int i = 2; Files.exists(target); i++) {
      target = file.resolveSibling(name + "-" + i);
    }
    if (Files.exists(file)) {
      Files.move(file, target);
    }
  }

  /**
   * Makes an event of the run as it stands, and keeps it.
   *
   * @return whether there was one
   */
  boolean tell(Function<BenchState, Optional<BenchEvent>> telling) throws BenchException {
    Optional<BenchEvent> event = kept.flatMap(k -> telling.apply(k.state()));
    if (event.isPresent()) {
      write(event.get());
    }
    return event.isPresent();
  }

  private void write(BenchEvent event) throws BenchException {
    Kept k = kept.orElseThrow();
    k.log().append(event);
    kept = Optional.of(new Kept(k.plan(), k.log(), k.rules(), k.rules().apply(k.state(), event)));
  }

  /**
   * Enters a run that is over in the shop book, where it is not there yet.
   *
   * @return whether there was something to enter
   */
  boolean enterInBook(long now) throws ShopException, BenchException {
    if (kept.filter(k -> k.state().ended()).isEmpty()) {
      return false;
    }
    BenchRuns runs = new BenchRuns(kept.get().plan(), kept.get().state(), zone);
    if (kept.get().state().booked().containsAll(runs.sections())) {
      return false;
    }
    for (BenchBook.Entered entered : book.enter(runs)) {
      write(new BenchEvent(now, What.BOOKED, entered.section(), 0, entered.id(), 0));
    }
    return true;
  }
}
