package org.seamwright.mask;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.mesh.Mesh;

/**
 * Beside which place of which edge each vertex of the bare side lies. Vertices on an edge are known
 * by their coordinates; the others, the nearest first, take the place of a neighbour nearer to the
 * edge and slide it along to where it is nearest. So the place is found along the surface, never
 * across a thin wall. O(n log n).
 */
final class AlongEdges {
  /** An edge of no mask. */
  static final int NONE = -1;

  private final List<MaskEdge> edges;
  private final double[][] start;

  /** One entry per vertex: number of the edge, {@link #NONE} for none. */
  final int[] edge;

  /** One entry per vertex: length along the edge, mm. */
  final double[] at;

  private final int[] side;

  private AlongEdges(List<MaskEdge> edges, int vertices) {
    this.edges = edges;
    this.edge = new int[vertices];
    this.at = new double[vertices];
    this.side = new int[vertices];
    Arrays.fill(edge, NONE);
    this.start = new double[edges.size()][];
    for (int e = 0; e < start.length; e++) {
      int sides = sides(e);
      start[e] = new double[sides + 1];
      for (int i = 0; i < sides; i++) {
        start[e][i + 1] = start[e][i] + length(e, i);
      }
    }
  }

  /**
   * Finds the places.
   *
   * @param edges of all masks
   * @param distance one entry per vertex: from the edges along the surface, infinite where it does
   *     not matter
   */
  static AlongEdges of(Mesh mesh, List<MaskEdge> edges, double[] distance) {
    AlongEdges along = new AlongEdges(edges, mesh.vertexCount());
    along.onEdges(mesh);
    int[] order = order(distance);
    int[][] around = neighbours(mesh, distance);
    double[] p = new double[3];
    for (int v : order) {
      if (along.edge[v] == NONE) {
        System.arraycopy(mesh.xyz(), 3 * v, p, 0, 3);
        along.take(v, p, around[v]);
      }
    }
    return along;
  }

  private static int[] order(double[] distance) {
    Integer[] order = new Integer[distance.length];
    int count = 0;
    for (int v = 0; v < distance.length; v++) {
      if (distance[v] < Double.POSITIVE_INFINITY) {
        order[count++] = v;
      }
    }
    Arrays.sort(order, 0, count, (a, b) -> Double.compare(distance[a], distance[b]));
    int[] sorted = new int[count];
    for (int i = 0; i < count; i++) {
      sorted[i] = order[i];
    }
    return sorted;
  }

  /** Neighbours no farther from the edges than a vertex itself. */
  private static int[][] neighbours(Mesh mesh, double[] distance) {
    int[][] around = new int[distance.length][];
    for (int h = 0; h < mesh.corner().length; h++) {
      int a = mesh.corner()[h];
      int b = mesh.corner()[h % 3 == 2 ? h - 2 : h + 1];
      add(around, distance, a, b);
      add(around, distance, b, a);
    }
    return around;
  }

  private static void add(int[][] around, double[] distance, int v, int nearer) {
    if (!(distance[nearer] <= distance[v]) || Double.isInfinite(distance[nearer])) {
      return;
    }
    int n = around[v] == null ? 0 : around[v].length;
    int[] more = n == 0 ? new int[1] : Arrays.copyOf(around[v], n + 1);
    more[n] = nearer;
    around[v] = more;
  }

  private void onEdges(Mesh mesh) {
    Map<List<Double>, int[]> known = new HashMap<>();
    for (int e = 0; e < edges.size(); e++) {
      double[] p = edges.get(e).points();
      for (int i = 0; i < p.length / 3; i++) {
        known.putIfAbsent(List.of(p[3 * i], p[3 * i + 1], p[3 * i + 2]), new int[] {e, i});
      }
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      int[] there = known.get(List.of(mesh.x(v), mesh.y(v), mesh.z(v)));
      if (there != null) {
        edge[v] = there[0];
        side[v] = Math.min(there[1], sides(there[0]) - 1);
        at[v] = start[there[0]][there[1]];
      }
    }
  }

  /** Takes the nearest of the places that neighbours lead to. */
  private void take(int v, double[] p, int[] neighbours) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; neighbours != null && i < neighbours.length; i++) {
      int from = neighbours[i];
      if (edge[from] == NONE) {
        continue;
      }
      int e = edge[from];
      int best = slide(e, side[from], p);
      double share = share(e, best, p);
      double far = far(e, best, share, p);
      if (far < least) {
        least = far;
        edge[v] = e;
        side[v] = best;
        at[v] = start[e][best] + share * (start[e][best + 1] - start[e][best]);
      }
    }
  }

  /** The side where the line is nearest to a point, going downhill from another. */
  private int slide(int e, int from, double[] p) {
    int best = from;
    double least = far(e, best, share(e, best, p), p);
    for (int way = -1; way <= 1; way += 2) {
      for (int next = step(e, best, way); next >= 0 && next != from; next = step(e, next, way)) {
        double far = far(e, next, share(e, next, p), p);
        if (far > least) {
          break;
        }
        least = far;
        best = next;
      }
    }
    return best;
  }

  private int step(int e, int side, int way) {
    int next = side + way;
    return edges.get(e).closed() ? Math.floorMod(next, sides(e)) : next < sides(e) ? next : -1;
  }

  private int sides(int e) {
    int points = edges.get(e).points().length / 3;
    return edges.get(e).closed() ? points : points - 1;
  }

  double lengthMm(int e) {
    return start[e][sides(e)];
  }

  private double length(int e, int i) {
    return Math.sqrt(dot(e, i, null));
  }

  private double share(int e, int i, double[] p) {
    double square = dot(e, i, null);
    return square > 0 ? Math.max(0, Math.min(1, dot(e, i, p) / square)) : 0;
  }

  /** Product of a side with the way to a point, or with itself. */
  private double dot(int e, int i, double[] p) {
    double[] q = edges.get(e).points();
    int j = (i + 1) % (q.length / 3);
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double d = q[3 * j + axis] - q[3 * i + axis];
      sum += d * (p == null ? d : p[axis] - q[3 * i + axis]);
    }
    return sum;
  }

  private double far(int e, int i, double share, double[] p) {
    double[] q = edges.get(e).points();
    int j = (i + 1) % (q.length / 3);
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double d = q[3 * i + axis] + share * (q[3 * j + axis] - q[3 * i + axis]) - p[axis];
      sum += d * d;
    }
    return sum;
  }
}
