package org.seamwright.region;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Bridges over breaks of crease lines: where a worn edge or a scan leaves a crease out for a short
 * way, a fill would leak through.
 *
 * <p>A break is looked for from each end of a crease line, a vertex with one crease edge. The
 * shortest way over mesh edges from there to a crease that is not near along its own line becomes a
 * barrier, if it is no longer than a limit (E. W. Dijkstra, 1959). O(c log c) for the c edges
 * within the limit of an end.
 */
final class CreaseGaps {
  /** A place of its own line this many times as far along it as across is another place. */
  private static final double DETOUR = 3;

  private final Mesh mesh;
  private final int[] ring;
  private final boolean[] barrier;
  private final VertexFans fans;

  private CreaseGaps(Mesh mesh, int[] ring, boolean[] crease) {
    this.mesh = mesh;
    this.ring = ring;
    this.barrier = crease.clone();
    this.fans = VertexFans.of(mesh);
  }

  /**
   * Bridges the gaps.
   *
   * @param ring {@link org.seamwright.mesh.EdgeRings} of the piece
   * @param crease one entry per half-edge: whether its edge is a crease
   * @param limitMm longest bridge
   * @return one entry per half-edge: crease or bridge
   */
  static boolean[] bridged(Mesh mesh, int[] ring, boolean[] crease, double limitMm) {
    CreaseGaps gaps = new CreaseGaps(mesh, ring, crease);
    for (int v : gaps.ends(crease)) {
      gaps.bridge(v, crease, limitMm);
    }
    return gaps.barrier;
  }

  /** Vertices with exactly one crease edge, ascending. */
  private List<Integer> ends(boolean[] crease) {
    int[] edges = new int[mesh.vertexCount()];
    for (int h = 0; h < crease.length; h++) {
      if (crease[h] && isFirstOfRing(h)) {
        edges[mesh.corner()[h]]++;
        edges[mesh.corner()[Topology.next(h)]]++;
      }
    }
    for (int h = 0; h < ring.length; h++) {
      if (ring[h] == h) {
        // A crease may well end where the surface does.
        edges[mesh.corner()[h]] = 0;
        edges[mesh.corner()[Topology.next(h)]] = 0;
      }
    }
    List<Integer> ends = new ArrayList<>();
    for (int v = 0; v < edges.length; v++) {
      if (edges[v] == 1) {
        ends.add(v);
      }
    }
    return ends;
  }

  private boolean isFirstOfRing(int h) {
    for (int g = ring[h]; g != h; g = ring[g]) {
      if (g < h) {
        return false;
      }
    }
    return true;
  }

  /** Distance of a vertex and the half-edge it was reached by. */
  private record Reached(int vertex, double distanceMm, int by, int from) {}

  private void bridge(int end, boolean[] crease, double limitMm) {
    Map<Integer, Reached> own = reach(end, DETOUR * limitMm, crease, true);
    Map<Integer, Reached> all = reach(end, limitMm, crease, false);
    Reached best = null;
    for (Reached r : all.values()) {
      if (r.vertex() == end || !isOnCrease(r.vertex(), crease)) {
        continue;
      }
      Reached along = own.get(r.vertex());
      boolean isElsewhere = along == null || along.distanceMm() > DETOUR * r.distanceMm();
      if (isElsewhere
          && (best == null
              || r.distanceMm() < best.distanceMm()
              || (r.distanceMm() == best.distanceMm() && r.vertex() < best.vertex()))) {
        best = r;
      }
    }
    for (Reached r = best; r != null && r.by() >= 0; r = all.get(r.from())) {
      int h = r.by();
      do {
        barrier[h] = true;
        h = ring[h];
      } while (h != r.by());
    }
  }

  private boolean isOnCrease(int v, boolean[] crease) {
    for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
      int h = fans.halfEdge(i);
      if (crease[h] || crease[Topology.prev(h)]) {
        return true;
      }
    }
    return false;
  }

  /** Vertices within a distance over edges, or over crease edges alone. */
  private Map<Integer, Reached> reach(int start, double limitMm, boolean[] crease, boolean alone) {
    Map<Integer, Reached> done = new HashMap<>();
    PriorityQueue<Reached> queue =
        new PriorityQueue<>(
            (a, b) -> {
              int byDistance = Double.compare(a.distanceMm(), b.distanceMm());
              return byDistance != 0 ? byDistance : Integer.compare(a.vertex(), b.vertex());
            });
    queue.add(new Reached(start, 0, -1, -1));
    while (!queue.isEmpty()) {
      Reached next = queue.poll();
      if (done.putIfAbsent(next.vertex(), next) != null) {
        continue;
      }
      for (int i = fans.begin(next.vertex()); i < fans.begin(next.vertex() + 1); i++) {
        int out = fans.halfEdge(i);
        int in = Topology.prev(out);
        step(next, out, mesh.corner()[Topology.next(out)], limitMm, crease, alone, queue);
        step(next, in, mesh.corner()[in], limitMm, crease, alone, queue);
      }
    }
    return done;
  }

  private void step(
      Reached at,
      int h,
      int to,
      double limitMm,
      boolean[] crease,
      boolean alone,
      PriorityQueue<Reached> queue) {
    double far = at.distanceMm() + Faces.length(mesh, at.vertex(), to);
    if (far <= limitMm && (!alone || crease[h])) {
      queue.add(new Reached(to, far, h, at.vertex()));
    }
  }
}
