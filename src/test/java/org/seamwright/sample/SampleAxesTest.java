package org.seamwright.sample;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.measure.Revolution;
import org.seamwright.measure.TurnSymmetry;
import org.seamwright.mesh.Mesh;

/** The sample pieces are made about z, with a known number of spokes and handles. */
class SampleAxesTest {
  private static void assertAboutZ(Revolution found, double lowestMm) {
    assertThat(found.isSure()).isTrue();
    assertThat(found.direction().distance(Vector3D.Unit.PLUS_Z)).isLessThan(1e-6);
    assertThat(found.point().distance(Vector3D.of(0, 0, lowestMm))).isLessThan(1e-4);
  }

  @Test
  void rimTurnsAboutZAndHasTenSpokes() {
    Mesh rim = RimMaker.rim();
    Revolution found = Revolution.of(rim);
    assertAboutZ(found, -95);
    assertThat(TurnSymmetry.about(found, rim).orElseThrow().count()).isEqualTo(RimMaker.SPOKES);
  }

  @Test
  void cupTurnsAboutZAndHasTwoHandles() {
    Mesh cup = CupMaker.cup();
    Revolution found = Revolution.of(cup);
    assertAboutZ(found, 0);
    assertThat(TurnSymmetry.about(found, cup).orElseThrow().count()).isEqualTo(2);
  }
}
