package org.seamwright.flatten;

import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * What the angles of a sheet's faces leave of a full turn: the curvature gathered at its vertices,
 * radians.
 */
final class Angles {
  private Angles() {}

  /**
   * Curvature at each vertex.
   *
   * @return inside 2π less the angles there; on the boundary π less the angles: how far the
   *     boundary turns
   */
  static double[] turn(RestShapes rest, boolean[] onBoundary) {
    double[] turn = new double[onBoundary.length];
    for (int v = 0; v < turn.length; v++) {
      turn[v] = onBoundary[v] ? Math.PI : 2 * Math.PI;
    }
    for (int h = 0; h < rest.corner().length; h++) {
      // The angle at a corner lies across from the half-edge after it.
      turn[rest.corner()[h]] -= angle(2 * rest.cotangent()[Topology.next(h)]);
    }
    return turn;
  }

  private static double angle(double cotangent) {
    return Math.atan2(1, cotangent);
  }

  static boolean[] onBoundary(Mesh sheet, Topology topology) {
    boolean[] on = new boolean[sheet.vertexCount()];
    for (int h = 0; h < sheet.corner().length; h++) {
      if (topology.twin(h) < 0) {
        on[sheet.corner()[h]] = true;
        on[sheet.corner()[Topology.next(h)]] = true;
      }
    }
    return on;
  }

  /** The same with 0 on the boundary. */
  static double[] inside(RestShapes rest, boolean[] onBoundary) {
    double[] turn = turn(rest, onBoundary);
    for (int v = 0; v < turn.length; v++) {
      turn[v] = onBoundary[v] ? 0 : turn[v];
    }
    return turn;
  }
}
