package org.seamwright.mesh;

import java.util.Arrays;

/**
 * Which half-edges lie on the same edge, for any triangle soup: open, branching and wrongly turned
 * edges are kept and counted, never mended.
 *
 * <p>Half-edges are put in lists by the lower vertex of their edge (counting sort) and matched
 * within each list: O(n) time, 3 + 1 ints per half-edge while building, 1 int kept.
 *
 * <p>Faces that name a vertex twice have no edges here: their three entries are {@link #OPEN} and
 * are not counted.
 */
public final class Topology {
  /** Twin of a half-edge whose edge has one face. */
  public static final int OPEN = -1;

  /** Twin of a half-edge whose edge has three or more faces. */
  public static final int BRANCHING = -2;

  /** Lists longer than this are sorted by the library instead of by insertion. */
  private static final int SHORT_LIST = 24;

  private final int[] twin;
  private final int openEdges;
  private final int branchingEdges;
  private final int flippedEdges;

  private Topology(int[] twin, int openEdges, int branchingEdges, int flippedEdges) {
    this.twin = twin;
    this.openEdges = openEdges;
    this.branchingEdges = branchingEdges;
    this.flippedEdges = flippedEdges;
  }

  /** Half-edge after h in its face. */
  public static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }

  /** Half-edge before h in its face. */
  public static int prev(int h) {
    return h % 3 == 0 ? h + 2 : h - 1;
  }

  /** Face of a half-edge. */
  public static int face(int h) {
    return h / 3;
  }

  /** Finds the edges of a mesh. */
  public static Topology of(Mesh mesh) {
    int[] corner = mesh.corner();
    int[] start = new int[mesh.vertexCount() + 1];
    for (int h = 0; h < corner.length; h++) {
      if (hasEdges(corner, h / 3)) {
        start[Math.min(corner[h], corner[next(h)]) + 1]++;
      }
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      start[v + 1] += start[v];
    }
    int[] list = new int[start[mesh.vertexCount()]];
    int[] fill = Arrays.copyOf(start, mesh.vertexCount());
    for (int h = 0; h < corner.length; h++) {
      if (hasEdges(corner, h / 3)) {
        list[fill[Math.min(corner[h], corner[next(h)])]++] = h;
      }
    }
    int[] twin = new int[corner.length];
    Arrays.fill(twin, OPEN);
    int open = 0;
    int branching = 0;
    int flipped = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      sortByFarEnd(list, start[v], start[v + 1], corner);
      int run = start[v];
      while (run < start[v + 1]) {
        int end = run + 1;
        while (end < start[v + 1] && farEnd(corner, list[end]) == farEnd(corner, list[run])) {
          end++;
        }
        if (end - run == 1) {
          open++;
        } else if (end - run == 2) {
          twin[list[run]] = list[run + 1];
          twin[list[run + 1]] = list[run];
          if (corner[list[run]] == corner[list[run + 1]]) {
            flipped++;
          }
        } else {
          branching++;
          for (int i = run; i < end; i++) {
            twin[list[i]] = BRANCHING;
          }
        }
        run = end;
      }
    }
    return new Topology(twin, open, branching, flipped);
  }

  private static boolean hasEdges(int[] corner, int face) {
    int a = corner[3 * face];
    int b = corner[3 * face + 1];
    int c = corner[3 * face + 2];
    return a != b && b != c && c != a;
  }

  private static int farEnd(int[] corner, int h) {
    return Math.max(corner[h], corner[next(h)]);
  }

  private static void sortByFarEnd(int[] list, int from, int to, int[] corner) {
    if (to - from > SHORT_LIST) {
      long[] keyed = new long[to - from];
      for (int i = from; i < to; i++) {
        keyed[i - from] = (long) farEnd(corner, list[i]) << 32 | list[i];
      }
      Arrays.sort(keyed);
      for (int i = from; i < to; i++) {
        list[i] = (int) keyed[i - from];
      }
      return;
    }
    for (int i = from + 1; i < to; i++) {
      int h = list[i];
      int key = farEnd(corner, h);
      int j = i - 1;
      while (j >= from && farEnd(corner, list[j]) > key) {
        list[j + 1] = list[j];
        j--;
      }
      list[j + 1] = h;
    }
  }

  /**
   * The other half-edge of h's edge if it has exactly two faces, else {@link #OPEN} or {@link
   * #BRANCHING}. Where the two faces are turned against each other both half-edges start at the
   * same vertex.
   */
  public int twin(int h) {
    return twin[h];
  }

  /** The face across half-edge h, or -1 where there is none or more than one. */
  public int faceAcross(int h) {
    return twin[h] < 0 ? -1 : twin[h] / 3;
  }

  /** Number of edges with one face. */
  public int openEdges() {
    return openEdges;
  }

  /** Number of edges with three or more faces. */
  public int branchingEdges() {
    return branchingEdges;
  }

  /** Number of edges whose two faces are turned against each other. */
  public int flippedEdges() {
    return flippedEdges;
  }

  /** Number of edges, each counted once; a branching edge counts once. */
  public int edgeCount() {
    int pairs = 0;
    for (int h = 0; h < twin.length; h++) {
      if (twin[h] > h) {
        pairs++;
      }
    }
    return pairs + openEdges + branchingEdges;
  }
}
