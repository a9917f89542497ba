package org.seamwright.window;

import java.util.List;
import java.util.Optional;

/**
 * What the picture is to show next, made off the user interface's thread. Pictures of one model are
 * to be shown in the order they were made: each holds only the chunks that differ from the one
 * before.
 *
 * @param model the piece
 * @param subject what is shown of it
 * @param surface its faces
 * @param opened the plan, if that is what is shown
 * @param changed the chunks that differ
 * @param chunks what they show now, in the same order
 */
record Picture(
    PieceModel model,
    Subject subject,
    ShownSurface surface,
    Optional<OpenedPiece> opened,
    int[] changed,
    List<MeshChunk> chunks) {
  /** What is shown. */
  enum Subject {
    /** The bare piece. */
    PIECE,
    /** Marks, or a draft on them. */
    MARKS,
    /** Sections. */
    PLAN
  }
}
