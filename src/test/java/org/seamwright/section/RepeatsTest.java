package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

/** Sections that repeat round an axis: copies have equal areas. */
class RepeatsTest {
  private static final SectionAxis Z = SectionAxis.of(Vector3D.ZERO, Vector3D.Unit.PLUS_Z);

  /** A fluted column: radius 20 + 2 cos(6 angle), repeating six times in its triangles too. */
  private static Mesh flutes() {
    Mesh round = Shapes.cylinder(20, 60, 120, 20, true);
    double[] p = round.xyz().clone();
    for (int i = 0; i < p.length; i += 3) {
      double far = Math.hypot(p[i], p[i + 1]);
      double grown = 1 + 0.1 * Math.cos(6 * Math.atan2(p[i + 1], p[i])) * far / 20;
      p[i] *= grown;
      p[i + 1] *= grown;
    }
    return Mesh.of(p, round.corner());
  }

  private static SectionPlan plan(Mesh mesh, double limit, SectionSymmetry symmetry)
      throws SectionException {
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionSettings settings = new SectionSettings(limit, 1, 2);
    SectionPlan plan = Sectioning.split(map, settings, SectionChoices.of(symmetry), Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    return plan;
  }

  private static void repeats(SectionPlan plan, int count, double relative) {
    double[] nets = plan.sections().stream().mapToDouble(Section::netMm2).sorted().toArray();
    assertThat(nets.length % count).as("sections: %d", nets.length).isZero();
    for (int i = 0; i < nets.length; i += count) {
      assertThat(nets[i + count - 1]).isCloseTo(nets[i], within(relative * nets[i]));
    }
  }

  @Test
  void sectionsOfFlutesRepeatAsTheFlutesDo() throws SectionException {
    SectionPlan plan = plan(flutes(), 700, new SectionSymmetry(Z, 6));

    // About 10,100 mm² in six sectors of 1700: three each at the least.
    assertThat(plan.sections().size()).isBetween(18, 30);
    repeats(plan, 6, 1e-7);
    assertThat(plan.notices()).isEmpty();
  }

  @Test
  void howOftenThePieceRepeatsIsFound() throws SectionException {
    SectionPlan plan = plan(flutes(), 3000, new SectionSymmetry(Z, 0));

    repeats(plan, 6, 1e-7);
    assertThat(plan.notices().get(0).code()).isEqualTo(SectionPlan.REPEATS);
    assertThat(plan.notices().get(0).count()).isEqualTo(6);
  }

  /** The rim has ten spokes and five bolt holes. */
  @Test
  void theSpokesOfTheSampleRimHaveTheSameSections() throws Exception {
    Mesh rim = MeshFiles.read(Path.of("models", "rim.stl"), Progress.NONE).mesh();

    SectionPlan plan = plan(rim, 40_000, new SectionSymmetry(SectionAxis.FOUND, 0));

    assertThat(plan.notices())
        .filteredOn(n -> n.code().equals(SectionPlan.REPEATS))
        .singleElement()
        .satisfies(n -> assertThat(n.count()).isEqualTo(10));
    // The same ten times but for a bolt hole in every other: its wall is a tube of radius 7.5 mm
    // and
    // length √(15² + 46²) mm, 2280 mm², which is 6.7% of the smallest section there may be.
    repeats(plan, 10, 0.067);
    repeats(plan, 5, 1e-3);
  }

  @Test
  void aPlainTurnedPieceHasNoCount() {
    assertThatThrownBy(
            () -> plan(Shapes.cylinder(20, 60, 90, 9, true), 1000, new SectionSymmetry(Z, 0)))
        .isInstanceOf(SectionException.class)
        .hasMessageContaining("sections.symmetry.count");
  }
}
