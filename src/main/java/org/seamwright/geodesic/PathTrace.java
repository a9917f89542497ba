package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/** Goes down a distance field from a point to the source that it was measured from. */
final class PathTrace {
  /** Least step down, as a share of the way left: keeps rounding from going in circles. */
  private static final double LEAST_DESCENT = 1e-9;

  private final Mesh mesh;
  private final VertexFans fans;
  private final IntPredicate faces;
  private final Arrivals arrivals;
  private final Wavefront front;
  private final SurfacePoint to;
  private final List<SurfacePoint> way = new ArrayList<>();

  /** Distance of the last point of the way from the goal. */
  private double left = Double.POSITIVE_INFINITY;

  private double bestTotal;
  private double bestLeft;
  private SurfacePoint best;

  PathTrace(
      Mesh mesh,
      VertexFans fans,
      IntPredicate faces,
      March march,
      SurfacePoint from,
      SurfacePoint to) {
    this.mesh = mesh;
    this.fans = fans;
    this.faces = faces;
    arrivals = march.arrivals();
    front = march.front();
    this.to = to;
    way.add(from);
  }

  List<SurfacePoint> points() {
    while (true) {
      SurfacePoint here = way.get(way.size() - 1);
      if (SurfaceRim.commonFace(mesh, fans, here, to) >= 0) {
        way.add(to);
        return way;
      }
      bestTotal = Double.POSITIVE_INFINITY;
      for (int f : GeodesicPath.facesAt(mesh, fans, here, faces)) {
        lookOver(f, here);
      }
      if (Double.isInfinite(bestTotal)) {
        alongEdges(here);
        return way;
      }
      way.add(best);
      left = bestLeft;
    }
  }

  /** Looks for the best next point on the rim of a face that holds the present one. */
  private void lookOver(int f, SurfacePoint here) {
    int[] corner = mesh.corner();
    double x = here.at(mesh, 0);
    double y = here.at(mesh, 1);
    double z = here.at(mesh, 2);
    for (int k = 0; k < 3; k++) {
      int v = corner[3 * f + k];
      int w = corner[3 * f + (k + 1) % 3];
      double step = toVertex(v, x, y, z);
      if (step > 0) {
        offer(arrivals.distance[v] + step, arrivals.distance[v], vertex(f, k));
      }
      boolean onEdge =
          SurfaceRim.weightOf(mesh, here, corner[3 * f + (k + 2) % 3]) <= Seeds.ON_EDGE;
      if (!onEdge && isReached(v) && isReached(w)) {
        double total = front.throughEdge(v, w, 1, x, y, z);
        double share = front.crossingShare();
        if (total < bestTotal && share > 0 && share < 1) {
          SurfacePoint q = onEdge(f, k, share);
          offer(total, total - distance(q, x, y, z), q);
        }
      }
    }
  }

  private boolean isReached(int v) {
    return arrivals.distance[v] < Double.POSITIVE_INFINITY;
  }

  private void offer(double total, double leftThere, SurfacePoint q) {
    if (total < bestTotal && leftThere < left - LEAST_DESCENT * leftThere) {
      bestTotal = total;
      bestLeft = leftThere;
      best = q;
    }
  }

  private double toVertex(int v, double x, double y, double z) {
    double dx = mesh.x(v) - x;
    double dy = mesh.y(v) - y;
    double dz = mesh.z(v) - z;
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  private double distance(SurfacePoint q, double x, double y, double z) {
    double dx = q.at(mesh, 0) - x;
    double dy = q.at(mesh, 1) - y;
    double dz = q.at(mesh, 2) - z;
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  static SurfacePoint vertex(int f, int k) {
    return new SurfacePoint(f, k == 0 ? 1 : 0, k == 1 ? 1 : 0, k == 2 ? 1 : 0);
  }

  /** The point at a share of the edge from corner k of a face to the next. */
  static SurfacePoint onEdge(int f, int k, double share) {
    double[] w = new double[3];
    w[k] = 1 - share;
    w[(k + 1) % 3] = share;
    return new SurfacePoint(f, w[0], w[1], w[2]);
  }

  /** Finishes the way along edges: E. W. Dijkstra, 1959, from the present face to the goal's. */
  private void alongEdges(SurfacePoint here) {
    int n = mesh.vertexCount();
    VertexHeap heap = new VertexHeap(n);
    double[] d = new double[n];
    int[] before = new int[n];
    Arrays.fill(d, Double.POSITIVE_INFINITY);
    BitSet goal = new BitSet();
    for (int f : GeodesicPath.facesAt(mesh, fans, to, faces)) {
      for (int k = 0; k < 3; k++) {
        goal.set(mesh.corner()[3 * f + k]);
      }
    }
    for (int f : GeodesicPath.facesAt(mesh, fans, here, faces)) {
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner()[3 * f + k];
        double step = toVertex(v, here.at(mesh, 0), here.at(mesh, 1), here.at(mesh, 2));
        if (step < d[v]) {
          d[v] = step;
          before[v] = -1;
          heap.put(v, step);
        }
      }
    }
    while (heap.size() > 0) {
      int v = heap.take();
      if (goal.get(v)) {
        backtrack(v, before);
        return;
      }
      for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
        int h = fans.halfEdge(i);
        if (faces.test(h / 3)) {
          relax(v, mesh.corner()[Topology.next(h)], d, before, heap);
          relax(v, mesh.corner()[Topology.prev(h)], d, before, heap);
        }
      }
    }
    throw new IllegalStateException("The distance field reached a point that no edge leads to");
  }

  private void relax(int v, int u, double[] d, int[] before, VertexHeap heap) {
    double there = d[v] + Faces.length(mesh, v, u);
    if (there < d[u]) {
      d[u] = there;
      before[u] = v;
      heap.put(u, there);
    }
  }

  private void backtrack(int last, int[] before) {
    int at = way.size();
    for (int v = last; v >= 0; v = before[v]) {
      int h = fans.halfEdge(fans.begin(v));
      way.add(at, vertex(h / 3, h % 3));
    }
    way.add(to);
  }
}
