package org.seamwright.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.seamwright.basis.IoReason;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.PlanJson;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.SafeFiles;
import org.seamwright.paper.Papers;

/**
 * Makes the papers of the plan in a folder: all of them or none. They are written to a hidden
 * folder inside it and moved to their names when the last one is finished.
 */
public final class PapersDesk {
  private static final int STEPS = 100;
  private static final String PLAN = "plan.json";

  private final Desk desk;
  private final Executor background;
  private final Executor userInterface;
  private final Watched<Status> status = new Watched<>(new Status.Idle());
  private AtomicBoolean cancelled = new AtomicBoolean();

  /** How the papers stand. */
  public sealed interface Status {
    /** None have been made. */
    record Idle() implements Status {}

    /**
     * They are being made.
     *
     * @param fraction share done, 0 to 1
     */
    record Making(double fraction) implements Status {}

    /**
     * They are made.
     *
     * @param folder where
     * @param files their names
     * @param job the version of the job that they tell of
     */
    record Made(Path folder, List<String> files, Job job) implements Status {}

    /**
     * They could not be made.
     *
     * @param why a sentence or two
     */
    record Failed(String why) implements Status {}
  }

  /** Makes a presenter. */
  public PapersDesk(Desk desk, Executor background, Executor userInterface) {
    this.desk = desk;
    this.background = background;
    this.userInterface = userInterface;
  }

  /** How the papers stand. */
  public Watched<Status> status() {
    return status;
  }

  /** Whether there are papers of the job as it is. */
  public boolean areMade() {
    return status.get() instanceof Status.Made made
        && Optional.of(made.job()).equals(desk.state().get().job());
  }

  /** Whether papers can be made now: there is a plan of the job as it is. */
  public boolean canMake() {
    return desk.state().get().isPlanned() && !(status.get() instanceof Status.Making);
  }

  /** The folder that is offered: beside the job, under the piece's name. */
  public Optional<Path> offered() {
    DeskState state = desk.state().get();
    return state
        .jobFile()
        .or(state::meshFile)
        .map(
            file -> {
              String name = String.valueOf(file.getFileName());
              int dot = name.lastIndexOf('.');
              return file.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + "-papers");
            });
  }

  /** Makes the papers of the plan. */
  public void make(Path folder) {
    if (!canMake()) {
      return;
    }
    PlannedJob plan = desk.state().get().plan().orElseThrow();
    AtomicBoolean mine = new AtomicBoolean();
    cancelled = mine;
    status.set(new Status.Making(0));
    background.execute(() -> run(plan, folder, mine));
  }

  /** Breaks off; the folder is left as it was. */
  public void cancel() {
    if (status.get() instanceof Status.Making) {
      cancelled.set(true);
      status.set(new Status.Idle());
    }
  }

  private void run(PlannedJob plan, Path folder, AtomicBoolean mine) {
    Status end;
    try {
      end = new Status.Made(folder, write(plan, folder, mine), plan.job());
    } catch (CancellationException e) {
      return;
    } catch (IOException e) {
      end = new Status.Failed(Messages.text("papers.failed", folder.toString(), IoReason.of(e)));
    } catch (RuntimeException | Error e) {
      // The thread's last stop: whatever fails (memory running out, too) must reach the user.
      end = new Status.Failed(Messages.text("failed.text") + " " + e);
    }
    Status told = end;
    tell(mine, told);
  }

  private void tell(AtomicBoolean mine, Status now) {
    userInterface.execute(
        () -> {
          if (!mine.get()) {
            status.set(now);
          }
        });
  }

  private List<String> write(PlannedJob plan, Path folder, AtomicBoolean mine) throws IOException {
    Files.createDirectories(folder);
    Path work = Files.createTempDirectory(folder, ".part-");
    try {
      Papers.writeAll(plan, work, progress(mine));
      Files.write(work.resolve(PLAN), PlanJson.text(plan).getBytes(StandardCharsets.UTF_8));
      if (mine.get()) {
        throw new CancellationException();
      }
      List<String> names = new ArrayList<>();
      for (Path file : files(work)) {
        SafeFiles.move(file, folder.resolve(file.getFileName()));
        names.add(String.valueOf(file.getFileName()));
      }
      return names;
    } finally {
      for (Path left : files(work)) {
        Files.deleteIfExists(left);
      }
      Files.deleteIfExists(work);
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.sorted().toList();
    }
  }

  private Progress progress(AtomicBoolean mine) {
    int[] shown = {0};
    return fraction -> {
      if (mine.get()) {
        throw new CancellationException();
      }
      int step = (int) (fraction * STEPS);
      if (step > shown[0]) {
        shown[0] = step;
        tell(mine, new Status.Making(fraction));
      }
    };
  }
}
