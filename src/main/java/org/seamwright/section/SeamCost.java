package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.measure.Crease;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * What a seam costs per millimetre, place by place. A seam along an edge of the mesh costs the
 * edge's factor times the lesser of its two faces' factors; a seam through a face costs the face's
 * factor.
 *
 * <p>An edge's factor falls from 1 to the weight of {@link SeamWeights} as the surface turns there
 * by {@value #LEAST_DEGREES}° to {@value #FULL_DEGREES}°. Lines of such edges that are shorter than
 * asked don't count: on a scan they are noise, and nobody lays a seam along them.
 *
 * @param edge one entry per half-edge
 * @param face one entry per face
 */
record SeamCost(float[] edge, float[] face) {
  /** A turn that facets of a curved face may have as well. */
  static final double LEAST_DEGREES = 20;

  /** A turn that everybody calls an edge. */
  static final double FULL_DEGREES = 45;

  /** An edge that costs more than this is no line that a seam keeps to. */
  private static final float LINE = 0.9f;

  /**
   * Looks at the edges of a mesh.
   *
   * @param rings its edges
   * @param faceFactor one entry per face
   * @param leastMm shortest line of edges that counts
   */
  static SeamCost of(
      Mesh mesh, EdgeRings rings, SeamWeights weights, float[] faceFactor, double leastMm) {
    int[] corner = mesh.corner();
    Topology topology = rings.topology();
    float[] edge = new float[corner.length];
    Arrays.fill(edge, 1);
    if (weights.crease() < 1 || weights.valley() < 1) {
      double[] degrees = Crease.degrees(mesh, topology);
      for (int h = 0; h < corner.length; h++) {
        int twin = topology.twin(h);
        if (twin >= 0 && degrees[h] > LEAST_DEGREES) {
          double weight = isValley(mesh, h, twin) ? weights.valley() : weights.crease();
          double share = (degrees[h] - LEAST_DEGREES) / (FULL_DEGREES - LEAST_DEGREES);
          edge[h] = (float) (1 - (1 - weight) * Math.min(1, share));
        }
      }
      dropShort(mesh, edge, leastMm);
    }
    return new SeamCost(edge, faceFactor);
  }

  /** Whether a half-edge lies on a line that seams keep to. */
  boolean isLine(int h) {
    return edge[h] < LINE;
  }

  /** Cost per millimetre of a seam along an edge between two half-edges. */
  double along(int h, int other) {
    return Math.min(edge[h], edge[other]) * (double) Math.min(face[h / 3], face[other / 3]);
  }

  /** Whether the far corner of the face across lies in front of the face of a half-edge. */
  private static boolean isValley(Mesh mesh, int h, int twin) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    double[] normal = new double[3];
    Faces.normal(mesh, h / 3, normal);
    int a = 3 * corner[h];
    int far = 3 * corner[Topology.prev(twin)];
    double height = 0;
    for (int axis = 0; axis < 3; axis++) {
      height += normal[axis] * (p[far + axis] - p[a + axis]);
    }
    return height > 0;
  }

  /**
   * Edges hang together at their ends; lines whose length in all is too short lose their factor.
   */
  private static void dropShort(Mesh mesh, float[] edge, double leastMm) {
    int[] corner = mesh.corner();
    int[] root = new int[mesh.vertexCount()];
    Arrays.setAll(root, v -> v);
    for (int h = 0; h < edge.length; h++) {
      if (edge[h] < 1) {
        int a = find(root, corner[h]);
        int b = find(root, corner[Topology.next(h)]);
        root[Math.max(a, b)] = Math.min(a, b);
      }
    }
    double[] length = new double[root.length];
    for (int h = 0; h < edge.length; h++) {
      if (edge[h] < 1) {
        // Both half-edges of an edge count half of it.
        length[find(root, corner[h])] +=
            Faces.length(mesh, corner[h], corner[Topology.next(h)]) / 2;
      }
    }
    for (int h = 0; h < edge.length; h++) {
      if (edge[h] < 1 && length[find(root, corner[h])] < leastMm) {
        edge[h] = 1;
      }
    }
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }
}
