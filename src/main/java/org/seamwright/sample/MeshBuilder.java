package org.seamwright.sample;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/** Collects vertices and faces of a piece in the making. Not safe for several threads. */
final class MeshBuilder {
  private double[] xyz = new double[3 * 1024];
  private int[] corner = new int[3 * 2048];
  private int vertices;
  private int faces;

  /** Adds a vertex, coordinates in mm, and gives its number. */
  int vertex(double x, double y, double z) {
    if (3 * vertices == xyz.length) {
      xyz = Arrays.copyOf(xyz, 2 * xyz.length);
    }
    xyz[3 * vertices] = x;
    xyz[3 * vertices + 1] = y;
    xyz[3 * vertices + 2] = z;
    return vertices++;
  }

  /**
   * Adds a face, counter-clockwise seen from outside; one that names a vertex twice is left out.
   */
  void face(int a, int b, int c) {
    if (a == b || b == c || c == a) {
      return;
    }
    if (3 * faces == corner.length) {
      corner = Arrays.copyOf(corner, 2 * corner.length);
    }
    corner[3 * faces] = a;
    corner[3 * faces + 1] = b;
    corner[3 * faces + 2] = c;
    faces++;
  }

  /** Moves a vertex, mm. */
  void move(int vertex, double x, double y, double z) {
    xyz[3 * vertex] = x;
    xyz[3 * vertex + 1] = y;
    xyz[3 * vertex + 2] = z;
  }

  /** Coordinate of a vertex, axis 0, 1 or 2, mm. */
  double at(int vertex, int axis) {
    return xyz[3 * vertex + axis];
  }

  /** The mesh so far, without vertices that no face uses. */
  Mesh build() {
    int[] number = new int[vertices];
    Arrays.fill(number, -1);
    double[] used = new double[3 * vertices];
    int[] renumbered = new int[3 * faces];
    int count = 0;
    for (int h = 0; h < 3 * faces; h++) {
      int v = corner[h];
      if (number[v] < 0) {
        System.arraycopy(xyz, 3 * v, used, 3 * count, 3);
        number[v] = count++;
      }
      renumbered[h] = number[v];
    }
    return Mesh.of(Arrays.copyOf(used, 3 * count), renumbered);
  }
}
