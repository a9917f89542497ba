package org.seamwright.picture;

import java.util.Arrays;

/**
 * Squared distance of every pixel to the nearest blocked one, exact, in O(pixels): lower envelopes
 * of parabolas, columns first, then rows.
 *
 * <p>Reference: P. Felzenszwalb and D. Huttenlocher, "Distance transforms of sampled functions",
 * Theory of Computing 8 (2012).
 */
final class DistanceField {
  /** Stands for no blocked pixel in a column; its square still fits an int's range as a float. */
  private static final float FAR = 1e12f;

  private DistanceField() {}

  /**
   * Squared distances in pixels².
   *
   * @param blocked one entry per pixel, row by row
   */
  static float[] squared(boolean[] blocked, int width, int height) {
    float[] squared = new float[blocked.length];
    Bands.ranges(
        width,
        64,
        (from, to) -> {
          Line line = new Line(height);
          for (int x = from; x < to; x++) {
            for (int y = 0; y < height; y++) {
              line.in[y] = blocked[y * width + x] ? 0 : FAR;
            }
            line.transform(height);
            for (int y = 0; y < height; y++) {
              squared[y * width + x] = line.out[y];
            }
          }
        });
    Bands.ranges(
        height,
        32,
        (from, to) -> {
          Line line = new Line(width);
          for (int y = from; y < to; y++) {
            System.arraycopy(squared, y * width, line.in, 0, width);
            line.transform(width);
            System.arraycopy(line.out, 0, squared, y * width, width);
          }
        });
    return squared;
  }

  /** One row or column. */
  private static final class Line {
    final float[] in;
    final float[] out;
    private final int[] apex;
    private final double[] start;

    Line(int n) {
      in = new float[n];
      out = new float[n];
      apex = new int[n];
      start = new double[n + 1];
    }

    void transform(int n) {
      int k = 0;
      apex[0] = 0;
      start[0] = Double.NEGATIVE_INFINITY;
      start[1] = Double.POSITIVE_INFINITY;
      for (int q = 1; q < n; q++) {
        double s = meet(q, apex[k]);
        while (s <= start[k]) {
          k--;
          s = meet(q, apex[k]);
        }
        k++;
        apex[k] = q;
        start[k] = s;
        start[k + 1] = Double.POSITIVE_INFINITY;
      }
      k = 0;
      Arrays.fill(out, 0);
      for (int q = 0; q < n; q++) {
        while (start[k + 1] < q) {
          k++;
        }
        float d = q - apex[k];
        out[q] = Math.min(FAR, d * d + in[apex[k]]);
      }
    }

    private double meet(int q, int p) {
      return ((in[q] + (double) q * q) - (in[p] + (double) p * p)) / (2.0 * q - 2.0 * p);
    }
  }
}
