package org.seamwright.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.MarkBodies;
import org.seamwright.job.Piece;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/**
 * Works out what follows from the job: the piece, its marks, the plan. A step whose input is as it
 * was keeps its result. Marks and previews run on one thread, so that they never wait for a plan.
 */
final class Results {
  /** Steps of the progress shown; more would only keep the user interface busy. */
  private static final int STEPS = 100;

  private final Desk desk;
  private final Executor marker;
  private final Executor planner;
  private final Executor userInterface;

  /** Of the marker's thread. */
  private final MarkBench bench = new MarkBench();

  /** Of the marker's thread: so that a mark inside a body stays the same mark while it does. */
  private final MarkBodies bodies = new MarkBodies();

  /** Of the marker's thread: what the last piece was made of. */
  private Optional<PieceKey> key = Optional.empty();

  /** Of the marker's thread. */
  private Optional<Piece> piece = Optional.empty();

  private AtomicBoolean cancelled = new AtomicBoolean();
  private AtomicBoolean previewCancelled = new AtomicBoolean();

  /** The mark to try out next. */
  private Optional<Trial> wanted = Optional.empty();

  /** Whether a mark is being tried out. */
  private boolean trying;

  /** What a piece is made of. */
  private record PieceKey(
      MeshDocument document, Job.Scale scale, List<org.seamwright.mend.Repair> cleaning) {
    boolean isSame(PieceKey other) {
      return Identity.same(document, other.document)
          && scale.equals(other.scale)
          && cleaning.equals(other.cleaning);
    }
  }

  Results(Desk desk, Executor marker, Executor planner, Executor userInterface) {
    this.desk = desk;
    this.marker = marker;
    this.planner = planner;
    this.userInterface = userInterface;
  }

  /** Reads the mesh of a job. */
  static MeshDocument document(Job job, Path jobFile, Path mesh, Progress progress)
      throws InputException {
    if (!Files.exists(mesh)) {
      // The planner knows how to say this.
      Planner.piece(job, jobFile, progress);
    }
    return MeshFiles.readWithDigest(mesh, progress);
  }

  /** Drops work under way. */
  void cancel() {
    cancelled.set(true);
    previewCancelled.set(true);
    wanted = Optional.empty();
  }

  /** Works out the results of the job as it is now. */
  void refresh() {
    cancel();
    AtomicBoolean mine = new AtomicBoolean();
    cancelled = mine;
    DeskState s = desk.state().get();
    Job job = s.job().orElseThrow();
    MeshDocument document = s.document().orElseThrow();
    Path file = file(s);
    desk.state()
        .set(States.with(s, Optional.of(work(DeskState.Task.SURVEYING, 0)), Optional.empty()));
    boolean records = desk.isRecordingMesh() && NewJobs.isUnrecorded(job);
    marker.execute(guarded(mine, Place.PIECE, () -> mark(job, records, document, file, mine)));
  }

  private static DeskState.Work work(DeskState.Task task, double fraction) {
    return new DeskState.Work(task, fraction);
  }

  /** A step of the work. */
  @FunctionalInterface
  private interface Step {
    void run() throws InputException;
  }

  private Runnable guarded(AtomicBoolean mine, Place at, Step step) {
    return () -> {
      if (mine.get()) {
        return;
      }
      Trouble trouble;
      try {
        step.run();
        return;
      } catch (CancellationException e) {
        return;
      } catch (InputException e) {
        trouble = Trouble.of(at, e);
      } catch (RuntimeException | Error e) {
        // The thread's last stop: whatever fails (memory running out, too) must reach the user.
        trouble = Trouble.of(at, e);
      }
      Trouble told = trouble;
      tell(mine, s -> desk.state().set(States.with(s, Optional.empty(), Optional.of(told))));
    };
  }

  /** Tells the user interface, unless a later version of the job has taken over. */
  private void tell(AtomicBoolean mine, Consumer<DeskState> change) {
    userInterface.execute(
        () -> {
          if (!mine.get()) {
            change.accept(desk.state().get());
          }
        });
  }

  private Progress progress(AtomicBoolean mine, DeskState.Task task) {
    int[] shown = {0};
    return fraction -> {
      if (mine.get()) {
        throw new CancellationException();
      }
      int step = (int) (fraction * STEPS);
      if (step > shown[0]) {
        shown[0] = step;
        tell(mine, s -> desk.work(Optional.of(work(task, fraction))));
      }
    };
  }

  private void mark(
      Job asked, boolean records, MeshDocument document, Path file, AtomicBoolean mine)
      throws InputException {
    PieceKey wanted = new PieceKey(document, asked.mesh().scale(), asked.cleaning());
    boolean fresh = key.isEmpty() || !key.get().isSame(wanted);
    if (fresh) {
      Piece read =
          Piece.of(
              document,
              asked.mesh().file(),
              asked.mesh().scale(),
              asked.cleaning(),
              progress(mine, DeskState.Task.SURVEYING));
      piece = Optional.of(read);
      key = Optional.of(wanted);
    }
    Piece on = piece.orElseThrow();
    // A job made here, or given another size here, knows its mesh from now on.
    Job job = records ? on.recordedIn(asked) : asked;
    tell(
        mine,
        s -> {
          desk.state().set(States.withPiece(s, on));
          desk.record(asked, job);
        });
    Progress progress = progress(mine, DeskState.Task.MARKING);
    SurfaceMap map;
    List<Mark> marks = bodies.marks(job, file);
    try {
      map = bench.map(on, job.ground(), marks, progress);
    } catch (MarkException e) {
      tell(
          mine,
          s ->
              desk.state()
                  .set(States.with(s, Optional.empty(), Optional.of(Trouble.of(Place.MARKS, e)))));
      return;
    }
    DeskState.Marked marked =
        new DeskState.Marked(job, map, map.areaMm2(Treatment.PLATE), map.areaMm2(Treatment.BARE));
    tell(mine, s -> desk.state().set(States.withMarked(s, marked)));
    planner.execute(guarded(mine, Place.SECTIONS, () -> plan(job, file, on, map, mine)));
  }

  private void plan(Job job, Path file, Piece on, SurfaceMap map, AtomicBoolean mine)
      throws InputException {
    Progress progress = progress(mine, DeskState.Task.PLANNING);
    progress.at(0);
    PlannedJob plan = Planner.plan(job, file, on, map, progress);
    tell(
        mine,
        s ->
            desk.state()
                .set(States.with(States.withPlan(s, plan), Optional.empty(), Optional.empty())));
  }

  /**
   * Works out what a mark would do. One that is being worked out is finished first, and of those
   * asked for meanwhile only the latest follows, so that a moving pointer always shows something.
   */
  void tryOut(Optional<Trial> draft) {
    wanted = draft;
    DeskState s = desk.state().get();
    if (draft.isEmpty() || s.job().isEmpty() || s.piece().isEmpty()) {
      wanted = Optional.empty();
      previewCancelled.set(true);
      desk.preview().set(Preview.none());
      return;
    }
    desk.preview().set(desk.preview().get().with(draft.get().first()));
    if (!trying) {
      tryNext();
    }
  }

  private void tryNext() {
    DeskState s = desk.state().get();
    if (wanted.isEmpty() || s.job().isEmpty() || s.piece().isEmpty()) {
      return;
    }
    Trial trial = wanted.get();
    wanted = Optional.empty();
    trying = true;
    AtomicBoolean mine = new AtomicBoolean();
    previewCancelled = mine;
    Job job = s.job().get();
    Piece on = s.piece().get();
    Path file = file(s);
    marker.execute(
        () -> {
          Optional<Preview> found = tried(job, file, on, trial, mine);
          userInterface.execute(
              () -> {
                trying = false;
                if (!mine.get()) {
                  found.ifPresent(desk.preview()::set);
                }
                tryNext();
              });
        });
  }

  private Optional<Preview> tried(Job job, Path file, Piece on, Trial trial, AtomicBoolean mine) {
    try {
      return mine.get() ? Optional.empty() : Optional.of(preview(job, file, on, trial, mine));
    } catch (CancellationException e) {
      return Optional.empty();
    } catch (InputException e) {
      return Optional.of(
          Preview.refused(trial.first(), Trouble.sentence(e.problem()) + " " + e.remedy()));
    } catch (RuntimeException | Error e) {
      // A preview that fails must not end the thread; adding the mark tells what is wrong.
      return Optional.of(Preview.refused(trial.first(), e.toString()));
    }
  }

  private static Path file(DeskState s) {
    return s.jobFile().orElseGet(() -> NewJobs.beside(s.meshFile().orElseThrow()));
  }

  private Preview preview(Job job, Path file, Piece on, Trial trial, AtomicBoolean mine)
      throws InputException {
    List<Mark> marks = bodies.marks(job.withMarks(trial.marks()), file);
    Progress progress =
        fraction -> {
          if (mine.get()) {
            throw new CancellationException();
          }
        };
    SurfaceMap map = bench.trial(on, job.ground(), marks, progress);
    double changed =
        map.effects().subList(trial.from(), trial.to()).stream()
            .mapToDouble(SurfaceMap.Effect::changedMm2)
            .sum();
    return new Preview(Optional.of(trial.first()), Optional.of(map), changed, "");
  }
}
