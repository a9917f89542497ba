package org.seamwright.section;

import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Other triangles over the same vertices and the same surface, without needles: an edge is replaced
 * by the other diagonal of its two triangles, laid flat, until the angles opposite each edge sum to
 * at most a straight one. Triangles bend over the edges of the mesh, so only their edge lengths
 * mean anything; distances over the surface are the same, and wavefronts cross them in fewer and
 * better steps.
 *
 * <p>Reference: M. Fisher, B. Springborn, P. Schröder and A. Bobenko, "An algorithm for the
 * construction of intrinsic Delaunay triangulations", Computing 81 (2007). Cost: O(n) as a rule;
 * edges that are open, branching or turned against each other stay.
 */
final class IntrinsicDelaunay {
  /** Cotangent sum below which an edge is flipped: under 0 so that rounding can't flip it back. */
  private static final double OBTUSE = -1e-9;

  /** Flips per half-edge before giving up; a few in all are usual. */
  private static final int MOST_FLIPS = 20;

  private final int[] corner;
  private final double[] edge;
  private final int[] twin;
  private final int[] stack;
  private final boolean[] waiting;
  private int size;

  private IntrinsicDelaunay(Mesh mesh, Topology topology, double[] edgeMm, IntPredicate stays) {
    corner = mesh.corner().clone();
    edge = edgeMm.clone();
    twin = new int[corner.length];
    stack = new int[corner.length];
    waiting = new boolean[corner.length];
    for (int h = 0; h < corner.length; h++) {
      int other = topology.twin(h);
      boolean flips = other >= 0 && corner[other] != corner[h] && !stays.test(h);
      twin[h] = flips && !stays.test(other) ? other : Topology.OPEN;
    }
  }

  /**
   * Flips the edges of a mesh.
   *
   * @param edgeMm one entry per half-edge: its length
   * @param stays half-edges that are not to be flipped
   */
  static IntrinsicDelaunay of(Mesh mesh, Topology topology, double[] edgeMm, IntPredicate stays) {
    IntrinsicDelaunay result = new IntrinsicDelaunay(mesh, topology, edgeMm, stays);
    for (int h = result.corner.length - 1; h >= 0; h--) {
      result.push(h);
    }
    result.run();
    return result;
  }

  /** Vertices of the new triangles, 3 per face. */
  int[] corner() {
    return corner;
  }

  /** Lengths of their edges, one per half-edge, mm. */
  double[] edgeMm() {
    return edge;
  }

  private void push(int h) {
    int g = twin[h];
    if (g >= 0 && !waiting[Math.min(h, g)]) {
      waiting[Math.min(h, g)] = true;
      stack[size++] = Math.min(h, g);
    }
  }

  private void run() {
    long left = (long) MOST_FLIPS * corner.length;
    while (size > 0 && left-- > 0) {
      int h = stack[--size];
      waiting[h] = false;
      int g = twin[h];
      if (g >= 0 && h / 3 != g / 3 && cotangent(h) + cotangent(g) < OBTUSE) {
        flip(h, g);
      }
    }
  }

  /** Cotangent of the angle opposite a half-edge; not a number in a face without area. */
  private double cotangent(int h) {
    double c = edge[h];
    double a = edge[Topology.next(h)];
    double b = edge[Topology.prev(h)];
    return (a * a + b * b - c * c) / (4 * area(a, b, c));
  }

  /** Area from three sides, in Kahan's order of subtraction; 0 if they make no triangle. */
  static double area(double a, double b, double c) {
    double high = Math.max(a, Math.max(b, c));
    double low = Math.min(a, Math.min(b, c));
    double middle = a + b + c - high - low;
    double product =
        (high + (middle + low))
            * (low - (high - middle))
            * (low + (high - middle))
            * (high + (middle - low));
    return Math.sqrt(Math.max(0, product)) / 4;
  }

  /** Faces (a, b, c) at h and (b, a, d) at g become (c, a, d) and (d, b, c). */
  private void flip(int h, int g) {
    int bc = Topology.next(h);
    int ca = Topology.prev(h);
    int ad = Topology.next(g);
    int db = Topology.prev(g);
    double diagonal = diagonal(edge[h], edge[ca], edge[bc], edge[ad], edge[db]);
    if (!(diagonal > 0)) {
      return;
    }
    int c = corner[ca];
    int d = corner[db];
    int outerBc = twin[bc];
    int outerAd = twin[ad];
    double lengthBc = edge[bc];
    double lengthAd = edge[ad];
    // h becomes a to d, then d to c, then c to a as before; g becomes b to c, then c to d, d to b.
    corner[bc] = d;
    corner[ad] = c;
    edge[h] = lengthAd;
    edge[g] = lengthBc;
    edge[bc] = diagonal;
    edge[ad] = diagonal;
    link(h, outerAd);
    link(g, outerBc);
    link(bc, ad);
    push(h);
    push(g);
    push(ca);
    push(db);
  }

  /** Distance from c to d with both triangles over the edge ab laid flat on its two sides. */
  private static double diagonal(double ab, double ca, double bc, double ad, double db) {
    double cx = (ab * ab + ca * ca - bc * bc) / (2 * ab);
    double cy = 2 * area(ab, ca, bc) / ab;
    double dx = (ab * ab + ad * ad - db * db) / (2 * ab);
    double dy = 2 * area(ab, ad, db) / ab;
    return Math.hypot(cx - dx, cy + dy);
  }

  private void link(int h, int g) {
    twin[h] = g;
    if (g >= 0) {
      twin[g] = h;
    }
  }
}
