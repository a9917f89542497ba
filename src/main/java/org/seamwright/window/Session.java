package org.seamwright.window;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import org.seamwright.bench.BenchClock;
import org.seamwright.bench.BenchDesk;
import org.seamwright.bench.BenchKeys;
import org.seamwright.desk.Desk;
import org.seamwright.desk.Marking;
import org.seamwright.desk.NewJobs;
import org.seamwright.desk.NextStep;
import org.seamwright.desk.PapersDesk;
import org.seamwright.desk.Place;
import org.seamwright.desk.SectionHands;
import org.seamwright.desk.SectionTool;
import org.seamwright.desk.Tour;
import org.seamwright.desk.Watched;
import org.seamwright.shop.ShopBook;

/** Everything that one window shows, put together: its desk and the presenters round it. */
final class Session {
  private final Desk desk;
  private final Marking marking;
  private final PapersDesk papers;
  private final SectionHands hands;
  private final PictureDesk pictures;
  private final BenchDesk bench;
  private final BenchKeys benchKeys;
  private final Choices choices;
  private final Tour tour;
  private final Watched<Place> place = new Watched<>(Place.PIECE);
  private final Watched<Boolean> dark = new Watched<>(false);

  /** Threads of a window; each but the last runs one thing after the other. */
  record Threads(
      Executor marker, Executor planner, Executor saver, Executor pictures, Executor others) {}

  Session(Threads threads, Executor userInterface, Choices choices) {
    this(threads, userInterface, choices, ShopBook.usual(), BenchClock.ofComputer());
  }

  /**
   * The same with a shop book and a clock of one's own.
   *
   * @param book its file
   * @param clock that of the bench, ms since 1970
   */
  Session(Threads threads, Executor userInterface, Choices choices, Path book, LongSupplier clock) {
    this.desk = new Desk(threads.marker(), threads.planner(), threads.saver(), userInterface);
    this.marking = new Marking(desk, threads.others(), userInterface);
    this.papers = new PapersDesk(desk, threads.others(), userInterface);
    this.hands = new SectionHands(desk, threads.others(), userInterface);
    this.pictures = new PictureDesk(desk, hands.draft(), threads.pictures(), userInterface);
    this.choices = choices;
    // Papers can take long: what is told at the bench must not wait for them.
    this.bench =
        new BenchDesk(desk, threads.saver(), userInterface, clock, book, ZoneId.systemDefault());
    this.benchKeys = new BenchKeys(bench);
    this.tour = new Tour(desk, papers, place::set);
    place.watch(
        now -> {
          pictures.at(now);
          if (now != Place.MARKS) {
            desk.tryOut(java.util.Optional.empty());
          }
          if (now != Place.SECTIONS) {
            hands.take(SectionTool.LOOK);
          }
        });
  }

  Desk desk() {
    return desk;
  }

  Marking marking() {
    return marking;
  }

  PapersDesk papers() {
    return papers;
  }

  SectionHands hands() {
    return hands;
  }

  PictureDesk pictures() {
    return pictures;
  }

  BenchDesk bench() {
    return bench;
  }

  BenchKeys benchKeys() {
    return benchKeys;
  }

  Tour tour() {
    return tour;
  }

  Choices choices() {
    return choices;
  }

  /** The place that is shown. */
  Watched<Place> place() {
    return place;
  }

  /** Whether the window is dark. */
  Watched<Boolean> dark() {
    return dark;
  }

  /** Asks for a file and opens it. */
  void open() {
    choices.open().ifPresent(this::open);
  }

  /** Opens a job or a model. */
  void open(Path file) {
    place.set(Place.PIECE);
    desk.open(file);
  }

  /** Asks where to save, and saves. */
  void saveAs() {
    Path offered =
        desk.state()
            .get()
            .jobFile()
            .orElseGet(() -> NewJobs.beside(desk.state().get().meshFile().orElseThrow()));
    choices.save(offered).ifPresent(desk::saveAs);
  }

  /** Does what the button beside the line says. */
  void act(NextStep.Deed deed) {
    switch (deed) {
      case OPEN -> open();
      case SAVE_AS -> saveAs();
      case ACCEPT_MESH -> desk.acceptMesh();
      case SAVE_OVER -> desk.saveOver();
      case CANCEL -> desk.cancel();
      case AGAIN -> desk.again();
    }
  }
}
