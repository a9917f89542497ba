package org.seamwright.mesh;

/**
 * A ray and its test against single faces, such that none slips between two faces that share an
 * edge or a vertex: the sign at a shared edge is the same number from both sides.
 *
 * <p>Source: S. Woop, C. Benthin, I. Wald, "Watertight ray/triangle intersection", Journal of
 * Computer Graphics Techniques 2 (2013).
 */
final class Ray {
  private final double[] origin;

  /** Axis along which the direction is longest, and the two others in order. */
  private final int main;

  private final int first;
  private final int second;

  /** Shear that lays the direction along the main axis, and the scale that makes it 1 long. */
  private final double shearFirst;

  private final double shearSecond;
  private final double scale;

  /**
   * Makes a ray.
   *
   * @param dx direction, of any length but zero
   */
  Ray(double ox, double oy, double oz, double dx, double dy, double dz) {
    double[] d = {dx, dy, dz};
    origin = new double[] {ox, oy, oz};
    int longest = 0;
    for (int axis = 1; axis < 3; axis++) {
      if (Math.abs(d[axis]) > Math.abs(d[longest])) {
        longest = axis;
      }
    }
    main = longest;
    first = (main + 1) % 3;
    second = (main + 2) % 3;
    shearFirst = d[first] / d[main];
    shearSecond = d[second] / d[main];
    scale = 1 / d[main];
  }

  /**
   * Whether the ray meets a face, from either side, at or after its origin.
   *
   * @param into receives the distance in lengths of the direction and the weights of corners 1 and
   *     2
   */
  boolean meets(Mesh mesh, int face, double[] into) {
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    double az = p[a + main] - origin[main];
    double bz = p[b + main] - origin[main];
    double cz = p[c + main] - origin[main];
    double ax = p[a + first] - origin[first] - shearFirst * az;
    double ay = p[a + second] - origin[second] - shearSecond * az;
    double bx = p[b + first] - origin[first] - shearFirst * bz;
    double by = p[b + second] - origin[second] - shearSecond * bz;
    double cx = p[c + first] - origin[first] - shearFirst * cz;
    double cy = p[c + second] - origin[second] - shearSecond * cz;
    double u = cx * by - cy * bx;
    double v = ax * cy - ay * cx;
    double w = bx * ay - by * ax;
    if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) {
      return false;
    }
    double sum = u + v + w;
    if (sum == 0) {
      return false;
    }
    double distance = scale * (u * az + v * bz + w * cz) / sum;
    if (!(distance >= 0)) {
      return false;
    }
    into[0] = distance;
    into[1] = v / sum;
    into[2] = w / sum;
    return true;
  }
}
