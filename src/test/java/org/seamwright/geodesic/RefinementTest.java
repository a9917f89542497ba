package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

class RefinementTest {
  private static final Mesh BOX = box(200, 120, 6);

  private static Mesh box(double x, double y, double z) {
    double[] p = {0, 0, 0, x, 0, 0, x, y, 0, 0, y, 0, 0, 0, z, x, 0, z, x, y, z, 0, y, z};
    int[] c = {
      0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3,
      0, 4, 3, 4, 7
    };
    return Mesh.of(p, c);
  }

  private static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  private static double longestEdge(Mesh mesh) {
    double longest = 0;
    for (int h = 0; h < mesh.corner().length; h++) {
      longest =
          Math.max(longest, Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]));
    }
    return longest;
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 7, 3})
  void leavesNoEdgeLongerThanAskedAndTheAreaAlone(double maxEdgeMm) {
    CutMesh fine = Refinement.edges(BOX, maxEdgeMm, f -> true);
    assertThat(longestEdge(fine.mesh())).isLessThanOrEqualTo(maxEdgeMm);
    // Closed formula: a box has 2(ab + bc + ca).
    assertThat(area(fine.mesh())).isCloseTo(2 * (200 * 120 + 120 * 6 + 6 * 200), within(1e-8));
    Topology topology = Topology.of(fine.mesh());
    assertThat(topology.openEdges()).isZero();
    assertThat(topology.branchingEdges()).isZero();
    assertThat(topology.flippedEdges()).isZero();
  }

  @Test
  void refinesOnlyWhatIsAskedAndStaysWelded() {
    CutMesh fine = Refinement.edges(BOX, 5, f -> f < 2);
    Topology topology = Topology.of(fine.mesh());
    assertThat(topology.openEdges()).isZero();
    assertThat(area(fine.mesh())).isCloseTo(2 * (200 * 120 + 120 * 6 + 6 * 200), within(1e-8));
    double[] areaOfParent = new double[12];
    for (int f = 0; f < fine.mesh().faceCount(); f++) {
      areaOfParent[fine.parentFace()[f]] += Faces.area(fine.mesh(), f);
    }
    for (int f = 0; f < 12; f++) {
      assertThat(areaOfParent[f]).isCloseTo(Faces.area(BOX, f), within(1e-9));
    }
    // Face 2 lies on the far side and touches no edge of the refined side.
    assertThat(Arrays.stream(fine.parentFace()).filter(p -> p == 2).count()).isOne();
  }

  @Test
  void carriesLinearValuesExactly() {
    CutMesh fine = Refinement.edges(BOX, 9, f -> true);
    double[] x = new double[BOX.vertexCount()];
    for (int v = 0; v < x.length; v++) {
      x[v] = BOX.x(v) + 2 * BOX.y(v);
    }
    double[] carried = fine.carry(x);
    for (int v = 0; v < carried.length; v++) {
      assertThat(carried[v]).isCloseTo(fine.mesh().x(v) + 2 * fine.mesh().y(v), within(1e-10));
    }
  }

  @Test
  void givesANeedleRungsInsteadOfThinnerNeedles() {
    // 128 mm long, 1 mm wide: 64 steps of 2 mm on either side are 63 rungs, 63 diagonals between
    // them and so 127 faces.
    Mesh needle = Mesh.of(new double[] {0, 0, 0, 0, 1, 0, 128, 0.5, 0}, new int[] {0, 1, 2});
    CutMesh fine = Refinement.edges(needle, 2.5, f -> true);
    assertThat(fine.mesh().faceCount()).isEqualTo(127);
    assertThat(area(fine.mesh())).isCloseTo(64, within(1e-10));
    assertThat(longestEdge(fine.mesh())).isLessThanOrEqualTo(2.5);
  }
}
