package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

class RingShapesTest {
  private static boolean[] rings(Mesh mesh, int[] label, int sections) {
    return RingShapes.of(mesh, EdgeRings.of(mesh, Topology.of(mesh)), label, sections);
  }

  /** Euler's number: plane 1, sphere 2, cylinder and Möbius strip 0, torus 0. */
  @ParameterizedTest
  @CsvSource({"plane, false", "sphere, false", "cylinder, true", "mobius, true", "torus, true"})
  void knownShapes(String shape, boolean ring) {
    Mesh mesh =
        switch (shape) {
          case "plane" -> Shapes.plane(30, 20, 6, 4);
          case "sphere" -> Shapes.icosphere(10, 2);
          case "cylinder" -> Shapes.cylinder(10, 20, 24, 4, false);
          case "mobius" -> Shapes.mobius(20, 6, 40, 4);
          default -> Shapes.torus(20, 6, 24, 10);
        };
    assertThat(rings(mesh, new int[mesh.faceCount()], 1)).containsExactly(ring);
  }

  /** A square hole of side a in a square of side 30: its edge is 4a, half the side about 15. */
  @ParameterizedTest
  @CsvSource({"2, false", "6, true"})
  void smallHolesDoNotCount(int side, boolean ring) {
    Mesh mesh = Shapes.plane(30, 30, 15, 15);
    double[] centre = new double[3];
    int[] label = new int[mesh.faceCount()];
    for (int f = 0; f < label.length; f++) {
      Faces.centroid(mesh, f, centre);
      boolean inside = Math.abs(centre[0]) < side / 2.0 && Math.abs(centre[1]) < side / 2.0;
      label[f] = inside ? 1 : 0;
    }
    assertThat(rings(mesh, label, 2)).containsExactly(ring, false);
  }

  @ParameterizedTest
  @CsvSource({"cylinder, 4.5", "torus, 3.5", "torus, 1.5", "mobius, 2.5"})
  void noneWhereNoneIsAllowed(String shape, double limits) throws SectionException {
    Mesh mesh =
        switch (shape) {
          case "cylinder" -> Shapes.cylinder(10, 160, 64, 160, false);
          case "torus" -> Shapes.torus(40, 8, 100, 24);
          default -> Shapes.mobius(40, 25, 120, 16);
        };
    SurfaceMap map = PlanChecks.allPlated(mesh);
    double limit = PlanChecks.area(mesh) / limits;
    SectionSettings open =
        new SectionSettings(limit, 0.5, 1, OrderPins.NONE, SeamWeights.DEFAULT, false);
    SectionPlan plan = Sectioning.split(map, open, SectionChoices.NONE, Progress.NONE);
    PlanChecks.holds(map, open, plan);
    assertThat(plan.notices()).isEmpty();
    int[] label = IntStream.of(plan.sectionOf()).map(s -> s - 1).toArray();
    assertThat(rings(plan.mesh(), label, plan.sections().size())).containsOnly(false);
    SectionSession session = SectionSession.of(map, open, SectionChoices.NONE, Progress.NONE);
    assertThat(session.figures().sections()).hasSameSizeAs(plan.sections());
  }

  @Test
  void ringsAreFoundWhereTheyAreShortest() throws SectionException {
    Mesh mesh = Shapes.cylinder(10, 160, 64, 160, false);
    SectionSettings free = new SectionSettings(PlanChecks.area(mesh) / 3.5, 0.5, 1);
    SectionPlan plan =
        Sectioning.split(PlanChecks.allPlated(mesh), free, SectionChoices.NONE, Progress.NONE);
    int[] label = IntStream.of(plan.sectionOf()).map(s -> s - 1).toArray();
    boolean[] ring = rings(plan.mesh(), label, plan.sections().size());
    assertThat(Arrays.equals(ring, new boolean[ring.length])).isFalse();
  }
}
