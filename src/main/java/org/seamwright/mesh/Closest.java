package org.seamwright.mesh;

/**
 * The point of a triangle closest to a place.
 *
 * <p>Where it lies on a side or corner it is computed from that side, its ends taken in the order
 * of their vertex numbers, or from that corner alone. So faces that share the side or corner give
 * the same squared distance to the last bit, and a tie between them is seen as one.
 *
 * <p>Source: C. Ericson, "Real-Time Collision Detection", 2005, section 5.1.5. The point is right
 * to a few roundings of the largest coordinate difference, divided by the sine of the face's angle
 * at corner 0; the distance is that of the point given. A needle thinner than {@link #FLAT} is
 * taken for its sides.
 */
final class Closest {
  /**
   * Squared sine under which a face counts as its three sides: there a point is found to 1e-8 of
   * the face's length, and the face is no wider than that.
   */
  private static final double FLAT = 1e-16;

  /** Squared distance of the point found last, mm². */
  double squared;

  /** Weights of corners 1 and 2. */
  double w1;

  double w2;

  /** Finds the closest point of the face over vertices a, b, c of a coordinate array. */
  void find(double[] p, int va, int vb, int vc, double x, double y, double z) {
    int a = 3 * va;
    int b = 3 * vb;
    int c = 3 * vc;
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
    if (d1 <= 0 && d2 <= 0) {
      corner(p, a, x, y, z, 0, 0);
      return;
    }
    double bb = abx * abx + aby * aby + abz * abz;
    double bc = abx * acx + aby * acy + abz * acz;
    double d3 = d1 - bb;
    double d4 = d2 - bc;
    if (d3 >= 0 && d4 <= d3) {
      corner(p, b, x, y, z, 1, 0);
      return;
    }
    double cc = acx * acx + acy * acy + acz * acz;
    double d5 = d1 - bc;
    double d6 = d2 - cc;
    if (d6 >= 0 && d5 <= d6) {
      corner(p, c, x, y, z, 0, 1);
      return;
    }
    double forC = d1 * d4 - d3 * d2;
    if (forC <= 0 && d1 >= 0 && d3 <= 0) {
      w1 = side(p, va, vb, x, y, z);
      w2 = 0;
      return;
    }
    double forB = d5 * d2 - d1 * d6;
    if (forB <= 0 && d2 >= 0 && d6 <= 0) {
      w1 = 0;
      w2 = side(p, va, vc, x, y, z);
      return;
    }
    double forA = d3 * d6 - d5 * d4;
    if (forA <= 0 && d4 >= d3 && d5 >= d6) {
      w2 = side(p, vb, vc, x, y, z);
      w1 = 1 - w2;
      return;
    }
    double nx = aby * acz - abz * acy;
    double ny = abz * acx - abx * acz;
    double nz = abx * acy - aby * acx;
    double nn = nx * nx + ny * ny + nz * nz;
    if (!(nn > FLAT * bb * cc)) {
      sides(p, va, vb, vc, x, y, z);
      return;
    }
    // By cross products: relative error 1e-16 / sine, where the products above have its square.
    double first =
        (apy * acz - apz * acy) * nx + (apz * acx - apx * acz) * ny + (apx * acy - apy * acx) * nz;
    double second =
        (aby * apz - abz * apy) * nx + (abz * apx - abx * apz) * ny + (abx * apy - aby * apx) * nz;
    inside(Math.max(0, first / nn), Math.max(0, second / nn));
    double ex = apx - w1 * abx - w2 * acx;
    double ey = apy - w1 * aby - w2 * acy;
    double ez = apz - w1 * abz - w2 * acz;
    squared = ex * ex + ey * ey + ez * ez;
  }

  private void inside(double first, double second) {
    double over = Math.max(1, first + second);
    w1 = first / over;
    w2 = second / over;
  }

  private void corner(
      double[] p, int a, double x, double y, double z, double first, double second) {
    double ex = x - p[a];
    double ey = y - p[a + 1];
    double ez = z - p[a + 2];
    squared = ex * ex + ey * ey + ez * ez;
    w1 = first;
    w2 = second;
  }

  /** Sets the squared distance to the side from vertex a to b, and gives the weight of b. */
  private double side(double[] p, int a, int b, double x, double y, double z) {
    int s = 3 * Math.min(a, b);
    int e = 3 * Math.max(a, b);
    double ux = p[e] - p[s];
    double uy = p[e + 1] - p[s + 1];
    double uz = p[e + 2] - p[s + 2];
    double px = x - p[s];
    double py = y - p[s + 1];
    double pz = z - p[s + 2];
    double uu = ux * ux + uy * uy + uz * uz;
    double t = uu > 0 ? (ux * px + uy * py + uz * pz) / uu : 0;
    t = t > 0 ? Math.min(t, 1) : 0;
    double ex = t < 1 ? px - t * ux : x - p[e];
    double ey = t < 1 ? py - t * uy : y - p[e + 1];
    double ez = t < 1 ? pz - t * uz : z - p[e + 2];
    squared = ex * ex + ey * ey + ez * ez;
    return a < b ? t : 1 - t;
  }

  /** The best of the three sides. */
  private void sides(double[] p, int a, int b, int c, double x, double y, double z) {
    double ab = side(p, a, b, x, y, z);
    double least = squared;
    double first = ab;
    double second = 0;
    double ac = side(p, a, c, x, y, z);
    if (squared < least) {
      least = squared;
      first = 0;
      second = ac;
    }
    double bc = side(p, b, c, x, y, z);
    if (squared < least) {
      least = squared;
      first = 1 - bc;
      second = bc;
    }
    squared = least;
    w1 = first;
    w2 = second;
  }
}
