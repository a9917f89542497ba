package org.seamwright.measure;

import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Tells edges of the piece from edges that only the division into facets made.
 *
 * <p>An edge is sharp if the surface turns there by more than a limit, or by clearly more than it
 * turns beside the edge: facets of one curved face turn alike. Edges without exactly two faces are
 * sharp.
 */
final class SharpEdges {
  /** Turns below this never count as sharp: what they can add to an area is below 0.1%. */
  private static final double LEAST_DEGREES = 10;

  /**
   * An edge is sharp if it turns this many times as far as the surface beside it. Steps of a mesh
   * rarely change by more from one row to the next.
   */
  private static final double RATIO = 3;

  private final Mesh mesh;
  private final double[] normals;
  private final FanWalk walk;

  private SharpEdges(Mesh mesh, Topology topology, double[] normals) {
    this.mesh = mesh;
    this.normals = normals;
    this.walk = new FanWalk(mesh.corner(), topology);
  }

  /**
   * Finds the sharp edges.
   *
   * @param normals unit normals of the faces
   * @param degrees turn at each half-edge
   * @param limitDegrees turn above which an edge is sharp in any case
   * @return one entry per half-edge
   */
  static boolean[] of(
      Mesh mesh, Topology topology, double[] normals, double[] degrees, double limitDegrees) {
    boolean[] hard = new boolean[degrees.length];
    boolean undecided = false;
    for (int h = 0; h < hard.length; h++) {
      hard[h] = topology.twin(h) < 0 || degrees[h] > limitDegrees;
      undecided |= !hard[h] && degrees[h] > LEAST_DEGREES;
    }
    if (!undecided) {
      return hard;
    }
    boolean[] sharp = hard.clone();
    SharpEdges edges = new SharpEdges(mesh, topology, normals);
    for (int h = 0; h < hard.length; h++) {
      if (!hard[h] && degrees[h] > LEAST_DEGREES && topology.twin(h) > h) {
        double beside =
            Math.max(edges.turnBeside(h, hard), edges.turnBeside(topology.twin(h), hard));
        if (degrees[h] > RATIO * Math.toDegrees(beside)) {
          sharp[h] = true;
          sharp[topology.twin(h)] = true;
        }
      }
    }
    return sharp;
  }

  /** Furthest turn about the edge's direction between its face and those around the face's tip. */
  private double turnBeside(int h, boolean[] hard) {
    int a = 3 * mesh.corner()[h];
    int b = 3 * mesh.corner()[Topology.next(h)];
    double[] p = mesh.xyz();
    double dx = p[b] - p[a];
    double dy = p[b + 1] - p[a + 1];
    double dz = p[b + 2] - p[a + 2];
    double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    double most = 0;
    for (int way = 0; way < 2; way++) {
      walk.start(Topology.prev(h), way == 0);
      while (walk.step(hard)) {
        int f = 3 * (h / 3);
        int g = 3 * (walk.at() / 3);
        double sign = walk.turned() ? -1 : 1;
        double gx = sign * normals[g];
        double gy = sign * normals[g + 1];
        double gz = sign * normals[g + 2];
        double along =
            (normals[f + 1] * gz - normals[f + 2] * gy) * dx
                + (normals[f + 2] * gx - normals[f] * gz) * dy
                + (normals[f] * gy - normals[f + 1] * gx) * dz;
        double cosine = normals[f] * gx + normals[f + 1] * gy + normals[f + 2] * gz;
        most = Math.max(most, Math.abs(Math.atan2(along / length, cosine)));
      }
      if (walk.isClosed()) {
        break;
      }
    }
    return most;
  }
}
