package org.seamwright.benchmark;

import org.seamwright.mesh.Mesh;

/**
 * The closed, rippled torus that all benchmarks work on: a stand-in for a large scanned rim, its
 * corners in single precision. The same as src/bench/peers/ripple_torus.c, so that peers can read it.
 */
public final class Torus {
  /** Facet area of the torus of 1000 by 500 steps, mm², summed in long double by that program. */
  static final double AREA_OF_A_MILLION = 329846.084139178;

  private Torus() {}

  /** The torus with 2 · nu · nv faces. */
  public static Mesh of(int nu, int nv) {
    double[] xyz = new double[3 * nu * nv];
    for (int u = 0; u < nu; u++) {
      double a = 2 * Math.PI * u / nu;
      for (int v = 0; v < nv; v++) {
        double b = 2 * Math.PI * v / nv;
        double r = radius(a, b);
        int at = 3 * (u * nv + v);
        xyz[at] = (float) ((200 + r * Math.cos(b)) * Math.cos(a));
        xyz[at + 1] = (float) ((200 + r * Math.cos(b)) * Math.sin(a));
        xyz[at + 2] = (float) (r * Math.sin(b));
      }
    }
    int[] corner = new int[6 * nu * nv];
    int n = 0;
    for (int u = 0; u < nu; u++) {
      for (int v = 0; v < nv; v++) {
        int p = u * nv + v;
        int q = (u + 1) % nu * nv + v;
        int r = (u + 1) % nu * nv + (v + 1) % nv;
        int s = u * nv + (v + 1) % nv;
        int[] two = {p, q, r, p, r, s};
        System.arraycopy(two, 0, corner, n, 6);
        n += 6;
      }
    }
    return Mesh.of(xyz, corner);
  }

  /** Radius of the tube at two angles, mm. */
  static double radius(double a, double b) {
    return 40 + 1.5 * Math.sin(9 * a) * Math.cos(5 * b) + 0.4 * Math.sin(41 * b);
  }

  /** A place a little off the surface, mm. */
  static double[] near(double a, double b, double off) {
    double r = radius(a, b) + off;
    return new double[] {
      (200 + r * Math.cos(b)) * Math.cos(a), (200 + r * Math.cos(b)) * Math.sin(a), r * Math.sin(b)
    };
  }
}
