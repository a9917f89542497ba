package org.seamwright.section;

/**
 * How far to push the borders of cells so that each gets the area wanted: a Newton step. Raising a
 * cell's weight by δ moves its border with a neighbour outward by δ over the gradient of the
 * difference of their keys (2 where two wavefronts meet head on), so the change of areas is a graph
 * Laplacian with the responses of borders as edge weights; it is solved by conjugate gradients.
 *
 * <p>Reference for the structure: J. Kitagawa, Q. Mérigot and B. Thibert, "Convergence of a Newton
 * algorithm for semi-discrete optimal transport", JEMS 2019.
 */
final class Balance {
  /**
   * Share of the residual at which the solution is good enough for a step that is damped anyway.
   */
  private static final double RESIDUAL = 1e-6;

  private Balance() {}

  /**
   * Change of weights that moves areas by the given amounts, which add up to zero in every set of
   * cells that hang together.
   *
   * @param borders which cells meet, and how their borders respond
   * @param changeMm2 one entry per cell: area to gain
   * @return one entry per cell, mm, adding up to zero
   */
  static double[] step(Borders borders, double[] changeMm2) {
    int n = changeMm2.length;
    double[] x = new double[n];
    double[] r = changeMm2.clone();
    double[] p = r.clone();
    double rr = dot(r, r);
    double goal = rr * RESIDUAL * RESIDUAL;
    for (int i = 0; i < 4 * n && rr > goal; i++) {
      double[] ap = apply(borders, p);
      double pap = dot(p, ap);
      if (!(pap > 0)) {
        break;
      }
      double alpha = rr / pap;
      for (int k = 0; k < n; k++) {
        x[k] += alpha * p[k];
        r[k] -= alpha * ap[k];
      }
      double next = dot(r, r);
      for (int k = 0; k < n; k++) {
        p[k] = r[k] + next / rr * p[k];
      }
      rr = next;
    }
    return x;
  }

  private static double[] apply(Borders borders, double[] p) {
    double[] result = new double[p.length];
    for (int i = 0; i < borders.count(); i++) {
      int a = borders.low()[i];
      int b = borders.high()[i];
      double flow = borders.response()[i] * (p[a] - p[b]);
      result[a] += flow;
      result[b] -= flow;
    }
    return result;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
