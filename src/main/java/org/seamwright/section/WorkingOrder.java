package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;

/**
 * The order in which sections are worked: least {@link OrderCost}, and among equals the order that
 * comes first by section number.
 *
 * <p>Up to {@value #EXACT} sections every order is tried. Beyond, local search from walks to the
 * nearest section left: a section is moved to another place, or two change places, while that
 * helps. Places tried are those beside its neighbours once there are more than {@value #ALL_PLACES}
 * sections. Cost of one comparison: the patches that name the moved section; their number over the
 * whole search is bounded.
 */
final class WorkingOrder {
  /** Most sections for which every order is tried: 8! = 40,320. */
  static final int EXACT = 8;

  private static final int ALL_PLACES = 48;
  private static final int STARTS = 4;
  private static final int SWEEPS = 12;

  /** Patches counted before the search ends with the best so far: about a second's work. */
  private static final long WORK = 6_000_000;

  private final Tally activation;
  private final Tally flash;
  private final double[] centre;
  private final int n;
  private final int[] position;
  private long workLeft;

  /**
   * Prepares a search.
   *
   * @param activation coverage by activation laps
   * @param flash coverage by flash laps
   * @param centreMm three entries per section: its centre of area
   * @param areaStepMm2 areas that differ by less are equal
   */
  WorkingOrder(Coverage activation, Coverage flash, double[] centreMm, double areaStepMm2) {
    n = activation.sections();
    position = new int[n];
    // Once with its own section, so two laps make three times.
    this.activation = new Tally(activation, areaStepMm2, laps -> laps >= 2 ? 1 : 0);
    this.flash = new Tally(flash, areaStepMm2, laps -> laps);
    this.centre = centreMm;
  }

  /** What an order costs; entry i is the section worked as the i-th. */
  OrderCost cost(int[] order) {
    for (int i = 0; i < n; i++) {
      position[order[i]] = i;
    }
    activation.countAll(position);
    flash.countAll(position);
    return new OrderCost(activation.steps(), flash.steps(), travel(order));
  }

  private double travel(int[] order) {
    double travel = 0;
    for (int i = 1; i < n; i++) {
      travel += between(order[i - 1], order[i]);
    }
    return travel;
  }

  private double between(int a, int b) {
    double dx = centre[3 * a] - centre[3 * b];
    double dy = centre[3 * a + 1] - centre[3 * b + 1];
    double dz = centre[3 * a + 2] - centre[3 * b + 2];
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** The best order found; entry i is the section worked as the i-th. */
  int[] best(Progress progress) {
    if (n <= EXACT) {
      return every();
    }
    int[] best = null;
    OrderCost bestCost = null;
    for (int start = 0; start < STARTS; start++) {
      workLeft = WORK / STARTS;
      int[] order = walk((int) ((long) start * n / STARTS));
      OrderCost cost = improve(order, progress.between(start / 4.0, (start + 1) / 4.0));
      if (bestCost == null || cost.compareTo(bestCost) < 0) {
        best = order;
        bestCost = cost;
      }
    }
    return best;
  }

  private int[] every() {
    int[] order = new int[n];
    Arrays.setAll(order, i -> i);
    int[] best = order.clone();
    OrderCost bestCost = cost(order);
    while (nextPermutation(order)) {
      OrderCost cost = cost(order);
      if (cost.compareTo(bestCost) < 0) {
        bestCost = cost;
        System.arraycopy(order, 0, best, 0, n);
      }
    }
    return best;
  }

  /** Turns an order into the next by dictionary; false after the last. */
  private static boolean nextPermutation(int[] order) {
    int i = order.length - 2;
    while (i >= 0 && order[i] > order[i + 1]) {
      i--;
    }
    if (i < 0) {
      return false;
    }
    int j = order.length - 1;
    while (order[j] < order[i]) {
      j--;
    }
    swap(order, i, j);
    for (int a = i + 1, b = order.length - 1; a < b; a++, b--) {
      swap(order, a, b);
    }
    return true;
  }

  private static void swap(int[] order, int i, int j) {
    int t = order[i];
    order[i] = order[j];
    order[j] = t;
  }

  private int[] walk(int first) {
    int[] order = new int[n];
    boolean[] done = new boolean[n];
    order[0] = first;
    done[first] = true;
    for (int i = 1; i < n; i++) {
      int next = -1;
      for (int s = 0; s < n; s++) {
        if (!done[s] && (next < 0 || between(order[i - 1], s) < between(order[i - 1], next))) {
          next = s;
        }
      }
      order[i] = next;
      done[next] = true;
    }
    return order;
  }

  private OrderCost improve(int[] order, Progress progress) {
    OrderCost cost = cost(order);
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      OrderCost before = cost;
      for (int s = 0; s < n; s++) {
        progress.at((sweep + (double) s / n) / SWEEPS);
        for (int other : n <= ALL_PLACES ? everyOne() : flash.neighbours(s)) {
          if (other != s && workLeft > 0) {
            cost = tryMove(order, s, other, true, cost);
            cost = tryMove(order, s, other, false, cost);
          }
        }
      }
      if (cost.compareTo(before) == 0) {
        break;
      }
    }
    return cost;
  }

  private int[] everyOne() {
    int[] all = new int[n];
    Arrays.setAll(all, i -> i);
    return all;
  }

  /** Moves a section to the place of another, or swaps the two, if that is better. */
  private OrderCost tryMove(int[] order, int s, int other, boolean shift, OrderCost cost) {
    int from = position[s];
    int to = position[other];
    move(order, from, to, shift);
    // Only what names a section that changed places with others can count differently now.
    recount(s, other, shift);
    if (activation.steps() <= cost.thriceSteps()) {
      OrderCost changed = new OrderCost(activation.steps(), flash.steps(), travel(order));
      if (changed.compareTo(cost) < 0) {
        return changed;
      }
    }
    move(order, shift ? to : from, shift ? from : to, shift);
    recount(s, other, shift);
    return cost;
  }

  private void recount(int s, int other, boolean shift) {
    workLeft -= activation.count(s, position) + flash.count(s, position);
    if (!shift) {
      workLeft -= activation.count(other, position) + flash.count(other, position);
    }
  }

  private void move(int[] order, int from, int to, boolean shift) {
    if (shift) {
      shift(order, from, to);
    } else {
      swap(order, from, to);
    }
    for (int i = Math.min(from, to); i <= Math.max(from, to); i++) {
      position[order[i]] = i;
    }
  }

  private static void shift(int[] order, int from, int to) {
    int moved = order[from];
    if (from < to) {
      System.arraycopy(order, from + 1, order, from, to - from);
    } else {
      System.arraycopy(order, to, order, to + 1, from - to);
    }
    order[to] = moved;
  }
}
