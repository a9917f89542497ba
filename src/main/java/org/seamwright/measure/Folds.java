package org.seamwright.measure;

import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Facets folded sharply at all edges, some up and some down, as in a Schwarz lantern or a very
 * rough scan. No edge of a designed piece does that over more than a corner, and the facets' area
 * then says little of the piece's, however fine they are.
 *
 * @param count number of such facets
 * @param areaMm2 their area
 * @param excessMm2 area they would lose if laid along the mean of the surface around them
 */
record Folds(int count, double areaMm2, double excessMm2) {
  /** Whether all edges of a facet turn beyond the limit, some up and some down. */
  static boolean isFolded(Mesh mesh, Topology topology, SharpEdges edges, double[] normal, int f) {
    boolean up = false;
    boolean down = false;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      if (!edges.isHard(h)) {
        return false;
      }
      if (topology.twin(h) >= 0) {
        boolean rises = goesUp(mesh, topology, normal, h);
        up |= rises;
        down |= !rises;
      }
    }
    return up && down;
  }

  /** Whether the face across an edge rises above the plane of the edge's own face. */
  private static boolean goesUp(Mesh mesh, Topology topology, double[] normal, int h) {
    int base = 3 * mesh.corner()[h];
    int tip = 3 * mesh.corner()[Topology.prev(topology.twin(h))];
    double[] p = mesh.xyz();
    return (p[tip] - p[base]) * normal[0]
            + (p[tip + 1] - p[base + 1]) * normal[1]
            + (p[tip + 2] - p[base + 2]) * normal[2]
        > 0;
  }

  /** Cosine between a facet and the mean of the faces around its corners. */
  static double cosine(Mesh mesh, Topology topology, Fans.Lists lists, double[] normal, int f) {
    double[] mean = new double[3];
    double[] around = new double[3];
    double[] face = new double[3];
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      int v = mesh.corner()[h];
      Arrays.fill(around, 0);
      for (int i = lists.begin(v); i < lists.end(v); i++) {
        int g = lists.corner(i) / 3;
        double area = Faces.area(mesh, g);
        Crease.normal(mesh, topology, g, face);
        for (int axis = 0; axis < 3; axis++) {
          around[axis] += area * face[axis];
        }
      }
      double length = Math.sqrt(dot(around, around));
      for (int axis = 0; axis < 3 && length > 0; axis++) {
        mean[axis] += around[axis] / length;
      }
    }
    double length = Math.sqrt(dot(mean, mean));
    return length > 0 ? dot(mean, normal) / length : 0;
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }
}
