package org.seamwright.mend;

import java.util.BitSet;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Open edges of a mesh: those with one face. */
final class Borders {
  private Borders() {}

  /** Whether a half-edge lies on an open edge; faces that name a corner twice have no edges. */
  static boolean isOpen(Mesh mesh, Topology topology, int h) {
    return topology.twin(h) == Topology.OPEN && !Faults.collapsed(mesh, h / 3);
  }

  /** Vertices on open edges, ascending. */
  static int[] vertices(Mesh mesh, Topology topology) {
    BitSet on = new BitSet(mesh.vertexCount());
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      if (isOpen(mesh, topology, h)) {
        on.set(corner[h]);
        on.set(corner[Topology.next(h)]);
      }
    }
    return on.stream().toArray();
  }
}
