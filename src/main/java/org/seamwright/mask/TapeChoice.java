package org.seamwright.mask;

import java.util.ArrayList;
import java.util.List;

/**
 * Which tape along which stretch of a line: the cheapest choice in which no tape bends tighter than
 * it can.
 *
 * <p>A tape narrower than the masking is wide is backed by a second row of the cheapest tape that
 * covers the rest. That row need not follow the line: it is laid in straight pieces, each as long
 * as the chord whose sagitta is half of the narrow tape's width, {@code 2 √(2 r s − s²)}, so that
 * no gap opens. Each change of tape costs its overlap and {@value #JOIN_MM} mm more of the dearer
 * one, so that strips do not get too short. Over places at even steps this is a shortest way
 * through a layered graph, solved exactly by dynamic programming (Bellman): O(places × tapes²), on
 * a closed line once for every tape it may begin with.
 */
final class TapeChoice {
  /** What a join costs beside its overlap: handling, told in tape. */
  static final double JOIN_MM = 50;

  /** Stands for "no tape bends so tightly": lacquer brushed up to the line. */
  static final int BY_HAND = -1;

  /** Price of a millimetre where no tape has one: then the shortest tape is the cheapest. */
  private static final double PLAIN_PRICE = 1;

  /** Dearer than any tape, so that brushing is chosen only where nothing else goes. */
  private static final double BY_HAND_PRICE = 1e6;

  /** A rest that is a whole number of tapes wide up to rounding needs no row more. */
  private static final double ROUNDING = 1e-9;

  private final List<TapeKind> kinds;
  private final double coverMm;
  private final double overlapMm;
  private final boolean priced;

  /**
   * A chooser.
   *
   * @param kinds at least one
   * @param coverMm how far from the line tape must cover
   * @param overlapMm tape over itself at a join
   */
  TapeChoice(List<TapeKind> kinds, double coverMm, double overlapMm) {
    this.kinds = List.copyOf(kinds);
    this.coverMm = coverMm;
    this.overlapMm = overlapMm;
    this.priced = kinds.stream().anyMatch(k -> k.pricePerRoll() > 0);
  }

  /**
   * A run of one tape.
   *
   * @param kind number of the tape; {@link #BY_HAND} for none
   * @param from first place
   * @param to place after the last
   */
  record Run(int kind, int from, int to) {}

  /**
   * Chooses along a stretch.
   *
   * @param radius radius of the bend at places at even steps, mm
   * @param closed whether the stretch runs back into itself
   * @param stepMm distance of places
   * @return runs in order; on a closed line the first may begin anywhere
   */
  List<Run> along(double[] radius, boolean closed, double stepMm) {
    int states = kinds.size() + 1;
    double[][] cost = new double[radius.length][states];
    for (int i = 0; i < radius.length; i++) {
      for (int k = 0; k < states; k++) {
        cost[i][k] = stepMm * perMm(k, radius[i]);
      }
    }
    int[] best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int first = 0; first < (closed ? states : 1); first++) {
      int[] way = new int[radius.length];
      double total = way(cost, closed ? first : -1, way);
      if (total < least) {
        least = total;
        best = way;
      }
    }
    return runs(best);
  }

  /** Cheapest way; on a closed line beginning with a state and paying for the join at its end. */
  private double way(double[][] cost, int first, int[] way) {
    int n = cost.length;
    int states = cost[0].length;
    int[][] from = new int[n][states];
    double[] sum = cost[0].clone();
    for (int k = 0; k < states && first >= 0; k++) {
      sum[k] = k == first ? sum[k] : Double.POSITIVE_INFINITY;
    }
    for (int i = 1; i < n; i++) {
      double[] next = new double[states];
      for (int k = 0; k < states; k++) {
        int before = k;
        for (int j = 0; j < states; j++) {
          if (sum[j] + join(j, k) < sum[before] + join(before, k)) {
            before = j;
          }
        }
        from[i][k] = before;
        next[k] = sum[before] + join(before, k) + cost[i][k];
      }
      sum = next;
    }
    int last = 0;
    for (int k = 1; k < states; k++) {
      if (end(sum, k, first) < end(sum, last, first)) {
        last = k;
      }
    }
    double total = end(sum, last, first);
    for (int i = n - 1, k = last; i >= 0; i--) {
      way[i] = k;
      k = from[i][k];
    }
    return total;
  }

  private double end(double[] sum, int k, int first) {
    return sum[k] + (first < 0 ? 0 : join(k, first));
  }

  /** Cost of a change from one state to another; nothing for none. */
  private double join(int a, int b) {
    return a == b ? 0 : (overlapMm + JOIN_MM) * Math.max(price(a), price(b));
  }

  private double price(int state) {
    return state == kinds.size() ? 0 : priced ? kinds.get(state).pricePerMm() : PLAIN_PRICE;
  }

  /** Cost of a millimetre along the line where it bends with a radius. */
  private double perMm(int state, double radius) {
    if (state == kinds.size()) {
      return BY_HAND_PRICE;
    }
    TapeKind kind = kinds.get(state);
    if (radius < kind.bendMm()) {
      return Double.POSITIVE_INFINITY;
    }
    double own = price(state);
    int backing = backing(kind);
    return backing < 0
        ? own
        : own + rows(kind, backing) * price(backing) * (1 + overlapMm / pieceMm(kind, radius));
  }

  /** Rows of the backing tape that cover what a narrow one leaves. */
  int rows(TapeKind kind, int backing) {
    double rest = coverMm - kind.widthMm();
    return (int) Math.ceil(rest / kinds.get(backing).widthMm() - ROUNDING);
  }

  /** The cheapest tape that covers what a narrow one leaves, or none where it leaves nothing. */
  int backing(TapeKind kind) {
    double rest = coverMm - kind.widthMm();
    if (rest <= 0) {
      return -1;
    }
    int best = -1;
    for (int k = 0; k < kinds.size(); k++) {
      boolean wider = kinds.get(k).widthMm() >= rest;
      boolean cheaper = best < 0 || price(k) < price(best);
      best = wider && cheaper ? k : best;
    }
    if (best >= 0) {
      return best;
    }
    int widest = 0;
    for (int k = 1; k < kinds.size(); k++) {
      widest = kinds.get(k).widthMm() > kinds.get(widest).widthMm() ? k : widest;
    }
    return widest;
  }

  /** Longest straight piece behind a tape along a bend. */
  static double pieceMm(TapeKind kind, double radius) {
    double sagitta = kind.widthMm() / 2;
    return radius <= sagitta
        ? kind.widthMm()
        : 2 * Math.sqrt(2 * radius * sagitta - sagitta * sagitta);
  }

  private List<Run> runs(int[] way) {
    List<Run> runs = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= way.length; i++) {
      if (i == way.length || way[i] != way[from]) {
        runs.add(new Run(way[from] == kinds.size() ? BY_HAND : way[from], from, i));
        from = i;
      }
    }
    return runs;
  }
}
