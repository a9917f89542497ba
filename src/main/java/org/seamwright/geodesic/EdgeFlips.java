package org.seamwright.geodesic;

import java.util.BitSet;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Other faces over the same vertices, without the needles: edges across which two faces lie nearly
 * flat are flipped to the quad's other diagonal until the angles opposite each sum to at most a
 * straight one (C. L. Lawson, "Transforming triangulations", 1972). Vertices and face numbers stay.
 *
 * <p>Flat parts keep their distances exactly. Elsewhere an edge is left alone if its faces meet at
 * more than {@link #FLAT_COSINE} allows, which keeps distances within 0.25%. O(n) as a rule.
 */
final class EdgeFlips {
  /** Cosine of 8°, the largest angle between normals: a way over the fold is (8°)²/8 longer. */
  private static final double FLAT_COSINE = 0.9976;

  /** Cotangent sum below which an edge is flipped: under 0 so that rounding cannot flip it back. */
  private static final double OBTUSE = -1e-9;

  /** Flips per face before giving up: ends the rare cycle where faces are not quite flat. */
  private static final int MOST_FLIPS = 20;

  private final double[] p;
  private final int[] corner;
  private final int[] twin;
  private final IntPredicate faces;
  private final BitSet kept;
  private final IntList open;

  private EdgeFlips(Mesh mesh, Topology topology, IntPredicate faces, BitSet kept) {
    p = mesh.xyz();
    corner = mesh.corner().clone();
    twin = new int[corner.length];
    open = new IntList(corner.length);
    for (int h = 0; h < corner.length; h++) {
      int other = topology.twin(h);
      boolean turnedAlike = other >= 0 && corner[other] != corner[h];
      // An edge that may not be flipped is no worse than an open one here.
      twin[h] = turnedAlike ? other : Topology.OPEN;
      if (turnedAlike && other > h) {
        open.add(h);
      }
    }
    this.faces = faces;
    this.kept = kept;
  }

  /**
   * The mesh with flipped edges.
   *
   * @param faces edges between a face in this set and one not in it stay
   * @param kept faces that stay as they are
   */
  static Mesh of(Mesh mesh, Topology topology, IntPredicate faces, BitSet kept) {
    EdgeFlips flips = new EdgeFlips(mesh, topology, faces, kept);
    flips.run();
    return Mesh.of(mesh.xyz(), flips.corner);
  }

  private void run() {
    long left = (long) MOST_FLIPS * corner.length / 3;
    while (open.size() > 0 && left > 0) {
      int h = open.removeLast();
      if (twin[h] >= 0 && wantsFlip(h)) {
        flip(h);
        left--;
      }
    }
  }

  private boolean wantsFlip(int h) {
    int g = twin[h];
    int f1 = h / 3;
    int f2 = g / 3;
    if (!faces.test(f1) || !faces.test(f2) || kept.get(f1) || kept.get(f2)) {
      return false;
    }
    int a = corner[h];
    int b = corner[g];
    int c = corner[Topology.prev(h)];
    int d = corner[Topology.prev(g)];
    if (c == d || !(cotangent(c, a, b) + cotangent(d, b, a) < OBTUSE)) {
      return false;
    }
    return flat(a, b, c, d) && !joined(h, d);
  }

  /** Cotangent of the angle at c between a and b; not a number if the three lie in line. */
  private double cotangent(int c, int a, int b) {
    double ux = p[3 * a] - p[3 * c];
    double uy = p[3 * a + 1] - p[3 * c + 1];
    double uz = p[3 * a + 2] - p[3 * c + 2];
    double vx = p[3 * b] - p[3 * c];
    double vy = p[3 * b + 1] - p[3 * c + 1];
    double vz = p[3 * b + 2] - p[3 * c + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    return (ux * vx + uy * vy + uz * vz) / Math.sqrt(nx * nx + ny * ny + nz * nz);
  }

  /** Whether the faces a b c and b a d, and those they would become, all face nearly one way. */
  private boolean flat(int a, int b, int c, int d) {
    return alike(a, b, c, b, a, d)
        && alike(a, b, c, a, d, c)
        && alike(a, b, c, d, b, c)
        && alike(b, a, d, a, d, c)
        && alike(b, a, d, d, b, c);
  }

  private boolean alike(int a, int b, int c, int d, int e, int f) {
    double dot = Normals.dot(p, a, b, c, d, e, f);
    double first = Normals.dot(p, a, b, c, a, b, c);
    double second = Normals.dot(p, d, e, f, d, e, f);
    return dot > 0 && dot * dot >= FLAT_COSINE * FLAT_COSINE * first * second;
  }

  /** Whether the corner opposite h already has an edge to a vertex, going round it both ways. */
  private boolean joined(int h, int vertex) {
    int start = Topology.prev(h);
    int g = start;
    do {
      if (corner[Topology.next(g)] == vertex || corner[Topology.prev(g)] == vertex) {
        return true;
      }
      g = twin[Topology.prev(g)];
    } while (g >= 0 && g != start);
    if (g == start) {
      return false;
    }
    g = twin[start];
    while (g >= 0) {
      g = Topology.next(g);
      if (corner[Topology.next(g)] == vertex || corner[Topology.prev(g)] == vertex) {
        return true;
      }
      g = twin[g];
    }
    return false;
  }

  /** Faces a b c and b a d become c a d (at h) and d b c (at its twin). */
  private void flip(int h) {
    int g = twin[h];
    int bc = Topology.next(h);
    int ca = Topology.prev(h);
    int ad = Topology.next(g);
    int db = Topology.prev(g);
    int outerBc = twin[bc];
    int outerAd = twin[ad];
    int c = corner[ca];
    int d = corner[db];
    // h becomes a d's place: h: a→d, next: d→c, prev stays c→a; g: b→c, next: c→d, prev: d→b.
    corner[bc] = d;
    corner[ad] = c;
    link(h, outerAd);
    link(g, outerBc);
    link(bc, ad);
    open.add(h);
    open.add(g);
    open.add(ca);
    open.add(db);
  }

  private void link(int h, int g) {
    twin[h] = g;
    if (g >= 0) {
      twin[g] = h;
    }
  }
}
