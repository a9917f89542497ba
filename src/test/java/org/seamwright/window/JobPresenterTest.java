package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.InputException;
import org.seamwright.job.PlannedJob;

/** Opening jobs, with both threads played by queues that the test runs when it wants to. */
class JobPresenterTest {
  private static final PlannedJob RING = PlannedFixture.ring(32, 16);
  private static final Path FILE = Path.of("ring.json");

  private final Deque<Runnable> background = new ArrayDeque<>();
  private final Deque<Runnable> userInterface = new ArrayDeque<>();
  private final Executor later = background::add;
  private final Executor shown = userInterface::add;

  private static void runAll(Deque<Runnable> queue) {
    while (!queue.isEmpty()) {
      queue.remove().run();
    }
  }

  @Test
  void plansAwayFromTheUserInterfaceAndThenShowsThePiece() {
    JobPresenter jobs =
        new JobPresenter(
            (file, progress) -> {
              progress.at(0.5);
              return RING;
            },
            later,
            shown);
    List<Double> fractions = new ArrayList<>();
    jobs.state()
        .watch(
            state -> {
              if (state instanceof JobState.Planning planning) {
                fractions.add(planning.fraction());
              }
            });
    jobs.open(FILE);
    assertThat(jobs.state().get()).isEqualTo(new JobState.Planning(FILE, 0));
    runAll(background);
    assertThat(jobs.state().get()).isInstanceOf(JobState.Planning.class);
    runAll(userInterface);
    assertThat(jobs.state().get()).isInstanceOf(JobState.Open.class);
    assertThat(fractions).isSorted().hasSizeGreaterThan(2);
    assertThat(((JobState.Open) jobs.state().get()).piece().job()).isSameAs(RING);
  }

  @Test
  void keepsARefusalWhole() {
    InputException refusal = new InputException("a.stl", "facet 7", "it is torn", "Mend it.");
    JobPresenter jobs =
        new JobPresenter(
            (file, progress) -> {
              throw refusal;
            },
            later,
            shown);
    jobs.open(FILE);
    runAll(background);
    runAll(userInterface);
    assertThat(jobs.state().get()).isEqualTo(new JobState.Refused(FILE, refusal));
  }

  @Test
  void reportsAFaultEvenOutOfMemory() {
    JobPresenter jobs =
        new JobPresenter(
            (file, progress) -> {
              throw new OutOfMemoryError("made up");
            },
            later,
            shown);
    jobs.open(FILE);
    runAll(background);
    runAll(userInterface);
    assertThat(jobs.state().get())
        .isInstanceOfSatisfying(
            JobState.Failed.class,
            failed -> assertThat(failed.fault()).isInstanceOf(OutOfMemoryError.class));
  }

  @Test
  void cancelsAtOnceAndStopsTheWork() {
    boolean[] stopped = {false};
    JobPresenter jobs =
        new JobPresenter(
            (file, progress) -> {
              try {
                progress.at(0.3);
              } catch (CancellationException e) {
                stopped[0] = true;
                throw e;
              }
              return RING;
            },
            later,
            shown);
    jobs.open(FILE);
    jobs.cancel();
    assertThat(jobs.state().get()).isEqualTo(new JobState.Cancelled(FILE));
    runAll(background);
    runAll(userInterface);
    assertThat(stopped[0]).isTrue();
    assertThat(jobs.state().get()).isEqualTo(new JobState.Cancelled(FILE));
  }

  @Test
  void dropsWhatAnEarlierOpeningStillReports() {
    Path second = Path.of("second.json");
    JobPresenter jobs =
        new JobPresenter(
            (file, progress) -> {
              if (file.equals(FILE)) {
                throw new InputException("ring.json", "", "it is late", "Wait.");
              }
              return RING;
            },
            later,
            shown);
    jobs.open(FILE);
    jobs.open(second);
    // The later one is done first.
    background.removeLast().run();
    runAll(background);
    runAll(userInterface);
    assertThat(jobs.state().get()).isInstanceOf(JobState.Open.class);
  }
}
