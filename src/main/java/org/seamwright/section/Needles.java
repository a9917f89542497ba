package org.seamwright.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Notice;

/**
 * Finds sections that are needles: long seams round little area. Measured by 4π·area/seam², which
 * is 1 for a round spot, π/4 for a square and πk/(1 + k)² for a rectangle k times as long as wide,
 * seams on all sides. Only seams count, not the edges of the piece or of masks: a spoke plated to
 * its edges is as narrow as it is, whatever seams do.
 */
final class Needles {
  /** Below this a section is a needle: a rectangle of 14 to 1, where π·14/15² is 0.195. */
  static final double LEAST = 0.2;

  private Needles() {}

  /**
   * How compact sections are.
   *
   * @param sections by id
   * @param seams between them
   * @return one entry per section, infinite for one without seams
   */
  static double[] compactness(List<Section> sections, List<Seam> seams) {
    double[] seamMm = new double[sections.size() + 1];
    for (Seam seam : seams) {
      seamMm[seam.earlier()] += seam.lengthMm();
      seamMm[seam.later()] += seam.lengthMm();
    }
    double[] compact = new double[sections.size()];
    for (int i = 0; i < compact.length; i++) {
      double length = seamMm[i + 1];
      compact[i] = 4 * Math.PI * sections.get(i).netMm2() / (length * length);
    }
    return compact;
  }

  /** A notice for each needle. */
  static List<Notice> told(List<Section> sections, List<Seam> seams) {
    List<Notice> notices = new ArrayList<>();
    double[] compact = compactness(sections, seams);
    for (int i = 0; i < compact.length; i++) {
      if (compact[i] < LEAST) {
        notices.add(
            new Notice(
                SectionPlan.NEEDLE,
                1,
                String.format(
                    Locale.ROOT,
                    "Section %d is long and narrow: its seams enclose little area (%.2f of a round"
                        + " spot's; needles begin at %.1f)",
                    sections.get(i).id(),
                    compact[i],
                    LEAST)));
      }
    }
    return notices;
  }
}
