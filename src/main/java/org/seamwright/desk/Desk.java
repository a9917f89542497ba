package org.seamwright.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.Planner;
import org.seamwright.meshfile.FileUnit;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.region.Mark;
import org.seamwright.units.UnitSystem;

/**
 * The job that is open: every change of it is a new version that can be undone, is saved at once,
 * and has its results worked out, all away from the user interface's thread.
 *
 * <p>Only the results of the latest version count: work on an earlier one is cancelled and what it
 * still reports is dropped. All methods are called on the user interface's thread.
 */
public final class Desk {
  private final Executor reader;
  private final Executor saver;
  private final Executor userInterface;
  private final Watched<DeskState> state = new Watched<>(DeskState.EMPTY);
  private final Watched<Preview> preview = new Watched<>(Preview.none());
  private final Results results;
  private Optional<History<Job>> history = Optional.empty();
  private Optional<JobStore> store = Optional.empty();
  private AtomicBoolean opening = new AtomicBoolean();

  /** Whether the mesh as read is recorded in the job, since its size was told here. */
  private boolean recordsMesh;

  /**
   * Makes a desk.
   *
   * @param marker runs reading, cleaning and marking, one after the other
   * @param planner runs planning, one after the other
   * @param saver writes files, one after the other
   * @param userInterface runs short work on the user interface's thread, in order
   */
  public Desk(Executor marker, Executor planner, Executor saver, Executor userInterface) {
    this.reader = marker;
    this.saver = saver;
    this.userInterface = userInterface;
    this.results = new Results(this, marker, planner, userInterface);
  }

  /** What the desk holds. */
  public Watched<DeskState> state() {
    return state;
  }

  /** What a mark that is being made would do. */
  public Watched<Preview> preview() {
    return preview;
  }

  /** Opens a job file, or a model to make a job for, by the ending of its name. */
  public void open(Path file) {
    String name = Objects.toString(file.getFileName(), "");
    if (name.endsWith(".json") || name.endsWith(".seamwright")) {
      read(file, mine -> openJob(file, mine));
    } else {
      read(file, mine -> openMesh(file, mine));
    }
  }

  /** Something that is read off the user interface's thread, and then put on the desk. */
  @FunctionalInterface
  private interface Reading {
    Runnable read(AtomicBoolean mine) throws InputException;
  }

  private void read(Path file, Reading reading) {
    opening.set(true);
    AtomicBoolean mine = new AtomicBoolean();
    opening = mine;
    results.cancel();
    DeskState before = state.get();
    state.set(
        States.with(
            before, Optional.of(new DeskState.Work(DeskState.Task.READING, 0)), Optional.empty()));
    reader.execute(
        () -> {
          Runnable then;
          try {
            then = reading.read(mine);
          } catch (CancellationException e) {
            return;
          } catch (InputException e) {
            then =
                () ->
                    state.set(
                        States.with(state.get(), Optional.empty(), Optional.of(named(file, e))));
          } catch (RuntimeException | Error e) {
            // The thread's last stop: whatever fails (memory running out, too) must reach the user.
            then =
                () ->
                    state.set(
                        States.with(
                            state.get(),
                            Optional.empty(),
                            Optional.of(Trouble.of(Place.PIECE, e))));
          }
          Runnable end = then;
          userInterface.execute(
              () -> {
                if (!mine.get()) {
                  end.run();
                }
              });
        });
  }

  private static Trouble named(Path file, InputException e) {
    Trouble trouble = Trouble.of(Place.PIECE, e);
    String where = Objects.toString(file.getFileName(), file.toString());
    if (!e.place().isEmpty()) {
      where += ", " + e.place();
    }
    return new Trouble(
        Place.PIECE, where + ": " + trouble.problem(), e.remedy(), false, Optional.empty());
  }

  private Runnable openMesh(Path file, AtomicBoolean mine) throws InputException {
    MeshDocument document = MeshFiles.readWithDigest(file, progress(mine));
    return () -> {
      release();
      state.set(States.opened(file, document));
      document.unit().map(FileUnit::symbol).ifPresent(unit -> chooseScale(new Job.Scale.OfFile()));
    };
  }

  private Runnable openJob(Path file, AtomicBoolean mine) throws InputException {
    Job job = JobFile.read(file);
    Path mesh = Planner.meshFile(job, file);
    MeshDocument document = Results.document(job, file, mesh, progress(mine));
    return () -> {
      release();
      JobStore mineToSave = JobStore.at(file);
      store = Optional.of(mineToSave);
      history = Optional.of(new History<>(job));
      recordsMesh = false;
      DeskState.Saving saving =
          mineToSave.isHeldElsewhere()
              ? new DeskState.Saving.Elsewhere()
              : new DeskState.Saving.Done();
      state.set(States.withSaving(States.opened(mesh, document), Optional.of(file), saving));
      refresh(false);
    };
  }

  private Progress progress(AtomicBoolean mine) {
    int[] shown = {0};
    return fraction -> {
      if (mine.get()) {
        throw new CancellationException();
      }
      int step = (int) (100 * fraction);
      if (step > shown[0]) {
        shown[0] = step;
        userInterface.execute(
            () -> {
              if (!mine.get()) {
                work(Optional.of(new DeskState.Work(DeskState.Task.READING, fraction)));
              }
            });
      }
    };
  }

  /** Says how large the model is: the first time this makes the job. */
  public void chooseScale(Job.Scale scale) {
    DeskState now = state.get();
    if (now.document().isEmpty()) {
      return;
    }
    recordsMesh = true;
    if (history.isEmpty()) {
      Path mesh = now.meshFile().orElseThrow();
      history = Optional.of(new History<>(NewJobs.of(mesh, scale, UnitSystem.METRIC)));
      refresh(true);
      return;
    }
    change(job -> job.withMesh(new Job.MeshSource(job.mesh().file(), "", scale)));
  }

  /** Changes the job; nothing happens if the change leaves it as it is. */
  public void change(UnaryOperator<Job> change) {
    if (history.isEmpty()) {
      return;
    }
    Job before = history.get().now();
    Job after = change.apply(before);
    if (!after.equals(before)) {
      history.get().push(after);
      refresh(true);
    }
  }

  /** Goes back to the version before. */
  public void undo() {
    history.filter(History::canUndo).ifPresent(h -> step(h, true));
  }

  /** Goes to the version that was undone last. */
  public void redo() {
    history.filter(History::canRedo).ifPresent(h -> step(h, false));
  }

  private void step(History<Job> h, boolean back) {
    if (back) {
      h.undo();
    } else {
      h.redo();
    }
    refresh(true);
  }

  /** Says that the marks fit the mesh as it is now. */
  public void acceptMesh() {
    state.get().piece().ifPresent(piece -> change(piece::recordedIn));
  }

  /** Whether the mesh as read is to be recorded in a job that remembers none. */
  boolean isRecordingMesh() {
    return recordsMesh;
  }

  /** The mesh as it was read belongs to this version: no step of its own to undo. */
  void record(Job of, Job recorded) {
    if (history.isPresent() && history.get().now().equals(of)) {
      history.get().amend(recorded);
      put(recorded);
      save(false);
    }
  }

  private void put(Job job) {
    History<Job> h = history.orElseThrow();
    state.set(States.withJob(state.get(), job, h.canUndo(), h.canRedo()));
  }

  private void refresh(boolean changed) {
    put(history.orElseThrow().now());
    preview.set(Preview.none());
    if (changed) {
      save(false);
    }
    results.refresh();
  }

  /** Works the results out again, as after a fault was mended outside. */
  public void again() {
    if (history.isPresent()) {
      results.refresh();
    }
  }

  /** Breaks off what is being worked out; the results so far stay in sight. */
  public void cancel() {
    opening.set(true);
    results.cancel();
    work(Optional.empty());
  }

  /** Chooses where the job is saved from now on, and saves it. */
  public void saveAs(Path file) {
    if (history.isEmpty()) {
      return;
    }
    Path mesh = state.get().meshFile().orElseThrow();
    store.ifPresent(JobStore::close);
    store = Optional.of(JobStore.at(file));
    Job moved = NewJobs.movedTo(history.get().now(), mesh, file);
    history.get().amend(moved);
    state.set(States.withSaving(state.get(), Optional.of(file), state.get().saving()));
    put(moved);
    // The dialogue that chose the place has asked whether a file there may be replaced.
    save(true);
    results.refresh();
  }

  /** Saves although another program has changed the file: that version is kept as its backup. */
  public void saveOver() {
    save(true);
  }

  private void save(boolean evenIfChanged) {
    if (store.isEmpty()) {
      return;
    }
    JobStore into = store.get();
    Job job = history.orElseThrow().now();
    saving(new DeskState.Saving.Under());
    saver.execute(
        () -> {
          DeskState.Saving saved = into.save(job, evenIfChanged);
          userInterface.execute(
              () -> {
                boolean latest =
                    store.filter(s -> s == into).isPresent()
                        && history.orElseThrow().now().equals(job);
                if (latest) {
                  saving(saved);
                }
              });
        });
  }

  private void saving(DeskState.Saving saving) {
    state.set(States.withSaving(state.get(), state.get().jobFile(), saving));
  }

  private void release() {
    store.ifPresent(JobStore::close);
    store = Optional.empty();
    history = Optional.empty();
    results.cancel();
    preview.set(Preview.none());
  }

  /** Gives the open job free for other windows. */
  public void close() {
    opening.set(true);
    release();
    state.set(DeskState.EMPTY);
  }

  /** Shows what a mark would do if it were added; empty to show none. */
  public void tryOut(Optional<Mark> draft) {
    tryOut(draft.map(List::of).orElse(List.of()));
  }

  /** Shows what marks would do if they were added; none to show none. */
  public void tryOut(List<Mark> drafts) {
    List<Mark> marks = state.get().job().map(Job::marks).orElse(List.of());
    results.tryOut(drafts.isEmpty() ? Optional.empty() : Optional.of(Trial.added(marks, drafts)));
  }

  /** Shows what a mark would do in place of one of the job. */
  void tryOut(int index, Mark mark) {
    state
        .get()
        .job()
        .filter(job -> index < job.marks().size())
        .ifPresent(job -> results.tryOut(Optional.of(Trial.replaced(job.marks(), index, mark))));
  }

  /** A point of the model as read, in the file's own unit, for a length between two of them. */
  public Vector3D inFileUnits(Vector3D mm) {
    return state.get().piece().map(p -> mm.multiply(1 / p.mmPerUnit())).orElse(mm);
  }

  void work(Optional<DeskState.Work> work) {
    state.set(States.with(state.get(), work, state.get().trouble()));
  }
}
