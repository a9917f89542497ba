package org.seamwright.window;

import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;

/**
 * Opens jobs: plans them away from the user interface's thread and holds how that stands.
 *
 * <p>Of several openings only the latest counts; earlier ones are cancelled and what they still
 * report is dropped. All methods are called on the user interface's thread.
 */
public final class JobPresenter {
  /** Steps of the progress shown; more would only keep the user interface busy. */
  private static final int STEPS = 200;

  /** Share of the work that is planning; the rest makes the result ready to be shown. */
  private static final double PLANNED = 0.85;

  private final PlanSource source;
  private final Executor background;
  private final Executor userInterface;
  private final Watched<JobState> state = new Watched<>(new JobState.None());
  private AtomicBoolean cancelled = new AtomicBoolean();

  /**
   * Makes a presenter.
   *
   * @param source plans jobs
   * @param background runs long work
   * @param userInterface runs short work on the user interface's thread, in order
   */
  public JobPresenter(PlanSource source, Executor background, Executor userInterface) {
    this.source = source;
    this.background = background;
    this.userInterface = userInterface;
  }

  /** How the opening stands. */
  public Watched<JobState> state() {
    return state;
  }

  /** Reads and plans a job; again, if it is the one that is open. */
  public void open(Path file) {
    cancelled.set(true);
    AtomicBoolean mine = new AtomicBoolean();
    cancelled = mine;
    state.set(new JobState.Planning(file, 0));
    background.execute(() -> run(file, mine));
  }

  /** Breaks off the planning that is under way, if any. */
  public void cancel() {
    if (state.get() instanceof JobState.Planning planning) {
      cancelled.set(true);
      state.set(new JobState.Cancelled(planning.file()));
    }
  }

  private void run(Path file, AtomicBoolean mine) {
    JobState end;
    try {
      Progress progress = progress(file, mine);
      OpenedPiece piece =
          OpenedPiece.of(
              source.plan(file, progress.between(0, PLANNED)), progress.between(PLANNED, 1));
      end = new JobState.Open(piece);
    } catch (CancellationException e) {
      return;
    } catch (InputException e) {
      end = new JobState.Refused(file, e);
    } catch (RuntimeException | Error e) {
      // The thread's last stop: whatever fails (memory running out, too) must reach the user.
      end = new JobState.Failed(file, e);
    }
    JobState result = end;
    userInterface.execute(() -> accept(result, mine));
  }

  private void accept(JobState result, AtomicBoolean mine) {
    if (!mine.get()) {
      state.set(result);
    }
  }

  private Progress progress(Path file, AtomicBoolean mine) {
    int[] shown = {0};
    return fraction -> {
      if (mine.get()) {
        throw new CancellationException();
      }
      int step = (int) (fraction * STEPS);
      if (step > shown[0]) {
        shown[0] = step;
        userInterface.execute(
            () -> accept(new JobState.Planning(file, (double) step / STEPS), mine));
      }
    };
  }
}
