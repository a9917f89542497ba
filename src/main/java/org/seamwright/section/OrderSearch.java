package org.seamwright.section;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.seamwright.basis.Progress;

/**
 * A good order of many sections, by local search.
 *
 * <p>From walks to the nearest section left, a section is moved to another place, two change
 * places, or a stretch is turned round, while that helps. Then the best order so far is shaken (a
 * few sections go elsewhere, drawn from a fixed seed) and improved again, and now and then any
 * other order, as long as the work lasts: iterated local search (H. R. Lourenço, O. C. Martin and
 * T. Stützle, 2003). Places tried are those beside neighbours once there are more than {@value
 * #ALL_PLACES} sections.
 *
 * <p>Cost of one comparison: the patches that name the moved sections; their number over the whole
 * search is bounded, so the time is. Within 2% of the proved best on random cases of 10 sections.
 */
final class OrderSearch {
  private static final int ALL_PLACES = 48;
  private static final int STARTS = 4;
  private static final int SWEEPS = 12;
  private static final long SEED = 0x5eaL;

  /** Patches counted before the search ends with the best so far: a few tenths of a second. */
  private static final long WORK = 16_000_000;

  /** Part of the work for the starts; the rest is for shaking. */
  private static final double FOR_STARTS = 0.25;

  /** Shaking ends when so many times in a row, for each section, it has found nothing better. */
  private static final int PATIENCE = 30;

  /** Shakes in vain, for each section, before it begins elsewhere. */
  private static final int LINGER = 4;

  private final WorkingOrder costs;
  private final Precedence pins;
  private final int n;
  private final int[] position;
  private int[] order;
  private OrderCost cost;
  private long workLeft;

  OrderSearch(WorkingOrder costs, Precedence pins) {
    this.costs = costs;
    this.pins = pins;
    n = costs.sections();
    position = new int[n];
  }

  /** The best order found; the same each time. */
  int[] best(Progress progress) {
    int[] best = null;
    OrderCost bestCost = null;
    int starts = Math.max(1, Math.min(STARTS, n));
    for (int start = 0; start < starts; start++) {
      workLeft = (long) (FOR_STARTS * WORK / starts);
      begin(walk((int) ((long) start * n / starts)));
      improve(progress.between(0.5 * start / starts, 0.5 * (start + 1) / starts));
      if (bestCost == null || cost.compareTo(bestCost) < 0) {
        best = order.clone();
        bestCost = cost;
      }
    }
    return shaken(best, bestCost, progress.between(0.5, 1));
  }

  private int[] shaken(int[] found, OrderCost foundCost, Progress progress) {
    int[] best = found;
    OrderCost bestCost = foundCost;
    int[] here = found;
    OrderCost hereCost = foundCost;
    SplittableRandom random = new SplittableRandom(SEED);
    long work = (long) ((1 - FOR_STARTS) * WORK);
    workLeft = work;
    int inVain = 0;
    int sinceHere = 0;
    while (n >= 4 && workLeft > 0 && inVain < PATIENCE * n) {
      progress.at(1 - (double) workLeft / work);
      boolean anew = sinceHere++ == n * LINGER;
      int[] next = anew ? mixed(random) : shake(here, random);
      inVain++;
      if (!pins.isFree() && !pins.allows(next)) {
        continue;
      }
      begin(next);
      improve(Progress.NONE);
      if (anew || cost.compareTo(hereCost) < 0) {
        here = order.clone();
        hereCost = cost;
        sinceHere = 0;
      }
      if (cost.compareTo(bestCost) < 0) {
        best = order.clone();
        bestCost = cost;
        inVain = 0;
      }
    }
    return best;
  }

  /** Any order; where pins ask for something, the first that they allow comes first, and so on. */
  private int[] mixed(SplittableRandom random) {
    int[] mixed = everyOne();
    for (int i = n - 1; i > 0; i--) {
      new Swap(i, random.nextInt(i + 1)).on(mixed);
    }
    return inTurn(mixed, 0, false);
  }

  /** A few sections go to other places, near or far. */
  private int[] shake(int[] from, SplittableRandom random) {
    int[] next = from.clone();
    for (int i = 2 + random.nextInt(3); i > 0; i--) {
      new Shift(random.nextInt(n), random.nextInt(n)).on(next);
    }
    return next;
  }

  private void begin(int[] with) {
    order = with;
    workLeft -= (long) costs.activation().coverage().count() + costs.flash().coverage().count();
    cost = costs.cost(order);
    for (int i = 0; i < n; i++) {
      position[order[i]] = i;
    }
  }

  /** From a section, or the first that pins allow, always to the nearest that pins allow. */
  private int[] walk(int first) {
    return inTurn(everyOne(), first, true);
  }

  /**
   * Of the sections that pins allow next, the nearest to the one before, or the first of a list.
   */
  private int[] inTurn(int[] list, int first, boolean nearest) {
    int[] turn = new int[n];
    boolean[] done = new boolean[n];
    int[] waiting = new int[n];
    for (int s = 0; s < n; s++) {
      waiting[s] = pins.allBefore(s).cardinality();
    }
    for (int i = 0; i < n; i++) {
      int next = -1;
      int from = i == 0 ? first : turn[i - 1];
      for (int s : list) {
        boolean may = !done[s] && waiting[s] == 0;
        if (may && (next < 0 || (nearest && costs.between(from, s) < costs.between(from, next)))) {
          next = s;
        }
      }
      turn[i] = next;
      done[next] = true;
      for (int s = 0; s < n; s++) {
        waiting[s] -= pins.isBefore(next, s) ? 1 : 0;
      }
    }
    return turn;
  }

  private void improve(Progress progress) {
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      OrderCost before = cost;
      for (int s = 0; s < n && workLeft > 0; s++) {
        progress.at((sweep + (double) s / n) / SWEEPS);
        for (int other : n <= ALL_PLACES ? everyOne() : costs.flash().neighbours(s)) {
          if (other != s && workLeft > 0) {
            tryMove(new Shift(position[s], position[other]));
            tryMove(new Swap(position[s], position[other]));
            if (position[s] < position[other]) {
              tryMove(new Turn(position[s], position[other]));
            }
          }
        }
      }
      if (cost.compareTo(before) == 0) {
        break;
      }
    }
  }

  private int[] everyOne() {
    int[] all = new int[n];
    Arrays.setAll(all, i -> i);
    return all;
  }

  /** A change of the order that can be taken back. */
  private interface Move {
    /** Lowest place that changes. */
    int low();

    /** Highest place that changes. */
    int high();

    /** Sections of an order that change places with others by it. */
    int[] moved(int[] order);

    void on(int[] order);

    Move back();
  }

  private record Shift(int from, int to) implements Move {
    @Override
    public int low() {
      return Math.min(from, to);
    }

    @Override
    public int high() {
      return Math.max(from, to);
    }

    @Override
    public int[] moved(int[] order) {
      return new int[] {order[from]};
    }

    @Override
    public void on(int[] order) {
      int moved = order[from];
      if (from < to) {
        System.arraycopy(order, from + 1, order, from, to - from);
      } else {
        System.arraycopy(order, to, order, to + 1, from - to);
      }
      order[to] = moved;
    }

    @Override
    public Move back() {
      return new Shift(to, from);
    }
  }

  private record Swap(int a, int b) implements Move {
    @Override
    public int low() {
      return Math.min(a, b);
    }

    @Override
    public int high() {
      return Math.max(a, b);
    }

    @Override
    public int[] moved(int[] order) {
      return new int[] {order[a], order[b]};
    }

    @Override
    public void on(int[] order) {
      int t = order[a];
      order[a] = order[b];
      order[b] = t;
    }

    @Override
    public Move back() {
      return this;
    }
  }

  private record Turn(int low, int high) implements Move {
    @Override
    public int[] moved(int[] order) {
      return Arrays.copyOfRange(order, low, high + 1);
    }

    @Override
    public void on(int[] order) {
      for (int a = low, b = high; a < b; a++, b--) {
        int t = order[a];
        order[a] = order[b];
        order[b] = t;
      }
    }

    @Override
    public Move back() {
      return this;
    }
  }

  /** Makes a change if pins allow it and it is better. */
  private void tryMove(Move move) {
    int[] moved = move.moved(order);
    carryOut(move);
    if (keepsPins(move)) {
      // Only what names a section that changed places with others can count differently now.
      recount(costs.activation(), moved);
      if (costs.activation().steps() <= cost.thriceSteps()) {
        recount(costs.flash(), moved);
        OrderCost changed =
            new OrderCost(costs.activation().steps(), costs.flash().steps(), costs.travel(order));
        if (changed.compareTo(cost) < 0) {
          cost = changed;
          return;
        }
        carryOut(move.back());
        recount(costs.flash(), moved);
      } else {
        carryOut(move.back());
      }
      recount(costs.activation(), moved);
    } else {
      carryOut(move.back());
    }
  }

  private void recount(Tally tally, int[] sections) {
    for (int s : sections) {
      workLeft -= tally.count(s, position);
    }
  }

  private boolean keepsPins(Move move) {
    if (pins.isFree()) {
      return true;
    }
    for (int i = move.low(); i < move.high(); i++) {
      for (int j = i + 1; j <= move.high(); j++) {
        if (pins.isBefore(order[j], order[i])) {
          return false;
        }
      }
    }
    return true;
  }

  private void carryOut(Move move) {
    move.on(order);
    for (int i = move.low(); i <= move.high(); i++) {
      position[order[i]] = i;
    }
  }
}
