package org.seamwright.section;

import java.util.Arrays;

/**
 * How much area each cell has to give or may take so that none is over the limit: what is too much
 * goes to cells with room, in proportion to their room, among those that area can flow between.
 * Where there is too little room all get the same.
 */
final class Evening {
  /** Excess below this share of the limit is left: a cut moves by less. */
  private static final double ENOUGH = 2e-4;

  private Evening() {}

  /**
   * Changes that add up to zero in every set of cells whose borders respond.
   *
   * @param borders which cells meet, and how their borders respond
   * @param workedMm2 one entry per cell
   * @param limitMm2 what none should pass
   * @return one entry per cell, mm²; all zero if nothing is to be done
   */
  static double[] change(Borders borders, double[] workedMm2, double limitMm2) {
    int n = workedMm2.length;
    int[] set = sets(borders, n);
    double[] over = new double[n];
    double[] room = new double[n];
    double[] sum = new double[n];
    int[] count = new int[n];
    for (int c = 0; c < n; c++) {
      double more = workedMm2[c] - limitMm2;
      over[set[c]] += Math.max(0, more);
      room[set[c]] += Math.max(0, -more);
      sum[set[c]] += workedMm2[c];
      count[set[c]]++;
    }
    double[] change = new double[n];
    for (int c = 0; c < n; c++) {
      int s = set[c];
      double more = workedMm2[c] - limitMm2;
      if (over[s] <= ENOUGH * limitMm2 || count[s] == 1) {
        change[c] = 0;
      } else if (room[s] > over[s]) {
        change[c] = more > 0 ? -more : -more * over[s] / room[s];
      } else {
        change[c] = sum[s] / count[s] - workedMm2[c];
      }
    }
    return change;
  }

  private static int[] sets(Borders borders, int n) {
    int[] set = new int[n];
    Arrays.setAll(set, c -> c);
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int i = 0; i < borders.count(); i++) {
        int a = borders.low()[i];
        int b = borders.high()[i];
        if (borders.response()[i] > 0 && set[a] != set[b]) {
          int low = Math.min(set[a], set[b]);
          set[a] = low;
          set[b] = low;
          changed = true;
        }
      }
    }
    return set;
  }
}
