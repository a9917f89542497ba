package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The best order of few sections, proved: branch and bound over all orders, sections taken up one
 * by one.
 *
 * <p>What a start of an order must cost at least is what it has cost, plus the laps that are
 * certain because one side of a seam is worked and the other is not, plus for each seam between
 * sections not yet worked the smaller of its two laps. Two starts with the same sections, the same
 * last one and the same half-covered places go on alike: one that is no better in anything is
 * dropped. Neither drops an order that could be better, so the result is exact; among equals it is
 * the order that comes first by section number.
 *
 * <p>Cost: milliseconds for 10 sections of a piece; memory for at most {@value #MOST_STARTS}
 * starts. Reference: A. H. Land and A. G. Doig, "An automatic method of solving discrete
 * programming problems", Econometrica 28 (1960); dominance as in M. Held and R. M. Karp, "A dynamic
 * programming approach to sequencing problems", 1962.
 */
final class ExactOrder {
  /** Starts that are remembered; beyond, they are no longer compared, which costs time only. */
  private static final int MOST_STARTS = 300_000;

  private final int n;
  private final WorkingOrder costs;
  private final Kind activation;
  private final Kind flash;
  private final int[] mustBefore;
  private final double[] leastWay;
  private final int[] order;
  private final Map<Start, List<double[]>> seen = new HashMap<>();
  private int starts;
  private int[] best;
  private OrderCost bestCost;

  ExactOrder(WorkingOrder costs, Precedence pins) {
    this.costs = costs;
    n = costs.sections();
    activation = new Kind(costs.activation(), true);
    flash = new Kind(costs.flash(), false);
    order = new int[n];
    mustBefore = new int[n];
    leastWay = new double[n];
    for (int s = 0; s < n; s++) {
      mustBefore[s] = (int) (pins.allBefore(s).isEmpty() ? 0 : pins.allBefore(s).toLongArray()[0]);
      leastWay[s] = n > 1 ? Double.POSITIVE_INFINITY : 0;
      for (int other = 0; other < n; other++) {
        if (other != s) {
          leastWay[s] = Math.min(leastWay[s], costs.between(s, other));
        }
      }
    }
  }

  /**
   * The best order.
   *
   * @param known an order that keeps to the pins, the better the faster
   */
  int[] best(int[] known) {
    bestCost = costs.cost(known);
    best = null;
    extend(0, 0, 0);
    return best == null ? known.clone() : best;
  }

  private void extend(int done, int count, double way) {
    if (count == n) {
      best = order.clone();
      bestCost =
          new OrderCost(
              costs.activation().steps(activation.spent), costs.flash().steps(flash.spent), way);
      return;
    }
    for (int s = 0; s < n; s++) {
      if ((done >> s & 1) == 0 && (mustBefore[s] & ~done) == 0) {
        order[count] = s;
        int now = done | 1 << s;
        long activationWas = activation.spent;
        long flashWas = flash.spent;
        activation.work(s, done);
        flash.work(s, done);
        double further = count == 0 ? 0 : way + costs.between(order[count - 1], s);
        if (mayBeBetter(now, further) && isNew(now, s, further)) {
          extend(now, count + 1, further);
        }
        activation.undo(s, done, activationWas);
        flash.undo(s, done, flashWas);
      }
    }
  }

  private boolean mayBeBetter(int done, double way) {
    double rest = 0;
    for (int s = 0; s < n; s++) {
      rest += (done >> s & 1) == 0 ? leastWay[s] : 0;
    }
    OrderCost least =
        new OrderCost(
            costs.activation().steps(activation.atLeast(done)),
            costs.flash().steps(flash.atLeast(done)),
            // The sum of shortest ways may come out a rounding above the way itself.
            way + rest * (1 - OrderCost.TRAVEL_ROUNDING));
    int order = least.compareTo(bestCost);
    return best == null ? order <= 0 : order < 0;
  }

  /** Whether no start seen before is as good in everything; remembers this one. */
  private boolean isNew(int done, int last, double way) {
    double[] here = {activation.spent, flash.spent, way};
    Start start = new Start(done, last, activation.halfCovered(done));
    List<double[]> others = seen.get(start);
    if (others != null) {
      for (double[] o : others) {
        if (o[0] <= here[0] && o[1] <= here[1] && o[2] <= here[2]) {
          return false;
        }
      }
    }
    if (starts < MOST_STARTS) {
      starts++;
      seen.computeIfAbsent(start, k -> new ArrayList<>(1)).add(here);
    }
    return true;
  }

  /** What two starts must have in common to go on alike. */
  private record Start(int done, int last, long[] halfCovered) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Start s
          && done == s.done
          && last == s.last
          && Arrays.equals(halfCovered, s.halfCovered);
    }

    @Override
    public int hashCode() {
      return (31 * done + last) * 31 + Arrays.hashCode(halfCovered);
    }
  }

  /** One kind of lap: what is spent on it, and what must be. */
  private static final class Kind {
    /** Units that are certain. */
    long spent;

    private final Tally tally;

    /** Only what lies under two laps counts. */
    private final boolean fromTwo;

    private final int n;
    private final int[] own;

    /** One entry per patch and section: the sections that it has a seam with over the patch. */
    private final int[][] beside;

    /** One entry per patch: its number of laps so far. */
    private final int[] laps;

    private final int[][] patchesOf;

    /** Units that the seam of two sections costs whichever is worked first. */
    private final long[][] either;

    Kind(Tally tally, boolean fromTwo) {
      this.tally = tally;
      this.fromTwo = fromTwo;
      Coverage coverage = tally.coverage();
      n = coverage.sections();
      int patches = coverage.count();
      own = coverage.section();
      laps = new int[patches];
      beside = new int[patches][n];
      for (int p = 0; p < patches; p++) {
        for (int i = coverage.begin()[p]; i < coverage.begin()[p + 1]; i++) {
          beside[p][coverage.low()[i]] |= 1 << coverage.high()[i];
          beside[p][coverage.high()[i]] |= 1 << coverage.low()[i];
        }
      }
      patchesOf = new int[n][];
      for (int s = 0; s < n; s++) {
        int section = s;
        patchesOf[s] =
            IntStream.range(0, patches)
                .filter(p -> own[p] != section && beside[p][section] != 0)
                .toArray();
      }
      either = new long[n][n];
      if (!fromTwo) {
        sharedEither(coverage);
      }
    }

    /** A patch under one seam of its own section counts unless its section is the later one. */
    private void sharedEither(Coverage coverage) {
      long[][] onFirst = new long[n][n];
      for (int p = 0; p < own.length; p++) {
        int begin = coverage.begin()[p];
        boolean one = coverage.begin()[p + 1] - begin == 1;
        if (one && coverage.low()[begin] == own[p]) {
          onFirst[own[p]][coverage.high()[begin]] += tally.units(p);
        } else if (one && coverage.high()[begin] == own[p]) {
          onFirst[own[p]][coverage.low()[begin]] += tally.units(p);
        }
      }
      for (int a = 0; a < n; a++) {
        for (int b = 0; b < a; b++) {
          either[a][b] = Math.min(onFirst[a][b], onFirst[b][a]);
        }
      }
    }

    /** Works a section after others. */
    void work(int s, int done) {
      for (int p : patchesOf[s]) {
        if ((done >> own[p] & 1) != 0 && (beside[p][s] & done) != 0) {
          laps[p]++;
          spent += !fromTwo || laps[p] == 2 ? tally.units(p) : 0;
        }
      }
    }

    void undo(int s, int done, long was) {
      for (int p : patchesOf[s]) {
        if ((done >> own[p] & 1) != 0 && (beside[p][s] & done) != 0) {
          laps[p]--;
        }
      }
      spent = was;
    }

    /** Units that any order with this start spends at least. */
    long atLeast(int done) {
      long least = spent;
      for (int p = 0; p < own.length; p++) {
        if ((done >> own[p] & 1) != 0 && !(fromTwo && laps[p] >= 2)) {
          int certain = 0;
          for (int s = 0; s < n; s++) {
            certain += (done >> s & 1) == 0 && (beside[p][s] & done) != 0 ? 1 : 0;
          }
          if (fromTwo) {
            least += laps[p] + certain >= 2 ? tally.units(p) : 0;
          } else {
            least += certain * tally.units(p);
          }
        }
      }
      if (!fromTwo) {
        for (int a = 0; a < n; a++) {
          for (int b = 0; b < a; b++) {
            least += ((done >> a | done >> b) & 1) == 0 ? either[a][b] : 0;
          }
        }
      }
      return least;
    }

    /** Two bits per patch that may get another lap: how many it has, as far as that matters. */
    long[] halfCovered(int done) {
      long[] bits = new long[(own.length + 31) / 32];
      for (int p = 0; p < own.length; p++) {
        if (laps[p] > 0) {
          boolean open = false;
          for (int s = 0; s < n && !open; s++) {
            open = (done >> s & 1) == 0 && s != own[p] && beside[p][s] != 0;
          }
          if (open) {
            bits[p >> 5] |= (long) Math.min(2, laps[p]) << (2 * (p & 31));
          }
        }
      }
      return bits;
    }
  }
}
