package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class FieldCutTest {
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anyFieldOnAnySoupKeepsAreaAndWeld(long seed) {
    Random random = new Random(seed);
    for (Mesh mesh : CutChecks.soups()) {
      double[] field = CutChecks.waveringField(mesh, random);
      CutChecks.assertSound(mesh, FieldCut.along(mesh, field, 0, f -> true));
      CutMesh partly = FieldCut.along(mesh, field, 0, f -> f % 3 != 0);
      CutChecks.assertSound(mesh, partly);
      double[] second = CutChecks.waveringField(partly.mesh(), random);
      CutMesh both = partly.then(FieldCut.along(partly.mesh(), second, 0, f -> f % 5 != 0));
      assertThat(CutChecks.area(both.mesh()))
          .isCloseTo(CutChecks.area(mesh), within(1e-12 * CutChecks.area(mesh)));
      assertCarriesPlaces(mesh, both);
    }
  }

  private static void assertCarriesPlaces(Mesh before, CutMesh cut) {
    double[] x = new double[before.vertexCount()];
    Arrays.setAll(x, before::x);
    double[] carried = cut.carry(x);
    for (int v = 0; v < carried.length; v++) {
      assertThat(carried[v]).isEqualTo(cut.mesh().x(v));
    }
  }

  @Test
  void planeThroughACubeLeavesTheAreaBelowIt() {
    // A cube of side 2 below height h above its floor: floor 4 and sides 8h.
    Mesh cube = Shapes.cube(2, 7);
    double[] height = new double[cube.vertexCount()];
    Arrays.setAll(height, v -> cube.z(v) + 1);
    for (double h : new double[] {0.1, 1 / 3.0, 1, 1.9}) {
      CutMesh cut = FieldCut.along(cube, height, h, f -> true);
      assertThat(areaBelow(cut, height, h)).isCloseTo(4 + 8 * h, within(1e-12 * 24));
    }
  }

  @Test
  void levelThroughVerticesCutsNothing() {
    // Height 1 of a cube of 4 cells a side runs along edges: nothing to split.
    Mesh cube = Shapes.cube(2, 4);
    double[] z = new double[cube.vertexCount()];
    Arrays.setAll(z, cube::z);
    CutMesh cut = FieldCut.along(cube, z, 0, f -> true);
    assertThat(cut.mesh().faceCount()).isEqualTo(cube.faceCount());
    assertThat(areaBelow(cut, z, 0)).isCloseTo(12, within(1e-12));
  }

  @Test
  void lineMissingAVertexByAHairRunsThroughIt() {
    Mesh plane = Shapes.plane(2, 2, 2, 2);
    double[] x = new double[plane.vertexCount()];
    Arrays.setAll(x, v -> plane.x(v) + 1e-9);
    CutMesh cut = FieldCut.along(plane, x, 0, f -> true);
    assertThat(cut.mesh().faceCount()).isEqualTo(plane.faceCount());
    assertThat(areaBelow(cut, x, 0)).isCloseTo(2, within(1e-12));
  }

  @Test
  void faceWithAnUnknownCornerIsNotCutButStaysWelded() {
    Mesh mesh = Shapes.icosphere(1, 2);
    double[] z = new double[mesh.vertexCount()];
    Arrays.setAll(z, v -> mesh.x(v) > 0.5 ? Double.POSITIVE_INFINITY : mesh.z(v) + 1e-3);
    z[0] = Double.NaN;
    CutChecks.assertSound(mesh, FieldCut.along(mesh, z, 0, f -> true));
  }

  @Test
  void faceThatMayNotBeCutIsSplitOnlyAtItsNeighboursVertices() {
    // Two faces of a square; x = 0.25 crosses the diagonal they share and one outer edge of face 0.
    Mesh square = Shapes.plane(2, 2, 1, 1);
    double[] x = new double[4];
    Arrays.setAll(x, square::x);
    CutMesh cut = FieldCut.along(square, x, 0.25, f -> f == 0);
    assertThat(cut.parentFace()).containsExactly(0, 0, 0, 1, 1);
    CutChecks.assertSound(square, cut);
  }

  @Test
  void quadIsSplitOnItsShorterDiagonal() {
    Mesh face = Mesh.of(new double[] {0, 0, 0, 10, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});
    // Cut the long tip off at x = 4: crossings (4, 0) and (4, 0.6); the quad's diagonals are from
    // (0,0) to (4, 0.6), 4.045, and from (0,1) to (4, 0), 4.123.
    CutMesh cut = FieldCut.along(face, new double[] {0, 10, 0}, 4, f -> true);
    boolean shorter = false;
    for (int f = 0; f < 3; f++) {
      int[] c = Arrays.copyOfRange(cut.mesh().corner(), 3 * f, 3 * f + 3);
      boolean origin = Arrays.stream(c).anyMatch(v -> v == 0);
      boolean upper = Arrays.stream(c).anyMatch(v -> cut.mesh().y(v) == 0.6);
      shorter |= origin && upper;
    }
    assertThat(shorter).isTrue();
  }

  @Test
  void wrongLengthIsAProgrammingError() {
    assertThatThrownBy(() -> FieldCut.along(Shapes.cube(1, 1), new double[3], 0, f -> true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("found 3");
  }

  private static double areaBelow(CutMesh cut, double[] field, double level) {
    boolean[] below = FieldCut.below(cut, field, level);
    double sum = 0;
    for (int f = 0; f < below.length; f++) {
      sum += below[f] ? Faces.area(cut.mesh(), f) : 0;
    }
    return sum;
  }
}
