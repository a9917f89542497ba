package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.testsupport.Shapes;

/** Edges and parts of shapes whose numbers are known. */
class TopologyTest {
  private static void assertFaults(Mesh mesh, int open, int branching, int flipped) {
    Topology topology = Topology.of(mesh);
    assertThat(topology.openEdges()).as("open").isEqualTo(open);
    assertThat(topology.branchingEdges()).as("branching").isEqualTo(branching);
    assertThat(topology.flippedEdges()).as("flipped").isEqualTo(flipped);
    for (int h = 0; h < mesh.corner().length; h++) {
      if (topology.twin(h) >= 0) {
        assertThat(topology.twin(topology.twin(h))).isEqualTo(h);
        assertThat(topology.faceAcross(h)).isEqualTo(topology.twin(h) / 3);
      } else {
        assertThat(topology.faceAcross(h)).isEqualTo(-1);
      }
    }
  }

  /** Vertices - edges + faces. */
  private static int euler(Mesh mesh) {
    return mesh.vertexCount() - Topology.of(mesh).edgeCount() + mesh.faceCount();
  }

  private static int parts(Mesh mesh) {
    return Parts.of(mesh, Topology.of(mesh)).count();
  }

  @Test
  void cubeIsClosedAndASphereToTopology() {
    Mesh cube = Shapes.cube(1, 3);
    assertFaults(cube, 0, 0, 0);
    assertThat(euler(cube)).isEqualTo(2);
    assertThat(parts(cube)).isEqualTo(1);
  }

  @Test
  void torusHasOneHandle() {
    Mesh torus = Shapes.torus(5, 1, 12, 9);
    assertFaults(torus, 0, 0, 0);
    assertThat(euler(torus)).isZero();
  }

  @Test
  void mobiusBandCanNotBeTurnedOneWay() {
    Mesh band = Shapes.mobius(5, 2, 20, 3);
    assertFaults(band, 40, 0, 3);
    assertThat(euler(band)).isZero();
    assertThat(parts(band)).isEqualTo(1);
  }

  @Test
  void twoShellsAreTwoParts() {
    Mesh shells = Shapes.join(Shapes.sphere(5, 8, 10), Shapes.sphere(3, 6, 8));
    assertFaults(shells, 0, 0, 0);
    assertThat(euler(shells)).isEqualTo(4);
    Parts parts = Parts.of(shells, Topology.of(shells));
    assertThat(parts.count()).isEqualTo(2);
    int outer = Shapes.sphere(5, 8, 10).faceCount();
    for (int f = 0; f < shells.faceCount(); f++) {
      assertThat(parts.of()[f]).isEqualTo(f < outer ? 0 : 1);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 7})
  void facesAroundOneEdgeBranchThereAndAreOnePart(int blades) {
    Mesh mesh = Shapes.blades(blades, 1, 2);
    // Each blade is a rectangle of two faces: three open edges, one diagonal, one shared.
    assertFaults(mesh, 3 * blades, 1, 0);
    assertThat(parts(mesh)).isEqualTo(1);
    assertThat(Topology.of(mesh).edgeCount()).isEqualTo(3 * blades + blades + 1);
  }

  @Test
  void turnedFaceHasThreeFlippedEdges() {
    Mesh cube = Shapes.withFlipped(Shapes.cube(1, 2), 7);
    assertFaults(cube, 0, 0, 3);
    assertThat(parts(cube)).isEqualTo(1);
  }

  @Test
  void facesThatOnlyShareAVertexAreTwoParts() {
    Mesh mesh =
        Mesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0, -1, 0, 0, 0, -1, 0},
            new int[] {0, 1, 2, 0, 3, 4});
    assertFaults(mesh, 6, 0, 0);
    assertThat(parts(mesh)).isEqualTo(2);
  }

  @Test
  void facesThatNameAVertexTwiceHaveNoEdges() {
    Mesh mesh =
        Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2, 0, 1, 1, 2, 2, 2});
    assertFaults(mesh, 3, 0, 0);
  }

  @Test
  void wideFanIsMatchedWhateverItsSize() {
    Mesh fan = Shapes.coneFrustum(3, 0, 1, 5000, 1, true);
    assertFaults(fan, 0, 0, 0);
    assertThat(euler(fan)).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void orderOfFacesDoesNotMatter(long seed) {
    Mesh mesh =
        Shapes.join(
            Shapes.without(Shapes.torus(5, 1, 12, 9), 3, 50),
            Shapes.blades(3, 1, 1),
            Shapes.withFlipped(Shapes.cube(1, 2), 4));
    Topology before = Topology.of(mesh);
    Mesh shuffled = Shapes.shuffled(mesh, seed);
    assertFaults(shuffled, before.openEdges(), before.branchingEdges(), before.flippedEdges());
    assertThat(parts(shuffled)).isEqualTo(3);
  }
}
