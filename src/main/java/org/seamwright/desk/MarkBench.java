package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Progress;
import org.seamwright.job.Piece;
import org.seamwright.region.Mark;
import org.seamwright.region.MarkException;
import org.seamwright.region.MarkSession;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/**
 * Carries out lists of marks that differ little from each other: a list that goes on from an
 * earlier one costs its further marks alone.
 *
 * <p>Keeps the sessions after the last few lists and after their last mark but one, since adding
 * and taking back a mark are what people do most. A session of a million faces takes about 100 MB.
 * Belongs to one thread.
 */
final class MarkBench {
  /** Sessions kept: those of two lists, each with and without its last mark, and of a preview. */
  private static final int KEPT = 5;

  private final List<MarkSession> kept = new ArrayList<>();
  private Optional<Piece> piece = Optional.empty();
  private Treatment ground = Treatment.PLATE;

  /** The map of marks on a piece: as {@code Marks.evaluate}, to the bit. */
  SurfaceMap map(Piece of, Treatment on, List<Mark> marks, Progress progress) throws MarkException {
    if (!Identity.same(piece, Optional.of(of)) || ground != on) {
      kept.clear();
      piece = Optional.of(of);
      ground = on;
    }
    MarkSession session = longest(marks);
    int done = session.marks().size();
    if (done == marks.size()) {
      keep(session);
      return session.map();
    }
    session = session.copy();
    for (int i = done; i < marks.size(); i++) {
      if (i == marks.size() - 1 && i > 0) {
        keep(session.copy());
      }
      double share = marks.size() - done;
      session.add(marks.get(i), progress.between((i - done) / share, (i + 1 - done) / share));
    }
    keep(session);
    return session.map();
  }

  /** The kept session of most of the marks that are the first ones of a list. */
  private MarkSession longest(List<Mark> marks) {
    MarkSession best = null;
    for (MarkSession session : kept) {
      List<Mark> its = session.marks();
      if (its.size() <= marks.size()
          && (best == null || its.size() > best.marks().size())
          && its.equals(marks.subList(0, its.size()))) {
        best = session;
      }
    }
    if (best != null) {
      return best;
    }
    Piece on = piece.orElseThrow();
    return MarkSession.of(on.mesh(), on.labels(), ground);
  }

  private void keep(MarkSession session) {
    kept.removeIf(k -> k == session || k.marks().equals(session.marks()));
    kept.add(session);
    if (kept.size() > KEPT) {
      kept.remove(0);
    }
  }
}
