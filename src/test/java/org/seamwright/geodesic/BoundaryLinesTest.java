package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.geodesic.BoundaryLines.Line;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

class BoundaryLinesTest {
  @Test
  void oneSideOfACubeIsBoundedByASquare() {
    Mesh cube = Shapes.cube(3, 4);
    double[] normal = new double[3];
    List<Line> lines =
        BoundaryLines.between(
            cube,
            Topology.of(cube),
            f -> {
              Faces.normal(cube, f, normal);
              return normal[2] > 0.5;
            });
    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).closed()).isTrue();
    assertThat(lines.get(0).vertices()).hasSize(16);
    assertThat(lines.get(0).lengthMm(cube)).isCloseTo(12, within(1e-12));
  }

  @Test
  void rimCountsOnlyWhenAskedFor() {
    Mesh plane = Shapes.plane(4, 2, 4, 2);
    Topology topology = Topology.of(plane);
    assertThat(BoundaryLines.between(plane, topology, f -> true)).isEmpty();
    List<Line> rim = BoundaryLines.between(plane, topology, f -> true, f -> true, true);
    assertThat(rim).hasSize(1);
    assertThat(rim.get(0).lengthMm(plane)).isCloseTo(12, within(1e-12));
    List<Line> half = BoundaryLines.between(plane, topology, f -> f < 8);
    assertThat(half).hasSize(1);
    assertThat(half.get(0).closed()).isFalse();
    assertThat(half.get(0).lengthMm(plane)).isCloseTo(4, within(1e-12));
  }

  @Test
  void branchingEdgeIsALineWhereOneFaceDiffers() {
    Mesh blades = Shapes.blades(5, 2, 3);
    Topology topology = Topology.of(blades);
    List<Line> lines = BoundaryLines.between(blades, topology, f -> f < 2);
    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).lengthMm(blades)).isCloseTo(3, within(1e-12));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void linesHoldEachBoundaryEdgeOnce(long seed) {
    Random random = new Random(seed);
    Mesh mesh = Shapes.icosphere(2, 3);
    Topology topology = Topology.of(mesh);
    boolean[] in = new boolean[mesh.faceCount()];
    for (int f = 0; f < in.length; f++) {
      in[f] = random.nextInt(3) == 0;
    }
    int edges = 0;
    double length = 0;
    for (int h = 0; h < mesh.corner().length; h++) {
      if (in[h / 3] && !in[topology.twin(h) / 3]) {
        edges++;
        length += Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
      }
    }
    int found = 0;
    double sum = 0;
    for (Line line : BoundaryLines.between(mesh, topology, f -> in[f])) {
      found += line.closed() ? line.vertices().length : line.vertices().length - 1;
      sum += line.lengthMm(mesh);
      assertThat(line.vertices()).doesNotHaveDuplicates();
    }
    assertThat(found).isEqualTo(edges);
    assertThat(sum).isCloseTo(length, within(1e-9));
  }
}
