package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Matching of half-edges against a plain map, on soups with every fault, in any number of ranges.
 */
class TopologyRangesTest {
  private static Mesh soup(long seed) {
    Random random = new Random(seed);
    int vertices = 4 + random.nextInt(30);
    double[] xyz = random.doubles(3L * vertices).toArray();
    int[] corner = random.ints(3L * (1 + random.nextInt(80)), 0, vertices).toArray();
    return Mesh.of(xyz, corner);
  }

  private static Map<Long, List<Integer>> halfEdgesByEdge(Mesh mesh) {
    Map<Long, List<Integer>> byEdge = new TreeMap<>();
    int[] c = mesh.corner();
    for (int h = 0; h < c.length; h++) {
      int f = 3 * (h / 3);
      if (c[f] != c[f + 1] && c[f + 1] != c[f + 2] && c[f + 2] != c[f]) {
        int a = c[h];
        int b = c[Topology.next(h)];
        byEdge
            .computeIfAbsent(((long) Math.min(a, b) << 32) | Math.max(a, b), k -> new ArrayList<>())
            .add(h);
      }
    }
    return byEdge;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void agreesWithAPlainMapInAnyNumberOfRanges(long seed) {
    Mesh mesh = soup(seed);
    Map<Long, List<Integer>> byEdge = halfEdgesByEdge(mesh);
    for (int run = 0; run < 10; run++) {
      // No step allowed: the lists move to the end that fewer faces meet.
      Topology topology = Topology.of(mesh, 1 + run / 2, run % 2 == 0 ? 32 : 0);
      int open = 0;
      int branching = 0;
      int flipped = 0;
      for (List<Integer> edge : byEdge.values()) {
        if (edge.size() == 1) {
          open++;
          assertThat(topology.twin(edge.get(0))).isEqualTo(Topology.OPEN);
        } else if (edge.size() == 2) {
          int g = edge.get(0);
          int h = edge.get(1);
          flipped += mesh.corner()[g] == mesh.corner()[h] ? 1 : 0;
          assertThat(topology.twin(g)).isEqualTo(h);
          assertThat(topology.twin(h)).isEqualTo(g);
        } else {
          branching++;
          edge.forEach(h -> assertThat(topology.twin(h)).isEqualTo(Topology.BRANCHING));
        }
      }
      assertThat(topology.openEdges()).isEqualTo(open);
      assertThat(topology.branchingEdges()).isEqualTo(branching);
      assertThat(topology.flippedEdges()).isEqualTo(flipped);
      assertThat(topology.edgeCount()).isEqualTo(byEdge.size());
    }
  }

  @Test
  void fanAroundOneVertexIsMatchedAtItsRim() {
    int n = 300_000;
    double[] xyz = new double[3 * (n + 1)];
    int[] corner = new int[3 * n];
    for (int i = 0; i < n; i++) {
      xyz[3 * i + 3] = Math.cos(2 * Math.PI * i / n);
      xyz[3 * i + 4] = Math.sin(2 * Math.PI * i / n);
      corner[3 * i + 1] = 1 + i;
      corner[3 * i + 2] = 1 + (i + 1) % n;
    }
    Topology topology = Topology.of(Mesh.of(xyz, corner));
    assertThat(topology.openEdges()).isEqualTo(n);
    assertThat(topology.edgeCount()).isEqualTo(2 * n);
  }
}
