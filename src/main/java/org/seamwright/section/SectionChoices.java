package org.seamwright.section;

import java.util.List;
import java.util.Optional;

/**
 * What the user asks of the sections beyond limit and laps.
 *
 * @param way how sections are made; empty for the automatic way
 * @param symmetry whether and how they repeat
 * @param edits changes of what was found, in order
 */
public record SectionChoices(
    Optional<SectionWay> way, Optional<SectionSymmetry> symmetry, List<SectionEdit> edits) {
  /** Nothing asked for. */
  public static final SectionChoices NONE =
      new SectionChoices(Optional.empty(), Optional.empty(), List.of());

  /** Copies the list. */
  public SectionChoices {
    if (way.isPresent() && symmetry.isPresent()) {
      throw new IllegalArgumentException("A symmetry goes with the automatic way only");
    }
    edits = List.copyOf(edits);
  }

  /** A way and nothing else. */
  public static SectionChoices of(SectionWay way) {
    return new SectionChoices(Optional.of(way), Optional.empty(), List.of());
  }

  /** A symmetry and nothing else. */
  public static SectionChoices of(SectionSymmetry symmetry) {
    return new SectionChoices(Optional.empty(), Optional.of(symmetry), List.of());
  }

  /** The same choices with other edits. */
  public SectionChoices withEdits(List<SectionEdit> other) {
    return new SectionChoices(way, symmetry, other);
  }
}
