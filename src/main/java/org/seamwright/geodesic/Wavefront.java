package org.seamwright.geodesic;

import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Carries arrivals from a settled vertex over the faces around it: straight along their edges, and
 * across the edge to the third corner where the other end is settled too.
 *
 * <p>A ray known at a vertex in the plane of one face is turned into the plane of another by the
 * least rotation between their normals, which is the unfolding about the edge they share.
 */
final class Wavefront {
  /** Below this, 1 + cosine of two normals, a face is folded back on the other: no turning then. */
  private static final double FOLDED = 1e-9;

  private final double[] p;
  private final int[] corner;
  private final VertexFans fans;
  private final IntPredicate faces;
  private final boolean mixedTurns;
  private final Arrivals arrivals;
  private final EdgeCrossing crossing = new EdgeCrossing();

  private double ax;
  private double ay;
  private double az;
  private double bx;
  private double by;
  private double bz;
  private double aa;
  private double bb;
  private double ab;
  private double la;
  private double lb;
  private double lab;
  private double nx;
  private double ny;
  private double nz;
  private double n;
  private double share;
  private double rayX;
  private double rayY;
  private double rayZ;

  /** Ray of an end of the edge in the frame of the face: along the edge, and towards C. */
  private double along;

  private double across;
  private boolean atSource;

  Wavefront(Mesh mesh, Topology topology, VertexFans fans, IntPredicate faces, Arrivals arrivals) {
    p = mesh.xyz();
    corner = mesh.corner();
    this.fans = fans;
    this.faces = faces;
    this.arrivals = arrivals;
    mixedTurns = topology.flippedEdges() > 0 || topology.branchingEdges() > 0;
  }

  /** Carries the arrival at a settled vertex to its neighbours. */
  void spreadFrom(int v) {
    boolean again = arrivals.settled[v] > 1;
    int end = fans.begin(v + 1);
    for (int i = fans.begin(v); i < end; i++) {
      int h = fans.halfEdge(i);
      int a = corner[Topology.next(h)];
      int b = corner[Topology.prev(h)];
      if (a != v && b != v && a != b && faces.test(h / 3)) {
        if (again) {
          revise(v, a, b, 1);
          revise(v, b, a, -1);
        }
        measure(v, a, b);
        overFace(v, a, b);
      }
    }
  }

  /** The sides of the face from v to a and to b, their lengths, and its unit normal. */
  private void measure(int v, int a, int b) {
    ax = p[3 * a] - p[3 * v];
    ay = p[3 * a + 1] - p[3 * v + 1];
    az = p[3 * a + 2] - p[3 * v + 2];
    bx = p[3 * b] - p[3 * v];
    by = p[3 * b + 1] - p[3 * v + 1];
    bz = p[3 * b + 2] - p[3 * v + 2];
    aa = ax * ax + ay * ay + az * az;
    bb = bx * bx + by * by + bz * bz;
    ab = ax * bx + ay * by + az * bz;
    la = Math.sqrt(aa);
    lb = Math.sqrt(bb);
    lab = Math.sqrt(Math.max(0, aa + bb - 2 * ab));
  }

  /**
   * The unit normal of the face last measured, as its corners turn.
   *
   * @param turn 1 if it was measured in the order of its corners, else -1
   */
  private void orient(int turn) {
    nx = ay * bz - az * by;
    ny = az * bx - ax * bz;
    nz = ax * by - ay * bx;
    n = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (n > 0) {
      nx *= turn / n;
      ny *= turn / n;
      nz *= turn / n;
    }
  }

  private void overFace(int v, int a, int b) {
    double[] distance = arrivals.distance;
    double dv = distance[v];
    boolean edgeA = arrivals.betters(a, dv + la) && arrivals.mayFollow(a, v, -1);
    boolean edgeB = arrivals.betters(b, dv + lb) && arrivals.mayFollow(b, v, -1);
    boolean takenA = arrivals.heap.taken(a);
    boolean takenB = arrivals.heap.taken(b);
    boolean crossToA =
        takenB && !(takenA && liesBefore(distance[a], dv, distance[b], la, lab, aa - ab));
    boolean crossToB =
        takenA && !(takenB && liesBefore(distance[b], dv, distance[a], lb, lab, bb - ab));
    if (!edgeA && !edgeB && !crossToA && !crossToB) {
      return;
    }
    orient(1);
    if (edgeA) {
      along(v, a, dv + la, ax, ay, az, la);
    }
    if (edgeB) {
      along(v, b, dv + lb, bx, by, bz, lb);
    }
    if (crossToA) {
      double d = across(v, b, bx, by, bz, lb, ax, ay, az, ab / lb, n / lb);
      if (arrivals.betters(a, d) && arrivals.mayFollow(a, v, b)) {
        arrivals.set(a, d, rayX, rayY, rayZ, nx, ny, nz, v, b);
      }
    }
    if (crossToB && arrivals.heap.taken(a)) {
      double d = across(v, a, ax, ay, az, la, bx, by, bz, ab / la, n / la);
      if (arrivals.betters(b, d) && arrivals.mayFollow(b, v, a)) {
        arrivals.set(b, d, rayX, rayY, rayZ, nx, ny, nz, v, a);
      }
    }
  }

  /**
   * Arrival at a place in a face, by the inside of the edge from v to w of that face.
   *
   * @param turn 1 if the face's corners turn from v over w, else -1
   * @return infinite if no ray comes that way; the shortest way crosses the edge at {@link
   *     #crossingShare()}
   */
  double throughEdge(int v, int w, int turn, double x, double y, double z) {
    ax = p[3 * w] - p[3 * v];
    ay = p[3 * w + 1] - p[3 * v + 1];
    az = p[3 * w + 2] - p[3 * v + 2];
    bx = x - p[3 * v];
    by = y - p[3 * v + 1];
    bz = z - p[3 * v + 2];
    la = Math.sqrt(ax * ax + ay * ay + az * az);
    ab = ax * bx + ay * by + az * bz;
    orient(turn);
    double d = across(v, w, ax, ay, az, la, bx, by, bz, ab / la, n / la);
    share = (ab / la - n / la * crossing.towardsX / crossing.towardsY) / la;
    return d;
  }

  /** Share of the way from v to w at which {@link #throughEdge} found the edge crossed. */
  double crossingShare() {
    return share;
  }

  /**
   * After the arrival at v changed: if that at c followed from it and would now be later, c is
   * worked out anew from all its neighbours.
   */
  private void revise(int v, int c, int other, int turn) {
    if (arrivals.viaToo[c] < 0) {
      if (arrivals.via[c] == v) {
        measure(v, c, other);
        if (arrivals.worsens(c, arrivals.distance[v] + la)) {
          workOut(c);
        }
      }
    } else if (arrivals.cameAcross(c, v, other)) {
      measure(v, other, c);
      orient(-turn);
      double d = across(v, other, ax, ay, az, la, bx, by, bz, ab / la, n / la);
      if (arrivals.worsens(c, d)) {
        workOut(c);
      }
    }
  }

  /** Sets the arrival at a vertex from its settled neighbours, but those that follow from it. */
  private void workOut(int c) {
    double best = Double.POSITIVE_INFINITY;
    double x = 0;
    double y = 0;
    double z = 0;
    double mx = 0;
    double my = 0;
    double mz = 0;
    int from = -1;
    int fromToo = -1;
    int end = fans.begin(c + 1);
    for (int i = fans.begin(c); i < end; i++) {
      int h = fans.halfEdge(i);
      int a = corner[Topology.next(h)];
      int b = corner[Topology.prev(h)];
      if (a == c || b == c || a == b || !faces.test(h / 3)) {
        continue;
      }
      boolean useA = arrivals.heap.taken(a) && arrivals.mayFollow(c, a, -1);
      boolean useB = arrivals.heap.taken(b) && arrivals.mayFollow(c, b, -1);
      if (useA) {
        measure(a, c, b);
        if (la > 0 && arrivals.distance[a] + la < best) {
          orient(-1);
          best = arrivals.distance[a] + la;
          x = ax / la;
          y = ay / la;
          z = az / la;
          mx = nx;
          my = ny;
          mz = nz;
          from = a;
          fromToo = -1;
        }
      }
      if (useB) {
        measure(b, c, a);
        if (la > 0 && arrivals.distance[b] + la < best) {
          orient(1);
          best = arrivals.distance[b] + la;
          x = ax / la;
          y = ay / la;
          z = az / la;
          mx = nx;
          my = ny;
          mz = nz;
          from = b;
          fromToo = -1;
        }
      }
      if (useA && useB) {
        measure(a, b, c);
        orient(1);
        double d = across(a, b, ax, ay, az, la, bx, by, bz, ab / la, n / la);
        if (d < best) {
          best = d;
          x = rayX;
          y = rayY;
          z = rayZ;
          mx = nx;
          my = ny;
          mz = nz;
          from = a;
          fromToo = b;
        }
      }
    }
    if (from >= 0) {
      arrivals.set(c, best, x, y, z, mx, my, mz, from, fromToo);
    }
  }

  /**
   * Whether a settled corner lies before the edge opposite, so that no ray can reach it across
   * that: an end B of the edge comes no later than C when the ray to C makes an angle with CB whose
   * cosine is above CB/(2 distance), and that angle is at most the face's at C.
   *
   * @param dot of the two sides at C
   */
  private static boolean liesBefore(
      double dc, double da, double db, double sideA, double sideB, double dot) {
    return dc <= Math.max(da, db) && sideA * sideB * Math.max(sideA, sideB) < 2 * dc * dot;
  }

  private void along(int v, int to, double d, double x, double y, double z, double length) {
    if (length > 0) {
      arrivals.set(to, d, x / length, y / length, z / length, nx, ny, nz, v, -1);
    } else {
      float[] r = arrivals.ray;
      int at = 6 * v;
      arrivals.set(to, d, r[at], r[at + 1], r[at + 2], r[at + 3], r[at + 4], r[at + 5], v, -1);
    }
  }

  /**
   * Arrival over the edge from v to w at the corner c, which is (cx, cy) in the edge's frame, and
   * the ray there; infinite if none comes that way.
   *
   * @param ex from v to w, mm
   * @param tox from v to c, mm
   */
  private double across(
      int v,
      int w,
      double ex,
      double ey,
      double ez,
      double length,
      double tox,
      double toy,
      double toz,
      double cx,
      double cy) {
    boolean oneLeadsToOther =
        (arrivals.via[v] == w && arrivals.viaToo[v] < 0)
            || (arrivals.via[w] == v && arrivals.viaToo[w] < 0);
    if (oneLeadsToOther || !(cy > 0) || !(length > 0)) {
      return Double.POSITIVE_INFINITY;
    }
    double ux = ex / length;
    double uy = ey / length;
    double uz = ez / length;
    double wx = (tox - cx * ux) / cy;
    double wy = (toy - cx * uy) / cy;
    double wz = (toz - cx * uz) / cy;
    double dv = arrivals.distance[v];
    double dw = arrivals.distance[w];
    double m = (dw - dv) / length;
    turnInto(v, ux, uy, uz, wx, wy, wz);
    boolean sourceV = atSource;
    double fv = sourceV ? m : along;
    double hv = sourceV ? Math.sqrt(Math.max(0, 1 - m * m)) : across;
    turnInto(w, ux, uy, uz, wx, wy, wz);
    if (sourceV && atSource) {
      return Double.POSITIVE_INFINITY;
    }
    double fw = atSource ? m : along;
    double hw = atSource ? Math.sqrt(Math.max(0, 1 - m * m)) : across;
    double d = crossing.at(dv, dw, length, cx, cy, fv, hv, fw, hw);
    // Distance grows no faster than the way; where it seems to, an end is not final yet.
    double soonest = Math.max(dv - Math.hypot(cx, cy), dw - Math.hypot(length - cx, cy));
    return d >= soonest ? rayAt(d, dv, dw, ux, uy, uz, wx, wy, wz) : Double.POSITIVE_INFINITY;
  }

  /** Takes over the ray of an arrival; the arrival, or infinite if it is before both ends'. */
  private double rayAt(
      double d,
      double dv,
      double dw,
      double ux,
      double uy,
      double uz,
      double wx,
      double wy,
      double wz) {
    double tx = crossing.towardsX;
    double ty = crossing.towardsY;
    rayX = tx * ux + ty * wx;
    rayY = tx * uy + ty * wy;
    rayZ = tx * uz + ty * wz;
    return d > Math.min(dv, dw) ? d : Double.POSITIVE_INFINITY;
  }

  private void turnInto(int v, double ux, double uy, double uz, double wx, double wy, double wz) {
    float[] r = arrivals.ray;
    int at = 6 * v;
    double gx = r[at];
    double gy = r[at + 1];
    double gz = r[at + 2];
    atSource = gx == 0 && gy == 0 && gz == 0;
    double mx = r[at + 3];
    double my = r[at + 4];
    double mz = r[at + 5];
    double cos = mx * nx + my * ny + mz * nz;
    lay(1, cos, gx, gy, gz, mx, my, mz, ux, uy, uz, wx, wy, wz);
    if (mixedTurns) {
      // Normals don't tell which way a fold opens here; a front that matters goes towards c.
      double first = along;
      double firstAcross = across;
      lay(-1, cos, gx, gy, gz, mx, my, mz, ux, uy, uz, wx, wy, wz);
      if (firstAcross > across) {
        along = first;
        across = firstAcross;
      }
    }
  }

  private void lay(
      int side,
      double cos,
      double gx,
      double gy,
      double gz,
      double mx,
      double my,
      double mz,
      double ux,
      double uy,
      double uz,
      double wx,
      double wy,
      double wz) {
    double lift = side * (nx * gx + ny * gy + nz * gz) / (1 + side * cos);
    if (!(1 + side * cos > FOLDED)) {
      lift = 0;
    }
    along = gx * ux + gy * uy + gz * uz - lift * (mx * ux + my * uy + mz * uz);
    across = gx * wx + gy * wy + gz * wz - lift * (mx * wx + my * wy + mz * wz);
  }
}
