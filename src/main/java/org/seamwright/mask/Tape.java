package org.seamwright.mask;

import java.util.Collections;
import java.util.List;

/**
 * Tape along a line: once round a closed line it laps over its own start, and where a roll is too
 * short the line is taped in equal strips that lap over one another.
 */
final class Tape {
  private Tape() {}

  /** The strips along a line. */
  static List<MaskPlan.TapeStrip> along(MaskEdge edge, MaskSettings settings) {
    double overlap = settings.tapeOverlapMm();
    double roll = settings.tapeRollMm();
    // n strips have n laps on a closed line, n - 1 on an open one; none may exceed the roll.
    double bare = edge.closed() ? edge.lengthMm() : edge.lengthMm() - overlap;
    int strips = (int) Math.max(1, Math.ceil(bare / (roll - overlap)));
    int laps = edge.closed() ? strips : strips - 1;
    double each = (edge.lengthMm() + laps * overlap) / strips;
    return Collections.nCopies(strips, new MaskPlan.TapeStrip(settings.tapeWidthMm(), each));
  }
}
