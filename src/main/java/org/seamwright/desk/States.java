package org.seamwright.desk;

import java.nio.file.Path;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.Piece;
import org.seamwright.job.PlannedJob;
import org.seamwright.meshfile.MeshDocument;

/** A state of the desk with one thing changed. */
final class States {
  private States() {}

  static DeskState opened(Path mesh, MeshDocument document) {
    return new DeskState(
        Optional.of(mesh),
        Optional.of(document),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new DeskState.Saving.Nowhere(),
        false,
        false);
  }

  static DeskState with(DeskState s, Optional<DeskState.Work> work, Optional<Trouble> trouble) {
    return new DeskState(
        s.meshFile(),
        s.document(),
        s.job(),
        s.jobFile(),
        s.piece(),
        s.marked(),
        s.plan(),
        work,
        trouble,
        s.saving(),
        s.canUndo(),
        s.canRedo());
  }

  static DeskState withJob(DeskState s, Job job, boolean canUndo, boolean canRedo) {
    return new DeskState(
        s.meshFile(),
        s.document(),
        Optional.of(job),
        s.jobFile(),
        s.piece(),
        s.marked(),
        s.plan(),
        s.work(),
        s.trouble(),
        s.saving(),
        canUndo,
        canRedo);
  }

  static DeskState withSaving(DeskState s, Optional<Path> jobFile, DeskState.Saving saving) {
    return new DeskState(
        s.meshFile(),
        s.document(),
        s.job(),
        jobFile,
        s.piece(),
        s.marked(),
        s.plan(),
        s.work(),
        s.trouble(),
        saving,
        s.canUndo(),
        s.canRedo());
  }

  static DeskState withPiece(DeskState s, Piece piece) {
    return new DeskState(
        s.meshFile(),
        s.document(),
        s.job(),
        s.jobFile(),
        Optional.of(piece),
        s.marked(),
        s.plan(),
        s.work(),
        s.trouble(),
        s.saving(),
        s.canUndo(),
        s.canRedo());
  }

  static DeskState withMarked(DeskState s, DeskState.Marked marked) {
    return new DeskState(
        s.meshFile(),
        s.document(),
        s.job(),
        s.jobFile(),
        s.piece(),
        Optional.of(marked),
        s.plan(),
        s.work(),
        s.trouble(),
        s.saving(),
        s.canUndo(),
        s.canRedo());
  }

  static DeskState withPlan(DeskState s, PlannedJob plan) {
    return new DeskState(
        s.meshFile(),
        s.document(),
        s.job(),
        s.jobFile(),
        s.piece(),
        s.marked(),
        Optional.of(plan),
        s.work(),
        s.trouble(),
        s.saving(),
        s.canUndo(),
        s.canRedo());
  }
}
