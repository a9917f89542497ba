package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Takes a way round a vertex that it passes at less than a straight angle on one side: unfolded,
 * the faces on that side let it go straight. After S.-Q. Xin and G.-J. Wang, "Efficiently
 * determining a locally exact shortest path on polyhedral surfaces", 2007.
 */
final class VertexBypass {
  /** A new point keeps this share of its edge from the far end, so that it belongs to that edge. */
  private static final double END_SHARE = 1e-6;

  private final Mesh mesh;
  private final Topology topology;
  private final VertexFans fans;
  private final IntPredicate faces;

  VertexBypass(Mesh mesh, Topology topology, VertexFans fans, IntPredicate faces) {
    this.mesh = mesh;
    this.topology = topology;
    this.fans = fans;
    this.faces = faces;
  }

  /** Edges passed at most on one side: only a vertex of needles has more below a straight angle. */
  private static final int MOST_SPOKES = 64;

  /** An edge at the vertex, how long it is, mm, and its angle from the step before. */
  private record Spoke(int halfEdge, double length, double angle) {}

  /** One side of the vertex: the edges between the steps before and after, and its whole angle. */
  private record Side(List<Spoke> spokes, double whole) {}

  private Side best;

  /**
   * Points to pass instead of a vertex.
   *
   * @return empty if neither side is less than straight
   */
  List<SurfacePoint> round(SurfacePoint before, int vertex, SurfacePoint after) {
    best = null;
    for (int i = fans.begin(vertex); i < fans.begin(vertex + 1); i++) {
      int h = fans.halfEdge(i);
      if (faces.test(h / 3) && SurfaceRim.liesIn(mesh, before, h / 3)) {
        double[] start = direction(vertex, before);
        turn(vertex, after, h, start, 0, new ArrayList<>());
        turn(vertex, after, Topology.prev(h), start, 0, new ArrayList<>());
      }
    }
    return best == null ? List.of() : crossings(vertex, before, after, best);
  }

  /**
   * Turns on about a vertex out of a face over one of its edges there, into each other face at it,
   * until one holds the step after. Stops at a straight angle.
   *
   * @param from direction turned to so far, and at which angle from the step before
   */
  private void turn(
      int vertex, SurfacePoint after, int exit, double[] from, double angle, List<Spoke> passed) {
    int end = mesh.corner()[exit] == vertex ? Topology.next(exit) : exit;
    double[] along = direction(vertex, PathTrace.vertex(end / 3, end % 3));
    double there = angle + angle(from, along);
    if (!(there < Math.PI)) {
      return;
    }
    List<Spoke> spokes = new ArrayList<>(passed);
    spokes.add(new Spoke(exit, norm(along), there));
    for (int entry : across(exit)) {
      if (faces.test(entry / 3)) {
        if (SurfaceRim.liesIn(mesh, after, entry / 3)) {
          double whole = there + angle(along, direction(vertex, after));
          if (whole < Math.PI && (best == null || whole < best.whole)) {
            best = new Side(spokes, whole);
          }
        } else if (spokes.size() < MOST_SPOKES) {
          turn(vertex, after, otherEdge(vertex, entry), along, there, spokes);
        }
      }
    }
  }

  /** The other half-edges of an edge. */
  private int[] across(int h) {
    int twin = topology.twin(h);
    if (twin != Topology.BRANCHING) {
      return twin < 0 ? new int[0] : new int[] {twin};
    }
    int a = mesh.corner()[h];
    int b = mesh.corner()[Topology.next(h)];
    IntList others = new IntList(8);
    for (int i = fans.begin(a); i < fans.begin(a + 1); i++) {
      int g = fans.halfEdge(i);
      int edge =
          mesh.corner()[Topology.next(g)] == b
              ? g
              : mesh.corner()[Topology.prev(g)] == b ? Topology.prev(g) : h;
      if (edge / 3 != h / 3) {
        others.add(edge);
      }
    }
    return others.toArray();
  }

  /** The edge of an edge's face that meets it at a vertex. */
  private int otherEdge(int vertex, int h) {
    return mesh.corner()[h] == vertex ? Topology.prev(h) : Topology.next(h);
  }

  private List<SurfacePoint> crossings(
      int vertex, SurfacePoint before, SurfacePoint after, Side side) {
    double rb = norm(direction(vertex, before));
    double ra = norm(direction(vertex, after));
    List<SurfacePoint> points = new ArrayList<>();
    for (Spoke spoke : side.spokes) {
      double r =
          rb
              * ra
              * Math.sin(side.whole)
              / (rb * Math.sin(spoke.angle) + ra * Math.sin(side.whole - spoke.angle));
      double share = Math.max(END_SHARE, Math.min(1 - END_SHARE, r / spoke.length));
      int h = spoke.halfEdge;
      points.add(PathTrace.onEdge(h / 3, h % 3, mesh.corner()[h] == vertex ? share : 1 - share));
    }
    return points;
  }

  private double[] direction(int vertex, SurfacePoint to) {
    return new double[] {
      to.at(mesh, 0) - mesh.x(vertex),
      to.at(mesh, 1) - mesh.y(vertex),
      to.at(mesh, 2) - mesh.z(vertex)
    };
  }

  private static double norm(double[] u) {
    return Math.sqrt(u[0] * u[0] + u[1] * u[1] + u[2] * u[2]);
  }

  private static double angle(double[] u, double[] v) {
    double x = u[1] * v[2] - u[2] * v[1];
    double y = u[2] * v[0] - u[0] * v[2];
    double z = u[0] * v[1] - u[1] * v[0];
    return Math.atan2(Math.sqrt(x * x + y * y + z * z), u[0] * v[0] + u[1] * v[1] + u[2] * v[2]);
  }
}
