package org.seamwright.measure;

import java.util.List;

/**
 * Surfaces whose area is known in closed form, as maps of the unit square.
 *
 * @param name what it is
 * @param areaMm2 exact area
 * @param map from u and v, both from 0 to 1, to x, y, z
 * @param wrapsU whether u = 1 is u = 0
 * @param wrapsV whether v = 1 is v = 0
 * @param pole whether v = 0 and v = 1 are one point each
 * @param rows values of v from 0 to 1 where the curvature jumps or a crease runs, ends included
 */
record KnownSurface(
    String name,
    double areaMm2,
    Map map,
    boolean wrapsU,
    boolean wrapsV,
    boolean pole,
    double... rows) {
  /** A point for a pair of parameters. */
  interface Map {
    double[] at(double u, double v);
  }

  /** Radius and height of a profile. */
  interface Profile {
    double[] at(double v);
  }

  static List<KnownSurface> all() {
    return List.of(
        sphere(10),
        torus(3, 1),
        torus(50, 5),
        ellipsoid(1, 2, 3),
        ellipsoid(1.1, 1.2, 4.7),
        ellipsoid(5, 5, 1),
        frustum(5, 3, 4),
        cone(3, 4),
        capsule(1, 2),
        doubleCap(10, 60),
        doubleCap(10, 30),
        helicoid(1, 1));
  }

  private static KnownSurface turned(String name, double area, Profile profile, double... rows) {
    return new KnownSurface(
        name,
        area,
        (u, v) -> {
          double[] p = profile.at(v);
          double a = 2 * Math.PI * u;
          return new double[] {p[0] * Math.cos(a), p[0] * Math.sin(a), p[1]};
        },
        true,
        false,
        true,
        rows);
  }

  /** 4 pi r². */
  static KnownSurface sphere(double r) {
    return turned(
        "sphere",
        4 * Math.PI * r * r,
        v -> new double[] {r * Math.sin(Math.PI * v), -r * Math.cos(Math.PI * v)},
        0,
        1);
  }

  /** 4 pi² R r. */
  static KnownSurface torus(double ring, double tube) {
    return new KnownSurface(
        "torus " + (int) (ring / tube) + " : 1",
        4 * Math.PI * Math.PI * ring * tube,
        (u, v) -> {
          double a = 2 * Math.PI * u;
          double b = 2 * Math.PI * v;
          double r = ring + tube * Math.cos(b);
          return new double[] {r * Math.cos(a), r * Math.sin(a), tube * Math.sin(b)};
        },
        true,
        true,
        false,
        0,
        1);
  }

  /** 4 pi R_G(a²b², b²c², c²a²): DLMF 19.33.1. */
  static KnownSurface ellipsoid(double a, double b, double c) {
    double area = 4 * Math.PI * carlsonG(a * a * b * b, b * b * c * c, c * c * a * a);
    return new KnownSurface(
        "ellipsoid " + a + " " + b + " " + c,
        area,
        (u, v) -> {
          double ring = Math.sin(Math.PI * v);
          double turn = 2 * Math.PI * u;
          return new double[] {
            a * ring * Math.cos(turn), b * ring * Math.sin(turn), -c * Math.cos(Math.PI * v)
          };
        },
        true,
        false,
        true,
        0,
        1);
  }

  /**
   * Symmetric elliptic integral of the second kind, by DLMF 19.21.10 and the duplications 19.26.
   */
  static double carlsonG(double x, double y, double z) {
    double f = carlsonF(x, y, z);
    double d = carlsonD(x, y, z);
    return (z * f - (x - z) * (y - z) * d / 3 + Math.sqrt(x * y / z)) / 2;
  }

  private static double carlsonF(double x, double y, double z) {
    for (int i = 0; i < 40; i++) {
      double lambda = Math.sqrt(x * y) + Math.sqrt(y * z) + Math.sqrt(z * x);
      x = (x + lambda) / 4;
      y = (y + lambda) / 4;
      z = (z + lambda) / 4;
    }
    return 1 / Math.sqrt((x + y + z) / 3);
  }

  private static double carlsonD(double x, double y, double z) {
    double sum = 0;
    double scale = 1;
    for (int i = 0; i < 40; i++) {
      double lambda = Math.sqrt(x * y) + Math.sqrt(y * z) + Math.sqrt(z * x);
      sum += scale / (Math.sqrt(z) * (z + lambda));
      scale /= 4;
      x = (x + lambda) / 4;
      y = (y + lambda) / 4;
      z = (z + lambda) / 4;
    }
    double mean = (x + y + 3 * z) / 5;
    return 3 * sum + scale / (mean * Math.sqrt(mean));
  }

  /** Pi (R + r) s + pi (R² + r²), its lids included. */
  static KnownSurface frustum(double low, double high, double height) {
    double slant = Math.hypot(height, low - high);
    double area = Math.PI * (low + high) * slant + Math.PI * (low * low + high * high);
    return turned(
        "cone frustum, lids",
        area,
        v ->
            v < 0.25
                ? new double[] {low * 4 * v, 0}
                : v < 0.75
                    ? new double[] {low + (high - low) * (2 * v - 0.5), height * (2 * v - 0.5)}
                    : new double[] {high * 4 * (1 - v), height},
        0,
        0.25,
        0.75,
        1);
  }

  /** Pi r s + pi r². */
  static KnownSurface cone(double r, double height) {
    return turned(
        "cone with its tip",
        Math.PI * r * Math.hypot(r, height) + Math.PI * r * r,
        v ->
            v < 0.3
                ? new double[] {r * v / 0.3, 0}
                : new double[] {r * (1 - v) / 0.7, height * (v - 0.3) / 0.7},
        0,
        0.3,
        1);
  }

  /** 2 pi r (2 r + h). */
  static KnownSurface capsule(double r, double height) {
    double half = height / 2;
    return turned(
        "capsule",
        2 * Math.PI * r * (2 * r + height),
        v -> {
          if (v >= 0.3 && v <= 0.7) {
            return new double[] {r, height * ((v - 0.3) / 0.4 - 0.5)};
          }
          double turn = Math.PI / 2 * (v < 0.5 ? v : 1 - v) / 0.3;
          double z = half + r * Math.cos(turn);
          return new double[] {r * Math.sin(turn), v < 0.5 ? -z : z};
        },
        0,
        0.3,
        0.7,
        1);
  }

  /** Two caps of a sphere joined at their rim: twice 2 pi R² (1 - cos). */
  static KnownSurface doubleCap(double r, double halfAngle) {
    double angle = Math.toRadians(halfAngle);
    return turned(
        "two caps of " + (int) halfAngle + "°",
        4 * Math.PI * r * r * (1 - Math.cos(angle)),
        v -> {
          double turn = angle * 2 * (v < 0.5 ? v : 1 - v);
          double z = r * (Math.cos(turn) - Math.cos(angle));
          return new double[] {r * Math.sin(turn), v < 0.5 ? -z : z};
        },
        0,
        0.5,
        1);
  }

  /** One turn, rise 2 pi c: pi (r sqrt(r² + c²) + c² asinh(r / c)). */
  static KnownSurface helicoid(double r, double c) {
    double asinh = Math.log(r / c + Math.sqrt(r * r / (c * c) + 1));
    return new KnownSurface(
        "helicoid",
        Math.PI * (r * Math.sqrt(r * r + c * c) + c * c * asinh),
        (u, v) -> {
          double a = 2 * Math.PI * v;
          return new double[] {r * u * Math.cos(a), r * u * Math.sin(a), c * a};
        },
        false,
        false,
        false,
        0,
        1);
  }
}
