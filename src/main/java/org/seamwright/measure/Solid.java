package org.seamwright.measure;

import java.util.Arrays;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * A closed part of a mesh: one that divides space into inside and outside, whichever way its faces
 * are turned.
 *
 * <p>A place is inside if a ray from it crosses the part an odd number of times. The ray runs along
 * x; which faces it crosses is decided in the plane across, edge by edge, by the same arithmetic
 * from both sides of an edge, so none is counted twice or missed. O(log n) and the faces along the
 * ray. Queries may run on several threads.
 */
public final class Solid {
  private final Mesh mesh;
  private final FaceTree tree;
  private final Bounds bounds;

  private Solid(Mesh mesh) {
    this.mesh = mesh;
    this.tree = FaceTree.of(mesh);
    this.bounds = mesh.bounds();
  }

  /** Takes a closed part out of a mesh. */
  public static Solid of(Mesh whole, int[] faces) {
    int[] corner = new int[3 * faces.length];
    for (int i = 0; i < faces.length; i++) {
      System.arraycopy(whole.corner(), 3 * faces[i], corner, 3 * i, 3);
    }
    return new Solid(Mesh.of(whole.xyz(), corner));
  }

  /** For each part whether each edge has an even number of its faces, as a closed surface's has. */
  public static boolean[] closed(Mesh mesh, Topology topology, Parts parts) {
    boolean[] closed = new boolean[parts.count()];
    Arrays.fill(closed, true);
    EdgeRings rings = topology.branchingEdges() > 0 ? EdgeRings.of(mesh, topology) : null;
    for (int h = 0; h < mesh.corner().length; h++) {
      int part = parts.of()[h / 3];
      if (topology.twin(h) == Topology.OPEN) {
        closed[part] = false;
      } else if (topology.twin(h) == Topology.BRANCHING && closed[part]) {
        int around = 1;
        for (int g = rings.next(h); g != h; g = rings.next(g)) {
          around += parts.of()[g / 3] == part ? 1 : 0;
        }
        closed[part] = around % 2 == 0;
      }
    }
    return closed;
  }

  /** Its box, mm. */
  public Bounds bounds() {
    return bounds;
  }

  /** Whether a place is inside; on the surface itself it may be either. */
  public boolean contains(double x, double y, double z) {
    if (x < bounds.minX()
        || x > bounds.maxX()
        || y < bounds.minY()
        || y > bounds.maxY()
        || z < bounds.minZ()
        || z > bounds.maxZ()) {
      return false;
    }
    boolean[] odd = {false};
    tree.inBox(
        new Bounds(x, y, z, bounds.maxX(), y, z), f -> odd[0] ^= crossedBeyond(mesh, f, x, y, z));
    return odd[0];
  }

  /** Distance of a place from the surface, mm; below 0 inside. */
  public double signedDistance(double x, double y, double z) {
    double distance =
        tree.nearest(x, y, z)
            .map(
                at ->
                    Math.sqrt(
                        square(at.at(mesh, 0) - x)
                            + square(at.at(mesh, 1) - y)
                            + square(at.at(mesh, 2) - z)))
            .orElse(Double.POSITIVE_INFINITY);
    return contains(x, y, z) ? -distance : distance;
  }

  private static double square(double value) {
    return value * value;
  }

  /** Whether a ray along x from a place crosses a face. */
  static boolean crossedBeyond(Mesh mesh, int face, double x, double y, double z) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    boolean odd = false;
    for (int k = 0; k < 3; k++) {
      int u = corner[3 * face + k];
      int v = corner[3 * face + (k + 1) % 3];
      int low = 3 * Math.min(u, v);
      int high = 3 * Math.max(u, v);
      if (p[low + 1] > y != p[high + 1] > y) {
        double run = p[high + 1] - p[low + 1];
        double side = (z - p[low + 2]) * run - (p[high + 2] - p[low + 2]) * (y - p[low + 1]);
        odd ^= run > 0 ? side < 0 : side > 0;
      }
    }
    return odd && crossingX(mesh, face, y, z) > x;
  }

  /** Where the line along x through (y, z) meets the plane of a face. */
  private static double crossingX(Mesh mesh, int face, double y, double z) {
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double at = p[a] - (ny * (y - p[a + 1]) + nz * (z - p[a + 2])) / nx;
    double least = Math.min(p[a], Math.min(p[b], p[c]));
    double most = Math.max(p[a], Math.max(p[b], p[c]));
    // Nearly edge-on the quotient is noise; the face itself bounds it.
    return Double.isNaN(at) ? (least + most) / 2 : Math.max(least, Math.min(most, at));
  }
}
