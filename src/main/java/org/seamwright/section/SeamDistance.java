package org.seamwright.section;

import java.util.stream.IntStream;
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

  /** Sets worked out side by side: enough for a few cores, few enough for memory. */
  static final int BATCH = 4;

  private static final double[] NONE = {};

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

  /**
   * Distances from several sets of edges, worked out side by side.
   *
   * @param halfEdges one set per result; an empty one gives no distances
   * @param begin first set
   * @param end set after the last
   * @return one entry per set from {@code begin}
   */
  double[][] from(int[][] halfEdges, int begin, int end, double widthMm) {
    return IntStream.range(begin, end)
        .parallel()
        .mapToObj(i -> halfEdges[i].length == 0 ? NONE : from(halfEdges[i], widthMm, Progress.NONE))
        .toArray(double[][]::new);
  }
}
