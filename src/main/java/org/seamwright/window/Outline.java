package org.seamwright.window;

import java.util.BitSet;
import org.seamwright.mesh.Mesh;

/**
 * Vertices that stick out farthest in directions spread evenly over the sphere: a stand-in for the
 * convex hull, for fitting the piece into the window. Cost O(vertices · directions).
 *
 * <p>With 200 directions a smooth convex piece sticks out of it by under 1 percent of its size,
 * which the margin of a fitted piece takes up.
 */
final class Outline {
  private static final int DIRECTIONS = 200;

  private Outline() {}

  /** The outline's points, 3 numbers each, mm; empty for a mesh without faces. */
  static double[] of(Mesh mesh) {
    if (mesh.faceCount() == 0) {
      return new double[0];
    }
    int[] used = used(mesh);
    double[] outline = new double[3 * DIRECTIONS];
    for (int i = 0; i < DIRECTIONS; i++) {
      int v = farthest(mesh, used, SphereSpiral.direction(i, DIRECTIONS));
      System.arraycopy(mesh.xyz(), 3 * v, outline, 3 * i, 3);
    }
    return outline;
  }

  private static int[] used(Mesh mesh) {
    BitSet used = new BitSet(mesh.vertexCount());
    for (int v : mesh.corner()) {
      used.set(v);
    }
    return used.stream().toArray();
  }

  private static int farthest(Mesh mesh, int[] used, double[] d) {
    double[] p = mesh.xyz();
    double most = Double.NEGATIVE_INFINITY;
    int farthest = 0;
    for (int v : used) {
      double reach = p[3 * v] * d[0] + p[3 * v + 1] * d[1] + p[3 * v + 2] * d[2];
      if (reach > most) {
        most = reach;
        farthest = v;
      }
    }
    return farthest;
  }
}
