package org.seamwright.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.Piece;
import org.seamwright.job.PlannedJob;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.region.SurfaceMap;

/**
 * What the desk holds at one time; immutable. Results may be those of an earlier version of the job
 * while new ones are being worked out: they are kept in sight, and {@link #isPlanned} and the like
 * say whether they are up to date.
 *
 * @param meshFile the model's file, once it has been read
 * @param document the model as read, in its own unit
 * @param job the decisions; empty until the model's unit is known
 * @param jobFile where they are saved, once that is chosen
 * @param piece the model in mm, cleaned
 * @param marked the piece with its marks
 * @param plan the plan
 * @param work what is being worked out now
 * @param trouble why the results can't be had
 * @param saving how saving stands
 * @param canUndo whether there is an earlier version
 * @param canRedo whether there is a later version
 */
public record DeskState(
    Optional<Path> meshFile,
    Optional<MeshDocument> document,
    Optional<Job> job,
    Optional<Path> jobFile,
    Optional<Piece> piece,
    Optional<Marked> marked,
    Optional<PlannedJob> plan,
    Optional<Work> work,
    Optional<Trouble> trouble,
    Saving saving,
    boolean canUndo,
    boolean canRedo) {
  /** Nothing is open. */
  static final DeskState EMPTY =
      new DeskState(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          new Saving.Nowhere(),
          false,
          false);

  /**
   * The piece with its marks.
   *
   * @param job the version of the job they are those of
   * @param map the cut piece
   * @param plateMm2 area to plate, mm²
   * @param bareMm2 area that stays bare, mm²
   */
  public record Marked(Job job, SurfaceMap map, double plateMm2, double bareMm2) {}

  /** What is being worked out. */
  public enum Task {
    /** A file is being read. */
    READING,
    /** The model is being cleaned and surveyed. */
    SURVEYING,
    /** Marks are being carried out. */
    MARKING,
    /** Sections and amounts are being planned. */
    PLANNING
  }

  /**
   * Work under way.
   *
   * @param task what is done
   * @param fraction share done, 0 to 1
   */
  public record Work(Task task, double fraction) {}

  /** How saving stands. */
  public sealed interface Saving {
    /** No place has been chosen. */
    record Nowhere() implements Saving {}

    /** Being written. */
    record Under() implements Saving {}

    /** The file holds the job as it is. */
    record Done() implements Saving {}

    /** Another window has the job open: nothing is saved from here. */
    record Elsewhere() implements Saving {}

    /** The file was changed by another program since it was read or saved here. */
    record Changed() implements Saving {}

    /**
     * It could not be written.
     *
     * @param why problem and remedy, sentences
     */
    record Failed(String why) implements Saving {}
  }

  /** Whether the piece is that of the job as it is. */
  public boolean isRead() {
    return piece.isPresent()
        && job.isPresent()
        && work.map(w -> w.task() != Task.READING && w.task() != Task.SURVEYING).orElse(true);
  }

  /** Whether the marks are those of the job as it is. */
  public boolean isMarked() {
    return marked.isPresent() && sameMarks(marked.get().job(), job);
  }

  /** Whether the plan is that of the job as it is. */
  public boolean isPlanned() {
    return plan.isPresent() && Optional.of(plan.get().job()).equals(job);
  }

  private static boolean sameMarks(Job a, Optional<Job> b) {
    return b.isPresent()
        && a.marks().equals(b.get().marks())
        && a.ground() == b.get().ground()
        && a.cleaning().equals(b.get().cleaning())
        && a.mesh().scale().equals(b.get().mesh().scale());
  }

  /** What there is to say of the results, in the order of the work. */
  public List<org.seamwright.basis.Notice> notices() {
    if (isPlanned()) {
      return plan.orElseThrow().notices();
    }
    return piece.map(Piece::notices).orElse(List.of());
  }
}
