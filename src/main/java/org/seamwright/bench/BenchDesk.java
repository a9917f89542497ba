package org.seamwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.seamwright.basis.InputException;
import org.seamwright.basis.IoReason;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.desk.Desk;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.NextStep;
import org.seamwright.desk.Watched;
import org.seamwright.shop.ShopException;

/**
 * The run at the bench of the job that is open: what is told becomes an event, is kept on disk, and
 * only then counts.
 *
 * <p>All methods are called on the user interface's thread. Events are made, written and added up
 * on one thread in the background, in the order they were told; the time of each is that of the
 * telling.
 */
public final class BenchDesk {
  /** A foot on a pedal and a worn contact close twice: a setting of the program, no source. */
  static final long BOUNCE_MS = 300;

  private final Desk desk;
  private final Executor background;
  private final Executor userInterface;
  private final LongSupplier clock;
  private final BenchBook book;
  private final ZoneId zone;
  private final Watched<Optional<Run>> run = new Watched<>(Optional.empty());
  private final Watched<Optional<Halt>> halt = new Watched<>(Optional.empty());
  private final Watched<String> trouble = new Watched<>("");
  private final Watched<BenchSettings> settings = new Watched<>(BenchSettings.FIRST);
  private final Watched<Optional<Countdown>> countdown = new Watched<>(Optional.empty());
  private final Watched<Alarm> alarm = new Watched<>(Alarm.NONE);
  private final Watched<Boolean> underWay = new Watched<>(false);
  private long lastKeyMs = Long.MIN_VALUE / 2;
  private Optional<Path> lookedAt = Optional.empty();

  /** Whether the bench was asked for, and its run is not there yet. */
  private boolean wanted;

  private boolean opening;

  /** Of the background thread. */
  private final BenchKeeper keeper;

  /**
   * The run as it stands.
   *
   * @param plan what it is worked by
   * @param state what has been done
   */
  public record Run(BenchPlan plan, BenchState state) {
    /** The run in words. */
    public BenchWords words() {
      return new BenchWords(plan, state);
    }
  }

  /**
   * Why a run that is there cannot be gone on with.
   *
   * @param why a sentence
   * @param remedy what to do
   * @param canSetAside whether the run can be set aside for a new one
   */
  public record Halt(String why, String remedy, boolean canSetAside) {}

  /**
   * A warning to sound.
   *
   * @param wetSinceMs the wetting that it belongs to
   * @param level how urgent
   */
  public record Alarm(long wetSinceMs, Countdown.Level level) {
    static final Alarm NONE = new Alarm(-1, Countdown.Level.CALM);

    /** Whether it is to be heard. */
    public boolean sounds() {
      return level == Countdown.Level.SOON || level == Countdown.Level.OVER;
    }
  }

  /**
   * A bench.
   *
   * @param background runs work one after the other
   * @param userInterface runs short work on the user interface's thread, in order
   * @param clock ms since 1970, never going back
   * @param book the shop book
   * @param zone that of dates in the book
   */
  public BenchDesk(
      Desk desk,
      Executor background,
      Executor userInterface,
      LongSupplier clock,
      Path book,
      ZoneId zone) {
    this.desk = desk;
    this.background = background;
    this.userInterface = userInterface;
    this.clock = clock;
    this.book = new BenchBook(book);
    this.zone = zone;
    this.keeper = new BenchKeeper(this.book, zone);
    desk.state()
        .watch(
            state -> {
              lookFor(state.jobFile());
              if (wanted) {
                openWhenReady();
              }
            });
  }

  private void lookFor(Optional<Path> jobFile) {
    if (!jobFile.equals(lookedAt)) {
      lookedAt = jobFile;
      if (run.get().isPresent()) {
        leave(); // another job lies on the desk
      }
      if (jobFile.isEmpty()) {
        underWay.set(false);
      } else {
        background.execute(() -> look(jobFile));
      }
    }
  }

  private void look(Optional<Path> jobFile) {
    boolean found = jobFile.filter(f -> BenchLog.isUnderWay(BenchLog.of(f))).isPresent();
    userInterface.execute(() -> underWay.set(found));
  }

  /** The run, while the bench is open. */
  public Watched<Optional<Run>> run() {
    return run;
  }

  /** Why there is no run although the bench was asked for. */
  public Watched<Optional<Halt>> halt() {
    return halt;
  }

  /** What went wrong last, one or two sentences; empty if nothing. */
  public Watched<String> trouble() {
    return trouble;
  }

  /** What the shop chose. */
  public Watched<BenchSettings> settings() {
    return settings;
  }

  /** The wet window as of the last {@link #tick}. */
  public Watched<Optional<Countdown>> countdown() {
    return countdown;
  }

  /** The warning that is due; told once for each wetting and level. */
  public Watched<Alarm> alarm() {
    return alarm;
  }

  /** The time by the bench's clock, ms since 1970. */
  public long nowMs() {
    return clock.getAsLong();
  }

  /** What must be done before a run; empty if the job is ready for it. */
  public Optional<NextStep> missing() {
    DeskState state = desk.state().get();
    NextStep next = NextStep.of(state, true);
    // A plan over its limit can be worked all the same; the line at the bottom says so.
    boolean ready = state.isPlanned() && state.jobFile().isPresent();
    boolean mayKeep =
        state.saving() instanceof DeskState.Saving.Done
            || state.saving() instanceof DeskState.Saving.Under;
    return ready && mayKeep ? Optional.empty() : Optional.of(next);
  }

  /** Whether the job has a run that has begun and is not over. */
  public Watched<Boolean> underWay() {
    return underWay;
  }

  /**
   * Opens the bench: begins a run, or takes up the one that is there. If something is {@link
   * #missing}, it is opened as soon as nothing is.
   */
  public void enter() {
    wanted = true;
    halt.set(Optional.empty());
    openWhenReady();
  }

  private void openWhenReady() {
    if (missing().isPresent() || opening || run.get().isPresent() || halt.get().isPresent()) {
      return;
    }
    DeskState state = desk.state().get();
    Path file = BenchLog.of(state.jobFile().orElseThrow());
    BenchPlan plan = BenchPlan.of(state.plan().orElseThrow());
    long now = clock.getAsLong();
    opening = true;
    trouble.set("");
    inBackground(
        () -> {
          Optional<Halt> why = keeper.open(file, plan, now);
          userInterface.execute(
              () -> {
                opening = false;
                halt.set(why);
              });
          if (why.isEmpty()) {
            publish();
            chosen();
          }
        });
  }

  private void chosen() {
    try {
      BenchSettings found = book.settings();
      userInterface.execute(() -> settings.set(found));
    } catch (ShopException e) {
      say(BenchTexts.sentence(e) + " " + e.remedy());
    }
  }

  /** Leaves the bench; the run stays as it is. */
  public void leave() {
    wanted = false;
    halt.set(Optional.empty());
    Optional<Path> jobFile = desk.state().get().jobFile();
    inBackground(
        () -> {
          keeper.close();
          look(jobFile);
          userInterface.execute(this::clear);
        });
  }

  private void clear() {
    run.set(Optional.empty());
    countdown.set(Optional.empty());
    alarm.set(Alarm.NONE);
  }

  /** Sets the run of the job aside, under a name with the time, and begins a new one. */
  public void beginAnew() {
    Optional<Path> jobFile = desk.state().get().jobFile();
    if (jobFile.isEmpty()) {
      return;
    }
    Path file = BenchLog.of(jobFile.get());
    long now = clock.getAsLong();
    inBackground(
        () -> {
          keeper.close();
          try {
            BenchKeeper.setAside(file, now);
          } catch (IOException e) {
            say(Messages.text("bench.halt.kept", file.toString(), IoReason.of(e)));
            return;
          }
          userInterface.execute(
              () -> {
                clear();
                enter();
              });
        });
  }

  /** Tells the time: the view does so a few times a second. */
  public void tick() {
    long now = clock.getAsLong();
    Optional<Countdown> left = run.get().flatMap(r -> Countdown.of(r.plan(), r.state(), now));
    countdown.set(left);
    if (left.isPresent()) {
      Alarm due = new Alarm(run.get().orElseThrow().state().wet().sinceMs(), left.get().level());
      alarm.set(due);
    } else {
      alarm.set(Alarm.NONE);
    }
  }

  /** The one key: ticks what is to be ticked, or says that a step is done. */
  public void key() {
    long now = clock.getAsLong();
    // From the last press, counted or not: a key that repeats by itself never gets through.
    long since = now - lastKeyMs;
    lastKeyMs = now;
    if (since < BOUNCE_MS) {
      return;
    }
    tell(BenchTelling.key(now));
  }

  /** One step back. */
  public void back() {
    atWork(What.BACK);
  }

  /** The section in hand has dried: it begins again. */
  public void driedOut() {
    atWork(What.DRIED_OUT);
  }

  /** Every place of the section in hand is wet. */
  public void stillWet() {
    atWork(What.STILL_WET);
  }

  /** A dip into the solution. */
  public void dip() {
    atWork(What.DIP);
  }

  private void atWork(What what) {
    tell(BenchTelling.here(clock.getAsLong(), what));
  }

  /** Takes the last dip or figure back. */
  public void undo() {
    tell(BenchTelling.undo(clock.getAsLong()));
  }

  /** Goes over to another section, by its number. */
  public void choose(int section) {
    tell(BenchTelling.of(clock.getAsLong(), What.CHOSEN, section, 0));
  }

  /** Ticks a mask, or takes its tick away; by its number in the list, from 0. */
  public void mask(int index, boolean on) {
    What what = on ? What.MASK_TICKED : What.MASK_CLEARED;
    tell(BenchTelling.of(clock.getAsLong(), what, 0, index));
  }

  /**
   * Notes a figure.
   *
   * @param section number of the section; 0 for the whole piece
   */
  public void note(int section, What what, NumberPad pad) {
    tell(BenchTelling.note(clock.getAsLong(), section, what, pad));
  }

  /** Ends the run and enters it in the shop book; enters it again if that failed before. */
  public void end() {
    long now = clock.getAsLong();
    tell(BenchTelling.end(now));
    inBackground(
        () -> {
          if (keeper.enterInBook(now)) {
            publish();
          }
        });
  }

  /** Whether the whole run is in the shop book. */
  public boolean isBooked() {
    return run.get()
        .filter(r -> r.state().ended())
        .filter(r -> r.state().booked().containsAll(runs(r).sections()))
        .isPresent();
  }

  /** The shop book's file. */
  public Path bookFile() {
    return book.file();
  }

  /** What the run came to. */
  public List<BenchWords.Summary> summary() {
    return run.get().map(r -> r.words().summary(runs(r))).orElse(List.of());
  }

  private BenchRuns runs(Run of) {
    return new BenchRuns(of.plan(), of.state(), zone);
  }

  /** Chooses the one key, by the toolkit's name of it, and remembers it. */
  public void chooseKey(String name) {
    keep(new BenchSettings(name, settings.get().muted()));
  }

  /** Makes warnings heard, or not. */
  public void mute(boolean muted) {
    keep(new BenchSettings(settings.get().key(), muted));
  }

  private void keep(BenchSettings chosen) {
    settings.set(chosen);
    background.execute(
        () -> {
          try {
            book.keep(chosen);
          } catch (ShopException e) {
            say(Messages.text("bench.unremembered") + " " + BenchTexts.sentence(e));
          }
        });
  }

  private void tell(Function<BenchState, Optional<BenchEvent>> telling) {
    inBackground(
        () -> {
          if (keeper.tell(telling)) {
            publish();
          }
        });
  }

  /** Work of the background thread. */
  @FunctionalInterface
  private interface Work {
    void run() throws InputException;
  }

  private void inBackground(Work work) {
    background.execute(
        () -> {
          try {
            work.run();
          } catch (InputException e) {
            say(BenchTexts.sentence(e) + " " + e.remedy());
          } catch (RuntimeException | Error e) {
            // The thread's last stop: whatever fails must reach the plater.
            say(Messages.text("failed.text") + " " + e);
          }
        });
  }

  private void publish() {
    Optional<Run> now = keeper.run();
    userInterface.execute(
        () -> {
          trouble.set("");
          run.set(now);
          tick();
        });
  }

  private void say(String what) {
    userInterface.execute(() -> trouble.set(what));
  }
}
