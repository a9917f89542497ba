package org.seamwright.measure;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Directions in which the curves behind the facets' edges leave their ends.
 *
 * <p>Inside a smooth face it is the edge laid into the tangent plane. Along a sharp edge it is the
 * line in which the tangent planes of both sides meet, so that a rim is a circle from both sides.
 * Along a border it is that of the circle through three border points, unless the border turns
 * there by a corner.
 */
final class EdgeTangents {
  /** Tangent planes that meet flatter than this (sine of the angle) give no reliable line. */
  private static final double MEETING = 0.1;

  /** A curve that would leave its chord by more than this cosine allows is taken as straight. */
  private static final double LEAST_COSINE = 0.5;

  private final Mesh mesh;
  private final Topology topology;
  private final SharpEdges sharp;
  private final CornerNormals normals;
  private final double borderCosine;

  private final Borders borders;
  private final double[] chord = new double[3];
  private final double[] other = new double[3];
  private final double[] tangent = new double[3];
  private final double[] normal = new double[3];

  /** Neighbours of vertices along the border. */
  static final class Borders {
    /** There are more than two. */
    private static final int BRANCHES = -2;

    private static final int NONE = -1;

    /** Two per vertex; empty if nothing is open. */
    private final int[] beside;

    private Borders(int[] beside) {
      this.beside = beside;
    }

    /** Finds them from the open edges. */
    static Borders of(Mesh mesh, Topology topology) {
      int[] beside = new int[topology.openEdges() > 0 ? 2 * mesh.vertexCount() : 0];
      Arrays.fill(beside, NONE);
      int[] corner = mesh.corner();
      for (int h = 0; beside.length > 0 && h < corner.length; h++) {
        if (topology.twin(h) == Topology.OPEN && namesThree(corner, h / 3)) {
          note(beside, corner[h], corner[Topology.next(h)]);
          note(beside, corner[Topology.next(h)], corner[h]);
        }
      }
      return new Borders(beside);
    }

    /** A face that names a vertex twice has no edges, though its entries say that they are open. */
    private static boolean namesThree(int[] corner, int face) {
      int a = corner[3 * face];
      int b = corner[3 * face + 1];
      int c = corner[3 * face + 2];
      return a != b && b != c && c != a;
    }

    private static void note(int[] beside, int vertex, int neighbour) {
      if (beside[2 * vertex] == NONE) {
        beside[2 * vertex] = neighbour;
      } else if (beside[2 * vertex + 1] == NONE) {
        beside[2 * vertex + 1] = neighbour;
      } else {
        beside[2 * vertex] = BRANCHES;
        beside[2 * vertex + 1] = BRANCHES;
      }
    }

    /** The border neighbour of a vertex that isn't the given one; negative if there is not one. */
    int other(int vertex, int neighbour) {
      return beside[2 * vertex] == neighbour ? beside[2 * vertex + 1] : beside[2 * vertex];
    }
  }

  EdgeTangents(
      Mesh mesh,
      Topology topology,
      SharpEdges sharp,
      CornerNormals normals,
      Borders borders,
      double limitDegrees) {
    this.mesh = mesh;
    this.topology = topology;
    this.sharp = sharp;
    this.normals = normals;
    this.borders = borders;
    this.borderCosine = Math.cos(Math.toRadians(limitDegrees));
  }

  /**
   * Finds the control point of an edge's curve near one of its ends.
   *
   * @param h the edge, seen from its face
   * @param fromStart whether the end meant is the start of h
   * @param into receives the point
   * @return how far the curve leaves the chord there: 1 - cosine of the angle; 0 if straight
   */
  double control(int h, boolean fromStart, double[] into) {
    int here = fromStart ? h : Topology.next(h);
    int there = fromStart ? Topology.next(h) : h;
    int v = 3 * mesh.corner()[here];
    int w = 3 * mesh.corner()[there];
    double[] p = mesh.xyz();
    double length2 = 0;
    for (int axis = 0; axis < 3; axis++) {
      chord[axis] = p[w + axis] - p[v + axis];
      length2 += chord[axis] * chord[axis];
    }
    double length = Math.sqrt(length2);
    normals.at(here, normal);
    if (!sharp.isSharp(h)) {
      intoPlane(chord);
    } else if (topology.twin(h) >= 0) {
      alongCrease(h, here);
    } else if (topology.twin(h) == Topology.OPEN) {
      alongBorder(v / 3, w / 3);
    } else {
      System.arraycopy(chord, 0, tangent, 0, 3);
    }
    double size = Math.sqrt(dot(tangent, tangent));
    double cosine = dot(tangent, chord) / (size * length);
    if (!(Math.abs(cosine) >= LEAST_COSINE)) {
      straight(into, p, v);
      return 0;
    }
    // The handle that makes a circular arc of the curve, where both ends turn alike.
    double handle = 2 * length / (3 * (1 + Math.abs(cosine))) * Math.signum(cosine) / size;
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = p[v + axis] + handle * tangent[axis];
    }
    return 1 - Math.abs(cosine);
  }

  private void straight(double[] into, double[] p, int v) {
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = p[v + axis] + chord[axis] / 3;
    }
  }

  /** Lays a vector into the tangent plane. */
  private void intoPlane(double[] vector) {
    double off = dot(vector, normal);
    for (int axis = 0; axis < 3; axis++) {
      tangent[axis] = vector[axis] - off * normal[axis];
    }
  }

  private void alongCrease(int h, int here) {
    int twin = topology.twin(h);
    int[] corner = mesh.corner();
    int beyond = corner[twin] == corner[here] ? twin : Topology.next(twin);
    normals.at(beyond, other);
    tangent[0] = normal[1] * other[2] - normal[2] * other[1];
    tangent[1] = normal[2] * other[0] - normal[0] * other[2];
    tangent[2] = normal[0] * other[1] - normal[1] * other[0];
    if (dot(tangent, tangent) < MEETING * MEETING) {
      intoPlane(chord);
    }
  }

  private void alongBorder(int vertex, int far) {
    System.arraycopy(chord, 0, tangent, 0, 3);
    int back = borders.other(vertex, far);
    if (back >= 0) {
      double ahead2 = dot(chord, chord);
      double back2 = 0;
      double along = 0;
      for (int axis = 0; axis < 3; axis++) {
        other[axis] = mesh.xyz()[3 * vertex + axis] - mesh.xyz()[3 * back + axis];
        back2 += other[axis] * other[axis];
        along += other[axis] * chord[axis];
      }
      if (along > borderCosine * Math.sqrt(ahead2 * back2)) {
        // Derivative of the parabola through three points; along a circle that of the circle.
        for (int axis = 0; axis < 3; axis++) {
          tangent[axis] = chord[axis] / ahead2 + other[axis] / back2;
        }
        double scale = Math.sqrt(ahead2);
        for (int axis = 0; axis < 3; axis++) {
          tangent[axis] *= scale;
        }
      }
    }
    intoPlane(tangent);
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }
}
