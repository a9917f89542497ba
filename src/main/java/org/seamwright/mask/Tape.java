package org.seamwright.mask;

import java.util.ArrayList;
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
        new Span(0, edge.lengthMm(), 0, edge.closed()),
        settings.tapeOverlapMm(),
        number);
  }

  /**
   * A stretch of a line under one tape.
   *
   * @param fromMm where it begins along the line
   * @param lengthMm how long it is
   * @param lapMm how far its first strip lies over what is before it
   * @param closed whether it runs back into itself
   */
  private record Span(double fromMm, double lengthMm, double lapMm, boolean closed) {}

  /**
   * Equal strips, none longer than a roll: n on a closed line have n laps, on an open one n − 1.
   */
  private static List<MaskPlan.TapeStrip> strips(
      TapeKind kind, Span span, double overlapMm, int edge) {
    double most = kind.rollMm() * (1 + kind.stretch());
    double length = span.lengthMm() + span.lapMm();
    double bare = span.closed() ? length : length - overlapMm;
    int count = (int) Math.max(1, Math.ceil(bare / (most - overlapMm)));
    int laps = span.closed() ? count : count - 1;
    double each = (length + laps * overlapMm) / count / (1 + kind.stretch());
    List<MaskPlan.TapeStrip> strips = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      strips.add(
          new MaskPlan.TapeStrip(
              kind.name(),
              kind.widthMm(),
              each,
              1,
              edge,
              0,
              span.fromMm() + span.lengthMm() * i / count,
              span.fromMm() + span.lengthMm() * (i + 1) / count,
              i > 0 || span.closed() ? overlapMm : span.lapMm()));
    }
    return strips;
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
        double from = shape.startsMm().get(i) + run.from() * shape.stepMm() * share;
        all.addAll(strips(kind, new Span(from, length, more, whole), overlap, number));
        back(choice, kind, run, radius, shape.stepMm() * share, settings, number, from, all);
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
      double fromMm,
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
      to.add(
          new MaskPlan.TapeStrip(
              wide.name(),
              wide.widthMm(),
              each,
              count,
              edge,
              row,
              fromMm,
              fromMm + length,
              settings.tapeOverlapMm()));
    }
  }
}
