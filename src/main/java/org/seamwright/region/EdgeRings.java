package org.seamwright.region;

import java.util.HashMap;
import java.util.Map;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Links the half-edges of each edge in a ring: one member at a boundary, two inside, or more. */
public final class EdgeRings {
  private EdgeRings() {}

  /** One entry per half-edge: the next one on the same edge, itself if it is alone. */
  public static int[] of(Mesh mesh, Topology topology) {
    int[] corner = mesh.corner();
    int[] ring = new int[corner.length];
    for (int h = 0; h < ring.length; h++) {
      ring[h] = topology.twin(h) >= 0 ? topology.twin(h) : h;
    }
    if (topology.branchingEdges() == 0) {
      return ring;
    }
    Map<Long, Integer> first = new HashMap<>();
    for (int h = 0; h < ring.length; h++) {
      if (topology.twin(h) == Topology.BRANCHING) {
        int a = corner[h];
        int b = corner[Topology.next(h)];
        Integer head = first.putIfAbsent((long) Math.min(a, b) << 32 | Math.max(a, b), h);
        if (head != null) {
          ring[h] = ring[head];
          ring[head] = h;
        }
      }
    }
    return ring;
  }
}
