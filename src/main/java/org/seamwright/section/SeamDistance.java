package org.seamwright.section;

import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Distance from seams over the plated faces of a mesh: ways lead over nothing else.
 *
 * @param mesh the piece with seams along edges
 * @param topology of the mesh
 * @param fans of the mesh
 * @param section one entry per face
 * @param first lowest section number; faces with a lower one are not plated
 */
record SeamDistance(Mesh mesh, Topology topology, VertexFans fans, int[] section, int first) {
  /** Prepares a mesh. */
  static SeamDistance of(Mesh mesh, Topology topology, int[] section, int first) {
    return new SeamDistance(mesh, topology, VertexFans.of(mesh), section, first);
  }

  /**
   * Distance from edges.
   *
   * @param halfEdges one half-edge of each
   * @param widthMm how far
   * @return one entry per vertex, mm: known at all corners of faces with a corner nearer than the
   *     width, else infinite
   */
  double[] from(int[] halfEdges, double widthMm, Progress progress) {
    return SurfaceDistance.toCutAt(
        mesh,
        topology,
        fans,
        Sources.edges(halfEdges),
        widthMm,
        f -> section[f] >= first,
        progress);
  }
}
