package org.seamwright.geodesic;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * Splits faces at the new vertices on their edges, in the order of the faces, each piece turned as
 * its parent is.
 */
final class Pieces {
  private final Mesh mesh;
  private final NewVertices vertices;
  private final double[] xyz;
  private int[] corner;
  private int[] parent;
  private int count;
  private final int[] mid = new int[3];

  Pieces(Mesh mesh, NewVertices vertices) {
    this.mesh = mesh;
    this.vertices = vertices;
    this.xyz = vertices.allXyz();
    int room = mesh.faceCount() + 3 * vertices.count() + 8;
    corner = new int[3 * room];
    parent = new int[room];
  }

  double[] xyz() {
    return xyz;
  }

  int count() {
    return count;
  }

  int corner(int h) {
    return corner[h];
  }

  int[] corners() {
    return Arrays.copyOf(corner, 3 * count);
  }

  int[] parents() {
    return Arrays.copyOf(parent, count);
  }

  /** Appends a face as it is. */
  void keep(int face) {
    int[] c = mesh.corner();
    add(face, c[3 * face], c[3 * face + 1], c[3 * face + 2]);
  }

  /** Appends one piece of a face. */
  void add(int face, int a, int b, int c) {
    if (count == parent.length) {
      parent = Arrays.copyOf(parent, 2 * count);
      corner = Arrays.copyOf(corner, 6 * count);
    }
    corner[3 * count] = a;
    corner[3 * count + 1] = b;
    corner[3 * count + 2] = c;
    parent[count++] = face;
  }

  /** Number of the vertex on the edge between two old vertices in the cut mesh, or -1. */
  int onEdge(int a, int b) {
    int index = vertices.onEdge(a, b);
    return index < 0 ? -1 : mesh.vertexCount() + index;
  }

  /**
   * Appends a face split at the new vertices on its edges: in two from the opposite corner, in
   * three with the quad on its shorter diagonal, in four round the middle triangle, or unsplit. A
   * face that names a vertex twice has no edges and stays as it is.
   */
  void split(int face) {
    int[] c = mesh.corner();
    int a = c[3 * face];
    int b = c[3 * face + 1];
    int d = c[3 * face + 2];
    if (a == b || b == d || d == a) {
      keep(face);
      return;
    }
    mid[0] = onEdge(a, b);
    mid[1] = onEdge(b, d);
    mid[2] = onEdge(d, a);
    int cuts = (mid[0] < 0 ? 0 : 1) + (mid[1] < 0 ? 0 : 1) + (mid[2] < 0 ? 0 : 1);
    switch (cuts) {
      case 0 -> keep(face);
      case 1 -> splitInTwo(face);
      case 2 -> splitInThree(face);
      default -> {
        add(face, a, mid[0], mid[2]);
        add(face, mid[0], b, mid[1]);
        add(face, mid[2], mid[1], d);
        add(face, mid[0], mid[1], mid[2]);
      }
    }
  }

  private void splitInTwo(int face) {
    int k = mid[0] >= 0 ? 0 : mid[1] >= 0 ? 1 : 2;
    int[] c = mesh.corner();
    int a = c[3 * face + k];
    int b = c[3 * face + (k + 1) % 3];
    int apex = c[3 * face + (k + 2) % 3];
    add(face, a, mid[k], apex);
    add(face, mid[k], b, apex);
  }

  private void splitInThree(int face) {
    int k = mid[0] < 0 ? 0 : mid[1] < 0 ? 1 : 2;
    int[] c = mesh.corner();
    int a = c[3 * face + k];
    int b = c[3 * face + (k + 1) % 3];
    int apex = c[3 * face + (k + 2) % 3];
    int right = mid[(k + 1) % 3];
    int left = mid[(k + 2) % 3];
    add(face, left, right, apex);
    double leftB = distance2(left, b);
    double rightA = distance2(right, a);
    // Where both are alike the lower vertex decides, so that mirror images split alike.
    if (leftB < rightA || (leftB == rightA && b < a)) {
      add(face, a, b, left);
      add(face, left, b, right);
    } else {
      add(face, a, b, right);
      add(face, a, right, left);
    }
  }

  private double distance2(int u, int v) {
    double dx = xyz[3 * u] - xyz[3 * v];
    double dy = xyz[3 * u + 1] - xyz[3 * v + 1];
    double dz = xyz[3 * u + 2] - xyz[3 * v + 2];
    return dx * dx + dy * dy + dz * dz;
  }

  /** Whether the pieces from one number on all face the way of the face and have area. */
  boolean sound(int face, int first) {
    int[] c = mesh.corner();
    for (int i = first; i < count; i++) {
      double dot =
          Normals.dot(
              xyz,
              c[3 * face],
              c[3 * face + 1],
              c[3 * face + 2],
              corner[3 * i],
              corner[3 * i + 1],
              corner[3 * i + 2]);
      if (!(dot > 0)) {
        return false;
      }
    }
    return true;
  }
}
