package org.seamwright.region;

import java.util.Arrays;
import java.util.Optional;
import java.util.PriorityQueue;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Looks for the faces that a short way between two vertices crosses: Dijkstra's algorithm over
 * points spread on the edges, more of them on edges that are long for the piece of surface in
 * question. The way found is longer than the shortest by the spacing of the points, and is there to
 * be pulled tight.
 */
final class FaceSearch {
  /** Points per length of the patch's diagonal, and the most on one edge. */
  private static final int DENSITY = 8;

  private static final int MOST_POINTS = 16;

  private final Mesh mesh;
  private final Patch patch;
  private final int[] ring;
  private final int start;
  private final int end;

  /** One entry per half-edge and one more: number of its first point. */
  private final int[] first;

  /** One entry per point: the half-edge that it enters a face over. */
  private final int[] owner;

  private final double[] cost;
  private final int[] before;
  private final PriorityQueue<Step> queue = new PriorityQueue<>();

  private record Step(double cost, int point) implements Comparable<Step> {
    @Override
    public int compareTo(Step other) {
      int order = Double.compare(cost, other.cost);
      return order != 0 ? order : Integer.compare(point, other.point);
    }
  }

  FaceSearch(Patch patch, int[] ring, int start, int end) {
    this.patch = patch;
    this.mesh = patch.mesh();
    this.ring = ring;
    this.start = start;
    this.end = end;
    Bounds bounds = mesh.bounds();
    first = new int[ring.length + 1];
    for (int h = 0; h < ring.length; h++) {
      double share = length(h) / bounds.diagonal();
      first[h + 1] = first[h] + (int) Math.max(1, Math.min(MOST_POINTS, DENSITY * share));
    }
    owner = new int[first[ring.length]];
    for (int h = 0; h < ring.length; h++) {
      Arrays.fill(owner, first[h], first[h + 1], h);
    }
    cost = new double[owner.length];
    before = new int[owner.length];
    Arrays.fill(cost, Double.POSITIVE_INFINITY);
    Arrays.fill(before, -1);
  }

  /**
   * Half-edges over which faces are entered, from a face at the start to one at the end; none if an
   * edge joins the two.
   */
  Optional<int[]> entries() {
    int[] c = mesh.corner();
    double[] from = {mesh.x(start), mesh.y(start), mesh.z(start)};
    double[] at = new double[3];
    for (int i = patch.fans().begin(start); i < patch.fans().begin(start + 1); i++) {
      int h = patch.fans().halfEdge(i);
      if (c[Topology.next(h)] == end || c[Topology.prev(h)] == end) {
        return Optional.of(new int[0]);
      }
      cross(Topology.next(h), from, 0, -1);
    }
    int last = -1;
    double least = Double.POSITIVE_INFINITY;
    while (!queue.isEmpty() && queue.peek().cost() < least) {
      Step step = queue.remove();
      int point = step.point();
      if (step.cost() > cost[point]) {
        continue;
      }
      int g = owner[point];
      place(point, at);
      if (c[Topology.prev(g)] == end) {
        double total = step.cost() + distanceToEnd(at);
        last = total < least ? point : last;
        least = Math.min(total, least);
        continue;
      }
      cross(Topology.next(g), at, step.cost(), point);
      cross(Topology.prev(g), at, step.cost(), point);
    }
    return last < 0 ? Optional.empty() : Optional.of(back(last));
  }

  private double distanceToEnd(double[] at) {
    double dx = at[0] - mesh.x(end);
    double dy = at[1] - mesh.y(end);
    double dz = at[2] - mesh.z(end);
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** Goes from a place to the points of an edge and over it. */
  private void cross(int h, double[] from, double reached, int origin) {
    double[] at = new double[3];
    for (int g = ring[h]; g != h; g = ring[g]) {
      for (int point = first[g]; point < first[g + 1]; point++) {
        place(point, at);
        double dx = at[0] - from[0];
        double dy = at[1] - from[1];
        double dz = at[2] - from[2];
        double total = reached + Math.sqrt(dx * dx + dy * dy + dz * dz);
        if (total < cost[point]) {
          cost[point] = total;
          before[point] = origin;
          queue.add(new Step(total, point));
        }
      }
    }
  }

  private void place(int point, double[] into) {
    int h = owner[point];
    double share = (point - first[h] + 0.5) / (first[h + 1] - first[h]);
    int a = mesh.corner()[h];
    int b = mesh.corner()[Topology.next(h)];
    for (int axis = 0; axis < 3; axis++) {
      double p = mesh.xyz()[3 * a + axis];
      into[axis] = p + share * (mesh.xyz()[3 * b + axis] - p);
    }
  }

  private double length(int h) {
    return Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
  }

  private int[] back(int last) {
    int count = 0;
    for (int p = last; p >= 0; p = before[p]) {
      count++;
    }
    int[] entries = new int[count];
    for (int p = last; p >= 0; p = before[p]) {
      entries[--count] = owner[p];
    }
    return entries;
  }
}
