package org.seamwright.mesh;

import java.util.Arrays;
import org.seamwright.basis.Parallel;

/**
 * Which half-edges lie on the same edge, for any triangle soup: open, branching and wrongly turned
 * edges are kept and counted, never mended.
 *
 * <p>Half-edges are matched through lists kept at the lower-numbered end of their edge: near O(n)
 * where no vertex has many faces. Where that takes too many steps, since a fan of very many faces
 * turns round such an end, the lists are kept at the end which fewer faces meet instead: then at
 * worst O(n^1.5) (N. Chiba and T. Nishizeki, "Arboricity and subgraph listing algorithms", 1985).
 * Takes 2 ints per half-edge and 1 or 2 per vertex while building; 1 per half-edge is kept.
 *
 * <p>Faces that name a vertex twice have no edges here: their three entries are {@link #OPEN} and
 * are not counted.
 */
public final class Topology {
  /** Twin of a half-edge whose edge has one face. */
  public static final int OPEN = -1;

  /** Twin of a half-edge whose edge has three or more faces. */
  public static final int BRANCHING = -2;

  /** End of a vertex's list. */
  private static final int END = -1;

  /** Below this many faces a second thread costs more than it saves. */
  private static final int MANY_FACES = 1 << 16;

  /** Steps along lists that pieces never need: three or four edges are listed at a vertex. */
  private static final int STEPS_PER_CORNER = 32;

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
    int ranges = Parallel.ranges(mesh.faceCount(), MANY_FACES / 2);
    return of(mesh, ranges, STEPS_PER_CORNER);
  }

  /** The same, the vertices split into so many ranges that are worked through side by side. */
  static Topology of(Mesh mesh, int ranges, int stepsPerCorner) {
    long steps = stepsPerCorner * (mesh.corner().length + 64L);
    int[] head = new int[mesh.vertexCount()];
    // Two allocations side by side: what they cost is the first touch of their memory.
    int[][] room = new int[2][];
    Parallel.each(ranges > 1 ? 2 : 1, i -> room[i] = new int[mesh.corner().length]);
    int[] twin = room[0];
    int[] next = room[1] == null ? new int[mesh.corner().length] : room[1];
    Matcher[] parts = match(mesh, head, null, next, twin, ranges, steps);
    for (Matcher part : parts) {
      if (part.steps < 0) {
        parts = match(mesh, head, valence(mesh), next, twin, ranges, Long.MAX_VALUE);
        break;
      }
    }
    int open = 0;
    int branching = 0;
    int flipped = 0;
    for (Matcher part : parts) {
      open += part.open;
      branching += part.branching;
      flipped += part.flipped;
    }
    return new Topology(twin, open, branching, flipped);
  }

  private static Matcher[] match(
      Mesh mesh, int[] head, int[] valence, int[] next, int[] twin, int ranges, long steps) {
    Matcher[] parts = new Matcher[ranges];
    Parallel.each(
        ranges,
        i -> {
          int from = Parallel.begin(mesh.vertexCount(), ranges, i);
          int to = Parallel.begin(mesh.vertexCount(), ranges, i + 1);
          parts[i] = new Matcher(mesh.corner(), head, valence, next, twin, from, to, steps);
          parts[i].match();
        });
    return parts;
  }

  /** Faces at each vertex. */
  private static int[] valence(Mesh mesh) {
    int[] valence = new int[mesh.vertexCount()];
    for (int v : mesh.corner()) {
      valence[v]++;
    }
    return valence;
  }

  /**
   * Matches the half-edges whose edge is listed at a vertex in a range. Each vertex keeps a list of
   * the first half-edge of every edge listed at it; a later half-edge looks there for its edge.
   * Ranges write to different entries, so they need no locks and give the same result in any
   * number.
   */
  private static final class Matcher {
    private final int[] corner;
    private final int[] head;

    /** Faces at each vertex; null if the lower-numbered end lists an edge. */
    private final int[] valence;

    private final int[] next;
    private final int[] twin;
    private final int from;
    private final int to;

    /** Steps along lists that may still be made; below 0 if they did not do. */
    private long steps;

    private int open;
    private int branching;
    private int flipped;

    Matcher(
        int[] corner,
        int[] head,
        int[] valence,
        int[] next,
        int[] twin,
        int from,
        int to,
        long steps) {
      this.corner = corner;
      this.head = head;
      this.valence = valence;
      this.next = next;
      this.twin = twin;
      this.from = from;
      this.to = to;
      this.steps = steps;
    }

    void match() {
      Arrays.fill(head, from, to, END);
      for (int h = 0; h < corner.length && steps >= 0; h += 3) {
        int a = corner[h];
        int b = corner[h + 1];
        int c = corner[h + 2];
        if (a == b || b == c || c == a) {
          if (a >= from && a < to) {
            Arrays.fill(twin, h, h + 3, OPEN);
          }
          continue;
        }
        place(h, a, b);
        place(h + 1, b, c);
        place(h + 2, c, a);
      }
    }

    private void place(int h, int start, int end) {
      int home = home(start, end);
      if (home < from || home >= to) {
        return;
      }
      int far = start ^ end ^ home;
      for (int g = head[home]; g != END; g = next[g]) {
        steps--;
        int other = corner[g] == home ? corner[Topology.next(g)] : corner[g];
        if (other == far) {
          meet(g, h);
          return;
        }
      }
      next[h] = head[home];
      head[home] = h;
      twin[h] = OPEN;
      open++;
    }

    /** The end at which an edge is listed. */
    private int home(int start, int end) {
      if (valence == null) {
        return Math.min(start, end);
      }
      int fewer = valence[start] - valence[end];
      return fewer < 0 || (fewer == 0 && start < end) ? start : end;
    }

    /** A further half-edge h on the edge whose first is g. */
    private void meet(int g, int h) {
      if (twin[g] == OPEN) {
        twin[g] = h;
        twin[h] = g;
        open--;
        flipped += corner[g] == corner[h] ? 1 : 0;
        return;
      }
      if (twin[g] >= 0) {
        flipped -= corner[g] == corner[twin[g]] ? 1 : 0;
        twin[twin[g]] = BRANCHING;
        twin[g] = BRANCHING;
        branching++;
      }
      twin[h] = BRANCHING;
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

  /** A copy of {@link #twin} for every half-edge. */
  public int[] twins() {
    return twin.clone();
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
