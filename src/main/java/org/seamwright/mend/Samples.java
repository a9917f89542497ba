package org.seamwright.mend;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Places spread over a mesh, each standing for the same share of its area, with the normal of the
 * face there. No chance is involved: faces are walked through in order, and places inside a face
 * follow a low-discrepancy sequence (M. Roberts, "The unreasonable effectiveness of quasirandom
 * sequences", 2018: powers of the plastic number).
 */
final class Samples {
  private static final double PLASTIC = 0.7548776662466927;
  private static final double PLASTIC_SQUARED = 0.5698402909980532;

  /** Three per sample: x, y, z in mm. */
  final double[] at;

  /** Three per sample: unit normal of the face. */
  final double[] normal;

  /** One per sample: the face it lies on. */
  final int[] face;

  final int count;

  private Samples(int count) {
    this.count = count;
    face = new int[count];
    at = new double[3 * count];
    normal = new double[3 * count];
  }

  /** Spreads places over some faces of a mesh; none if they have no area. */
  static Samples of(Mesh mesh, int[] faces, int count) {
    double total = 0;
    for (int f : faces) {
      total += Faces.area(mesh, f);
    }
    if (!(total > 0)) {
      return new Samples(0);
    }
    Samples samples = new Samples(count);
    double step = total / count;
    double walked = 0;
    int next = 0;
    for (int i = 0; i < faces.length && next < count; i++) {
      walked += Faces.area(mesh, faces[i]);
      while (next < count && (next + 0.5) * step <= walked) {
        samples.place(mesh, faces[i], next++);
      }
    }
    // Rounding of the sum may leave the last place out.
    while (next < count) {
      samples.place(mesh, faces[faces.length - 1], next++);
    }
    return samples;
  }

  private void place(Mesh mesh, int face, int index) {
    this.face[index] = face;
    double u = (0.5 + index * PLASTIC) % 1;
    double v = (0.5 + index * PLASTIC_SQUARED) % 1;
    if (u + v > 1) {
      u = 1 - u;
      v = 1 - v;
    }
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    double[] p = mesh.xyz();
    for (int axis = 0; axis < 3; axis++) {
      at[3 * index + axis] = (1 - u - v) * p[a + axis] + u * p[b + axis] + v * p[c + axis];
    }
    double[] n = new double[3];
    Faces.normal(mesh, face, n);
    System.arraycopy(n, 0, normal, 3 * index, 3);
  }
}
