package org.seamwright.section;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * What distances over a mesh and areas of cells on it need again and again: edge lengths, face
 * areas and fans, computed once. Vertices that no face uses are allowed.
 *
 * @param mesh the faces to spread over
 * @param fans faces around each vertex
 * @param edgeMm one entry per half-edge: its length
 * @param reachMm one entry per vertex: its longest edge, 0 where it has none
 * @param areaMm2 one entry per face: the area it stands for
 */
record Surface(Mesh mesh, VertexFans fans, double[] edgeMm, double[] reachMm, double[] areaMm2) {
  /** Prepares a mesh: O(n). */
  static Surface of(Mesh mesh) {
    double[] area = new double[mesh.faceCount()];
    for (int f = 0; f < area.length; f++) {
      area[f] = Faces.area(mesh, f);
    }
    return of(mesh, area);
  }

  /** Prepares a mesh whose faces stand for other areas than their own. */
  static Surface of(Mesh mesh, double[] areaMm2) {
    int[] corner = mesh.corner();
    double[] edge = new double[corner.length];
    double[] reach = new double[mesh.vertexCount()];
    for (int h = 0; h < corner.length; h++) {
      int a = corner[h];
      int b = corner[Topology.next(h)];
      edge[h] = Faces.length(mesh, a, b);
      reach[a] = Math.max(reach[a], edge[h]);
      reach[b] = Math.max(reach[b], edge[h]);
    }
    return new Surface(mesh, VertexFans.of(mesh), edge, reach, areaMm2);
  }
}
