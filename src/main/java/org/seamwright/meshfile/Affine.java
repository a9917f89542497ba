package org.seamwright.meshfile;

/**
 * An affine map of space, as bodies are placed by: {@code p' = A p + t}. Immutable.
 *
 * @param m nine entries of A row by row, then t
 */
record Affine(double[] m) {
  static final Affine IDENTITY = new Affine(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0});

  /** The map that does {@code inner} first and this one after it. */
  Affine after(Affine inner) {
    double[] n = inner.m;
    double[] r = new double[12];
    for (int row = 0; row < 3; row++) {
      double a = m[3 * row];
      double b = m[3 * row + 1];
      double c = m[3 * row + 2];
      for (int k = 0; k < 3; k++) {
        r[3 * row + k] = a * n[k] + b * n[3 + k] + c * n[6 + k];
      }
      r[9 + row] = a * n[9] + b * n[10] + c * n[11] + m[9 + row];
    }
    return new Affine(r);
  }

  double x(double x, double y, double z) {
    return m[0] * x + m[1] * y + m[2] * z + m[9];
  }

  double y(double x, double y, double z) {
    return m[3] * x + m[4] * y + m[5] * z + m[10];
  }

  double z(double x, double y, double z) {
    return m[6] * x + m[7] * y + m[8] * z + m[11];
  }

  /** Whether it turns a right hand into a left one, so that faces must be turned back. */
  boolean mirrors() {
    double det =
        m[0] * (m[4] * m[8] - m[5] * m[7])
            - m[1] * (m[3] * m[8] - m[5] * m[6])
            + m[2] * (m[3] * m[7] - m[4] * m[6]);
    return det < 0;
  }
}
