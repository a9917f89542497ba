package org.seamwright.section;

import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * What distances over a mesh and areas of cells on it need again and again: edge lengths, face
 * areas and fans, computed once. Vertices that no face uses are allowed.
 *
 * @param mesh the faces, as they lie in space
 * @param way three vertices per triangle to spread over: the {@link IntrinsicDelaunay} triangles
 * @param fans triangles of {@code way} around each vertex
 * @param edgeMm one entry per half-edge of {@code way}: its length
 * @param reachMm one entry per vertex: its longest edge in {@code mesh} or {@code way}, 0 for none
 * @param areaMm2 one entry per face: the area it stands for
 */
record Surface(
    Mesh mesh, int[] way, VertexFans fans, double[] edgeMm, double[] reachMm, double[] areaMm2) {
  /** Prepares a mesh: O(n). */
  static Surface of(Mesh mesh) {
    return of(mesh, Topology.of(mesh), h -> false);
  }

  /**
   * Prepares a mesh: O(n).
   *
   * @param lines half-edges that {@code way} has as well
   */
  static Surface of(Mesh mesh, Topology topology, IntPredicate lines) {
    double[] area = new double[mesh.faceCount()];
    for (int f = 0; f < area.length; f++) {
      area[f] = Faces.area(mesh, f);
    }
    double[] edge = lengths(mesh);
    IntrinsicDelaunay flipped = IntrinsicDelaunay.of(mesh, topology, edge, lines);
    double[] reach = new double[mesh.vertexCount()];
    extend(reach, mesh.corner(), edge);
    extend(reach, flipped.corner(), flipped.edgeMm());
    VertexFans fans = VertexFans.of(Mesh.of(mesh.xyz(), flipped.corner()));
    return new Surface(mesh, flipped.corner(), fans, flipped.edgeMm(), reach, area);
  }

  /** Prepares a coarsened mesh as it is, with the areas its faces stand for. */
  static Surface coarse(Mesh mesh, double[] areaMm2) {
    double[] edge = lengths(mesh);
    double[] reach = new double[mesh.vertexCount()];
    extend(reach, mesh.corner(), edge);
    return new Surface(mesh, mesh.corner(), VertexFans.of(mesh), edge, reach, areaMm2);
  }

  private static double[] lengths(Mesh mesh) {
    int[] corner = mesh.corner();
    double[] edge = new double[corner.length];
    for (int h = 0; h < corner.length; h++) {
      edge[h] = Faces.length(mesh, corner[h], corner[Topology.next(h)]);
    }
    return edge;
  }

  private static void extend(double[] reach, int[] corner, double[] edge) {
    for (int h = 0; h < corner.length; h++) {
      int a = corner[h];
      int b = corner[Topology.next(h)];
      reach[a] = Math.max(reach[a], edge[h]);
      reach[b] = Math.max(reach[b], edge[h]);
    }
  }
}
