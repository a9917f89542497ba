package org.seamwright.testsupport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** The test shapes are what they say: closed, turned outwards, of the area of their formula. */
class ShapesTest {
  @TestFactory
  Stream<DynamicTest> closedShapesAreClosedAndTurnedOutwards() {
    return Stream.of(
            Shapes.sphere(2, 12, 20),
            Shapes.icosphere(2, 2),
            Shapes.torus(5, 1, 20, 12),
            Shapes.cylinder(1, 3, 16, 4, true),
            Shapes.coneFrustum(2, 1, 3, 16, 4, true),
            Shapes.coneFrustum(2, 0, 3, 16, 4, true),
            Shapes.capsule(1, 2, 16, 3, 5),
            Shapes.cube(2, 3),
            Shapes.twoSpheres(1, 5, 8, 8))
        .map(
            mesh ->
                DynamicTest.dynamicTest(
                    mesh.faceCount() + " faces",
                    () -> {
                      Topology topology = Topology.of(mesh);
                      assertThat(topology.openEdges()).isZero();
                      assertThat(topology.flippedEdges()).isZero();
                      assertThat(topology.branchingEdges()).isZero();
                      assertThat(volume(mesh)).isPositive();
                    }));
  }

  @Test
  void icospheresHaveThePublishedAreas() {
    // Areas of the midpoint-subdivided unit icosphere; level 0 is 20 faces of edge 1.0514622242.
    double edge = 1.0514622242382672;
    assertThat(area(Shapes.icosphere(1, 0)))
        .isCloseTo(20 * edge * edge * Math.sqrt(3) / 4, within(1e-12));
    assertThat(area(Shapes.icosphere(1, 3))).isCloseTo(12.506492733970, within(1e-11));
  }

  @Test
  void lanternHasTheAreaOfItsFormula() {
    // H. A. Schwarz: 2mn sin(pi/n) sqrt(1/m^2 + (1 - cos(pi/n))^2) for r = h = 1.
    assertThat(area(Shapes.lantern(1, 1, 100, 10))).isCloseTo(30.873656382028, within(1e-10));
    assertThat(area(Shapes.lantern(1, 1, 100, 100))).isCloseTo(6.2897951414816, within(1e-11));
  }

  @Test
  void mobiusBandHasOneBorderAndOneSide() {
    Topology topology = Topology.of(Shapes.mobius(5, 2, 30, 4));
    assertThat(topology.openEdges()).isEqualTo(60);
    assertThat(topology.flippedEdges()).isEqualTo(4);
  }

  private static double area(Mesh mesh) {
    double sum = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }

  private static double volume(Mesh mesh) {
    double sum = 0;
    for (int h = 0; h < mesh.corner().length; h += 3) {
      int a = mesh.corner()[h];
      int b = mesh.corner()[h + 1];
      int c = mesh.corner()[h + 2];
      sum +=
          mesh.x(a) * (mesh.y(b) * mesh.z(c) - mesh.z(b) * mesh.y(c))
              + mesh.y(a) * (mesh.z(b) * mesh.x(c) - mesh.x(b) * mesh.z(c))
              + mesh.z(a) * (mesh.x(b) * mesh.y(c) - mesh.y(b) * mesh.x(c));
    }
    return sum / 6;
  }
}
