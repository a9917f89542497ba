package org.seamwright.section;

import java.util.Map;
import java.util.TreeMap;

/**
 * Lengths of the lines along which cells or sections meet, by pair.
 *
 * @param low one entry per pair: the lower label
 * @param high one entry per pair: the higher label; pairs ascend by low, then high
 * @param lengthMm one entry per pair
 * @param response one entry per pair: area that moves across per change of weight, mm² per mm; 0
 *     where borders don't follow weights
 */
record Borders(int[] low, int[] high, double[] lengthMm, double[] response) {
  /** Number of pairs. */
  int count() {
    return low.length;
  }

  /** Index of a pair, low below high; negative if the two don't meet. */
  int indexOf(int a, int b) {
    int from = 0;
    int to = low.length - 1;
    while (from <= to) {
      int middle = (from + to) >>> 1;
      int order = Integer.compare(low[middle], a);
      order = order != 0 ? order : Integer.compare(high[middle], b);
      if (order == 0) {
        return middle;
      } else if (order < 0) {
        from = middle + 1;
      } else {
        to = middle - 1;
      }
    }
    return -1;
  }

  /** Collects lengths in the order of the faces, so that sums don't depend on anything else. */
  static final class Builder {
    private final Map<Long, double[]> lengths = new TreeMap<>();

    void add(int a, int b, double lengthMm, double response) {
      long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
      double[] sums = lengths.computeIfAbsent(key, k -> new double[2]);
      sums[0] += lengthMm;
      sums[1] += response;
    }

    Borders build() {
      int[] low = new int[lengths.size()];
      int[] high = new int[low.length];
      double[] length = new double[low.length];
      double[] response = new double[low.length];
      int i = 0;
      for (Map.Entry<Long, double[]> entry : lengths.entrySet()) {
        low[i] = (int) (entry.getKey() >> 32);
        high[i] = (int) (long) entry.getKey();
        length[i] = entry.getValue()[0];
        response[i++] = entry.getValue()[1];
      }
      return new Borders(low, high, length, response);
    }
  }
}
