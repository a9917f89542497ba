package org.seamwright.region;

import java.util.Arrays;
import org.seamwright.mesh.Topology;

/**
 * Turns edges inside the flat faces of the piece as read until the pieces of each are as round as
 * their corners allow: Lawson's flips towards the Delaunay triangulation (C. L. Lawson, "Software
 * for C1 surface interpolation", 1977). Only edges between two pieces of the same face with the
 * same treatment are turned, and none that is marked, so neither the surface nor what is to be done
 * to it changes.
 */
final class Flips {
  /**
   * Sum of the two cotangents across an edge below which it is turned; just under 0, so that four
   * corners on a circle stay as they are whatever the rounding.
   */
  private static final double LEAST_COTANGENTS = -1e-6;

  /** Least area of a turned face, as a share of that of the face before: far above rounding. */
  private static final double LEAST_AREA = 1e-6;

  private final EditableSurface surface;

  Flips(EditableSurface surface) {
    this.surface = surface;
  }

  /**
   * Turns edges of some faces and of the faces those meet.
   *
   * @param faces where to start
   * @param from faces from this number on are looked at as well
   */
  void improve(int[] faces, int from) {
    int[] stack = new int[faces.length + surface.faceCount() - from + 64];
    int top = 0;
    for (int f = surface.faceCount() - 1; f >= from; f--) {
      stack[top++] = f;
    }
    for (int i = faces.length - 1; i >= 0; i--) {
      stack[top++] = faces[i];
    }
    while (top > 0) {
      int face = stack[--top];
      for (int h = 3 * face; h < 3 * face + 3; h++) {
        if (isToBeTurned(h)) {
          int other = surface.ring(h) / 3;
          surface.flip(h);
          stack = top + 2 > stack.length ? Arrays.copyOf(stack, 2 * stack.length) : stack;
          stack[top++] = other;
          stack[top++] = face;
          break;
        }
      }
    }
  }

  private boolean isToBeTurned(int h) {
    int g = surface.ring(h);
    if (g == h
        || surface.ring(g) != h
        || surface.isMarked(h)
        || surface.parent(h / 3) != surface.parent(g / 3)
        || surface.treatment(h / 3) != surface.treatment(g / 3)
        || surface.from(g) != surface.to(h)) {
      return false;
    }
    int a = surface.from(h);
    int b = surface.to(h);
    int c = surface.from(Topology.prev(h));
    int d = surface.from(Topology.prev(g));
    if (c == d) {
      return false;
    }
    // Across the turned edge the sum has the other sign in exact numbers; ask for it in these too,
    // so that no edge is turned to and fro.
    return cotangent(c, a, b) + cotangent(d, a, b) < LEAST_COTANGENTS
        && cotangent(a, c, d) + cotangent(b, c, d) > 0
        && turnsAlike(a, b, c, d);
  }

  /** Cotangent of the angle at an apex between two vertices; not finite for a flat one. */
  private double cotangent(int apex, int u, int v) {
    double ux = surface.at(u, 0) - surface.at(apex, 0);
    double uy = surface.at(u, 1) - surface.at(apex, 1);
    double uz = surface.at(u, 2) - surface.at(apex, 2);
    double vx = surface.at(v, 0) - surface.at(apex, 0);
    double vy = surface.at(v, 1) - surface.at(apex, 1);
    double vz = surface.at(v, 2) - surface.at(apex, 2);
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    return (ux * vx + uy * vy + uz * vz) / Math.sqrt(nx * nx + ny * ny + nz * nz);
  }

  /** Whether the faces after the turn, c d b and d c a, face the way of a b c and have an area. */
  private boolean turnsAlike(int a, int b, int c, int d) {
    double[] old = new double[3];
    double[] one = new double[3];
    double[] two = new double[3];
    cross(a, b, c, old);
    cross(c, d, b, one);
    cross(d, c, a, two);
    double whole = old[0] * old[0] + old[1] * old[1] + old[2] * old[2];
    double first = old[0] * one[0] + old[1] * one[1] + old[2] * one[2];
    double second = old[0] * two[0] + old[1] * two[1] + old[2] * two[2];
    return first > LEAST_AREA * whole && second > LEAST_AREA * whole;
  }

  private void cross(int p, int u, int v, double[] into) {
    double ux = surface.at(u, 0) - surface.at(p, 0);
    double uy = surface.at(u, 1) - surface.at(p, 1);
    double uz = surface.at(u, 2) - surface.at(p, 2);
    double vx = surface.at(v, 0) - surface.at(p, 0);
    double vy = surface.at(v, 1) - surface.at(p, 1);
    double vz = surface.at(v, 2) - surface.at(p, 2);
    into[0] = uy * vz - uz * vy;
    into[1] = uz * vx - ux * vz;
    into[2] = ux * vy - uy * vx;
  }
}
