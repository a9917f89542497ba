package org.seamwright.flatten;

import java.util.Arrays;

/**
 * How much a layout lengthens or shortens the surface. A face's stretch is the larger of its
 * greatest singular value and the inverse of its least, less one: 0.02 means that somewhere in it a
 * length is 2% off, longer or shorter.
 *
 * @param largest over all faces but needles (see {@link RestShapes#NEEDLE})
 * @param nearlyAll the least share that all faces but needles and a thousandth of the area keep to
 * @param mean weighted by area
 * @param least smallest singular value
 * @param greatest largest singular value
 * @param areaRatio area of the layout over area of the surface
 * @param flipped faces turned over
 */
public record Stretch(
    double largest,
    double nearlyAll,
    double mean,
    double least,
    double greatest,
    double areaRatio,
    int flipped) {
  /** Share of the area that {@code nearlyAll} may leave out: a few rough facets of a scan. */
  private static final double LEFT_OUT = 1e-3;

  /** Stretch of one face from its derivative, row by row. */
  static double ofFace(double[] j) {
    double[] s = singular(j);
    return s[1] > 0 ? Math.max(s[0], 1 / s[1]) - 1 : Double.POSITIVE_INFINITY;
  }

  /** Larger and (signed) smaller singular value. */
  private static double[] singular(double[] j) {
    double e = Math.hypot(j[0] + j[3], j[2] - j[1]) / 2;
    double g = Math.hypot(j[0] - j[3], j[2] + j[1]) / 2;
    return new double[] {e + g, e - g};
  }

  /**
   * Measures a layout.
   *
   * @param rest shapes of the faces on the surface
   * @param uv two coordinates per vertex, mm
   */
  static Stretch of(RestShapes rest, double[] uv) {
    int faces = rest.faceCount();
    double[] j = new double[4];
    double[] stretch = new double[faces];
    Integer[] order = new Integer[faces];
    double largest = 0;
    double least = Double.POSITIVE_INFINITY;
    double greatest = 0;
    double mean = 0;
    double total = 0;
    double flat = 0;
    int flipped = 0;
    for (int f = 0; f < faces; f++) {
      rest.derivative(f, uv, j);
      double[] s = singular(j);
      // A needle's shape was made up: it tells nothing, and holds no area.
      stretch[f] = rest.isNeedle(f) ? 0 : ofFace(j);
      order[f] = f;
      flipped += s[1] > 0 ? 0 : 1;
      total += rest.area()[f];
      flat += rest.area()[f] * s[0] * s[1];
      mean += rest.area()[f] * Math.min(stretch[f], 1e9);
      if (!rest.isNeedle(f)) {
        largest = Math.max(largest, stretch[f]);
        least = Math.min(least, s[1]);
        greatest = Math.max(greatest, s[0]);
      }
    }
    Arrays.sort(order, (a, b) -> Double.compare(stretch[b], stretch[a]));
    double left = LEFT_OUT * total;
    int i = 0;
    while (i < faces - 1 && left >= rest.area()[order[i]]) {
      left -= rest.area()[order[i++]];
    }
    double nearlyAll = faces == 0 ? 0 : stretch[order[i]];
    return new Stretch(largest, nearlyAll, mean / total, least, greatest, flat / total, flipped);
  }
}
