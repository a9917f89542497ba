package org.seamwright.mesh;

import java.util.Arrays;

/**
 * Steps from half-edge to half-edge around an edge, branching edges included: doubled faces, and
 * three walls that meet along a line, are neighbours too.
 *
 * <p>Cost: nothing for edges of two faces; O(b log b) to build for b branching half-edges.
 */
public final class EdgeRings {
  private final Topology topology;

  /** Branching half-edges, ascending. */
  private final int[] branching;

  /** One entry per entry of {@code branching}: the half-edge after it around its edge. */
  private final int[] after;

  private EdgeRings(Topology topology, int[] branching, int[] after) {
    this.topology = topology;
    this.branching = branching;
    this.after = after;
  }

  /** Links the branching edges of a mesh. */
  public static EdgeRings of(Mesh mesh, Topology topology) {
    int[] corner = mesh.corner();
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      if (topology.twin(h) == Topology.BRANCHING) {
        count++;
      }
    }
    int[] branching = new int[count];
    int at = 0;
    for (int h = 0; h < corner.length && at < count; h++) {
      if (topology.twin(h) == Topology.BRANCHING) {
        branching[at++] = h;
      }
    }
    return new EdgeRings(topology, branching, link(corner, branching));
  }

  /** The topology that the rings belong to. */
  public Topology topology() {
    return topology;
  }

  private static int[] link(int[] corner, int[] branching) {
    Integer[] order = new Integer[branching.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(
        order,
        (i, j) -> {
          int byEdge = Long.compare(key(corner, branching[i]), key(corner, branching[j]));
          return byEdge != 0 ? byEdge : Integer.compare(i, j);
        });
    int[] after = new int[branching.length];
    int begin = 0;
    while (begin < order.length) {
      int end = begin + 1;
      while (end < order.length
          && key(corner, branching[order[end]]) == key(corner, branching[order[begin]])) {
        end++;
      }
      for (int i = begin; i < end; i++) {
        after[order[i]] = branching[order[i + 1 < end ? i + 1 : begin]];
      }
      begin = end;
    }
    return after;
  }

  private static long key(int[] corner, int h) {
    int a = corner[h];
    int b = corner[Topology.next(h)];
    return (long) Math.min(a, b) << 32 | Math.max(a, b);
  }

  /** The half-edge after h around its edge; h itself where its face is alone there. */
  public int next(int h) {
    int twin = topology.twin(h);
    if (twin >= 0) {
      return twin;
    }
    return twin == Topology.OPEN ? h : after[Arrays.binarySearch(branching, h)];
  }

  /** One entry per half-edge: {@link #next} of it, for loops over all of them. */
  public int[] toArray() {
    int[] ring = topology.twins();
    for (int h = 0; h < ring.length; h++) {
      if (ring[h] == Topology.OPEN) {
        ring[h] = h;
      }
    }
    for (int i = 0; i < branching.length; i++) {
      ring[branching[i]] = after[i];
    }
    return ring;
  }
}
