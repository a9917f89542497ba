package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.testsupport.Shapes;

class IdealPartitionsTest {
  /**
   * Sections may differ by a few per cent, which is worth as much in seam; drawn lines lose some.
   */
  private static final double ABOVE = 1.03;

  /** Sections of a square differ from hexagons along its border, by two fifths of all cells. */
  private static final double HONEYCOMB_ABOVE = 1.1;

  private static final double BELOW = 0.97;

  @Test
  void seamsAreHardlyLongerThanTheShortestKnown() {
    for (IdealPartitions.Case c : IdealPartitions.cases()) {
      double most = c.parts() > 12 ? HONEYCOMB_ABOVE : ABOVE;
      assertThat(c.ratio()).as(c.name()).isBetween(BELOW, most);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void noSectionIsANeedle(int seed) {
    // A limit between a twentieth and a half of the piece, wherever the seed puts it.
    double share = 0.05 + 0.45 * new java.util.Random(seed).nextDouble();
    var meshes =
        List.of(
            Shapes.torus(40, 14, 80, 28),
            Shapes.mobius(40, 25, 120, 16),
            Shapes.lathe(new double[] {20, 20, 3, 20}, new double[] {0, 30, 40, 60}, 60),
            Shapes.cube(50, 16));
    for (var mesh : meshes) {
      double limit = share * PlanChecks.area(mesh);
      SectionPlan plan =
          Sectioning.split(
              PlanChecks.allPlated(mesh), new SectionSettings(limit, 1, 2), Progress.NONE);
      double[] compact = Needles.compactness(plan.sections(), plan.seams());
      assertThat(Arrays.stream(compact).min().orElseThrow())
          .as("seed %d, %d faces", seed, mesh.faceCount())
          .isGreaterThan(Needles.LEAST);
      assertThat(plan.notices()).isEmpty();
    }
  }

  /** Without being moved apart two of these 18 lie 0.7 mm from each other. */
  @Test
  void placesWhereThreeSectionsMeetLieALapApart() {
    var mesh = Shapes.torus(40, 14, 120, 42);
    double lap = 4;
    SectionPlan plan =
        Sectioning.split(
            PlanChecks.allPlated(mesh),
            new SectionSettings(PlanChecks.area(mesh) / 9, 1, lap),
            Progress.NONE);
    assertThat(plan.notices()).isEmpty();
    assertThat(plan.junctions().close()).isEmpty();
    assertThat(plan.junctions().nearestMm()).isGreaterThanOrEqualTo(lap);
  }

  @Test
  void compactnessFollowsItsFormula() {
    // A strip of 10 × 60 between two others has seams of 60 on both sides.
    List<Section> sections =
        List.of(new Section(1, 900, 0, 0), new Section(2, 600, 0, 0), new Section(3, 900, 0, 0));
    List<Seam> seams = List.of(new Seam(1, 2, 60, 0, 0), new Seam(2, 3, 60, 0, 0));
    double[] compact = Needles.compactness(sections, seams);
    assertThat(compact[1]).isEqualTo(4 * Math.PI * 600 / (120.0 * 120));
    assertThat(Needles.told(sections, seams)).isEmpty();
    List<Section> thin = List.of(sections.get(0), new Section(2, 60, 0, 0), sections.get(2));
    assertThat(Needles.told(thin, seams)).hasSize(1);
  }
}
