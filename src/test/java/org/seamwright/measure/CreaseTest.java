package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Angles across edges of shapes whose angles are known. */
class CreaseTest {
  private static Mesh hinge(double degrees) {
    Shapes.Builder mesh = new Shapes.Builder();
    double angle = Math.toRadians(degrees);
    int a = mesh.vertex(0, 0, 0);
    int b = mesh.vertex(0, 1, 0);
    int c = mesh.vertex(-1, 0.3, 0);
    int d = mesh.vertex(Math.cos(angle), 0.7, Math.sin(angle));
    mesh.face(b, a, d);
    mesh.face(a, b, c);
    return mesh.build();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-6, 0.1, 30, 45, 90, 135, 179.9999})
  void hingeShowsItsAngle(double degrees) {
    for (Mesh mesh : new Mesh[] {hinge(degrees), hinge(-degrees)}) {
      Topology topology = Topology.of(mesh);
      // Half-edge 0 is b → a, the edge between the two faces.
      assertThat(Crease.degrees(mesh, topology, 0)).isCloseTo(degrees, within(1e-9));
      Mesh flipped = Shapes.withFlipped(mesh, 1);
      assertThat(Crease.degrees(flipped, Topology.of(flipped), 0)).isCloseTo(degrees, within(1e-9));
    }
  }

  @Test
  void cubeTurnsByRightAnglesAtItsEdgesAndNowhereElse() {
    Mesh cube = Shapes.rotated(Shapes.cube(2, 3), 1, 2, 3, 0.4);
    double[] degrees = Crease.degrees(cube, Topology.of(cube));
    int right = 0;
    for (double angle : degrees) {
      if (angle > 45) {
        assertThat(angle).isCloseTo(90, within(1e-10));
        right++;
      } else {
        assertThat(angle).isCloseTo(0, within(1e-10));
      }
    }
    assertThat(right).as("12 edges of 3 steps, both half-edges").isEqualTo(72);
  }

  @Test
  void icosahedronTurnsByItsKnownAngle() {
    // 180° less the dihedral angle acos(-sqrt(5)/3) = 138.19°.
    Mesh mesh = Shapes.icosphere(3, 0);
    double turn = 180 - Math.toDegrees(Math.acos(-Math.sqrt(5) / 3));
    for (double angle : Crease.degrees(mesh, Topology.of(mesh))) {
      assertThat(angle).isCloseTo(turn, within(1e-10));
    }
  }

  @Test
  void bordersAndBranchesCountAsFullTurns() {
    Mesh blades = Shapes.blades(3, 1, 2);
    Topology topology = Topology.of(blades);
    double[] degrees = Crease.degrees(blades, topology);
    for (int h = 0; h < degrees.length; h++) {
      assertThat(degrees[h]).isEqualTo(Crease.degrees(blades, topology, h));
      assertThat(degrees[h])
          .isCloseTo(topology.twin(h) < 0 ? Crease.BORDER_DEGREES : 0, within(1e-10));
    }
  }

  @Test
  void needleTakesTheNormalOfTheFaceAcrossItsLongestEdge() {
    // A T-junction closed by a face without area: a-m-b in line, between a flat square's halves.
    Shapes.Builder mesh = new Shapes.Builder();
    int a = mesh.vertex(0, 0, 0);
    int b = mesh.vertex(2, 0, 0);
    int m = mesh.vertex(1, 0, 0);
    int up = mesh.vertex(1, 1, 0);
    int low = mesh.vertex(1, -1, 0);
    mesh.face(a, b, up);
    int needle = mesh.face(b, a, m);
    mesh.face(m, a, low);
    mesh.face(b, m, low);
    Mesh flat = mesh.build();
    Topology topology = Topology.of(flat);
    for (int h = 3 * needle; h < 3 * needle + 3; h++) {
      assertThat(Crease.degrees(flat, topology, h)).isZero();
    }
  }
}
