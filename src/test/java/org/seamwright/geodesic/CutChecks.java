package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** What holds for every cut of every soup. */
final class CutChecks {
  private CutChecks() {}

  /** Meshes of every kind: closed, open, one-sided, branching, flipped, loose, far off, slivers. */
  static Mesh[] soups() {
    return new Mesh[] {
      Shapes.icosphere(3, 3),
      Shapes.sphere(2, 14, 20),
      Shapes.torus(5, 1, 20, 12),
      Shapes.plane(4, 3, 12, 9),
      Shapes.mobius(5, 2, 30, 4),
      Shapes.blades(5, 2, 3),
      Shapes.withFlipped(Shapes.icosphere(3, 2), 0, 7, 33, 90),
      Shapes.withRepeated(Shapes.cube(2, 4), 0, 5, 6, 50),
      Shapes.without(Shapes.icosphere(3, 2), 1, 2, 3, 100),
      Shapes.soup(200, 3, 1, 5),
      Shapes.moved(Shapes.icosphere(3, 2), 5000, -3000, 1000),
      Shapes.transformed(
          Shapes.icosphere(1, 3), new double[] {100, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0}),
      Shapes.lantern(1, 1, 40, 10),
    };
  }

  static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  /** Area kept, every piece with area and facing its parent's way, neighbours welded. */
  static void assertSound(Mesh before, CutMesh cut) {
    Mesh after = cut.mesh();
    assertThat(area(after)).isCloseTo(area(before), within(1e-12 * area(before)));
    Sum[] share = new Sum[before.faceCount()];
    for (int f = 0; f < share.length; f++) {
      share[f] = new Sum();
    }
    double[] normal = new double[3];
    double[] parentNormal = new double[3];
    for (int f = 0; f < after.faceCount(); f++) {
      Faces.normal(after, f, normal);
      Faces.normal(before, cut.parentFace()[f], parentNormal);
      double dot =
          normal[0] * parentNormal[0] + normal[1] * parentNormal[1] + normal[2] * parentNormal[2];
      assertThat(Faces.area(after, f)).isPositive();
      assertThat(dot).as("piece %d", f).isPositive();
      share[cut.parentFace()[f]].add(Faces.area(after, f));
    }
    for (int f = 0; f < share.length; f++) {
      // Coordinates far from the origin are rounded more coarsely than the face is wide.
      double reach = 1e-12 * area(before) + 1e-9 * Faces.area(before, f);
      assertThat(share[f].value()).isCloseTo(Faces.area(before, f), within(reach));
    }
    assertWelded(before, cut);
    Topology was = Topology.of(before);
    Topology is = Topology.of(after);
    if (was.openEdges() == 0) {
      assertThat(is.openEdges()).isZero();
    }
  }

  /** Each piece of an old edge has as many faces as that edge had, each edge inside a face two. */
  private static void assertWelded(Mesh before, CutMesh cut) {
    Map<Long, Integer> left = edges(cut.mesh());
    Map<Long, Integer> on = new HashMap<>();
    for (int i = 0; i < cut.edgeFrom().length; i++) {
      if (cut.third()[i] < 0) {
        on.put(key(cut.edgeFrom()[i], cut.edgeTo()[i]), cut.oldVertexCount() + i);
      }
    }
    edges(before)
        .forEach(
            (edge, faces) -> {
              int a = (int) (edge >>> 32);
              int b = (int) (long) edge;
              Integer middle = on.get(edge);
              if (middle == null) {
                assertThat(left.remove(edge)).as("edge %d %d", a, b).isEqualTo(faces);
              } else {
                assertThat(left.remove(key(a, middle))).isEqualTo(faces);
                assertThat(left.remove(key(middle, b))).isEqualTo(faces);
              }
            });
    // Faces listed twice are split alike twice, so an inner edge may have four faces.
    assertThat(left.values()).allMatch(faces -> faces == 2 || faces == 4);
  }

  private static Map<Long, Integer> edges(Mesh mesh) {
    Map<Long, Integer> edges = new HashMap<>();
    for (int h = 0; h < mesh.corner().length; h++) {
      edges.merge(key(mesh.corner()[h], mesh.corner()[Topology.next(h)]), 1, Integer::sum);
    }
    return edges;
  }

  private static long key(int a, int b) {
    return (long) Math.min(a, b) << 32 | Math.max(a, b);
  }

  /** A field that wavers over the mesh, now and then exactly on or a hair off the level 0. */
  static double[] waveringField(Mesh mesh, Random random) {
    double size = mesh.bounds().diagonal();
    double[] wave = random.doubles(6, -6 / size, 6 / size).toArray();
    double[] field = new double[mesh.vertexCount()];
    for (int v = 0; v < field.length; v++) {
      field[v] =
          Math.sin(wave[0] * mesh.x(v) + wave[1] * mesh.y(v) + wave[2] * mesh.z(v))
              + Math.cos(wave[3] * mesh.x(v) + wave[4] * mesh.y(v) + wave[5] * mesh.z(v))
              + 0.3 * random.nextGaussian();
      int odd = random.nextInt(20);
      if (odd == 0) {
        field[v] = 0;
      } else if (odd <= 3) {
        field[v] *= Math.pow(10, -random.nextInt(18));
      }
    }
    return field;
  }
}
