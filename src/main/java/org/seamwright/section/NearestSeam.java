package org.seamwright.section;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Finds the seam of a section with an earlier one that lies nearest to a face, in space. */
final class NearestSeam {
  private final Mesh mesh;
  private final SeamLines seams;

  /**
   * Prepares nothing: asked only for the few faces where a lap runs on into a third section.
   *
   * @param mesh the mesh the seams were found on
   */
  NearestSeam(Mesh mesh, SeamLines seams) {
    this.mesh = mesh;
    this.seams = seams;
  }

  /** Index of the pair whose seam lies nearest to a face of a later cut of the mesh. */
  int of(Mesh later, int face, int id) {
    double[] centre = new double[3];
    Faces.centroid(later, face, centre);
    double least = Double.POSITIVE_INFINITY;
    int nearest = -1;
    for (int i = 0; i < seams.pair().length; i++) {
      if (seams.pairs().high()[seams.pair()[i]] == id) {
        double far = farFromMiddle(seams.halfEdge()[i], centre);
        if (far < least) {
          least = far;
          nearest = seams.pair()[i];
        }
      }
    }
    return nearest;
  }

  private double farFromMiddle(int h, double[] from) {
    double[] p = mesh.xyz();
    int a = mesh.corner()[h];
    int b = mesh.corner()[Topology.next(h)];
    double sum = 0;
    for (int axis = 0; axis < 3; axis++) {
      double d = (p[3 * a + axis] + p[3 * b + axis]) / 2 - from[axis];
      sum += d * d;
    }
    return sum;
  }
}
