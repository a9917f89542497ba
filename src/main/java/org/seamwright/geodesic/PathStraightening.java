package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Straightens a way over the surface: leaves out points between two that share a face, and slides
 * the others along their edges to where the two steps are straight when unfolded, and takes it
 * round vertices where that is shorter. Each change shortens the way, so it ends.
 */
final class PathStraightening {
  /** A sweep that shortens the way by less than this share is the last. */
  private static final double ENOUGH = 1e-12;

  /** Most sweeps: a way over n edges is straight to within a sweep's gain after some n. */
  private static final int MOST_SWEEPS = 500;

  private final Mesh mesh;
  private final VertexFans fans;
  private final IntPredicate faces;
  private final VertexBypass bypass;
  private final List<SurfacePoint> way;

  PathStraightening(
      Mesh mesh, Topology topology, VertexFans fans, IntPredicate faces, List<SurfacePoint> way) {
    this.mesh = mesh;
    this.fans = fans;
    this.faces = faces;
    this.way = new ArrayList<>(way);
    bypass = new VertexBypass(mesh, topology, fans, faces);
  }

  List<SurfacePoint> points() {
    double length = GeodesicPath.lengthMm(mesh, way);
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      leaveOut();
      roundVertices();
      for (int i = 1; i + 1 < way.size(); i++) {
        slide(i);
      }
      double now = GeodesicPath.lengthMm(mesh, way);
      if (now >= length * (1 - ENOUGH)) {
        break;
      }
      length = now;
    }
    leaveOut();
    return List.copyOf(way);
  }

  private void leaveOut() {
    List<SurfacePoint> kept = new ArrayList<>(way.size());
    kept.add(way.get(0));
    for (int i = 1; i + 1 < way.size(); i++) {
      SurfacePoint before = kept.get(kept.size() - 1);
      int common = SurfaceRim.commonFace(mesh, fans, before, way.get(i + 1));
      if (common < 0 || !faces.test(common)) {
        kept.add(way.get(i));
      }
    }
    kept.add(way.get(way.size() - 1));
    way.clear();
    way.addAll(kept);
  }

  /** Near an end of its edge a point counts as at the vertex, or it would be stuck there. */
  private static final double AT_VERTEX = 1e-5;

  private void roundVertices() {
    for (int i = 1; i + 1 < way.size(); i++) {
      int vertex = vertexAt(way.get(i));
      if (vertex < 0) {
        continue;
      }
      int end = i + 1;
      while (end + 1 < way.size() && vertexAt(way.get(end)) == vertex) {
        end++;
      }
      SurfacePoint before = way.get(i - 1);
      SurfacePoint after = way.get(end);
      List<SurfacePoint> round = bypass.round(before, vertex, after);
      if (!round.isEmpty()) {
        List<SurfacePoint> steps = new ArrayList<>(round);
        steps.add(0, before);
        steps.add(after);
        List<SurfacePoint> now = way.subList(i - 1, end + 1);
        if (GeodesicPath.lengthMm(mesh, steps) < GeodesicPath.lengthMm(mesh, now) * (1 - ENOUGH)) {
          way.subList(i, end).clear();
          way.addAll(i, round);
          i += round.size() - 1;
        }
      }
    }
  }

  private int vertexAt(SurfacePoint q) {
    for (int k = 0; k < 3; k++) {
      if (SurfaceRim.weight(q, k) >= 1 - AT_VERTEX) {
        return mesh.corner()[3 * q.face() + k];
      }
    }
    return -1;
  }

  private void slide(int i) {
    SurfacePoint q = way.get(i);
    int opposite = SurfaceRim.edgeOf(q);
    if (opposite < 0 || SurfaceRim.cornerOf(q) >= 0) {
      return;
    }
    int k = (opposite + 1) % 3;
    int v = mesh.corner()[3 * q.face() + k];
    int w = mesh.corner()[3 * q.face() + (k + 1) % 3];
    double length = Faces.length(mesh, v, w);
    double[] before = inFrame(way.get(i - 1), v, w, length);
    double[] after = inFrame(way.get(i + 1), v, w, length);
    double heights = before[1] + after[1];
    if (!(heights > 0)) {
      return;
    }
    double x = (before[0] * after[1] + after[0] * before[1]) / heights;
    // Short of the ends, where the point would stop belonging to this edge alone.
    double share = Math.max(10 * Seeds.ON_EDGE, Math.min(1 - 10 * Seeds.ON_EDGE, x / length));
    way.set(i, PathTrace.onEdge(q.face(), k, share));
  }

  /** How far along an edge a point lies, and how far from its line. */
  private double[] inFrame(SurfacePoint q, int v, int w, double length) {
    double along = 0;
    double square = 0;
    for (int axis = 0; axis < 3; axis++) {
      double e = (mesh.xyz()[3 * w + axis] - mesh.xyz()[3 * v + axis]) / length;
      double d = q.at(mesh, axis) - mesh.xyz()[3 * v + axis];
      along += d * e;
      square += d * d;
    }
    return new double[] {along, Math.sqrt(Math.max(0, square - along * along))};
  }
}
