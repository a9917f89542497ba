package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Short ways along edges that cut a sheet with holes open to a disc, and reach the corners where
 * the surface is pointed, such as a box's: there a slit takes all the stretch away.
 *
 * <p>Each hole, then each corner, is joined to what is already cut by a shortest way (E. W.
 * Dijkstra, 1959). O(k n log n) for k ways.
 */
final class Slits {
  /** Curvature of a corner worth a slit, radians: left alone it stretches film by several %. */
  private static final double POINTED = 0.2;

  /** A corner's neighbours have at most this share of its curvature; else all of it is curved. */
  private static final double APART = 0.3;

  /** More corners than this are a rough surface, not a piece with corners. */
  private static final int MOST_CORNERS = 24;

  private final Mesh mesh;
  private final Topology topology;
  private final boolean[] cut;
  private final boolean[] onCut;
  private final int[][] around;

  private Slits(Mesh mesh, Topology topology) {
    this.mesh = mesh;
    this.topology = topology;
    this.cut = new boolean[mesh.corner().length];
    this.onCut = new boolean[mesh.vertexCount()];
    this.around = outgoing(mesh);
  }

  /**
   * Finds the slits.
   *
   * @param loops boundary of the sheet, as {@link Sheets#loops} gives it, at least one
   * @param curvature one entry per vertex, radians; 0 on the boundary
   * @return one entry per half-edge, set on both sides of a slit
   */
  static boolean[] of(Mesh mesh, Topology topology, List<int[]> loops, double[] curvature) {
    Slits slits = new Slits(mesh, topology);
    slits.reach(loops.get(0));
    boolean[] wanted = new boolean[mesh.vertexCount()];
    for (int[] loop : loops.subList(1, loops.size())) {
      for (int h : loop) {
        wanted[mesh.corner()[h]] = true;
      }
    }
    List<int[]> left = new ArrayList<>(loops.subList(1, loops.size()));
    while (!left.isEmpty()) {
      int end = slits.cutTo(wanted);
      if (end < 0) {
        break;
      }
      for (int i = 0; i < left.size(); i++) {
        if (contains(mesh, left.get(i), end)) {
          int[] loop = left.remove(i);
          for (int h : loop) {
            wanted[mesh.corner()[h]] = false;
          }
          slits.reach(loop);
          break;
        }
      }
    }
    Arrays.fill(wanted, false);
    int[] corners = slits.corners(curvature);
    for (int v : corners) {
      wanted[v] = !slits.onCut[v];
    }
    for (int i = 0; i < corners.length; i++) {
      int end = slits.cutTo(wanted);
      if (end < 0) {
        break;
      }
      for (int v : corners) {
        wanted[v] &= !slits.onCut[v];
      }
    }
    return slits.cut;
  }

  private static boolean contains(Mesh mesh, int[] loop, int vertex) {
    for (int h : loop) {
      if (mesh.corner()[h] == vertex) {
        return true;
      }
    }
    return false;
  }

  private void reach(int[] loop) {
    for (int h : loop) {
      onCut[mesh.corner()[h]] = true;
    }
  }

  /** Pointed vertices inside, none if there are too many. */
  private int[] corners(double[] curvature) {
    double[] most = new double[curvature.length];
    for (int h = 0; h < mesh.corner().length; h++) {
      int a = mesh.corner()[h];
      int b = mesh.corner()[Topology.next(h)];
      most[a] = Math.max(most[a], Math.abs(curvature[b]));
      most[b] = Math.max(most[b], Math.abs(curvature[a]));
    }
    int[] found = new int[curvature.length];
    int count = 0;
    for (int v = 0; v < curvature.length; v++) {
      double own = Math.abs(curvature[v]);
      if (own > POINTED && most[v] <= APART * own) {
        found[count++] = v;
      }
    }
    return count > MOST_CORNERS ? new int[0] : Arrays.copyOf(found, count);
  }

  /** A place on the way: vertex, length so far, half-edge it was reached by. */
  private record Step(double length, int vertex) {}

  /** Cuts along the shortest way from the cut to a wanted vertex; gives that vertex or −1. */
  private int cutTo(boolean[] wanted) {
    double[] far = new double[mesh.vertexCount()];
    int[] by = new int[mesh.vertexCount()];
    Arrays.fill(far, Double.POSITIVE_INFINITY);
    Arrays.fill(by, -1);
    PriorityQueue<Step> queue =
        new PriorityQueue<>(
            Comparator.comparingDouble(Step::length).thenComparingInt(Step::vertex));
    for (int v = 0; v < far.length; v++) {
      if (onCut[v]) {
        far[v] = 0;
        queue.add(new Step(0, v));
      }
    }
    while (!queue.isEmpty()) {
      Step step = queue.poll();
      int v = step.vertex();
      if (step.length() > far[v]) {
        continue;
      }
      if (wanted[v] && by[v] >= 0) {
        cutBack(v, by);
        return v;
      }
      for (int h : around[v]) {
        relax(h, v, far, by, queue);
      }
    }
    return -1;
  }

  private void relax(int h, int v, double[] far, int[] by, PriorityQueue<Step> queue) {
    if (topology.twin(h) < 0) {
      return;
    }
    int to = mesh.corner()[h] == v ? mesh.corner()[Topology.next(h)] : mesh.corner()[h];
    double length = far[v] + Faces.length(mesh, v, to);
    if (length < far[to]) {
      far[to] = length;
      by[to] = h;
      queue.add(new Step(length, to));
    }
  }

  private void cutBack(int end, int[] by) {
    int v = end;
    while (by[v] >= 0) {
      int h = by[v];
      cut[h] = true;
      cut[topology.twin(h)] = true;
      onCut[v] = true;
      v = mesh.corner()[h] == v ? mesh.corner()[Topology.next(h)] : mesh.corner()[h];
    }
  }

  /** Half-edges that start or end at each vertex, one per edge and side. */
  private static int[][] outgoing(Mesh mesh) {
    int[] corner = mesh.corner();
    int[] count = new int[mesh.vertexCount()];
    for (int v : corner) {
      count[v]++;
    }
    int[][] out = new int[count.length][];
    for (int v = 0; v < count.length; v++) {
      out[v] = new int[count[v]];
    }
    for (int h = corner.length - 1; h >= 0; h--) {
      out[corner[h]][--count[corner[h]]] = h;
    }
    return out;
  }
}
