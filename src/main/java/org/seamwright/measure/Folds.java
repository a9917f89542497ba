package org.seamwright.measure;

import org.seamwright.basis.Sum;
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
  /** Finds the folded facets. */
  static Folds of(
      Mesh mesh, Topology topology, double[] normals, double[] degrees, double creaseDegrees) {
    int count = 0;
    Sum area = new Sum();
    Sum excess = new Sum();
    double[] around = null;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (isFolded(mesh, topology, normals, degrees, creaseDegrees, f)) {
        if (around == null) {
          around = vertexNormals(mesh, normals);
        }
        double facet = Faces.area(mesh, f);
        count++;
        area.add(facet);
        excess.add(facet * (1 - Math.max(0, cosine(mesh, normals, around, f))));
      }
    }
    return new Folds(count, area.value(), excess.value());
  }

  private static boolean isFolded(
      Mesh mesh,
      Topology topology,
      double[] normals,
      double[] degrees,
      double creaseDegrees,
      int f) {
    boolean up = false;
    boolean down = false;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      if (degrees[h] <= creaseDegrees) {
        return false;
      }
      if (topology.twin(h) >= 0) {
        boolean rises = goesUp(mesh, topology, normals, h);
        up |= rises;
        down |= !rises;
      }
    }
    return up && down;
  }

  /** Whether the face across an edge rises above the plane of the edge's own face. */
  private static boolean goesUp(Mesh mesh, Topology topology, double[] normals, int h) {
    int f = 3 * (h / 3);
    int base = 3 * mesh.corner()[h];
    int tip = 3 * mesh.corner()[Topology.prev(topology.twin(h))];
    double[] p = mesh.xyz();
    return (p[tip] - p[base]) * normals[f]
            + (p[tip + 1] - p[base + 1]) * normals[f + 1]
            + (p[tip + 2] - p[base + 2]) * normals[f + 2]
        > 0;
  }

  private static double[] vertexNormals(Mesh mesh, double[] normals) {
    double[] around = new double[mesh.xyz().length];
    for (int h = 0; h < mesh.corner().length; h++) {
      double area = Faces.area(mesh, h / 3);
      for (int axis = 0; axis < 3; axis++) {
        around[3 * mesh.corner()[h] + axis] += area * normals[3 * (h / 3) + axis];
      }
    }
    return around;
  }

  private static double cosine(Mesh mesh, double[] normals, double[] around, int f) {
    double x = 0;
    double y = 0;
    double z = 0;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      int v = 3 * mesh.corner()[h];
      double length =
          Math.sqrt(
              around[v] * around[v]
                  + around[v + 1] * around[v + 1]
                  + around[v + 2] * around[v + 2]);
      if (length > 0) {
        x += around[v] / length;
        y += around[v + 1] / length;
        z += around[v + 2] / length;
      }
    }
    double length = Math.sqrt(x * x + y * y + z * z);
    return length > 0
        ? (x * normals[3 * f] + y * normals[3 * f + 1] + z * normals[3 * f + 2]) / length
        : 0;
  }
}
