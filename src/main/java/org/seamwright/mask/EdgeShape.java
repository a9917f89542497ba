package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How a line bends within the surface, which is what tape along it must follow: places at even
 * steps with the radius of the bend, split where the line turns a corner.
 *
 * <p>Sideways bending is geodesic curvature (do Carmo, Differential Geometry of Curves and
 * Surfaces, 4-4): the line is looked at along the normal of the bare side, and the circle through
 * three places of it, {@value #WINDOW_MM} mm apart or twice the usual side of the polyline if that
 * is more, has the radius of the bend; the error falls with the square of that distance. A turn of
 * {@value #CORNER_DEGREES}° and more within {@value #SHARP_MM} mm is a corner, for which tape is
 * cut.
 *
 * @param stretches smooth stretches in order along the line
 * @param startsMm where along the line each stretch begins, from its first point
 * @param closed whether the line runs back into itself without a corner: then there is one stretch
 * @param stepMm distance of neighbouring places
 */
record EdgeShape(List<double[]> stretches, List<Double> startsMm, boolean closed, double stepMm) {
  /** Half of the length over which a bend is measured: finer wiggles tape does not follow. */
  static final double WINDOW_MM = 3;

  /** Corners are looked for over this distance. */
  static final double SHARP_MM = 1;

  /** A circle of radius 1.43 mm turns so far in a millimetre: no tape follows it. */
  static final double CORNER_DEGREES = 40;

  /** A bend so wide is one of rounding alone. */
  private static final double STRAIGHT_MM = 1e6;

  private static final double STEP_MM = 0.5;

  /** A line as long as a rim's edge several times over. */
  private static final int MOST_PLACES = 40_000;

  /**
   * Takes a line's shape.
   *
   * @param edge with normals; without them the line is taken as it is in space
   */
  static EdgeShape of(MaskEdge edge) {
    Walk walk = new Walk(edge);
    int n =
        (int)
            Math.max(
                edge.closed() ? 8 : 2, Math.min(MOST_PLACES, Math.round(walk.lengthMm / STEP_MM)));
    double step = walk.lengthMm / (edge.closed() ? n : n - 1);
    double[] points = new double[3 * n];
    double[] normals = new double[3 * n];
    for (int i = 0; i < n; i++) {
      walk.to(i * step, points, normals, 3 * i);
    }
    Places places = new Places(points, normals, edge.closed());
    List<Integer> corners = places.corners((int) Math.max(1, Math.round(SHARP_MM / step)));
    List<double[]> stretches = new ArrayList<>();
    List<Double> starts = new ArrayList<>();
    // Over less than a side or two a polyline is straight here and far too sharp there.
    double reach = Math.max(WINDOW_MM, 2 * walk.usualSide());
    int window = (int) Math.max(1, Math.round(reach / step));
    if (edge.closed() && corners.isEmpty()) {
      stretches.add(places.radii(0, n, window, true));
      starts.add(0.0);
    } else {
      List<Integer> ends = new ArrayList<>(corners);
      if (edge.closed()) {
        ends.add(corners.get(0) + n);
      } else {
        ends.add(0, 0);
        ends.add(n - 1);
      }
      for (int k = 0; k + 1 < ends.size(); k++) {
        if (ends.get(k + 1) > ends.get(k)) {
          stretches.add(places.radii(ends.get(k), ends.get(k + 1) + 1, window, false));
          starts.add(ends.get(k) * step);
        }
      }
    }
    return new EdgeShape(stretches, starts, edge.closed() && corners.isEmpty(), step);
  }

  /** Tightest bend of all, mm; infinite for straight lines. */
  double tightestMm() {
    double least = Double.POSITIVE_INFINITY;
    for (double[] stretch : stretches) {
      for (double radius : stretch) {
        least = Math.min(least, radius);
      }
    }
    return least;
  }

  /** Corners that tape is cut for. */
  int corners() {
    return closed ? 0 : stretches.size() - 1;
  }

  /** A place that moves along a polyline. */
  private static final class Walk {
    private final MaskEdge edge;
    private final int sides;
    private final double[] start;
    final double lengthMm;
    private int side;

    Walk(MaskEdge edge) {
      this.edge = edge;
      int points = edge.points().length / 3;
      sides = edge.closed() ? points : points - 1;
      start = new double[sides + 1];
      for (int i = 0; i < sides; i++) {
        start[i + 1] = start[i] + distance(edge.points(), i, (i + 1) % points);
      }
      lengthMm = start[sides];
    }

    private static double distance(double[] p, int a, int b) {
      double dx = p[3 * b] - p[3 * a];
      double dy = p[3 * b + 1] - p[3 * a + 1];
      double dz = p[3 * b + 2] - p[3 * a + 2];
      return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    /** Median length of a side. */
    double usualSide() {
      double[] length = new double[sides];
      for (int i = 0; i < sides; i++) {
        length[i] = start[i + 1] - start[i];
      }
      Arrays.sort(length);
      return length[sides / 2];
    }

    /** Writes the place and normal at a length, which must not be less than the one before. */
    void to(double at, double[] points, double[] normals, int into) {
      while (side < sides - 1 && start[side + 1] < at) {
        side++;
      }
      int a = side;
      int b = (side + 1) % (edge.points().length / 3);
      double width = start[side + 1] - start[side];
      double share = width > 0 ? Math.min(1, Math.max(0, (at - start[side]) / width)) : 0;
      mix(edge.points(), a, b, share, points, into);
      if (edge.normals().length > 0) {
        mix(edge.normals(), a, b, share, normals, into);
      }
    }

    private static void mix(double[] from, int a, int b, double share, double[] to, int into) {
      for (int axis = 0; axis < 3; axis++) {
        to[into + axis] = (1 - share) * from[3 * a + axis] + share * from[3 * b + axis];
      }
    }
  }

  /** Even places along a line. */
  private record Places(double[] points, double[] normals, boolean closed) {
    private int count() {
      return points.length / 3;
    }

    /** Places where the line turns sharply, each the sharpest within its surroundings. */
    List<Integer> corners(int reach) {
      int n = count();
      double[] turn = new double[n];
      for (int i = 0; i < n; i++) {
        boolean inside = closed || (i >= reach && i + reach < n);
        turn[i] = inside ? turnDegrees(i - reach, i, i + reach) : 0;
      }
      List<Integer> corners = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        boolean sharpest = turn[i] >= CORNER_DEGREES;
        for (int d = 1; d <= 2 * reach && sharpest; d++) {
          // Of equals the first is taken.
          sharpest = turn[i] > other(turn, i - d) && turn[i] >= other(turn, i + d);
        }
        if (sharpest) {
          corners.add(i);
        }
      }
      return corners;
    }

    private double other(double[] turn, int i) {
      int n = turn.length;
      return closed ? turn[Math.floorMod(i, n)] : i < 0 || i >= n ? -1 : turn[i];
    }

    /**
     * Radius of the bend at places {@code from} to before {@code to}, as one smooth stretch.
     *
     * @param round whether the stretch is a whole closed line
     */
    double[] radii(int from, int to, int window, boolean round) {
      double[] radius = new double[to - from];
      int reach = round ? Math.min(window, count() / 4) : Math.min(window, (to - from - 1) / 2);
      for (int i = from; i < to; i++) {
        // Near an end the nearest whole window counts.
        int middle = round ? i : Math.max(from + reach, Math.min(to - 1 - reach, i));
        radius[i - from] =
            reach < 1 ? Double.POSITIVE_INFINITY : radius(middle - reach, middle, middle + reach);
      }
      return radius;
    }

    /** The line from one place to another, looked at along the normal of a third. */
    private double[] seen(int from, int to, int along) {
      int n = count();
      int a = Math.floorMod(from, n);
      int b = Math.floorMod(to, n);
      int m = Math.floorMod(along, n);
      double[] d = new double[3];
      double dot = 0;
      double square = 0;
      for (int axis = 0; axis < 3; axis++) {
        d[axis] = points[3 * b + axis] - points[3 * a + axis];
        dot += d[axis] * normals[3 * m + axis];
        square += normals[3 * m + axis] * normals[3 * m + axis];
      }
      for (int axis = 0; axis < 3 && square > 0; axis++) {
        d[axis] -= dot / square * normals[3 * m + axis];
      }
      return d;
    }

    private double turnDegrees(int before, int at, int after) {
      double[] u = seen(before, at, at);
      double[] v = seen(at, after, at);
      return Math.toDegrees(Math.atan2(cross(u, v), dot(u, v)));
    }

    /** Radius of the circle through three places: abc / (4 · area). */
    private double radius(int before, int at, int after) {
      double[] u = seen(before, at, at);
      double[] v = seen(at, after, at);
      double[] w = seen(before, after, at);
      double twiceArea = cross(u, v);
      double product = Math.sqrt(dot(u, u) * dot(v, v) * dot(w, w));
      double radius = twiceArea > 0 ? product / (2 * twiceArea) : Double.POSITIVE_INFINITY;
      return radius < STRAIGHT_MM ? radius : Double.POSITIVE_INFINITY;
    }

    private static double dot(double[] u, double[] v) {
      return u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    }

    private static double cross(double[] u, double[] v) {
      double x = u[1] * v[2] - u[2] * v[1];
      double y = u[2] * v[0] - u[0] * v[2];
      double z = u[0] * v[1] - u[1] * v[0];
      return Math.sqrt(x * x + y * y + z * z);
    }
  }
}
