package org.seamwright.sample;

import java.util.ArrayList;
import java.util.List;

/**
 * A flat outline with holes, cut into triangles over its own points by ear clipping; holes are
 * first joined to the outline by bridges.
 *
 * <p>Source: D. Eberly, "Triangulation by Ear Clipping", 2002. O(n²), for outlines of lettering.
 */
final class Polygon {
  private Polygon() {}

  /** Twice the signed area of a loop of points (x, y): above 0 if counter-clockwise. */
  static double area2(double[][] point, int[] loop) {
    double sum = 0;
    for (int i = 0; i < loop.length; i++) {
      double[] p = point[loop[i]];
      double[] q = point[loop[(i + 1) % loop.length]];
      sum += p[0] * q[1] - q[0] * p[1];
    }
    return sum;
  }

  /** Length round a loop. */
  static double perimeter(double[][] point, int[] loop) {
    double sum = 0;
    for (int i = 0; i < loop.length; i++) {
      double[] p = point[loop[i]];
      double[] q = point[loop[(i + 1) % loop.length]];
      sum += Math.hypot(q[0] - p[0], q[1] - p[1]);
    }
    return sum;
  }

  /** Whether a place lies inside a loop (even-odd rule). */
  static boolean inside(double[][] point, int[] loop, double x, double y) {
    boolean in = false;
    for (int i = 0; i < loop.length; i++) {
      double[] p = point[loop[i]];
      double[] q = point[loop[(i + 1) % loop.length]];
      if (p[1] > y != q[1] > y && x < p[0] + (y - p[1]) / (q[1] - p[1]) * (q[0] - p[0])) {
        in = !in;
      }
    }
    return in;
  }

  /**
   * Triangles of an outline with holes.
   *
   * @param point all points
   * @param outer counter-clockwise loop of point numbers
   * @param holes clockwise loops inside it
   * @return three point numbers per triangle, counter-clockwise
   */
  static List<int[]> triangles(double[][] point, int[] outer, List<int[]> holes) {
    List<Integer> ring = new ArrayList<>();
    for (int v : outer) {
      ring.add(v);
    }
    List<int[]> open = new ArrayList<>(holes);
    open.sort((a, b) -> Double.compare(rightmost(point, b), rightmost(point, a)));
    for (int[] hole : open) {
      bridge(point, ring, hole);
    }
    List<int[]> triangles = new ArrayList<>();
    while (ring.size() > 3) {
      int ear = bestEar(point, ring);
      int n = ring.size();
      triangles.add(
          new int[] {ring.get((ear + n - 1) % n), ring.get(ear), ring.get((ear + 1) % n)});
      ring.remove(ear);
    }
    triangles.add(new int[] {ring.get(0), ring.get(1), ring.get(2)});
    return triangles;
  }

  private static double rightmost(double[][] point, int[] loop) {
    double best = Double.NEGATIVE_INFINITY;
    for (int v : loop) {
      best = Math.max(best, point[v][0]);
    }
    return best;
  }

  /** Joins a hole to the ring by the shortest bridge that crosses nothing. */
  private static void bridge(double[][] point, List<Integer> ring, int[] hole) {
    int start = 0;
    for (int i = 1; i < hole.length; i++) {
      if (point[hole[i]][0] > point[hole[start]][0]) {
        start = i;
      }
    }
    double[] from = point[hole[start]];
    int best = -1;
    double bestLength = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ring.size(); i++) {
      double[] to = point[ring.get(i)];
      double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      if (to[0] >= from[0] && length < bestLength && visible(point, ring, i, from)) {
        best = i;
        bestLength = length;
      }
    }
    List<Integer> insert = new ArrayList<>();
    for (int i = 0; i <= hole.length; i++) {
      insert.add(hole[(start + i) % hole.length]);
    }
    insert.add(ring.get(best));
    ring.addAll(best + 1, insert);
  }

  private static boolean visible(double[][] point, List<Integer> ring, int index, double[] from) {
    int n = ring.size();
    double[] to = point[ring.get(index)];
    double[] before = point[ring.get((index + n - 1) % n)];
    double[] after = point[ring.get((index + 1) % n)];
    boolean convex = turn(before, to, after) > 0;
    boolean leftOfFirst = turn(before, to, from) > 0;
    boolean leftOfSecond = turn(to, after, from) > 0;
    if (convex ? !(leftOfFirst && leftOfSecond) : !(leftOfFirst || leftOfSecond)) {
      return false;
    }
    for (int i = 0; i < n; i++) {
      double[] p = point[ring.get(i)];
      double[] q = point[ring.get((i + 1) % n)];
      if (p != to
          && q != to
          && turn(from, to, p) > 0 != turn(from, to, q) > 0
          && turn(p, q, from) > 0 != turn(p, q, to) > 0) {
        return false;
      }
    }
    return true;
  }

  /** The ear whose smallest angle is widest, so that slivers come last. */
  private static int bestEar(double[][] point, List<Integer> ring) {
    int n = ring.size();
    int best = -1;
    double bestQuality = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      double[] a = point[ring.get((i + n - 1) % n)];
      double[] b = point[ring.get(i)];
      double[] c = point[ring.get((i + 1) % n)];
      double area2 = turn(a, b, c);
      if (area2 <= 0) {
        continue;
      }
      double quality = area2 / (squared(a, b) + squared(b, c) + squared(c, a));
      if (quality > bestQuality && empty(point, ring, a, b, c)) {
        best = i;
        bestQuality = quality;
      }
    }
    if (best < 0) {
      throw new IllegalStateException("Outline crosses itself");
    }
    return best;
  }

  private static boolean empty(
      double[][] point, List<Integer> ring, double[] a, double[] b, double[] c) {
    for (int v : ring) {
      double[] p = point[v];
      if (p != a
          && p != b
          && p != c
          && turn(a, b, p) >= 0
          && turn(b, c, p) >= 0
          && turn(c, a, p) >= 0) {
        return false;
      }
    }
    return true;
  }

  private static double squared(double[] a, double[] b) {
    return (a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]);
  }

  /** Twice the signed area of a triangle. */
  private static double turn(double[] a, double[] b, double[] c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  }
}
