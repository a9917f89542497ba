package org.seamwright.meshfile;

import java.util.Arrays;
import java.util.function.Supplier;

/**
 * Splits polygons into triangles by clipping ears in the polygon's mean plane, the ear with the
 * shortest new edge first. Concave polygons keep their area; corners in line are left for last.
 *
 * <p>The plane is Newell's (its normal is the polygon's area vector); the polygon is projected on
 * it along an axis, so that the tests see the file's own coordinates. O(n²) for n corners.
 *
 * <p>Sources: F. Tampieri, "Newell's method for computing the plane equation of a polygon",
 * Graphics Gems III, 1992; J. O'Rourke, "Computational Geometry in C", 1998, section 1.4 (only the
 * two neighbours of a clipped ear can change their standing).
 */
final class PolygonSplitter {
  /** Splitting takes time in the square of the corners; real polygons stay far below. */
  private static final int MOST_CORNERS = 10_000;

  /**
   * Largest sum of squared corners of all polygons with more than four: about 20 s of splitting, as
   * much as 40 polygons of 10,000 corners or 40,000 of 300.
   */
  private static final double MOST_WORK = 4e9;

  /**
   * A polygon counts as not flat if a corner is off its mean plane by more than this share of its
   * largest coordinate: coordinates are often written with six digits, so less is rounding.
   */
  private static final double FLAT = 2e-6;

  /** Area that clipping may go wrong by, as a share of the polygon's, before it is told. */
  private static final double CLEAN = 1e-9;

  private final Growing.Ints corner;
  private double[] x = new double[0];
  private double[] y = new double[0];
  private double[] z = new double[0];
  private double[] u;
  private double[] v;
  private int[] prev;
  private int[] next;
  private boolean[] ear;
  private boolean[] convex;
  private int[] id;
  private int triangles;
  private int notFlat;
  private double deviation;
  private double splitArea;
  private double flatArea;
  private int tangled;
  private double work;

  /** Makes a splitter that appends three corners a triangle to a list. */
  PolygonSplitter(Growing.Ints corner) {
    this.corner = corner;
  }

  /**
   * Refuses a polygon that would take too long to split, alone or with those before it.
   *
   * @param place where it is; asked only if it is refused, since counting lines takes time
   */
  void requireSplittable(int count, Supplier<String> place, Refusal refusal)
      throws MeshFileException {
    if (count > MOST_CORNERS) {
      throw refusal.at(
          place.get(),
          "the face has " + count + " corners; at most " + MOST_CORNERS + " can be split",
          "Export the model again as triangles.");
    }
    work += count > 4 ? (double) count * count : 0;
    requireSplittable(place, refusal);
  }

  /** Refuses what would take too long to split all together. */
  void requireSplittable(Supplier<String> place, Refusal refusal) throws MeshFileException {
    if (work > MOST_WORK) {
      throw refusal.at(
          place.get(),
          "splitting all faces of many corners would take too long",
          "Export the model again as triangles.");
    }
  }

  /** The same with points of a growing list. */
  int split(Growing.Doubles points, Growing.Ints polygon, int from, int count) {
    return split(points.items(), polygon, from, count);
  }

  /** Counts what another splitter found as found by this one. */
  void absorb(PolygonSplitter other) {
    notFlat += other.notFlat;
    deviation = Math.max(deviation, other.deviation);
    splitArea += other.splitArea;
    flatArea += other.flatArea;
    tangled += other.tangled;
    work += other.work;
  }

  /** Polygons so far that are not flat. */
  int notFlat() {
    return notFlat;
  }

  /** Largest distance of a corner from its polygon's mean plane among those, in file units. */
  double deviation() {
    return deviation;
  }

  /** How much larger those polygons are as triangles than as shadows on their mean planes. */
  double excess() {
    return flatArea > 0 ? splitArea / flatArea - 1 : 0;
  }

  /** Polygons so far that cross themselves, so that no splitting keeps their area. */
  int tangled() {
    return tangled;
  }

  /**
   * Splits one polygon.
   *
   * @param points coordinates, 3 per point
   * @param polygon point numbers of its corners
   * @param count number of corners, at least 3
   * @return number of triangles, {@code count - 2}
   */
  int split(double[] points, Growing.Ints polygon, int from, int count) {
    triangles = 0;
    if (count == 3) {
      emit(polygon.get(from), polygon.get(from + 1), polygon.get(from + 2));
      return triangles;
    }
    int n = load(points, polygon, from, count);
    double[] normal = newell(n);
    if (n == 3 || largest(normal) == 0) {
      fan(n);
      return triangles;
    }
    int before = corner.size();
    project(normal, n);
    if (n == 4) {
      quad();
    } else {
      ears(n);
    }
    judgeFlatness(normal, n, before, points);
    return triangles;
  }

  /**
   * Takes the corners over; one that repeats its forerunner goes out as a triangle to be dropped.
   */
  private int load(double[] points, Growing.Ints polygon, int from, int count) {
    if (x.length < count) {
      x = new double[count];
      y = new double[count];
      z = new double[count];
      u = new double[count];
      v = new double[count];
      prev = new int[count];
      next = new int[count];
      ear = new boolean[count];
      convex = new boolean[count];
      id = new int[count];
    }
    int n = 0;
    for (int i = 0; i < count; i++) {
      int p = polygon.get(from + i);
      x[n] = points[3 * p];
      y[n] = points[3 * p + 1];
      z[n] = points[3 * p + 2];
      id[n] = p;
      boolean again =
          (n > 0 && samePlace(n, n - 1)) || (i == count - 1 && n > 0 && samePlace(n, 0));
      if (again && n + (count - 1 - i) >= 3) {
        emit(id[Math.max(0, n - 1)], p, p);
      } else {
        n++;
      }
    }
    return n;
  }

  private boolean samePlace(int i, int j) {
    return x[i] == x[j] && y[i] == y[j] && z[i] == z[j];
  }

  private double[] newell(int n) {
    double[] sum = new double[3];
    for (int i = 1; i + 1 < n; i++) {
      double ax = x[i] - x[0];
      double ay = y[i] - y[0];
      double az = z[i] - z[0];
      double bx = x[i + 1] - x[0];
      double by = y[i + 1] - y[0];
      double bz = z[i + 1] - z[0];
      sum[0] += ay * bz - az * by;
      sum[1] += az * bx - ax * bz;
      sum[2] += ax * by - ay * bx;
    }
    return sum;
  }

  private static double largest(double[] vector) {
    return Math.max(Math.abs(vector[0]), Math.max(Math.abs(vector[1]), Math.abs(vector[2])));
  }

  private static double length(double[] vector) {
    return Math.sqrt(vector[0] * vector[0] + vector[1] * vector[1] + vector[2] * vector[2]);
  }

  private void fan(int n) {
    for (int i = 1; i + 1 < n; i++) {
      emit(id[0], id[i], id[i + 1]);
    }
  }

  private void emit(int a, int b, int c) {
    corner.add(a);
    corner.add(b);
    corner.add(c);
    triangles++;
  }

  /** Fills u and v so that the polygon runs counter-clockwise. */
  private void project(double[] normal, int n) {
    double big = largest(normal);
    double[] first = y;
    double[] second = z;
    double along = normal[0];
    if (Math.abs(normal[2]) == big) {
      first = x;
      second = y;
      along = normal[2];
    } else if (Math.abs(normal[1]) == big) {
      first = z;
      second = x;
      along = normal[1];
    }
    System.arraycopy(along > 0 ? first : second, 0, u, 0, n);
    System.arraycopy(along > 0 ? second : first, 0, v, 0, n);
  }

  /** Twice the signed area of three corners in the plane. */
  private double turn(int a, int b, int c) {
    return (u[b] - u[a]) * (v[c] - v[a]) - (v[b] - v[a]) * (u[c] - u[a]);
  }

  private double distance2(int a, int b) {
    double dx = x[a] - x[b];
    double dy = y[a] - y[b];
    double dz = z[a] - z[b];
    return dx * dx + dy * dy + dz * dz;
  }

  private void quad() {
    boolean first = turn(0, 1, 2) > 0 && turn(0, 2, 3) > 0;
    boolean second = turn(1, 2, 3) > 0 && turn(1, 3, 0) > 0;
    if (!first && !second) {
      tangled++;
    }
    if (second && (!first || distance2(1, 3) < distance2(0, 2))) {
      emit(id[1], id[2], id[3]);
      emit(id[1], id[3], id[0]);
    } else {
      emit(id[0], id[1], id[2]);
      emit(id[0], id[2], id[3]);
    }
  }

  private void ears(int n) {
    double whole = 0;
    for (int i = 0; i < n; i++) {
      prev[i] = (i + n - 1) % n;
      next[i] = (i + 1) % n;
      whole += u[i] * v[(i + 1) % n] - v[i] * u[(i + 1) % n];
    }
    for (int i = 0; i < n; i++) {
      convex[i] = turn(prev[i], i, next[i]) > 0;
    }
    for (int i = 0; i < n; i++) {
      ear[i] = isEar(i);
    }
    double forced = 0;
    int start = 0;
    for (int left = n; left > 3; left--) {
      int clip = shortest(start, ear);
      if (clip < 0) {
        clip = shortest(start, convex);
        clip = clip < 0 ? start : clip;
        forced += Math.abs(turn(prev[clip], clip, next[clip]));
      }
      int a = prev[clip];
      int c = next[clip];
      emit(id[a], id[clip], id[c]);
      next[a] = c;
      prev[c] = a;
      convex[a] = turn(prev[a], a, c) > 0;
      convex[c] = turn(a, c, next[c]) > 0;
      ear[a] = isEar(a);
      ear[c] = isEar(c);
      start = a;
    }
    emit(id[prev[start]], id[start], id[next[start]]);
    if (turn(prev[start], start, next[start]) < 0) {
      forced += Math.abs(turn(prev[start], start, next[start]));
    }
    if (forced > CLEAN * Math.abs(whole)) {
      tangled++;
    }
  }

  /** The corner of the given standing whose clipping makes the shortest new edge, or -1. */
  private int shortest(int start, boolean[] standing) {
    int best = -1;
    double bestLength = Double.POSITIVE_INFINITY;
    int i = start;
    do {
      if (standing[i]) {
        double length = distance2(prev[i], next[i]);
        if (length < bestLength || (length == bestLength && i < best)) {
          bestLength = length;
          best = i;
        }
      }
      i = next[i];
    } while (i != start);
    return best;
  }

  private boolean isEar(int b) {
    if (!convex[b]) {
      return false;
    }
    int a = prev[b];
    int c = next[b];
    for (int w = next[c]; w != a; w = next[w]) {
      if (!convex[w]
          && turn(a, b, w) >= 0
          && turn(b, c, w) >= 0
          && turn(c, a, w) >= 0
          && !samePlace(w, a)
          && !samePlace(w, b)
          && !samePlace(w, c)) {
        return false;
      }
    }
    return true;
  }

  private void judgeFlatness(double[] normal, int n, int before, double[] points) {
    double length = length(normal);
    double mx = Arrays.stream(x, 0, n).average().orElse(0);
    double my = Arrays.stream(y, 0, n).average().orElse(0);
    double mz = Arrays.stream(z, 0, n).average().orElse(0);
    double off = 0;
    double scale = 0;
    for (int i = 0; i < n; i++) {
      double height =
          (normal[0] * (x[i] - mx) + normal[1] * (y[i] - my) + normal[2] * (z[i] - mz)) / length;
      off = Math.max(off, Math.abs(height));
      scale = Math.max(scale, Math.max(Math.abs(x[i]), Math.max(Math.abs(y[i]), Math.abs(z[i]))));
    }
    if (off > FLAT * scale) {
      notFlat++;
      deviation = Math.max(deviation, off);
      flatArea += length / 2;
      for (int h = before; h < corner.size(); h += 3) {
        splitArea += area(points, corner.get(h), corner.get(h + 1), corner.get(h + 2));
      }
    }
  }

  private static double area(double[] p, int a, int b, int c) {
    double[] e = new double[6];
    for (int axis = 0; axis < 3; axis++) {
      e[axis] = p[3 * b + axis] - p[3 * a + axis];
      e[3 + axis] = p[3 * c + axis] - p[3 * a + axis];
    }
    return length(
            new double[] {
              e[1] * e[5] - e[2] * e[4], e[2] * e[3] - e[0] * e[5], e[0] * e[4] - e[1] * e[3]
            })
        / 2;
  }
}
