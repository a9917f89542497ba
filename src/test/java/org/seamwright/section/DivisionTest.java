package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class DivisionTest {
  private static Domain domain(Mesh mesh) {
    return Domain.of(mesh, new int[mesh.faceCount()], 1);
  }

  /** Compact pieces need hardly more sections than their worked area makes. */
  @ParameterizedTest
  @CsvSource({
    "plane, 3.3",
    "plane, 17",
    "sphere, 2.2",
    "sphere, 13",
    "torus, 9",
    "torus, 31",
    "cube, 7"
  })
  void needsFewMoreSectionsThanWorkedAreaOverLimit(String shape, double limits) {
    Mesh mesh =
        switch (shape) {
          case "plane" -> Shapes.plane(120, 80, 60, 40);
          case "sphere" -> Shapes.icosphere(30, 4);
          case "torus" -> Shapes.torus(40, 14, 80, 28);
          default -> Shapes.cube(50, 16);
        };
    double limit = PlanChecks.area(mesh) / limits;
    double lap = 0.05 * Math.sqrt(limit);
    SectionPlan plan =
        Sectioning.split(
            PlanChecks.allPlated(mesh), new SectionSettings(limit, lap / 2, lap), Progress.NONE);
    assertThat(plan.notices()).isEmpty();
    double worked = plan.sections().stream().mapToDouble(Section::workedMm2).sum();
    int least = (int) Math.ceil(worked / limit);
    // A tenth over, and one more where a few sections leave no finer choice.
    assertThat(plan.sections().size()).isLessThanOrEqualTo((int) Math.ceil(1.1 * least));
  }

  @Test
  void aCoarsenedDomainKeepsAreaAndComponents() {
    Mesh mesh = Shapes.twoSpheres(20, 70, 60, 90);
    int[] component = new int[mesh.faceCount()];
    for (int f = mesh.faceCount() / 2; f < component.length; f++) {
      component[f] = 1;
    }
    Domain fine = Domain.of(mesh, component, 2);
    Domain coarse = Coarsening.of(fine, new int[] {400, 900}, Progress.NONE);
    assertThat(coarse.isCoarse()).isTrue();
    for (int c = 0; c < 2; c++) {
      assertThat(coarse.areaMm2(c)).isCloseTo(fine.areaMm2(c), within(1e-6));
      int vertices = coarse.vertexBegin()[c + 1] - coarse.vertexBegin()[c];
      int wanted = c == 0 ? 400 : 900;
      // Points put down at random, with ways along edges, come near the number asked for.
      assertThat(vertices).isBetween(wanted * 7 / 10, wanted * 17 / 10);
    }
  }

  @Test
  void aThinStripCanBeCoarsenedAndDivided() {
    // 1000 by 2 mm: clusters sit in one row and no three of them meet.
    Mesh strip = Shapes.plane(1000, 2, 2000, 4);
    Domain fine = domain(strip);
    Domain coarse = Coarsening.of(fine, new int[] {150}, Progress.NONE);
    assertThat(coarse.isCoarse()).isTrue();
    Partition partition = Division.of(coarse, 400, 0, Progress.NONE);
    assertThat(partition.cells()).isEqualTo(6);
    int[] seed = Arrays.stream(partition.seeds()).map(v -> coarse.meshVertex()[v]).toArray();
    Partition exact = new Partition(fine, seed, partition.weightsMm());
    exact.spread(Progress.NONE);
    for (int i = 0; i < 6; i++) {
      // The coarse strip knows areas to about a cluster, 2000 mm² / 150.
      double coarseArea = partition.measure().areaMm2()[i];
      assertThat(exact.measure().areaMm2()[i]).isCloseTo(coarseArea, within(2000.0 / 150));
    }
    for (double length : exact.measure().borders().lengthMm()) {
      assertThat(length).isCloseTo(2, within(0.1));
    }
  }

  @Test
  void flippedTrianglesKeepTheSurface() {
    // A cylinder of long slivers: the flipped triangles have the same area and better shape.
    Mesh mesh = Shapes.cylinder(10, 80, 24, 3, false);
    Surface surface = Surface.of(mesh);
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      double a = surface.edgeMm()[3 * f];
      double b = surface.edgeMm()[3 * f + 1];
      double c = surface.edgeMm()[3 * f + 2];
      double s = (a + b + c) / 2;
      // Heron's formula.
      area += Math.sqrt(Math.max(0, s * (s - a) * (s - b) * (s - c)));
    }
    assertThat(area).isCloseTo(PlanChecks.area(mesh), within(1e-6));
  }
}
