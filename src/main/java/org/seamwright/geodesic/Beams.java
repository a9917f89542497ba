package org.seamwright.geodesic;

import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Straight ways from a source over the next few faces, unfolded into one plane: exact distances and
 * rays for the vertices near a source, where a front between two vertices is least known.
 *
 * <p>A beam is what passes an edge of all ways that leave a point, or leave a segment at right
 * angles. In each face it splits at the opposite corner: J. S. B. Mitchell, D. M. Mount and C. H.
 * Papadimitriou, "The discrete geodesic problem", 1987. A beam ends after {@link #DEPTH} faces and
 * sooner where it reaches corners later than others did, so the cost is a few dozen faces a source.
 */
final class Beams {
  /** Faces that a beam crosses: three to five edge lengths on a mesh of even faces. */
  private static final int DEPTH = 8;

  /** The same from bent lines, whose short edges say little of what is further off. */
  private static final int BENT_DEPTH = 16;

  /** The same for beams that start from a vertex of the way, on surfaces ridden with needles. */
  private static final int HOP_DEPTH = 12;

  /** Faces that a beam crosses less for each corner that was reached sooner. */
  private static final int LOST = 3;

  private static final int BENT_LOST = 1;

  /**
   * Faces that the beams through one edge cross at most: some dozens do on a surface. Where faces
   * lie doubled each edge leads into several, and their number would grow as a power of the depth.
   */
  private static final int MOST_FACES = 2000;

  private final double[] p;
  private final int[] corner;
  private final Topology topology;
  private final VertexFans fans;
  private final IntPredicate faces;
  private final Arrivals arrivals;

  /**
   * Distance at which the beams start, mm, and the vertex they start from or {@link Arrivals#SEED}.
   */
  private double start;

  private int from = Arrivals.SEED;
  private int depthAtStart = DEPTH;
  private int lost = LOST;
  private int facesLeft;

  Beams(Mesh mesh, Topology topology, VertexFans fans, IntPredicate faces, Arrivals arrivals) {
    p = mesh.xyz();
    corner = mesh.corner();
    this.topology = topology;
    this.fans = fans;
    this.faces = faces;
    this.arrivals = arrivals;
  }

  /** Lets the beams to come start from a vertex that was reached already. */
  void startFrom(int vertex) {
    start = arrivals.distance[vertex];
    from = vertex;
    depthAtStart = HOP_DEPTH;
    lost = 0;
  }

  /** Lets the beams to come start from bent lines. */
  void startFromBentLines() {
    depthAtStart = BENT_DEPTH;
    lost = BENT_LOST;
  }

  /**
   * Sends beams from a point of a face, or from a segment in it, through one edge of the face to
   * the faces beyond.
   *
   * @param h half-edge of the face
   * @param from the point, or one end of the segment, mm
   * @param to the same point, or the other end
   */
  void through(int h, double[] from, double[] to) {
    facesLeft = MOST_FACES;
    int a = corner[h];
    int b = corner[Topology.next(h)];
    double ex = p[3 * b] - p[3 * a];
    double ey = p[3 * b + 1] - p[3 * a + 1];
    double ez = p[3 * b + 2] - p[3 * a + 2];
    double length = Math.sqrt(ex * ex + ey * ey + ez * ez);
    if (!(length > 0)) {
      return;
    }
    double x0 = along(a, from, ex, ey, ez) / length;
    double x1 = along(a, to, ex, ey, ez) / length;
    double y0 = -offLine(a, from, ex, ey, ez, x0, length);
    double y1 = -offLine(a, to, ex, ey, ez, x1, length);
    if (x0 == x1 && y0 == y1) {
      // Every way from the point: the rays through the two ends.
      if (y0 < 0) {
        cross(h, a, b, length, x0, y0, x0, y0, -x0, -y0, length - x0, -y0, depthAtStart);
      }
    } else if (x0 < x1) {
      strip(h, a, b, length, x0, y0, x1, y1);
    } else if (x0 > x1) {
      strip(h, a, b, length, x1, y1, x0, y0);
    }
  }

  /** All ways at right angles from a segment, left end first, as far as they meet the edge. */
  private void strip(
      int h, int a, int b, double length, double x0, double y0, double x1, double y1) {
    double u = y0 - y1;
    double v = x1 - x0;
    double left = x0 - y0 * u / v;
    double right = x1 - y1 * u / v;
    double from = Math.max(0, -left / (right - left));
    double to = Math.min(1, (length - left) / (right - left));
    if (from < to) {
      double lx = x0 + from * (x1 - x0);
      double ly = y0 + from * (y1 - y0);
      double rx = x0 + to * (x1 - x0);
      double ry = y0 + to * (y1 - y0);
      cross(h, a, b, length, lx, ly, rx, ry, u, v, u, v, depthAtStart);
    }
  }

  private double along(int a, double[] q, double ex, double ey, double ez) {
    return (q[0] - p[3 * a]) * ex + (q[1] - p[3 * a + 1]) * ey + (q[2] - p[3 * a + 2]) * ez;
  }

  private double offLine(
      int a, double[] q, double ex, double ey, double ez, double x, double length) {
    double dx = q[0] - p[3 * a] - ex * x / length;
    double dy = q[1] - p[3 * a + 1] - ey * x / length;
    double dz = q[2] - p[3 * a + 2] - ez * x / length;
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /**
   * Takes a beam over an edge into the other faces there. The edge runs from a at (0, 0) to b at
   * (length, 0), the beam comes from below; its left bound starts at (lx, ly) with direction (lu,
   * lv), its right bound at (rx, ry).
   */
  private void cross(
      int h,
      int a,
      int b,
      double length,
      double lx,
      double ly,
      double rx,
      double ry,
      double lu,
      double lv,
      double ru,
      double rv,
      int depth) {
    int twin = topology.twin(h);
    if (twin >= 0) {
      enter(twin / 3, a, b, length, lx, ly, rx, ry, lu, lv, ru, rv, depth);
    } else if (twin == Topology.BRANCHING) {
      for (int i = fans.begin(a); i < fans.begin(a + 1); i++) {
        int f = fans.halfEdge(i) / 3;
        if (f != h / 3
            && (corner[3 * f] == b || corner[3 * f + 1] == b || corner[3 * f + 2] == b)) {
          enter(f, a, b, length, lx, ly, rx, ry, lu, lv, ru, rv, depth);
        }
      }
    }
  }

  private void enter(
      int f,
      int a,
      int b,
      double length,
      double lx,
      double ly,
      double rx,
      double ry,
      double lu,
      double lv,
      double ru,
      double rv,
      int depth) {
    if (facesLeft == 0 || !faces.test(f)) {
      return;
    }
    facesLeft--;
    int k =
        corner[3 * f] != a && corner[3 * f] != b
            ? 0
            : corner[3 * f + 1] != a && corner[3 * f + 1] != b ? 1 : 2;
    int c = corner[3 * f + k];
    double ux = (p[3 * b] - p[3 * a]) / length;
    double uy = (p[3 * b + 1] - p[3 * a + 1]) / length;
    double uz = (p[3 * b + 2] - p[3 * a + 2]) / length;
    double wx = p[3 * c] - p[3 * a];
    double wy = p[3 * c + 1] - p[3 * a + 1];
    double wz = p[3 * c + 2] - p[3 * a + 2];
    double cx = wx * ux + wy * uy + wz * uz;
    wx -= cx * ux;
    wy -= cx * uy;
    wz -= cx * uz;
    double cy = Math.sqrt(wx * wx + wy * wy + wz * wz);
    if (!(cy > 0)) {
      return;
    }
    // Above 0 where c lies right of the left bound, and below 0 where left of the right bound.
    double ofLeft = (cx - lx) * lv - (cy - ly) * lu;
    double ofRight = (cx - rx) * rv - (cy - ry) * ru;
    int left = depth - 1;
    boolean inside = ofLeft >= 0 && ofRight <= 0;
    double tu = ru;
    double tv = rv;
    double tx = rx;
    double ty = ry;
    if (inside) {
      double d;
      if (lu == ru && lv == rv) {
        d = ((cx - lx) * lu + (cy - ly) * lv) / Math.sqrt(lu * lu + lv * lv);
        tu = lu;
        tv = lv;
        tx = cx - d * lu / Math.sqrt(lu * lu + lv * lv);
        ty = cy - d * lv / Math.sqrt(lu * lu + lv * lv);
      } else {
        tu = cx - lx;
        tv = cy - ly;
        tx = lx;
        ty = ly;
        d = Math.sqrt(tu * tu + tv * tv);
      }
      if (arrivals.distance[c] < start + d) {
        left -= lost;
      } else if (arrivals.betters(c, start + d)) {
        double gx = (cx - tx) / d;
        double gy = (cy - ty) / d / cy;
        double turn = corner[3 * f + (k + 1) % 3] == a ? 1 / cy : -1 / cy;
        double nx = uy * wz - uz * wy;
        double ny = uz * wx - ux * wz;
        double nz = ux * wy - uy * wx;
        arrivals.set(
            c,
            start + d,
            gx * ux + gy * wx,
            gx * uy + gy * wy,
            gx * uz + gy * wz,
            nx * turn,
            ny * turn,
            nz * turn,
            from,
            -1);
      }
    }
    if (left <= 0) {
      return;
    }
    if (ofLeft > 0) {
      // Through the edge from a to c: between the left bound and the ray to c, or the right bound.
      double side = Math.sqrt(cx * cx + cy * cy);
      onward(
          f,
          a,
          c,
          0,
          0,
          cx / side,
          cy / side,
          side,
          lx,
          ly,
          inside ? tx : rx,
          inside ? ty : ry,
          lu,
          lv,
          inside ? tu : ru,
          inside ? tv : rv,
          left);
    }
    if (ofRight < 0) {
      double side = Math.sqrt((length - cx) * (length - cx) + cy * cy);
      onward(
          f,
          c,
          b,
          cx,
          cy,
          (length - cx) / side,
          -cy / side,
          side,
          inside ? tx : lx,
          inside ? ty : ly,
          rx,
          ry,
          inside ? tu : lu,
          inside ? tv : lv,
          ru,
          rv,
          left);
    }
  }

  /** Turns a beam into the frame of an edge it meets, from (ox, oy) in direction (cos, sin). */
  private void onward(
      int f,
      int from,
      int to,
      double ox,
      double oy,
      double cos,
      double sin,
      double length,
      double lx,
      double ly,
      double rx,
      double ry,
      double lu,
      double lv,
      double ru,
      double rv,
      int depth) {
    int h = 3 * f;
    while (!((corner[h] == from && corner[Topology.next(h)] == to)
        || (corner[h] == to && corner[Topology.next(h)] == from))) {
      h++;
    }
    cross(
        h,
        from,
        to,
        length,
        (lx - ox) * cos + (ly - oy) * sin,
        (ly - oy) * cos - (lx - ox) * sin,
        (rx - ox) * cos + (ry - oy) * sin,
        (ry - oy) * cos - (rx - ox) * sin,
        lu * cos + lv * sin,
        lv * cos - lu * sin,
        ru * cos + rv * sin,
        rv * cos - ru * sin,
        depth);
  }
}
