package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.List;
import org.seamwright.mesh.SurfacePoint;

/**
 * Where distance over the surface starts from: any mix of vertices, points inside faces, whole
 * edges, and polylines that lie on the surface. Immutable.
 */
public final class Sources {
  private final int[] vertices;
  private final int[] halfEdges;
  private final List<List<SurfacePoint>> paths;
  private final boolean isBent;

  private Sources(int[] vertices, int[] halfEdges, List<List<SurfacePoint>> paths) {
    this(vertices, halfEdges, paths, false);
  }

  private Sources(int[] vertices, int[] halfEdges, List<List<SurfacePoint>> paths, boolean isBent) {
    this.vertices = vertices;
    this.halfEdges = halfEdges;
    this.paths = paths;
    this.isBent = isBent;
  }

  /** Vertices, by number. */
  public static Sources vertices(int... vertices) {
    return new Sources(vertices.clone(), new int[0], List.of());
  }

  /** One point of the surface. */
  public static Sources point(SurfacePoint point) {
    return new Sources(new int[0], new int[0], List.of(List.of(point)));
  }

  /** Whole edges, each by any one of its half-edges. */
  public static Sources edges(int... halfEdges) {
    return new Sources(new int[0], halfEdges.clone(), List.of());
  }

  /**
   * A polyline on the surface.
   *
   * @param points at least one; each two that follow one another lie in or on the rim of one face,
   *     which need not be the face either of them names
   * @throws IllegalArgumentException if there is no point
   */
  public static Sources path(List<SurfacePoint> points) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("A path needs at least one point");
    }
    return new Sources(new int[0], new int[0], List.of(List.copyOf(points)));
  }

  /** These sources and others together. */
  public Sources and(Sources other) {
    List<List<SurfacePoint>> both = new ArrayList<>(paths);
    both.addAll(other.paths);
    return new Sources(
        joined(vertices, other.vertices),
        joined(halfEdges, other.halfEdges),
        List.copyOf(both),
        isBent || other.isBent);
  }

  /**
   * These sources as bent lines of many short edges, such as the edge of a region. Ways from them
   * are followed further: distances some way off are then true to about 0.3% where they could be 4%
   * too long, for several times the cost.
   */
  public Sources bent() {
    return new Sources(vertices, halfEdges, paths, true);
  }

  boolean isBent() {
    return isBent;
  }

  private static int[] joined(int[] a, int[] b) {
    int[] both = new int[a.length + b.length];
    System.arraycopy(a, 0, both, 0, a.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  int[] vertexArray() {
    return vertices;
  }

  int[] halfEdgeArray() {
    return halfEdges;
  }

  List<List<SurfacePoint>> paths() {
    return paths;
  }
}
