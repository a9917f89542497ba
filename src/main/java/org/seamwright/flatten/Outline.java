package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.InteriorPointArea;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Outlines from the rims of a layout: points that a straight line replaces within {@link
 * #WITHIN_MM} are dropped, corners and ends of seams kept (D. Douglas and T. Peucker, 1973); at
 * seams the outline is moved outwards by the allowance.
 */
final class Outline {
  /** A knife blade is thicker. */
  static final double WITHIN_MM = 0.02;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final List<Rim> rims;
  private int leftOut;

  Outline(List<Rim> rims) {
    this.rims = rims;
  }

  /** Seams whose allowance would run over the film itself. */
  int leftOut() {
    return leftOut;
  }

  /** Loops of the piece itself, the outer one first. */
  List<double[]> net() {
    List<double[]> simple = rims.stream().map(Outline::simplified).toList();
    return polygon(simple).isValid() ? simple : rims.stream().map(r -> r.point().clone()).toList();
  }

  /**
   * Loops to cut: with the allowance beyond seams with pieces of a lower number, which this film is
   * laid over.
   */
  List<double[]> cut(List<double[]> net, int piece, double allowanceMm) {
    Polygon film = polygon(net);
    if (!(allowanceMm > 0)) {
      return net;
    }
    BufferParameters flat = new BufferParameters();
    flat.setSingleSided(true);
    flat.setJoinStyle(BufferParameters.JOIN_MITRE);
    for (Rim rim : rims) {
      for (int[] run : runs(rim)) {
        int beyond = rim.beyond()[run[0]];
        if (beyond < 0 || beyond > piece) {
          continue;
        }
        Geometry line = FACTORY.createLineString(coordinates(simplified(rim, run)));
        if (line.getLength() < allowanceMm) {
          // It would be a spike; the neighbours' bands cover the place.
          continue;
        }
        Geometry wider = film.union(BufferOp.bufferOp(line, -allowanceMm, flat));
        if (wider instanceof Polygon one && one.getNumInteriorRing() <= film.getNumInteriorRing()) {
          film = one;
        } else {
          leftOut++;
        }
      }
    }
    return loops(film);
  }

  private static Polygon polygon(List<double[]> loops) {
    LinearRing shell = ring(loops.get(0));
    LinearRing[] holes =
        loops.subList(1, loops.size()).stream().map(Outline::ring).toArray(LinearRing[]::new);
    return FACTORY.createPolygon(shell, holes);
  }

  private static LinearRing ring(double[] loop) {
    Coordinate[] open = coordinates(loop);
    Coordinate[] closed = Arrays.copyOf(open, open.length + 1);
    closed[open.length] = new Coordinate(open[0]);
    return FACTORY.createLinearRing(closed);
  }

  private static Coordinate[] coordinates(double[] xy) {
    Coordinate[] out = new Coordinate[xy.length / 2];
    for (int i = 0; i < out.length; i++) {
      out[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
    }
    return out;
  }

  private static List<double[]> loops(Polygon film) {
    List<double[]> loops = new ArrayList<>();
    loops.add(loop(film.getExteriorRing(), true));
    for (int i = 0; i < film.getNumInteriorRing(); i++) {
      loops.add(loop(film.getInteriorRingN(i), false));
    }
    return loops;
  }

  /** Points of a ring, the outer one counter-clockwise, the holes clockwise. */
  private static double[] loop(LinearRing ring, boolean outer) {
    Coordinate[] c = ring.getCoordinates();
    boolean reverse = Orientation.isCCW(c) != outer;
    double[] out = new double[2 * (c.length - 1)];
    for (int i = 0; i + 1 < c.length; i++) {
      Coordinate p = reverse ? c[c.length - 1 - i] : c[i];
      out[2 * i] = p.x;
      out[2 * i + 1] = p.y;
    }
    return out;
  }

  /**
   * Stretches of a rim with the same thing beyond: first edge and number of edges. One stretch that
   * starts at edge 0 if it is the same all round.
   */
  static List<int[]> runs(Rim rim) {
    int n = rim.size();
    int start = 0;
    while (start < n && rim.beyond()[start] == rim.beyond()[(start + n - 1) % n]) {
      start++;
    }
    if (start == n) {
      return List.of(new int[] {0, n});
    }
    List<int[]> runs = new ArrayList<>();
    int from = start;
    for (int i = start + 1; i <= start + n; i++) {
      if (i == start + n || rim.beyond()[i % n] != rim.beyond()[from % n]) {
        runs.add(new int[] {from % n, i - from});
        from = i;
      }
    }
    return runs;
  }

  private static double[] simplified(Rim rim) {
    List<double[]> parts = new ArrayList<>();
    int length = 0;
    for (int[] run : runs(rim)) {
      double[] part = simplified(rim, run);
      // The last point is the next stretch's first.
      double[] open = Arrays.copyOf(part, part.length - 2);
      parts.add(open);
      length += open.length;
    }
    if (length < 6) {
      return rim.point().clone();
    }
    double[] all = new double[length];
    int at = 0;
    for (double[] part : parts) {
      System.arraycopy(part, 0, all, at, part.length);
      at += part.length;
    }
    return all;
  }

  /** The points of a stretch that must stay, its ends among them. */
  private static double[] simplified(Rim rim, int[] run) {
    int n = run[1] + 1;
    double[] xy = new double[2 * n];
    for (int i = 0; i < n; i++) {
      int k = (run[0] + i) % rim.size();
      xy[2 * i] = rim.point()[2 * k];
      xy[2 * i + 1] = rim.point()[2 * k + 1];
    }
    boolean[] keep = new boolean[n];
    keep[0] = true;
    keep[n - 1] = true;
    keepBetween(xy, 0, n - 1, keep);
    double[] out = new double[2 * n];
    int count = 0;
    for (int i = 0; i < n; i++) {
      if (keep[i]) {
        out[count++] = xy[2 * i];
        out[count++] = xy[2 * i + 1];
      }
    }
    return Arrays.copyOf(out, count);
  }

  private static void keepBetween(double[] xy, int first, int last, boolean[] keep) {
    List<int[]> open = new ArrayList<>();
    open.add(new int[] {first, last});
    while (!open.isEmpty()) {
      int[] range = open.remove(open.size() - 1);
      int farthest = -1;
      double most = WITHIN_MM;
      for (int i = range[0] + 1; i < range[1]; i++) {
        double far = distance(xy, i, range[0], range[1]);
        if (far > most) {
          most = far;
          farthest = i;
        }
      }
      if (farthest >= 0) {
        keep[farthest] = true;
        open.add(new int[] {range[0], farthest});
        open.add(new int[] {farthest, range[1]});
      }
    }
  }

  /** Distance of a point from the line between two others, mm. */
  private static double distance(double[] xy, int i, int a, int b) {
    double dx = xy[2 * b] - xy[2 * a];
    double dy = xy[2 * b + 1] - xy[2 * a + 1];
    double px = xy[2 * i] - xy[2 * a];
    double py = xy[2 * i + 1] - xy[2 * a + 1];
    double square = dx * dx + dy * dy;
    double t = square > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / square)) : 0;
    return Math.hypot(px - t * dx, py - t * dy);
  }

  /** Diameter of the largest circle that fits into the film, mm. */
  static double widestMm(List<double[]> loops) {
    return 2 * new MaximumInscribedCircle(polygon(loops), WITHIN_MM).getRadiusLine().getLength();
  }

  /** A point well inside the film, x and y. */
  static double[] inside(List<double[]> loops) {
    Coordinate at = InteriorPointArea.getInteriorPoint(polygon(loops));
    return new double[] {at.x, at.y};
  }
}
