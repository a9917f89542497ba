package org.seamwright.mesh;

/**
 * A ray and its test against single faces, such that none slips between two faces that share an
 * edge or a vertex: the sign at a shared edge is the same number from both sides.
 *
 * <p>Source: S. Woop, C. Benthin, I. Wald, "Watertight ray/triangle intersection", Journal of
 * Computer Graphics Techniques 2 (2013).
 */
final class Ray {
  /** Origin, mm. */
  final double ox;

  final double oy;
  final double oz;

  /** Direction. */
  final double dx;

  final double dy;
  final double dz;

  /** Component of the direction that is largest without its sign. */
  final double longest;

  /** Axis along which the direction is longest, and the two others in order. */
  private final int main;

  private final int first;
  private final int second;

  /** Origin along these axes. */
  private final double originMain;

  private final double originFirst;
  private final double originSecond;

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
    this.ox = ox;
    this.oy = oy;
    this.oz = oz;
    this.dx = dx;
    this.dy = dy;
    this.dz = dz;
    double[] d = {dx, dy, dz};
    double[] origin = {ox, oy, oz};
    int longer = Math.abs(dy) > Math.abs(dx) ? 1 : 0;
    main = Math.abs(dz) > Math.abs(d[longer]) ? 2 : longer;
    longest = d[main];
    first = (main + 1) % 3;
    second = (main + 2) % 3;
    shearFirst = d[first] / d[main];
    shearSecond = d[second] / d[main];
    scale = 1 / d[main];
    originMain = origin[main];
    originFirst = origin[first];
    originSecond = origin[second];
  }

  /** Distance to the face met last, in lengths of the direction. */
  double distance;

  /** Weights of its corners 1 and 2 at the meeting point. */
  double w1;

  double w2;

  /**
   * Whether the ray meets the face over vertices va, vb, vc of a coordinate array, from either
   * side, at or after its origin. A face seen edge-on is not met.
   */
  boolean meets(double[] p, int va, int vb, int vc) {
    int a = 3 * va;
    int b = 3 * vb;
    int c = 3 * vc;
    double az = p[a + main] - originMain;
    double bz = p[b + main] - originMain;
    double cz = p[c + main] - originMain;
    double ax = p[a + first] - originFirst - shearFirst * az;
    double ay = p[a + second] - originSecond - shearSecond * az;
    double bx = p[b + first] - originFirst - shearFirst * bz;
    double by = p[b + second] - originSecond - shearSecond * bz;
    double cx = p[c + first] - originFirst - shearFirst * cz;
    double cy = p[c + second] - originSecond - shearSecond * cz;
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
    double along = scale * (u * az + v * bz + w * cz) / sum;
    if (!(along >= 0)) {
      return false;
    }
    distance = along;
    w1 = v / sum;
    w2 = w / sum;
    return true;
  }
}
