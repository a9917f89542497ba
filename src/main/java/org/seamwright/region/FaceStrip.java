package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * The shortest way from a vertex to another through a given sequence of faces: the faces are laid
 * out flat one after the other, and a thread is pulled tight between the edges crossed (D. T. Lee
 * and F. P. Preparata, "Euclidean shortest paths in the presence of rectilinear barriers", 1984:
 * the funnel). Exact; O(n) as a rule, since a corner of the funnel starts it anew from there.
 */
final class FaceStrip {
  private final Mesh mesh;
  private final int start;

  /** One entry per face entered: the half-edge over which, in that face. */
  private final int[] entry;

  /** Ends of the edges crossed, as vertices and laid out; the last is the end vertex twice. */
  private final int[] leftVertex;

  private final int[] rightVertex;
  private final double[] left;
  private final double[] right;

  /** Corners of the way: index of the crossing, and whether its left or right end. */
  private final int[] corner;

  private final boolean[] cornerIsLeft;
  private int corners;
  private double lengthMm;

  /** Where the corner last laid out lies. */
  private final double[] apexAt = new double[2];

  /**
   * Pulls the thread.
   *
   * @param start a corner of the first face, not on the first edge crossed
   * @param entry half-edges over which the second and later faces are entered; at least one
   * @param exit for each the half-edge of the face before
   */
  FaceStrip(Mesh mesh, int start, int[] entry, int[] exit) {
    this.mesh = mesh;
    this.start = start;
    this.entry = entry;
    int n = entry.length;
    leftVertex = new int[n + 1];
    rightVertex = new int[n + 1];
    left = new double[2 * n + 2];
    right = new double[2 * n + 2];
    corner = new int[n + 2];
    cornerIsLeft = new boolean[n + 2];
    layOut(exit);
    pull();
  }

  private void layOut(int[] exit) {
    int[] c = mesh.corner();
    leftVertex[0] = c[exit[0]];
    rightVertex[0] = c[Topology.next(exit[0])];
    double toLeft = Faces.length(mesh, start, leftVertex[0]);
    double toRight = Faces.length(mesh, start, rightVertex[0]);
    double across = Faces.length(mesh, leftVertex[0], rightVertex[0]);
    // The start lies at the origin, the left end straight up, the right end to the right of that.
    left[1] = toLeft;
    double up =
        toLeft > 0 ? (toLeft * toLeft + toRight * toRight - across * across) / (2 * toLeft) : 0;
    right[0] = Math.sqrt(Math.max(0, toRight * toRight - up * up));
    right[1] = up;
    for (int i = 1; i <= entry.length; i++) {
      int apex = c[Topology.prev(entry[i - 1])];
      boolean last = i == entry.length;
      boolean keepsLeft = !last && touches(exit[i], leftVertex[i - 1]);
      placeBeyond(i - 1, apex);
      leftVertex[i] = keepsLeft ? leftVertex[i - 1] : apex;
      rightVertex[i] = keepsLeft || last ? apex : rightVertex[i - 1];
      System.arraycopy(keepsLeft ? left : apexAt, keepsLeft ? 2 * i - 2 : 0, left, 2 * i, 2);
      boolean keepsRight = !keepsLeft && !last;
      System.arraycopy(keepsRight ? right : apexAt, keepsRight ? 2 * i - 2 : 0, right, 2 * i, 2);
    }
  }

  private boolean touches(int h, int vertex) {
    return mesh.corner()[h] == vertex || mesh.corner()[Topology.next(h)] == vertex;
  }

  /** Lays out the corner of a face beyond the edge it was entered over. */
  private void placeBeyond(int i, int apex) {
    double ex = right[2 * i] - left[2 * i];
    double ey = right[2 * i + 1] - left[2 * i + 1];
    double length = Math.sqrt(ex * ex + ey * ey);
    double fromLeft = Faces.length(mesh, leftVertex[i], apex);
    double fromRight = Faces.length(mesh, rightVertex[i], apex);
    if (!(length > 0)) {
      apexAt[0] = left[2 * i];
      apexAt[1] = left[2 * i + 1] + fromLeft;
      return;
    }
    double along = (fromLeft * fromLeft + length * length - fromRight * fromRight) / (2 * length);
    double beyond = Math.sqrt(Math.max(0, fromLeft * fromLeft - along * along));
    // Ahead is to the left of the way from the left end to the right end.
    apexAt[0] = left[2 * i] + (along * ex - beyond * ey) / length;
    apexAt[1] = left[2 * i + 1] + (along * ey + beyond * ex) / length;
  }

  /** Twice the area of the triangle from an apex to p and q; positive if q lies to the left. */
  private static double turn(double ax, double ay, double[] p, int i, double[] q, int j) {
    return (p[2 * i] - ax) * (q[2 * j + 1] - ay) - (q[2 * j] - ax) * (p[2 * i + 1] - ay);
  }

  /**
   * Narrows the funnel edge by edge; where one side passes the other, that one's end is a corner of
   * the way, and the funnel opens anew from it.
   */
  private void pull() {
    double ax = 0;
    double ay = 0;
    int apex = start;
    int l = 0;
    int r = 0;
    int i = 1;
    while (i <= entry.length) {
      if (leftVertex[i] == apex || rightVertex[i] == apex) {
        // An edge through the corner itself leaves every direction open.
        l = i;
        r = i;
        i++;
        continue;
      }
      boolean opened = leftVertex[l] == apex || rightVertex[r] == apex;
      boolean turnsLeft = false;
      boolean turnsRight = false;
      if (opened) {
        l = i;
        r = i;
      } else {
        if (turn(ax, ay, right, r, right, i) >= 0) {
          turnsLeft = turn(ax, ay, left, l, right, i) > 0;
          r = turnsLeft ? r : i;
        }
        if (!turnsLeft && turn(ax, ay, left, l, left, i) <= 0) {
          turnsRight = turn(ax, ay, right, r, left, i) < 0;
          l = turnsRight ? l : i;
        }
      }
      if (turnsLeft || turnsRight) {
        int at = turnsLeft ? l : r;
        if (at == entry.length) {
          break;
        }
        addCorner(at, turnsLeft);
        apex = turnsLeft ? leftVertex[at] : rightVertex[at];
        ax = (turnsLeft ? left : right)[2 * at];
        ay = (turnsLeft ? left : right)[2 * at + 1];
        l = at;
        r = at;
        i = at;
      }
      i++;
    }
    addCorner(entry.length, true);
    measure();
  }

  private void addCorner(int at, boolean isLeft) {
    corner[corners] = at;
    cornerIsLeft[corners++] = isLeft;
  }

  private void measure() {
    double x = 0;
    double y = 0;
    for (int i = 0; i < corners; i++) {
      double[] side = cornerIsLeft[i] ? left : right;
      double nx = side[2 * corner[i]];
      double ny = side[2 * corner[i] + 1];
      lengthMm += Math.hypot(nx - x, ny - y);
      x = nx;
      y = ny;
    }
  }

  /** Length of the way, mm. */
  double lengthMm() {
    return lengthMm;
  }

  /** Vertices at which the way turns, in order, without its ends. */
  int[] turns() {
    int[] turns = new int[corners - 1];
    for (int i = 0; i < turns.length; i++) {
      turns[i] = cornerIsLeft[i] ? leftVertex[corner[i]] : rightVertex[corner[i]];
    }
    return turns;
  }

  /** For each edge crossed, how far along it from its left end, 0 to 1. */
  double[] shares() {
    double[] shares = new double[entry.length];
    double x = 0;
    double y = 0;
    int next = 0;
    for (int i = 0; i < shares.length; i++) {
      while (corner[next] < i) {
        double[] side = cornerIsLeft[next] ? left : right;
        x = side[2 * corner[next]];
        y = side[2 * corner[next] + 1];
        next++;
      }
      double[] side = cornerIsLeft[next] ? left : right;
      double dx = side[2 * corner[next]] - x;
      double dy = side[2 * corner[next] + 1] - y;
      double fromLeft = dx * (left[2 * i + 1] - y) - dy * (left[2 * i] - x);
      double fromRight = dx * (right[2 * i + 1] - y) - dy * (right[2 * i] - x);
      double width = fromLeft - fromRight;
      shares[i] = width > 0 ? Math.max(0, Math.min(1, fromLeft / width)) : 0;
    }
    return shares;
  }

  /** Left ends of the edges crossed. */
  int[] leftVertices() {
    return Arrays.copyOf(leftVertex, entry.length);
  }

  /** Right ends of the edges crossed. */
  int[] rightVertices() {
    return Arrays.copyOf(rightVertex, entry.length);
  }
}
