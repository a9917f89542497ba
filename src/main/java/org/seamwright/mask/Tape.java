package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Tape along a line: once round a closed line it laps over its own start, and where a roll is too
 * short the line is taped in equal strips that lap over one another. With a list of tapes the
 * cheapest that bend with the line are chosen, cut at corners, narrow ones backed by wider ones.
 */
final class Tape {
  private Tape() {}

  /**
   * Tape along a line.
   *
   * @param strips what to cut
   * @param byHandMm length of line that no tape follows
   * @param shape how the line bends
   */
  record Laid(List<MaskPlan.TapeStrip> strips, double byHandMm, EdgeShape shape) {}

  /** The strips along a line, of the shop's one tape or of its list. */
  static Laid along(MaskEdge edge, int number, MaskSettings settings) {
    EdgeShape shape = EdgeShape.of(edge);
    return settings.tapes().isEmpty()
        ? new Laid(ofOne(edge, number, settings), 0, shape)
        : chosen(edge, number, shape, settings);
  }

  private static List<MaskPlan.TapeStrip> ofOne(MaskEdge edge, int number, MaskSettings settings) {
    return strips(
        settings.kinds().get(0),
        edge.lengthMm(),
        edge.closed(),
        settings.tapeOverlapMm(),
        number,
        0);
  }

  /**
   * Equal strips, none longer than a roll: n on a closed line have n laps, on an open one n − 1.
   */
  private static List<MaskPlan.TapeStrip> strips(
      TapeKind kind, double lengthMm, boolean closed, double overlapMm, int edge, int row) {
    double most = kind.rollMm() * (1 + kind.stretch());
    double bare = closed ? lengthMm : lengthMm - overlapMm;
    int strips = (int) Math.max(1, Math.ceil(bare / (most - overlapMm)));
    int laps = closed ? strips : strips - 1;
    double each = (lengthMm + laps * overlapMm) / strips / (1 + kind.stretch());
    return Collections.nCopies(
        strips, new MaskPlan.TapeStrip(kind.name(), kind.widthMm(), each, 1, edge, row));
  }

  private static Laid chosen(MaskEdge edge, int number, EdgeShape shape, MaskSettings settings) {
    double overlap = settings.tapeOverlapMm();
    TapeChoice choice = new TapeChoice(settings.tapes(), settings.tapeWidthMm(), overlap);
    List<MaskPlan.TapeStrip> all = new ArrayList<>();
    double byHand = 0;
    for (int i = 0; i < shape.stretches().size(); i++) {
      double[] radius = shape.stretches().get(i);
      List<TapeChoice.Run> runs = choice.along(radius, shape.closed(), shape.stepMm());
      // The last place of a stretch is the first of the next, but on a line without corners.
      double share = shape.closed() ? 1 : (radius.length - 1.0) / radius.length;
      boolean cutBefore = !shape.closed() && (i > 0 || edge.closed());
      boolean round = shape.closed();
      if (round && runs.size() > 1 && runs.get(0).kind() == runs.get(runs.size() - 1).kind()) {
        runs = joined(runs, radius.length);
      }
      for (int r = 0; r < runs.size(); r++) {
        TapeChoice.Run run = runs.get(r);
        double length = (run.to() - run.from()) * shape.stepMm() * share;
        if (run.kind() == TapeChoice.BY_HAND) {
          byHand += length;
          continue;
        }
        TapeKind kind = settings.tapes().get(run.kind());
        boolean whole = round && runs.size() == 1;
        // Over the end of the strip before it; across the whole of that one at a corner.
        boolean lapsBefore = r > 0 || (round && runs.size() > 1);
        double more = lapsBefore ? overlap : r == 0 && cutBefore ? kind.widthMm() : 0;
        all.addAll(strips(kind, length + more, whole, overlap, number, 0));
        back(choice, kind, run, radius, shape.stepMm() * share, settings, number, all);
      }
    }
    return new Laid(all, byHand, shape);
  }

  /** The last run and the first of a closed line are one strip. */
  private static List<TapeChoice.Run> joined(List<TapeChoice.Run> runs, int places) {
    TapeChoice.Run first = runs.get(0);
    TapeChoice.Run last = runs.get(runs.size() - 1);
    List<TapeChoice.Run> joined = new ArrayList<>(runs.subList(1, runs.size() - 1));
    joined.add(new TapeChoice.Run(last.kind(), last.from(), places + first.to()));
    return joined;
  }

  /** Rows of straight pieces behind a narrow tape. */
  private static void back(
      TapeChoice choice,
      TapeKind kind,
      TapeChoice.Run run,
      double[] radius,
      double stepMm,
      MaskSettings settings,
      int edge,
      List<MaskPlan.TapeStrip> to) {
    int backing = choice.backing(kind);
    if (backing < 0) {
      return;
    }
    double pieces = 0;
    for (int i = run.from(); i < run.to(); i++) {
      pieces += stepMm / TapeChoice.pieceMm(kind, radius[i % radius.length]);
    }
    TapeKind wide = settings.tapes().get(backing);
    double length = (run.to() - run.from()) * stepMm;
    double most = wide.rollMm() * (1 + wide.stretch()) - settings.tapeOverlapMm();
    int count = (int) Math.max(1, Math.ceil(Math.max(pieces, length / most)));
    double each = (length / count + settings.tapeOverlapMm()) / (1 + wide.stretch());
    for (int row = 1; row <= choice.rows(kind, backing); row++) {
      to.add(new MaskPlan.TapeStrip(wide.name(), wide.widthMm(), each, count, edge, row));
    }
  }
}
