package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.BoundaryLines;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.region.SubMesh;

/** Points that name sections and seams of a plan for as long as the plan changes little. */
public final class SectionPoints {
  /** A seam's course is told to within this share of the piece's diagonal. */
  private static final double COURSE_SHARE = 2e-4;

  private SectionPoints() {}

  /**
   * A point deep inside a section: the middle of the face that lies farthest from its edges, over
   * the surface. O(n).
   */
  public static Vector3D inside(SectionPlan plan, int section) {
    int[] faces = new int[plan.sectionOf().length];
    int count = 0;
    for (int f = 0; f < faces.length; f++) {
      if (plan.sectionOf()[f] == section) {
        faces[count++] = f;
      }
    }
    Mesh mesh = SubMesh.of(plan.mesh(), Arrays.copyOf(faces, count)).mesh();
    Topology topology = Topology.of(mesh);
    int[] edges = new int[mesh.corner().length];
    int open = 0;
    for (int h = 0; h < edges.length; h++) {
      if (topology.twin(h) < 0) {
        edges[open++] = h;
      }
    }
    double[] far = new double[mesh.vertexCount()];
    if (open > 0) {
      far =
          SurfaceDistance.from(
              mesh,
              topology,
              VertexFans.of(mesh),
              Sources.edges(Arrays.copyOf(edges, open)),
              Double.POSITIVE_INFINITY,
              Progress.NONE);
    }
    int[] c = mesh.corner();
    int best = 0;
    double most = -1;
    for (int f = 0; f < count; f++) {
      // The area tells faces apart where all corners lie on edges, as on a side of two triangles.
      double depth =
          far[c[3 * f]]
              + far[c[3 * f + 1]]
              + far[c[3 * f + 2]]
              + 1e-6 * Math.sqrt(Faces.area(mesh, f));
      if (depth > most) {
        most = depth;
        best = f;
      }
    }
    double[] at = new double[3];
    Faces.centroid(mesh, best, at);
    return Vector3D.of(at);
  }

  /**
   * The course of the longest line along which two sections meet, as few points as tell it.
   *
   * @return empty if they don't meet
   */
  public static Optional<List<Vector3D>> seam(SectionPlan plan, int a, int b) {
    Mesh mesh = plan.mesh();
    List<BoundaryLines.Line> lines =
        BoundaryLines.between(
            mesh,
            Topology.of(mesh),
            f -> plan.sectionOf()[f] == a,
            f -> plan.sectionOf()[f] == b,
            false);
    BoundaryLines.Line longest = null;
    for (BoundaryLines.Line line : lines) {
      if (longest == null || line.lengthMm(mesh) > longest.lengthMm(mesh)) {
        longest = line;
      }
    }
    if (longest == null) {
      return Optional.empty();
    }
    List<Vector3D> points = new ArrayList<>();
    for (int v : longest.vertices()) {
      points.add(Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v)));
    }
    if (longest.closed()) {
      points.add(points.get(0));
    }
    double withinMm = COURSE_SHARE * mesh.bounds().diagonal();
    List<Vector3D> few = new ArrayList<>();
    few.add(points.get(0));
    if (longest.closed()) {
      int middle = points.size() / 2;
      simplify(points, 0, middle, withinMm, few);
      simplify(points, middle, points.size() - 1, withinMm, few);
    } else {
      simplify(points, 0, points.size() - 1, withinMm, few);
    }
    return Optional.of(few);
  }

  /** D. Douglas and T. Peucker, "Algorithms for the reduction of the number of points", 1973. */
  private static void simplify(
      List<Vector3D> points, int from, int to, double withinMm, List<Vector3D> few) {
    int farthest = -1;
    double most = withinMm;
    Vector3D along = points.get(to).subtract(points.get(from));
    for (int i = from + 1; i < to; i++) {
      Vector3D off = points.get(i).subtract(points.get(from));
      double share =
          along.normSq() > 0 ? Math.max(0, Math.min(1, off.dot(along) / along.normSq())) : 0;
      double far = off.subtract(along.multiply(share)).norm();
      if (far > most) {
        most = far;
        farthest = i;
      }
    }
    if (farthest < 0) {
      few.add(points.get(to));
    } else {
      simplify(points, from, farthest, withinMm, few);
      simplify(points, farthest, to, withinMm, few);
    }
  }
}
