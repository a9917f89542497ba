package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * A short way over the surface between two points, for strokes whose legs follow the piece.
 *
 * <p>The distance from the goal is marched until it reaches the start ({@link SurfaceDistance});
 * then the way goes from edge to edge where distance and step together are least, always nearer to
 * the goal, so it never loops; where that fails it goes on along edges. Last, its points are slid
 * along their edges until each two steps are straight when unfolded. The length is that of a
 * locally shortest way on the faces, within the error of the distance of the shortest of all. Cost:
 * that of the distance over twice the way's length.
 */
public final class GeodesicPath {
  /** By how much a longer reach is tried if the start was not reached. */
  private static final double REACH_GROWTH = 2;

  private GeodesicPath() {}

  /**
   * Points of the way, the first {@code from} and the last {@code to}; each two that follow one
   * another lie in or on the rim of one face, as {@link Sources#path} wants them.
   *
   * @return empty if no way leads from one to the other
   */
  public static Optional<List<SurfacePoint>> between(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      SurfacePoint from,
      SurfacePoint to,
      Progress progress) {
    return between(mesh, topology, fans, from, to, f -> true, progress);
  }

  /**
   * The same, keeping to some faces.
   *
   * @param faces faces the way may lead over; those of the two points must be among them
   */
  public static Optional<List<SurfacePoint>> between(
      Mesh mesh,
      Topology topology,
      VertexFans fans,
      SurfacePoint from,
      SurfacePoint to,
      IntPredicate faces,
      Progress progress) {
    if (SurfaceRim.commonFace(mesh, fans, from, to) >= 0) {
      return Optional.of(List.of(from, to));
    }
    double reach = REACH_GROWTH * distance(mesh, from, to);
    while (true) {
      March march =
          new March(mesh, topology, fans, Sources.point(to), reach, faces, false, Progress.NONE);
      march.run();
      progress.at(0.5);
      if (reachesAll(mesh, march.arrivals(), from)) {
        List<SurfacePoint> way = new PathTrace(mesh, fans, faces, march, from, to).points();
        List<SurfacePoint> straight =
            new PathStraightening(mesh, topology, fans, faces, way).points();
        progress.at(1);
        return Optional.of(straight);
      }
      if (Double.isInfinite(reach)) {
        return Optional.empty();
      }
      // Beyond any way that could still be called short, look everywhere at once.
      reach = reach > mesh.bounds().diagonal() ? Double.POSITIVE_INFINITY : REACH_GROWTH * reach;
    }
  }

  /** Length of a way, mm. */
  public static double lengthMm(Mesh mesh, List<SurfacePoint> way) {
    double sum = 0;
    for (int i = 1; i < way.size(); i++) {
      sum += distance(mesh, way.get(i - 1), way.get(i));
    }
    return sum;
  }

  static double distance(Mesh mesh, SurfacePoint a, SurfacePoint b) {
    double dx = a.at(mesh, 0) - b.at(mesh, 0);
    double dy = a.at(mesh, 1) - b.at(mesh, 1);
    double dz = a.at(mesh, 2) - b.at(mesh, 2);
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  private static boolean reachesAll(Mesh mesh, Arrivals arrivals, SurfacePoint q) {
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner()[3 * q.face() + k];
      if (SurfaceRim.weight(q, k) > 0 && !(arrivals.distance[v] < Double.POSITIVE_INFINITY)) {
        return false;
      }
    }
    return true;
  }

  /** Faces in which a point lies, in or on the rim. */
  static List<Integer> facesAt(Mesh mesh, VertexFans fans, SurfacePoint q, IntPredicate faces) {
    List<Integer> found = new ArrayList<>();
    int k = SurfaceRim.cornerOf(q);
    int edge = SurfaceRim.edgeOf(q);
    if (k < 0 && edge < 0) {
      found.add(q.face());
      return found;
    }
    int v = mesh.corner()[3 * q.face() + (k >= 0 ? k : (edge + 1) % 3)];
    for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
      int f = fans.halfEdge(i) / 3;
      if (faces.test(f) && SurfaceRim.liesIn(mesh, q, f) && !found.contains(f)) {
        found.add(f);
      }
    }
    return found;
  }
}
