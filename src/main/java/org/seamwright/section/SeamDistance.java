package org.seamwright.section;

import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Faces;
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
 * @param reachMm one entry per vertex: its longest edge on a plated face, 0 where it has none
 */
record SeamDistance(
    Mesh mesh, Topology topology, VertexFans fans, int[] section, int first, double[] reachMm) {
  /** The longest edge itself must not be missed by rounding. */
  private static final double ROUNDING = 1 + 1e-9;

  /** Prepares a mesh. */
  static SeamDistance of(Mesh mesh, Topology topology, int[] section, int first) {
    int[] corner = mesh.corner();
    double[] reach = new double[mesh.vertexCount()];
    for (int h = 0; h < corner.length; h++) {
      if (section[h / 3] >= first) {
        int a = corner[h];
        int b = corner[Topology.next(h)];
        double length = Faces.length(mesh, a, b);
        reach[a] = Math.max(reach[a], length);
        reach[b] = Math.max(reach[b], length);
      }
    }
    return new SeamDistance(mesh, topology, VertexFans.of(mesh), section, first, reach);
  }

  /**
   * Distance from edges.
   *
   * @param halfEdges one half-edge of each
   * @param widthMm how far
   * @return one entry per vertex, mm: known at all corners of plated faces with a corner nearer
   *     than the width, infinite far beyond
   */
  double[] from(int[] halfEdges, double widthMm, Progress progress) {
    Sources seam = Sources.edges(halfEdges);
    double beyond = 0;
    for (int h : halfEdges) {
      beyond = Math.max(beyond, reachMm[mesh.corner()[h]]);
    }
    while (true) {
      // A corner of a face with a nearer corner is no further than one edge beyond the width.
      double[] distance =
          SurfaceDistance.from(
              mesh,
              topology,
              fans,
              seam,
              widthMm + beyond * ROUNDING,
              f -> section[f] >= first,
              progress);
      double needed = beyond;
      for (int v = 0; v < distance.length; v++) {
        if (distance[v] < widthMm) {
          needed = Math.max(needed, reachMm[v]);
        }
      }
      if (needed == beyond) {
        return distance;
      }
      beyond = needed;
    }
  }
}
