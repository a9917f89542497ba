package org.seamwright.measure;

/**
 * Turns a normal so that it makes the same angles with the chords to its neighbours as their
 * normals make, by least squares over two small turns. A chord makes equal angles with the normals
 * at its ends up to the third order.
 */
final class NormalFit {
  /** Turning a normal must remove all but this share of its squared misfit, else it is kept. */
  static final double CLEARLY_BETTER = 0.25;

  /** Edges around a vertex that spread less (determinant over squared trace) fix no plane. */
  private static final double SPREAD = 1e-6;

  private final double[] normal = new double[3];
  private final double[] first = new double[3];
  private final double[] second = new double[3];
  private double uu;
  private double uv;
  private double vv;
  private double um;
  private double vm;
  private double mm;

  /** Begins with a unit normal. */
  void start(double x, double y, double z) {
    normal[0] = x;
    normal[1] = y;
    normal[2] = z;
    tangents(normal, first, second);
    uu = 0;
    uv = 0;
    vv = 0;
    um = 0;
    vm = 0;
    mm = 0;
  }

  /**
   * Two unit vectors across a unit normal and each other. T. Duff et al., "Building an orthonormal
   * basis, revisited", JCGT 6 (2017).
   */
  static void tangents(double[] normal, double[] first, double[] second) {
    double x = normal[0];
    double y = normal[1];
    double z = normal[2];
    double sign = Math.copySign(1, z);
    double a = -1 / (sign + z);
    double b = x * y * a;
    first[0] = 1 + sign * x * x * a;
    first[1] = sign * b;
    first[2] = -sign * x;
    second[0] = b;
    second[1] = sign + y * y * a;
    second[2] = -y;
  }

  /**
   * Adds a chord.
   *
   * @param x the chord, any length but zero
   * @param other the normal at its far end
   */
  void add(double x, double y, double z, double[] other) {
    double length2 = x * x + y * y + z * z;
    double misfit =
        x * (normal[0] + other[0]) + y * (normal[1] + other[1]) + z * (normal[2] + other[2]);
    double u = x * first[0] + y * first[1] + z * first[2];
    double v = x * second[0] + y * second[1] + z * second[2];
    // Unit chords, weighted by one over their squared length.
    double weight = 1 / (length2 * length2);
    uu += weight * u * u;
    uv += weight * u * v;
    vv += weight * v * v;
    um += weight * u * misfit;
    vm += weight * v * misfit;
    mm += weight * misfit * misfit;
  }

  /**
   * Solves.
   *
   * @param left share of the squared misfit that may be left
   * @return false if the normal stays
   */
  boolean solve(double left, double[] into) {
    double determinant = uu * vv - uv * uv;
    if (!(determinant > SPREAD * (uu + vv) * (uu + vv))) {
      return false;
    }
    double u = -(vv * um - uv * vm) / determinant;
    double v = -(uu * vm - uv * um) / determinant;
    if (!(mm + u * um + v * vm < left * mm)) {
      return false;
    }
    double size2 = 0;
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = normal[axis] + u * first[axis] + v * second[axis];
      size2 += into[axis] * into[axis];
    }
    for (int axis = 0; axis < 3; axis++) {
      into[axis] /= Math.sqrt(size2);
    }
    return true;
  }

  /** Share of the squared misfit that another unit normal, near the first, leaves. */
  double left(double[] other) {
    double u = 0;
    double v = 0;
    for (int axis = 0; axis < 3; axis++) {
      u += other[axis] * first[axis];
      v += other[axis] * second[axis];
    }
    double change = 2 * (u * um + v * vm) + u * u * uu + 2 * u * v * uv + v * v * vv;
    return mm > 0 ? 1 + change / mm : 0;
  }
}
