package org.seamwright.mesh;

import java.util.Arrays;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Which half-edges lie on the same edge, for any triangle soup: open, branching and wrongly turned
 * edges are kept and counted, never mended.
 *
 * <p>Half-edges are matched through lists kept at that end of their edge which fewer faces meet, so
 * that a fan of a million faces costs no more than a million pairs: at worst O(n^1.5) time (N.
 * Chiba and T. Nishizeki, "Arboricity and subgraph listing algorithms", 1985), near O(n) on pieces.
 * Takes 2 ints per half-edge and 2 per vertex while building; 1 per half-edge is kept.
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

  /** Every range reads all corners, so more than a few stop paying. */
  private static final int MOST_RANGES = 8;

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
    int ranges =
        mesh.faceCount() < MANY_FACES
            ? 1
            : Math.min(MOST_RANGES, Runtime.getRuntime().availableProcessors());
    return of(mesh, ranges);
  }

  /** The same, the vertices split into so many ranges that are worked through side by side. */
  static Topology of(Mesh mesh, int ranges) {
    int vertices = mesh.vertexCount();
    int[] head = new int[vertices];
    int[] valence = new int[vertices];
    int[] next = new int[mesh.corner().length];
    int[] twin = new int[mesh.corner().length];
    Matcher[] parts = new Matcher[ranges];
    for (int i = 0; i < ranges; i++) {
      int from = (int) ((long) vertices * i / ranges);
      int to = (int) ((long) vertices * (i + 1) / ranges);
      parts[i] = new Matcher(mesh.corner(), head, valence, next, twin, from, to);
    }
    eachOf(parts, Matcher::count);
    eachOf(parts, Matcher::match);
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

  private static void eachOf(Matcher[] parts, Consumer<Matcher> action) {
    Stream<Matcher> stream = Arrays.stream(parts);
    (parts.length > 1 ? stream.parallel() : stream).forEach(action);
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
    private final int[] valence;
    private final int[] next;
    private final int[] twin;
    private final int from;
    private final int to;
    private int open;
    private int branching;
    private int flipped;

    Matcher(int[] corner, int[] head, int[] valence, int[] next, int[] twin, int from, int to) {
      this.corner = corner;
      this.head = head;
      this.valence = valence;
      this.next = next;
      this.twin = twin;
      this.from = from;
      this.to = to;
    }

    /** Counts the faces at the range's vertices. */
    void count() {
      for (int v : corner) {
        if (v >= from && v < to) {
          valence[v]++;
        }
      }
    }

    void match() {
      Arrays.fill(head, from, to, END);
      for (int h = 0; h < corner.length; h += 3) {
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
