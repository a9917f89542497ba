package org.seamwright.measure;

import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Tells edges of the piece from edges that only the division into facets made.
 *
 * <p>An edge is sharp if the surface turns there by more than a limit, or by clearly more than it
 * turns beside the edge: facets of one curved face turn alike. Edges without exactly two faces are
 * sharp. Each edge is looked at when it is asked for. Holds scratch: one per thread.
 */
final class SharpEdges {
  /**
   * Cosine of 10°: turns below never count as sharp: what they can add to an area is below 0.1%.
   */
  static final double LEAST_COSINE = Math.cos(Math.toRadians(10));

  /**
   * An edge is sharp if it turns this many times as far as the surface beside it. Steps of a mesh
   * rarely change by more from one row to the next.
   */
  private static final double RATIO = 3;

  private static final byte SHARP = 1;
  private static final byte SMOOTH = 2;

  private final Mesh mesh;
  private final Topology topology;
  private final double limitCosine;
  private final byte[] known;
  private final FanWalk walk;
  private final double[] here = new double[3];
  private final double[] there = new double[3];
  private final double[] along = new double[3];
  private final double[] last = new double[3];
  private final double[] face = new double[3];
  private boolean doubtful;

  /**
   * Prepares to tell.
   *
   * @param limitDegrees turn above which an edge is sharp in any case
   * @param known what has been told before, one entry per half-edge, shared between threads (all
   *     write the same); empty to remember nothing
   */
  SharpEdges(Mesh mesh, Topology topology, double limitDegrees, byte[] known) {
    this.mesh = mesh;
    this.topology = topology;
    this.limitCosine = Math.cos(Math.toRadians(limitDegrees));
    this.known = known;
    this.walk = new FanWalk(mesh.corner(), topology);
  }

  /** Cosine of the turn above which an edge is sharp in any case. */
  double limitCosine() {
    return limitCosine;
  }

  /** Whether an edge was met that turns so far that some would call it a crease, some a step. */
  boolean metDoubtful() {
    return doubtful;
  }

  /** Whether the edge of a half-edge is sharp. */
  boolean isSharp(int h) {
    if (h < known.length && known[h] != 0) {
      return known[h] == SHARP;
    }
    boolean sharp = decide(h);
    if (h < known.length) {
      known[h] = sharp ? SHARP : SMOOTH;
    }
    return sharp;
  }

  private boolean decide(int h) {
    int twin = topology.twin(h);
    if (twin < 0) {
      return true;
    }
    double cosine = cosine(h, twin);
    doubtful |=
        cosine < SmoothSurface.PERHAPS_CREASE_COSINE && cosine >= SmoothSurface.PERHAPS_STEP_COSINE;
    if (cosine >= LEAST_COSINE) {
      return false;
    }
    if (cosine < limitCosine) {
      return true;
    }
    // The chord of the angle: near enough to the angle, and quick.
    double enough = Math.sqrt(2 - 2 * cosine) / RATIO;
    return !bendsBeside(h, here, enough) && !bendsBeside(twin, there, enough);
  }

  /** Whether the surface turns at an edge by more than the limit, or the edge has not two faces. */
  boolean isHard(int h) {
    int twin = topology.twin(h);
    return twin < 0 || cosine(h, twin) < limitCosine;
  }

  private double cosine(int h, int twin) {
    Crease.normal(mesh, topology, h / 3, here);
    Crease.normal(mesh, topology, twin / 3, there);
    double cosine = here[0] * there[0] + here[1] * there[1] + here[2] * there[2];
    return mesh.corner()[h] == mesh.corner()[twin] ? -cosine : cosine;
  }

  /**
   * Whether the surface turns by at least an angle about the direction of an edge, between the
   * edge's face and one of those around the face's tip.
   *
   * @param own unit normal of the edge's face
   * @param tangent of the angle
   */
  private boolean bendsBeside(int h, double[] own, double tangent) {
    int[] corner = mesh.corner();
    int a = 3 * corner[h];
    int b = 3 * corner[Topology.next(h)];
    double[] p = mesh.xyz();
    along[0] = p[b] - p[a];
    along[1] = p[b + 1] - p[a + 1];
    along[2] = p[b + 2] - p[a + 2];
    double least = tangent * Math.sqrt(dot(along, along));
    for (int way = 0; way < 2; way++) {
      walk.start(Topology.prev(h), way == 0);
      System.arraycopy(own, 0, last, 0, 3);
      while (topology.twin(walk.exit()) >= 0) {
        int exit = walk.exit();
        walk.step();
        Crease.normal(mesh, topology, topology.twin(exit) / 3, face);
        if (walk.turned()) {
          for (int axis = 0; axis < 3; axis++) {
            face[axis] = -face[axis];
          }
        }
        if (walk.isClosed() || dot(last, face) < limitCosine) {
          break;
        }
        double turn =
            (own[1] * face[2] - own[2] * face[1]) * along[0]
                + (own[2] * face[0] - own[0] * face[2]) * along[1]
                + (own[0] * face[1] - own[1] * face[0]) * along[2];
        if (Math.abs(turn) >= least * dot(own, face)) {
          return true;
        }
        System.arraycopy(face, 0, last, 0, 3);
      }
      if (walk.isClosed()) {
        break;
      }
    }
    return false;
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }
}
