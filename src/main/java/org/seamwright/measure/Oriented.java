package org.seamwright.measure;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Places of a surface with their unit normals and weights: all faces by their middles, or samples
 * spread evenly over the area.
 *
 * @param xyz places, 3 numbers each, mm
 * @param normal unit normals, 3 numbers each
 * @param weight area that each stands for, mm²
 */
record Oriented(double[] xyz, double[] normal, double[] weight) {
  /** Steps of an additive recurrence that fills the square evenly, by the plastic number 1.3247. */
  private static final double STEP_U = 0.7548776662466927;

  private static final double STEP_V = 0.5698402909980532;

  int count() {
    return weight.length;
  }

  /** Every face by its middle; those without area weigh nothing. */
  static Oriented faces(Mesh mesh) {
    int faces = mesh.faceCount();
    double[] xyz = new double[3 * faces];
    double[] normal = new double[3 * faces];
    double[] weight = new double[faces];
    double[] own = new double[3];
    for (int f = 0; f < faces; f++) {
      Faces.centroid(mesh, f, own);
      System.arraycopy(own, 0, xyz, 3 * f, 3);
      Faces.normal(mesh, f, own);
      System.arraycopy(own, 0, normal, 3 * f, 3);
      weight[f] = Faces.area(mesh, f);
    }
    return new Oriented(xyz, normal, weight);
  }

  /** So many samples, each for the same area; the same for the same mesh. */
  static Oriented spread(Mesh mesh, int count) {
    double total = Area.ofFaces(mesh);
    double[] xyz = new double[3 * count];
    double[] normal = new double[3 * count];
    double[] weight = new double[count];
    double[] own = new double[3];
    double passed = 0;
    int face = -1;
    for (int i = 0; i < count; i++) {
      double target = (i + 0.5) / count * total;
      while (passed <= target && face < mesh.faceCount() - 1) {
        face++;
        passed += Faces.area(mesh, face);
      }
      double u = i * STEP_U % 1;
      double v = i * STEP_V % 1;
      boolean beyond = u + v > 1;
      place(mesh, face, beyond ? 1 - u : u, beyond ? 1 - v : v, own);
      System.arraycopy(own, 0, xyz, 3 * i, 3);
      Faces.normal(mesh, face, own);
      System.arraycopy(own, 0, normal, 3 * i, 3);
      weight[i] = total / count;
    }
    return new Oriented(xyz, normal, weight);
  }

  private static void place(Mesh mesh, int face, double u, double v, double[] into) {
    int[] corner = mesh.corner();
    double[] p = mesh.xyz();
    for (int axis = 0; axis < 3; axis++) {
      double a = p[3 * corner[3 * face] + axis];
      double b = p[3 * corner[3 * face + 1] + axis];
      double c = p[3 * corner[3 * face + 2] + axis];
      into[axis] = a + u * (b - a) + v * (c - a);
    }
  }
}
