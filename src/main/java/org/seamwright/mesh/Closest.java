package org.seamwright.mesh;

/** Tests of one face against a point or a box; the sources are named at {@link FaceTree}. */
final class Closest {
  private Closest() {}

  /**
   * Closest point of a face.
   *
   * @param into receives the squared distance in mm² and the three barycentric weights
   */
  static void onFace(Mesh mesh, int face, double x, double y, double z, double[] into) {
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    double abx = p[b] - p[a];
    double aby = p[b + 1] - p[a + 1];
    double abz = p[b + 2] - p[a + 2];
    double acx = p[c] - p[a];
    double acy = p[c + 1] - p[a + 1];
    double acz = p[c + 2] - p[a + 2];
    double apx = x - p[a];
    double apy = y - p[a + 1];
    double apz = z - p[a + 2];
    double d1 = abx * apx + aby * apy + abz * apz;
    double d2 = acx * apx + acy * apy + acz * apz;
    double bb = abx * abx + aby * aby + abz * abz;
    double bc = abx * acx + aby * acy + abz * acz;
    double cc = acx * acx + acy * acy + acz * acz;
    double v;
    double w;
    double d3 = d1 - bb;
    double d4 = d2 - bc;
    double d5 = d1 - bc;
    double d6 = d2 - cc;
    double va = d3 * d6 - d5 * d4;
    double vb = d5 * d2 - d1 * d6;
    double vc = d1 * d4 - d3 * d2;
    if (d1 <= 0 && d2 <= 0) {
      v = 0;
      w = 0;
    } else if (d3 >= 0 && d4 <= d3) {
      v = 1;
      w = 0;
    } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
      v = d1 / (d1 - d3);
      w = 0;
    } else if (d6 >= 0 && d5 <= d6) {
      v = 0;
      w = 1;
    } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
      v = 0;
      w = d2 / (d2 - d6);
    } else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
      w = (d4 - d3) / ((d4 - d3) + (d5 - d6));
      v = 1 - w;
    } else {
      double sum = va + vb + vc;
      v = vb / sum;
      w = vc / sum;
    }
    double ex = apx - v * abx - w * acx;
    double ey = apy - v * aby - w * acy;
    double ez = apz - v * abz - w * acz;
    into[0] = ex * ex + ey * ey + ez * ez;
    into[1] = 1 - v - w;
    into[2] = v;
    into[3] = w;
  }

  /** Whether the face's own box meets a box. */
  static boolean faceBoxMeets(Mesh mesh, int face, Bounds bounds) {
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    return overlaps(p[a], p[b], p[c], bounds.minX(), bounds.maxX())
        && overlaps(p[a + 1], p[b + 1], p[c + 1], bounds.minY(), bounds.maxY())
        && overlaps(p[a + 2], p[b + 2], p[c + 2], bounds.minZ(), bounds.maxZ());
  }

  private static boolean overlaps(double a, double b, double c, double lo, double hi) {
    return Math.min(a, Math.min(b, c)) <= hi && Math.max(a, Math.max(b, c)) >= lo;
  }
}
