package org.seamwright.section;

import java.util.Objects;

/**
 * Sections that repeat round an axis: one part is divided, and the others are that one turned.
 *
 * @param axis the axis
 * @param count how many times the piece repeats in a full turn, from 2; 0 to have it found
 */
public record SectionSymmetry(SectionAxis axis, int count) {
  /** Checks the count. */
  public SectionSymmetry {
    Objects.requireNonNull(axis, "axis");
    if (count < 0 || count == 1) {
      throw new IllegalArgumentException("A symmetry needs a count of at least 2");
    }
  }
}
