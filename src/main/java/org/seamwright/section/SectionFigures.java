package org.seamwright.section;

import java.util.List;
import org.seamwright.basis.Notice;

/**
 * The figures of sections under editing: those of a {@link SectionPlan} without its mesh.
 *
 * @param sections by id, in working order
 * @param seams by earlier, then later id
 * @param onceMm2 area activated exactly once
 * @param twiceMm2 area activated exactly twice
 * @param moreMm2 area activated three times or more
 * @param notices sections over the limit
 */
public record SectionFigures(
    List<Section> sections,
    List<Seam> seams,
    double onceMm2,
    double twiceMm2,
    double moreMm2,
    List<Notice> notices) {
  /** Copies the lists. */
  public SectionFigures {
    sections = List.copyOf(sections);
    seams = List.copyOf(seams);
    notices = List.copyOf(notices);
  }
}
