package org.seamwright.section;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.region.SubMesh;
import org.seamwright.region.SurfaceCuts;

/**
 * The end of a drawn line, and how it runs on to the edge of the section that it lies inside of.
 */
final class LineEnd {
  /** Cosine of 60°: what lies within that of the line's direction lies ahead. */
  private static final double AHEAD = 0.5;

  /** An edge that is nearer than this share of the one ahead was meant, not overlooked. */
  private static final double NEAR_SHARE = 0.1;

  private final SurfaceCuts cuts;
  private final int[] label;
  private final int vertex;

  LineEnd(SurfaceCuts cuts, int[] label, int vertex) {
    this.cuts = cuts;
    this.label = label;
    this.vertex = vertex;
  }

  /** The section that lies all round the end; -1 if an edge of it does. */
  int sectionRound() {
    int section = -1;
    for (int h = 0; h < 3 * label.length; h++) {
      if (cuts.from(h) != vertex && cuts.to(h) != vertex) {
        continue;
      }
      int here = label[h / 3];
      boolean open = cuts.ring(h) == h;
      if (here < 0 || open || (section >= 0 && section != here)) {
        return -1;
      }
      section = here;
    }
    return section;
  }

  /**
   * The way on.
   *
   * @param direction of the line at its end
   * @param ahead whether to go on ahead, or to the nearest edge
   * @return the end and a vertex of the section's edge; empty if it has no edge
   */
  List<Vector3D> toEdge(Vector3D direction, boolean ahead) {
    int section = sectionRound();
    int[] faces = new int[label.length];
    int count = 0;
    for (int f = 0; f < label.length; f++) {
      if (label[f] == section) {
        faces[count++] = f;
      }
    }
    SubMesh sub = SubMesh.of(cuts.toMesh(), Arrays.copyOf(faces, count));
    Mesh mesh = sub.mesh();
    Topology topology = Topology.of(mesh);
    int own = 0;
    while (sub.vertices()[own] != vertex) {
      own++;
    }
    double[] far =
        SurfaceDistance.from(
            mesh,
            topology,
            VertexFans.of(mesh),
            Sources.vertices(own),
            Double.POSITIVE_INFINITY,
            Progress.NONE);
    Vector3D end = at(mesh, own);
    int nearest = -1;
    int best = -1;
    for (int h = 0; h < mesh.corner().length; h++) {
      if (topology.twin(h) >= 0) {
        continue;
      }
      int v = mesh.corner()[h];
      nearest = nearest < 0 || far[v] < far[nearest] ? v : nearest;
      Vector3D to = at(mesh, v).subtract(end);
      if (to.dot(direction) >= AHEAD * to.norm() * direction.norm()
          && (best < 0 || far[v] < far[best])) {
        best = v;
      }
    }
    if (nearest < 0) {
      return List.of();
    }
    boolean meant = best < 0 || !ahead || far[nearest] < NEAR_SHARE * far[best];
    return List.of(end, at(mesh, meant ? nearest : best));
  }

  private static Vector3D at(Mesh mesh, int v) {
    return Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
  }
}
