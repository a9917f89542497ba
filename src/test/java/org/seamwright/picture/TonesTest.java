package org.seamwright.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;
import org.seamwright.section.SectionPlan;
import org.seamwright.testsupport.Shapes;

class TonesTest {
  @Test
  void neighboursNeverShareAClass() {
    // A 5 × 5 board: at most four neighbours each, so seven classes always suffice greedily.
    int n = 5;
    List<Seam> seams = new ArrayList<>();
    List<Section> sections = new ArrayList<>();
    for (int i = 0; i < n * n; i++) {
      sections.add(new Section(i + 1, 1, 0, 0));
      if (i % n + 1 < n) {
        seams.add(new Seam(i + 1, i + 2, 1, 0, 0));
      }
      if (i + n < n * n) {
        seams.add(new Seam(i + 1, i + n + 1, 1, 0, 0));
      }
    }
    var mesh = Shapes.plane(1, 1, n, 1 + n);
    int[] of = new int[mesh.faceCount()];
    for (int f = 0; f < of.length; f++) {
      of[f] = Math.min(n * n, f + 1);
    }
    SectionPlan plan =
        new SectionPlan(
            mesh,
            new int[of.length],
            of,
            new byte[of.length],
            new byte[of.length],
            sections,
            seams,
            0,
            0,
            0,
            List.of());
    int[] tone = Tones.of(plan);
    for (Seam seam : seams) {
      assertThat(tone[seam.earlier()]).as("%s", seam).isNotEqualTo(tone[seam.later()]);
    }
    assertThat(tone).contains(0, 1, 2, 3, 4, 5, 6);
  }
}
