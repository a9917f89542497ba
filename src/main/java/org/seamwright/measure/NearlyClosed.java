package org.seamwright.measure;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Counts open edges that would close if border vertices a rounding apart were one: files whose
 * shared corners were written with different last digits are full of them.
 *
 * <p>Border vertices are put in cubes of the tolerance's size and joined with those of the 27 cubes
 * around; then open edges between the same two groups are matched. O(n) for n open edges.
 */
final class NearlyClosed {
  /** Vertices this share of the diagonal apart are taken for one: five written digits. */
  static final double TOLERANCE = 1e-5;

  /** More border vertices than this are a soup of loose faces, not a rounding. */
  private static final int MOST_VERTICES = 2_000_000;

  private final double[] xyz;
  private final double cell;
  private final double tolerance2;
  private final int[] vertex;
  private final int[] root;
  private final int[] head;
  private final int[] next;

  private NearlyClosed(Mesh mesh, int[] vertex, double tolerance) {
    this.xyz = mesh.xyz();
    this.cell = tolerance;
    this.tolerance2 = tolerance * tolerance;
    this.vertex = vertex;
    this.root = new int[vertex.length];
    this.next = new int[vertex.length];
    this.head = new int[Integer.highestOneBit(Math.max(8, vertex.length)) * 2];
    Arrays.fill(head, -1);
  }

  /** Open edges of a mesh that would close. */
  static int count(Mesh mesh, Topology topology) {
    double tolerance = TOLERANCE * mesh.bounds().diagonal();
    int[] vertex = borderVertices(mesh, topology);
    if (topology.openEdges() < 2 || vertex.length > MOST_VERTICES || !(tolerance > 0)) {
      return 0;
    }
    NearlyClosed search = new NearlyClosed(mesh, vertex, tolerance);
    for (int i = 0; i < vertex.length; i++) {
      search.root[i] = i;
      search.join(i);
    }
    return search.matched(mesh, topology);
  }

  private static int[] borderVertices(Mesh mesh, Topology topology) {
    int[] ends = new int[2 * topology.openEdges()];
    int n = 0;
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length && n < ends.length; h++) {
      if (isOpen(corner, topology, h)) {
        ends[n++] = corner[h];
        ends[n++] = corner[Topology.next(h)];
      }
    }
    return Arrays.stream(ends, 0, n).sorted().distinct().toArray();
  }

  /** Faces that name a vertex twice have no edges, though their entries are open. */
  private static boolean isOpen(int[] corner, Topology topology, int h) {
    int f = 3 * (h / 3);
    return topology.twin(h) == Topology.OPEN
        && corner[f] != corner[f + 1]
        && corner[f + 1] != corner[f + 2]
        && corner[f + 2] != corner[f];
  }

  private void join(int i) {
    int v = 3 * vertex[i];
    long cx = (long) Math.floor(xyz[v] / cell);
    long cy = (long) Math.floor(xyz[v + 1] / cell);
    long cz = (long) Math.floor(xyz[v + 2] / cell);
    for (int k = 0; k < 27; k++) {
      int slot = slot(cx + k % 3 - 1, cy + k / 3 % 3 - 1, cz + k / 9 - 1);
      for (int j = head[slot]; j >= 0; j = next[j]) {
        int w = 3 * vertex[j];
        double dx = xyz[v] - xyz[w];
        double dy = xyz[v + 1] - xyz[w + 1];
        double dz = xyz[v + 2] - xyz[w + 2];
        if (dx * dx + dy * dy + dz * dz <= tolerance2) {
          int a = find(i);
          int b = find(j);
          root[Math.max(a, b)] = Math.min(a, b);
        }
      }
    }
    int own = slot(cx, cy, cz);
    next[i] = head[own];
    head[own] = i;
  }

  private int slot(long x, long y, long z) {
    long h = (x * 0x9E3779B97F4A7C15L + y) * 0xC2B2AE3D27D4EB4FL + z;
    h = (h ^ (h >>> 32)) * 0x165667B19E3779F9L;
    return (int) (h >>> 33) & (head.length - 1);
  }

  private int find(int i) {
    int top = i;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  private int matched(Mesh mesh, Topology topology) {
    long[] key = new long[topology.openEdges()];
    int n = 0;
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length && n < key.length; h++) {
      if (isOpen(corner, topology, h)) {
        int a = find(Arrays.binarySearch(vertex, corner[h]));
        int b = find(Arrays.binarySearch(vertex, corner[Topology.next(h)]));
        key[n++] = (long) Math.min(a, b) << 32 | Math.max(a, b);
      }
    }
    Arrays.sort(key, 0, n);
    int closed = 0;
    int from = 0;
    while (from < n) {
      int to = from + 1;
      while (to < n && key[to] == key[from]) {
        to++;
      }
      closed += to - from > 1 ? to - from : 0;
      from = to;
    }
    return closed;
  }
}
