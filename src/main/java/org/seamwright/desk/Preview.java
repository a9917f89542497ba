package org.seamwright.desk;

import java.util.Optional;
import org.seamwright.region.Mark;
import org.seamwright.region.SurfaceMap;

/**
 * What a mark that is being made would do.
 *
 * @param mark the mark, if one is being tried out
 * @param map the piece as it would be, once that is known
 * @param changedMm2 area whose treatment it would change, mm²
 * @param refusal why it can't be carried out; empty if it can
 */
public record Preview(
    Optional<Mark> mark, Optional<SurfaceMap> map, double changedMm2, String refusal) {
  /** Nothing is tried out. */
  static Preview none() {
    return new Preview(Optional.empty(), Optional.empty(), 0, "");
  }

  /** The same picture, while the effect of another mark is being worked out. */
  Preview with(Mark other) {
    return new Preview(Optional.of(other), map, changedMm2, "");
  }

  /** A mark that can't be carried out. */
  static Preview refused(Mark mark, String why) {
    return new Preview(Optional.of(mark), Optional.empty(), 0, why);
  }
}
