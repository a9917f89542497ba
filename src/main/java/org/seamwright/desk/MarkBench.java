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
 * and taking back a mark are what people do most, and those right after slow marks, so that a
 * change anywhere behind one doesn't carry it out again. A session of a million faces takes about
 * 100 MB. Belongs to one thread.
 */
final class MarkBench {
  /** Sessions kept: those of two lists, each with and without its last mark, and of a preview. */
  private static final int KEPT = 5;

  /** Sessions kept after slow marks. */
  private static final int KEPT_SLOW = 3;

  /** A mark that takes longer is slow: people see that they wait. */
  private final long slowNanos;

  private final List<MarkSession> kept = new ArrayList<>();
  private final List<MarkSession> slow = new ArrayList<>();
  private Optional<Piece> piece = Optional.empty();
  private Treatment ground = Treatment.PLATE;

  /** Calls a mark slow after 0.3 s. */
  MarkBench() {
    this(300_000_000);
  }

  /** Calls a mark slow after so many nanoseconds. */
  MarkBench(long slowNanos) {
    this.slowNanos = slowNanos;
  }

  /** The map of marks on a piece: as {@code Marks.evaluate}, to the bit. */
  SurfaceMap map(Piece of, Treatment on, List<Mark> marks, Progress progress) throws MarkException {
    return map(of, on, marks, false, progress);
  }

  /** The same of marks whose last is only tried out, and not worth remembering for long. */
  SurfaceMap trial(Piece of, Treatment on, List<Mark> marks, Progress progress)
      throws MarkException {
    return map(of, on, marks, true, progress);
  }

  private SurfaceMap map(Piece of, Treatment on, List<Mark> marks, boolean trial, Progress progress)
      throws MarkException {
    if (!Identity.same(piece, Optional.of(of)) || ground != on) {
      kept.clear();
      slow.clear();
      piece = Optional.of(of);
      ground = on;
    }
    MarkSession session = longest(marks);
    int done = session.marks().size();
    if (done == marks.size()) {
      keep(session, kept, KEPT);
      return session.map();
    }
    session = session.copy();
    double share = marks.size() - done;
    for (int i = done; i < marks.size(); i++) {
      long start = System.nanoTime();
      session.add(marks.get(i), progress.between((i - done) / share, (i + 1 - done) / share));
      int left = marks.size() - 1 - i;
      boolean slowly = System.nanoTime() - start > slowNanos && !(trial && left == 0);
      if (slowly || left <= 1) {
        MarkSession copy = left == 0 ? session : session.copy();
        if (slowly) {
          keep(copy, slow, KEPT_SLOW);
        }
        if (left <= 1) {
          keep(copy, kept, KEPT);
        }
      }
    }
    return session.map();
  }

  /** The kept session of most of the marks that are the first ones of a list. */
  private MarkSession longest(List<Mark> marks) {
    MarkSession best = null;
    List<MarkSession> all = new ArrayList<>(slow);
    all.addAll(kept);
    for (MarkSession session : all) {
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

  private static void keep(MarkSession session, List<MarkSession> in, int most) {
    in.removeIf(k -> k == session || k.marks().equals(session.marks()));
    in.add(session);
    if (in.size() > most) {
      in.remove(0);
    }
  }
}
