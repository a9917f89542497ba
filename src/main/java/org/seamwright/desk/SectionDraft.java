package org.seamwright.desk;

import java.util.List;
import java.util.Optional;
import org.seamwright.mesh.Mesh;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.section.Section;
import org.seamwright.section.SectionEdit;

/**
 * What an edit of sections would do, or why it can't be done.
 *
 * @param edit the edit
 * @param shown the sections as they would be; empty if it is refused
 * @param refusal why it can't be carried out, and what to do; empty if it can
 */
public record SectionDraft(SectionEdit edit, Optional<Shown> shown, String refusal) {
  /**
   * Sections as they would be. Laps are measured but not cut.
   *
   * @param mesh the piece cut along marks and seams, mm
   * @param origin one entry per face: its face on the piece
   * @param sectionOf one entry per face: the number that its section has in the plan as it is, a
   *     number beyond those for a part split off, 0 for what stays bare and -1 for what is no part
   *     of the work
   * @param sections by their numbers after the edit
   * @param plating what they take
   * @param twiceMm2 area activated exactly twice
   * @param moreMm2 area activated three times or more
   */
  public record Shown(
      Mesh mesh,
      int[] origin,
      int[] sectionOf,
      List<Section> sections,
      PlatingPlan plating,
      double twiceMm2,
      double moreMm2) {}

  static SectionDraft refused(SectionEdit edit, String why) {
    return new SectionDraft(edit, Optional.empty(), why);
  }
}
