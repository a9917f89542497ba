package org.seamwright.geodesic;

import java.util.Arrays;

/**
 * What is known of the wavefront at each vertex it has reached: when it arrives, which way it goes
 * there, and in the plane of which face. Costs nothing for vertices that it does not reach.
 */
final class Arrivals {
  /** Share of its way by which a settled vertex must be bettered to be taken up again. */
  private static final double GAIN = 1e-7;

  /** Share of its way by which a seed must be bettered: it is exact unless a way bends. */
  private static final double SEED_GAIN = 1e-5;

  /** Arrivals looked back through for a circle: some five generations. */
  private static final int PAST = 64;

  /** Stands for no vertex where an arrival is known from the source itself. */
  static final int SEED = -1;

  /** How often a vertex may be settled: never reached but by rounding that goes in circles. */
  static final int MOST_TIMES = 60;

  /** One entry per vertex: distance in mm, infinite where not reached. */
  final double[] distance;

  /** Six per vertex: unit direction of travel, all zero on a source; unit normal of its face. */
  final float[] ray;

  /** One entry per reached vertex: a vertex whose arrival its own follows from, -1 for a seed. */
  final int[] via;

  /** One entry per reached vertex: the other end where it was reached across an edge, else -1. */
  final int[] viaToo;

  /** One entry per vertex: how often it was settled, as far as a byte counts. */
  final byte[] settled;

  private final int[] past = new int[PAST];
  final VertexHeap heap;
  private boolean sown;

  Arrivals(int vertices) {
    distance = new double[vertices];
    Arrays.fill(distance, Double.POSITIVE_INFINITY);
    ray = new float[6 * vertices];
    via = new int[vertices];
    viaToo = new int[vertices];
    settled = new byte[vertices];
    heap = new VertexHeap(vertices);
  }

  /** Says that all seeds are set: from now on they hold unless clearly bettered. */
  void sown() {
    sown = true;
  }

  /** Whether an arrival would count. */
  boolean betters(int v, double d) {
    double known = distance[v];
    if (sown && via[v] == SEED && known < Double.POSITIVE_INFINITY) {
      return d < known - SEED_GAIN * known;
    }
    return d < known && (!heap.taken(v) || (d < known - GAIN * known && settled[v] < MOST_TIMES));
  }

  /** Whether an arrival is later than the known one by enough to count. */
  boolean worsens(int v, double d) {
    return d > distance[v] + GAIN * distance[v] && settled[v] < MOST_TIMES;
  }

  /**
   * Whether the arrival at a vertex that was settled before may follow from two others: not if
   * theirs follow from its own, near by, or they would lower one another without end.
   *
   * @param b the second, or -1
   */
  boolean mayFollow(int v, int a, int b) {
    if (settled[v] == 0) {
      return true;
    }
    int count = 0;
    past[count++] = a;
    if (b >= 0) {
      past[count++] = b;
    }
    for (int i = 0; i < count; i++) {
      int u = past[i];
      if (u == v) {
        return false;
      }
      if (count + 2 <= PAST && via[u] >= 0) {
        past[count++] = via[u];
        if (viaToo[u] >= 0) {
          past[count++] = viaToo[u];
        }
      }
    }
    return true;
  }

  /** Whether the arrival at a vertex came across an edge. */
  boolean cameAcross(int v, int a, int b) {
    return (via[v] == a && viaToo[v] == b) || (via[v] == b && viaToo[v] == a);
  }

  /** Takes the vertex whose arrival is next. */
  int settleNext() {
    int v = heap.take();
    if (settled[v] < MOST_TIMES) {
      settled[v]++;
    }
    return v;
  }

  /** Takes an arrival over. */
  void set(
      int v,
      double d,
      double gx,
      double gy,
      double gz,
      double nx,
      double ny,
      double nz,
      int from,
      int fromToo) {
    distance[v] = d;
    via[v] = from;
    viaToo[v] = fromToo;
    int at = 6 * v;
    ray[at] = (float) gx;
    ray[at + 1] = (float) gy;
    ray[at + 2] = (float) gz;
    ray[at + 3] = (float) nx;
    ray[at + 4] = (float) ny;
    ray[at + 5] = (float) nz;
    heap.put(v, d);
  }
}
