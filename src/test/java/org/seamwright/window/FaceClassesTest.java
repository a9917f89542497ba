package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.seamwright.job.PlannedJob;
import org.seamwright.region.Treatment;
import org.seamwright.section.SectionPlan;

class FaceClassesTest {
  @Test
  void tellSectionLapBareAndOutOfScope() {
    PlannedJob job = PlannedFixture.ring(64, 16);
    SectionPlan plan = job.sections();
    int[] of = FaceClasses.of(job);
    int laps = 0;
    for (int f = 0; f < of.length; f++) {
      int section = plan.sectionOf()[f];
      assertThat(FaceClasses.section(of[f])).isEqualTo(section);
      assertThat(FaceClasses.isLap(of[f])).isEqualTo(plan.flashes()[f] > 1);
      assertThat(FaceClasses.activations(of[f])).isEqualTo(Math.min(3, plan.activations()[f]));
      assertThat(of[f] == FaceClasses.BARE).isEqualTo(job.map().of(f) == Treatment.BARE);
      assertThat(of[f] == FaceClasses.OUT_OF_SCOPE)
          .isEqualTo(job.map().of(f) == Treatment.OUT_OF_SCOPE);
      laps += FaceClasses.isLap(of[f]) ? 1 : 0;
    }
    assertThat(laps).isPositive();
  }

  @Test
  void eachSectionHasFourClassesOfItsOwn() {
    boolean[] seen = new boolean[FaceClasses.count(5)];
    seen[FaceClasses.BARE] = true;
    seen[FaceClasses.OUT_OF_SCOPE] = true;
    for (int id = 1; id <= 5; id++) {
      for (int c :
          new int[] {
            FaceClasses.plain(id), FaceClasses.lap(id), FaceClasses.twice(id), FaceClasses.more(id)
          }) {
        assertThat(seen[c]).isFalse();
        seen[c] = true;
        assertThat(FaceClasses.section(c)).isEqualTo(id);
      }
    }
    assertThat(seen).doesNotContain(false);
  }
}
