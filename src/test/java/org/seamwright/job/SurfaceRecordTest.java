package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

class SurfaceRecordTest {
  /** Places at equal steps of area: each side of a cube gets a sixth of them, give or take one. */
  @ParameterizedTest
  @ValueSource(ints = {1, 7, 40})
  void everySideOfACubeGetsItsShareHoweverFineItIs(int n) {
    SurfaceRecord record = SurfaceRecord.of(Shapes.cube(100, n));
    Map<String, Integer> bySide = new HashMap<>();
    for (Vector3D p : record.samples()) {
      double[] xyz = p.toArray();
      int axis = 0;
      for (int i = 1; i < 3; i++) {
        axis = Math.abs(xyz[i]) > Math.abs(xyz[axis]) ? i : axis;
      }
      assertThat(Math.abs(xyz[axis])).as("on the surface").isCloseTo(50, within(1e-3));
      bySide.merge(axis + (xyz[axis] > 0 ? "+" : "-"), 1, Integer::sum);
    }

    assertThat(record.areaMm2()).isCloseTo(60_000, within(1e-6));
    assertThat(record.samples()).hasSize(SurfaceRecord.SAMPLES).doesNotHaveDuplicates();
    assertThat(bySide).hasSize(6);
    assertThat(bySide.values())
        .allSatisfy(c -> assertThat(c).isBetween(SurfaceRecord.SAMPLES / 6 - 1, 23));
  }

  /** On a side of two faces the places must spread within the faces: their mean is the middle. */
  @Test
  void placesSpreadWithinAFace() {
    double[] square = {0, 0, 0, 1, 0, 0, 0, 1, 0};
    SurfaceRecord record = SurfaceRecord.of(Mesh.of(square, new int[] {0, 1, 2}));
    double x = record.samples().stream().mapToDouble(Vector3D::getX).average().orElseThrow();
    double y = record.samples().stream().mapToDouble(Vector3D::getY).average().orElseThrow();

    // The centroid of the triangle; 128 independent draws would miss it by 0.02 (1/sqrt(18 n)).
    assertThat(x).isCloseTo(1.0 / 3, within(0.02));
    assertThat(y).isCloseTo(1.0 / 3, within(0.02));
  }

  @Test
  void aSphereMovedOrGrownLiesAsFarOffAsItMust() {
    Mesh sphere = Shapes.icosphere(50, 5);
    SurfaceRecord record = SurfaceRecord.of(sphere);

    SurfaceShift same = SurfaceShift.of(record, Shapes.icosphere(50, 6));
    SurfaceShift grown = SurfaceShift.of(record, Shapes.icosphere(51, 6));
    SurfaceShift moved = SurfaceShift.of(record, Shapes.moved(sphere, 1, 0, 0));

    // Facets of level 5 lie up to 50 * (1 - cos of half their angle, 1.1 degrees) inside.
    assertThat(same.mostMm()).isLessThan(0.02);
    assertThat(grown.medianMm()).isCloseTo(1, within(0.03));
    assertThat(moved.mostMm()).isBetween(0.9, 1.0);
    // |cos| of the angle to the direction of the move: uniform on a sphere, so its median is 1/2.
    assertThat(moved.medianMm()).isCloseTo(0.5, within(0.1));
    assertThat(moved.isAnotherPiece()).isFalse();
    assertThat(SurfaceShift.of(record, Shapes.cube(100, 8)).isAnotherPiece()).isTrue();
  }
}
