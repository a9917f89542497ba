package org.seamwright.geodesic;

import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/** Whether points of the surface lie on the rim of their face, and in which faces they lie. */
final class SurfaceRim {
  private SurfaceRim() {}

  static double weight(SurfacePoint q, int k) {
    return k == 0 ? q.w0() : k == 1 ? q.w1() : q.w2();
  }

  /** Which corner of its face a point lies at, or -1. */
  static int cornerOf(SurfacePoint q) {
    for (int k = 0; k < 3; k++) {
      if (weight(q, (k + 1) % 3) <= Seeds.ON_EDGE && weight(q, (k + 2) % 3) <= Seeds.ON_EDGE) {
        return k;
      }
    }
    return -1;
  }

  /** The corner opposite the edge of its face that a point lies on, or -1. */
  static int edgeOf(SurfacePoint q) {
    for (int k = 0; k < 3; k++) {
      if (weight(q, k) <= Seeds.ON_EDGE) {
        return k;
      }
    }
    return -1;
  }

  /** Whether a point lies in a face or on its rim. */
  static boolean liesIn(Mesh mesh, SurfacePoint q, int face) {
    if (q.face() == face) {
      return true;
    }
    int[] c = mesh.corner();
    for (int k = 0; k < 3; k++) {
      if (weight(q, k) > Seeds.ON_EDGE) {
        int v = c[3 * q.face() + k];
        if (c[3 * face] != v && c[3 * face + 1] != v && c[3 * face + 2] != v) {
          return false;
        }
      }
    }
    return true;
  }

  /** A face in which both points lie, or -1. */
  static int commonFace(Mesh mesh, VertexFans fans, SurfacePoint a, SurfacePoint b) {
    if (liesIn(mesh, b, a.face())) {
      return a.face();
    }
    if (liesIn(mesh, a, b.face())) {
      return b.face();
    }
    int heaviest = a.w0() >= a.w1() && a.w0() >= a.w2() ? 0 : a.w1() >= a.w2() ? 1 : 2;
    int v = mesh.corner()[3 * a.face() + heaviest];
    for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
      int face = Topology.face(fans.halfEdge(i));
      if (liesIn(mesh, a, face) && liesIn(mesh, b, face)) {
        return face;
      }
    }
    return -1;
  }

  /** Weight of a vertex at a point: 0 for one that is no corner of its face. */
  static double weightOf(Mesh mesh, SurfacePoint q, int vertex) {
    int[] c = mesh.corner();
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += c[3 * q.face() + k] == vertex ? weight(q, k) : 0;
    }
    return sum;
  }

  /** The corner opposite the edge of a face that both points lie on, or -1. */
  static int commonEdge(Mesh mesh, int face, SurfacePoint a, SurfacePoint b) {
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner()[3 * face + k];
      if (weightOf(mesh, a, v) <= Seeds.ON_EDGE && weightOf(mesh, b, v) <= Seeds.ON_EDGE) {
        return k;
      }
    }
    return -1;
  }
}
