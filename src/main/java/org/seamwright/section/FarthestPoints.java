package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Seeds spread over a surface, each as far as can be from those before (T. F. Gonzalez, "Clustering
 * to minimize the maximum intercluster distance", 1985). Distances run along edges: good enough for
 * a start that is relaxed afterwards. Each further seed costs only where it is the nearest.
 */
final class FarthestPoints {
  private final Surface surface;
  private final double[] distance;
  private final KeyHeap heap = new KeyHeap();

  FarthestPoints(Surface surface) {
    this.surface = surface;
    distance = new double[surface.mesh().vertexCount()];
    Arrays.fill(distance, Double.POSITIVE_INFINITY);
  }

  /** Counts a vertex as a seed. */
  void add(int seed) {
    offer(seed, 0);
    int[] corner = surface.way();
    VertexFans fans = surface.fans();
    while (!heap.isEmpty()) {
      int v = heap.vertex();
      double far = heap.key();
      heap.pop();
      if (far == distance[v]) {
        for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
          int h = fans.halfEdge(i);
          int prev = Topology.prev(h);
          offer(corner[Topology.next(h)], far + surface.edgeMm()[h]);
          offer(corner[prev], far + surface.edgeMm()[prev]);
        }
      }
    }
  }

  private void offer(int v, double far) {
    if (far < distance[v]) {
      distance[v] = far;
      heap.push(far, v, 0);
    }
  }

  /**
   * The vertex farthest from all seeds among some; the first such.
   *
   * @param begin first vertex
   * @param end vertex after the last
   */
  int farthest(int begin, int end) {
    int best = begin;
    for (int v = begin; v < end; v++) {
      if (distance[v] > distance[best]) {
        best = v;
      }
    }
    return best;
  }

  /** Whether a vertex lies apart from all seeds. */
  boolean isFree(int vertex) {
    return distance[vertex] > 0;
  }
}
