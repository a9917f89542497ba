package org.seamwright.geodesic;

import java.util.BitSet;
import java.util.List;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/** Gives the corners of the faces that hold a source their exact distance and ray. */
final class Seeds {
  /** Weight below which a point counts as lying on the opposite edge: 1e-7 of the face's height. */
  static final double ON_EDGE = 1e-7;

  private final Mesh mesh;
  private final double[] p;
  private final int[] corner;
  private final VertexFans fans;
  private final IntPredicate faces;
  private final Arrivals arrivals;
  private final Beams beams;
  private final BitSet held = new BitSet();
  private final double[] normal = new double[3];
  private final double[] from = new double[3];
  private final double[] to = new double[3];

  Seeds(Mesh mesh, Topology topology, VertexFans fans, IntPredicate faces, Arrivals arrivals) {
    this.mesh = mesh;
    this.p = mesh.xyz();
    this.corner = mesh.corner();
    this.fans = fans;
    this.faces = faces;
    this.arrivals = arrivals;
    beams = new Beams(mesh, topology, fans, faces, arrivals);
  }

  /** Faces that hold a source, in or on the rim. */
  BitSet held() {
    return held;
  }

  /** Segments come before points, so that beams from points soon find that they are late. */
  void sow(Sources sources) {
    if (sources.isBent()) {
      beams.startFromBentLines();
    }
    for (int h : sources.halfEdgeArray()) {
      edge(corner[h], corner[Topology.next(h)]);
    }
    for (List<SurfacePoint> path : sources.paths()) {
      for (int i = 1; i < path.size(); i++) {
        segment(path, i);
      }
    }
    for (int v : sources.vertexArray()) {
      pointAtVertex(v);
    }
    BitSet ends = new BitSet();
    for (int h : sources.halfEdgeArray()) {
      ends.set(corner[h]);
      ends.set(corner[Topology.next(h)]);
    }
    ends.stream().forEach(this::pointAtVertex);
    for (List<SurfacePoint> path : sources.paths()) {
      for (SurfacePoint point : path) {
        point(point);
      }
    }
    arrivals.sown();
  }

  /** Sends beams on from a settled vertex: a hop of any way to the vertices they reach. */
  void hopFrom(int v) {
    beams.startFrom(v);
    double start = arrivals.distance[v];
    for (int axis = 0; axis < 3; axis++) {
      from[axis] = p[3 * v + axis];
    }
    for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
      int h = fans.halfEdge(i);
      int a = corner[Topology.next(h)];
      int b = corner[Topology.prev(h)];
      if (a != v && b != v && a != b && faces.test(h / 3)) {
        Faces.normal(mesh, h / 3, normal);
        hopAlongEdge(v, a, start);
        hopAlongEdge(v, b, start);
        beams.through(Topology.next(h), from, from);
      }
    }
  }

  private void hopAlongEdge(int v, int to, double start) {
    double length = Faces.length(mesh, v, to);
    if (arrivals.betters(to, start + length)) {
      double x = (mesh.x(to) - mesh.x(v)) / length;
      double y = (mesh.y(to) - mesh.y(v)) / length;
      double z = (mesh.z(to) - mesh.z(v)) / length;
      arrivals.set(to, start + length, x, y, z, normal[0], normal[1], normal[2], v, -1);
    }
  }

  private void pointAtVertex(int v) {
    vertex(v);
    for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
      int h = fans.halfEdge(i);
      int a = corner[Topology.next(h)];
      int b = corner[Topology.prev(h)];
      if (a != v && b != v && a != b && faces.test(h / 3)) {
        for (int axis = 0; axis < 3; axis++) {
          from[axis] = p[3 * v + axis];
        }
        held.set(h / 3);
        cornersOf(h / 3, from, from);
        beams.through(Topology.next(h), from, from);
      }
    }
  }

  private void vertex(int v) {
    if (arrivals.betters(v, 0)) {
      arrivals.set(v, 0, 0, 0, 0, 0, 0, 0, -1, -1);
    }
  }

  private void edge(int a, int b) {
    vertex(a);
    vertex(b);
    for (int axis = 0; axis < 3; axis++) {
      from[axis] = p[3 * a + axis];
      to[axis] = p[3 * b + axis];
    }
    segmentInFacesAt(a, b);
  }

  private void segmentInFacesAt(int a, int b) {
    for (int i = fans.begin(a); i < fans.begin(a + 1); i++) {
      int h = fans.halfEdge(i);
      if (corner[Topology.next(h)] == b || corner[Topology.prev(h)] == b) {
        segmentInFace(h / 3);
      }
    }
  }

  private void point(SurfacePoint q) {
    int face = q.face();
    int k = SurfaceRim.cornerOf(q);
    if (k >= 0) {
      pointAtVertex(corner[3 * face + k]);
      return;
    }
    place(q, from);
    place(q, to);
    int opposite = SurfaceRim.edgeOf(q);
    if (opposite >= 0) {
      segmentInFacesAt(
          corner[3 * face + (opposite + 1) % 3], corner[3 * face + (opposite + 2) % 3]);
    } else {
      segmentInFace(face);
    }
  }

  private void segment(List<SurfacePoint> path, int i) {
    SurfacePoint a = path.get(i - 1);
    SurfacePoint b = path.get(i);
    int face = SurfaceRim.commonFace(mesh, fans, a, b);
    if (face < 0) {
      throw new IllegalArgumentException(
          "Points " + (i - 1) + " and " + i + " of a path lie in no common face: " + a + ", " + b);
    }
    place(a, from);
    place(b, to);
    int opposite = SurfaceRim.commonEdge(mesh, face, a, b);
    if (opposite >= 0) {
      segmentInFacesAt(
          corner[3 * face + (opposite + 1) % 3], corner[3 * face + (opposite + 2) % 3]);
    } else {
      segmentInFace(face);
    }
  }

  private void place(SurfacePoint q, double[] into) {
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = q.at(mesh, axis);
    }
  }

  /** Starts from the segment {@code from}–{@code to}, or the point both are, in a face. */
  private void segmentInFace(int face) {
    if (!faces.test(face)) {
      return;
    }
    held.set(face);
    cornersOf(face, from, to);
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      beams.through(h, from, to);
    }
  }

  /** Offers each corner of a face its distance from a segment in it. */
  private void cornersOf(int face, double[] from, double[] to) {
    Faces.normal(mesh, face, normal);
    double ux = to[0] - from[0];
    double uy = to[1] - from[1];
    double uz = to[2] - from[2];
    double uu = ux * ux + uy * uy + uz * uz;
    for (int k = 0; k < 3; k++) {
      int v = corner[3 * face + k];
      double x = p[3 * v] - from[0];
      double y = p[3 * v + 1] - from[1];
      double z = p[3 * v + 2] - from[2];
      double t = uu > 0 ? (x * ux + y * uy + z * uz) / uu : 0;
      t = Math.max(0, Math.min(1, t));
      x -= t * ux;
      y -= t * uy;
      z -= t * uz;
      double d = Math.sqrt(x * x + y * y + z * z);
      if (d == 0) {
        vertex(v);
      } else if (arrivals.betters(v, d)) {
        arrivals.set(v, d, x / d, y / d, z / d, normal[0], normal[1], normal[2], -1, -1);
      }
    }
  }
}
