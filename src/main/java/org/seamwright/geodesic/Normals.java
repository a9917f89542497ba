package org.seamwright.geodesic;

/** Products of the normals of triangles over a coordinate array. */
final class Normals {
  private Normals() {}

  /** Dot product of the area vectors (normal times twice the area) of two triangles. */
  static double dot(double[] p, int a, int b, int c, int d, int e, int f) {
    return nx(p, a, b, c, 0) * nx(p, d, e, f, 0)
        + nx(p, a, b, c, 1) * nx(p, d, e, f, 1)
        + nx(p, a, b, c, 2) * nx(p, d, e, f, 2);
  }

  private static double nx(double[] p, int a, int b, int c, int axis) {
    int i = (axis + 1) % 3;
    int j = (axis + 2) % 3;
    return (p[3 * b + i] - p[3 * a + i]) * (p[3 * c + j] - p[3 * a + j])
        - (p[3 * b + j] - p[3 * a + j]) * (p[3 * c + i] - p[3 * a + i]);
  }
}
