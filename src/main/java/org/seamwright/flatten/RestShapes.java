package org.seamwright.flatten;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Each face laid flat by itself: what its image in a layout is compared with.
 *
 * @param corner three vertices per face
 * @param inverse four per face: the inverse [[a, b], [c, d]] of the matrix whose columns are the
 *     sides from the first corner, with the first side along x
 * @param area one entry per face, mm²
 * @param cotangent three per face: half the cotangent of the angle across from half-edge h
 */
record RestShapes(int[] corner, double[] inverse, double[] area, double[] cotangent) {
  /**
   * A face lower than this share of its longest side is a needle; it is taken to be as high as
   * that. Its true shape has no digits left, and it holds no area to speak of.
   */
  static final double NEEDLE = 1e-3;

  static RestShapes of(Mesh mesh) {
    int faces = mesh.faceCount();
    int[] corner = mesh.corner();
    double[] inverse = new double[4 * faces];
    double[] area = new double[faces];
    double[] cotangent = new double[3 * faces];
    double[] side = new double[3];
    for (int f = 0; f < faces; f++) {
      for (int k = 0; k < 3; k++) {
        side[k] = length(mesh, corner[3 * f + k], corner[Topology.next(3 * f + k)]);
      }
      lay(f, side, inverse, area, cotangent);
    }
    return new RestShapes(corner, inverse, area, cotangent);
  }

  private static void lay(
      int f, double[] side, double[] inverse, double[] area, double[] cotangent) {
    double longest = Math.max(side[0], Math.max(side[1], side[2]));
    double floor = Math.max(longest, Double.MIN_NORMAL);
    double base = Math.max(side[0], NEEDLE * floor);
    double x = (side[0] * side[0] + side[2] * side[2] - side[1] * side[1]) / (2 * base);
    double doubled = Math.max(doubleArea(side), NEEDLE * floor * floor);
    double y = doubled / base;
    // Columns (base, 0) and (x, y).
    inverse[4 * f] = 1 / base;
    inverse[4 * f + 1] = -x / (base * y);
    inverse[4 * f + 2] = 0;
    inverse[4 * f + 3] = 1 / y;
    area[f] = doubled / 2;
    // From the flat shape itself, so that a needle's three weights fit together.
    double ax = base;
    double bx = x - base;
    cotangent[3 * f] = (x * bx + y * y) / (2 * doubled);
    cotangent[3 * f + 1] = x * ax / (2 * doubled);
    cotangent[3 * f + 2] = -bx * ax / (2 * doubled);
  }

  /** Kahan's form of Heron's formula, twice the area: keeps its digits for needles. */
  private static double doubleArea(double[] side) {
    double a = Math.max(side[0], Math.max(side[1], side[2]));
    double c = Math.min(side[0], Math.min(side[1], side[2]));
    double b = side[0] + side[1] + side[2] - a - c;
    double product = (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c));
    return 0.5 * Math.sqrt(Math.max(0, product));
  }

  private static double length(Mesh mesh, int a, int b) {
    return Faces.length(mesh, a, b);
  }

  /** Whether a face is a needle, whose shape was made up. */
  boolean isNeedle(int f) {
    double base = 1 / inverse[4 * f];
    double y = 1 / inverse[4 * f + 3];
    double x = -inverse[4 * f + 1] * base * y;
    double longest = Math.max(base, Math.max(Math.hypot(x, y), Math.hypot(x - base, y)));
    return 2 * area[f] <= 1.5 * NEEDLE * longest * longest;
  }

  int faceCount() {
    return area.length;
  }

  /** The derivative of the map from rest shape to layout, row by row, of one face. */
  void derivative(int f, double[] uv, double[] into) {
    int p = 2 * corner[3 * f];
    int q = 2 * corner[3 * f + 1];
    int r = 2 * corner[3 * f + 2];
    double ux = uv[q] - uv[p];
    double uy = uv[q + 1] - uv[p + 1];
    double vx = uv[r] - uv[p];
    double vy = uv[r + 1] - uv[p + 1];
    into[0] = ux * inverse[4 * f] + vx * inverse[4 * f + 2];
    into[1] = ux * inverse[4 * f + 1] + vx * inverse[4 * f + 3];
    into[2] = uy * inverse[4 * f] + vy * inverse[4 * f + 2];
    into[3] = uy * inverse[4 * f + 1] + vy * inverse[4 * f + 3];
  }
}
