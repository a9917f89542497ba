package org.seamwright.section;

import java.util.Arrays;

/**
 * Moves seams to where they cost least while sections keep the limit: for two cells that meet, the
 * patches near their seam are dealt out anew by the cheapest cut between the cores of both ({@link
 * MinCut}), again and again over all pairs. Worked area beyond the limit costs so much that it is
 * only taken where nothing else is left; a price per area, found by bisection, makes the cut keep
 * to it (a Lagrange multiplier).
 *
 * <p>Reference for moves by cuts: Y. Boykov, O. Veksler and R. Zabih, "Fast approximate energy
 * minimization via graph cuts", PAMI 2001. Cost: a few rounds over all pairs, a handful of cuts
 * each. The result is never worse than the start in cost and excess together.
 */
final class SeamSearch {
  private static final int ROUNDS = 4;
  private static final int BISECTIONS = 7;

  /** Patches deeper inside than this share of the deepest stay with their cell. */
  private static final double CORE = 0.75;

  /** No seam is bent by more than this, in sides of a cell: the largest price of area. */
  private static final double STEEPEST = 40;

  /** Shifting ends when the other cell is over the limit by this much more. */
  private static final double LARGEST_SHIFT = 0.05;

  /** Gains below this share of a side are not worth another cut. */
  private static final double LEAST_GAIN = 1e-4;

  private final Patches patches;
  private final int[] label;
  private final int cells;
  private final double lapMm;
  private final AreaPrice price;
  private final double cap;
  private final double side;
  private final int[] rank;
  private final double[] worked;
  private final MinCut cut = new MinCut();
  private final KeyHeap heap = new KeyHeap();
  private final int[] local;
  private final double[] depth;
  private int[] members = new int[256];
  private int memberCount;
  private int[] node = new int[256];
  private boolean[] sourceSide = new boolean[256];
  private double cost;

  /**
   * Prepares a search.
   *
   * @param label one entry per patch: its cell, each cell in one piece
   * @param lapMm the wider lap
   * @param price of worked area beyond the limit
   * @param rank one entry per cell: its place in the order of work; empty while that is open
   * @param extraMm2 one entry per cell: area to count beside what the graph tells
   */
  SeamSearch(
      Patches patches, int[] label, double lapMm, AreaPrice price, int[] rank, double[] extraMm2) {
    this.patches = patches;
    this.label = label.clone();
    this.cells = price.cells();
    this.lapMm = lapMm;
    this.price = price;
    this.cap = price.capMm2();
    this.side = price.sideMm();
    this.rank = rank.clone();
    this.worked = extraMm2.clone();
    local = new int[patches.count()];
    depth = new double[patches.count()];
    Arrays.fill(local, -1);
    measure();
  }

  private void measure() {
    cost = 0;
    for (int p = 0; p < patches.count(); p++) {
      worked[label[p]] += patches.areaMm2()[p];
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = patches.neighbour()[i];
        if (q > p && label[q] != label[p]) {
          cost += patches.costMm()[i];
          lap(label[p], label[q], patches.lengthMm()[i]);
        }
      }
    }
  }

  private void lap(int a, int b, double lengthMm) {
    double toA = rank.length == 0 ? 0.5 : rank[a] > rank[b] ? 1 : 0;
    worked[a] += toA * lapMm * lengthMm;
    worked[b] += (1 - toA) * lapMm * lengthMm;
  }

  /** Worked area per cell as the graph tells it, mm², with what was to be counted beside. */
  double[] workedMm2() {
    return worked.clone();
  }

  /** What the seams cost, mm. */
  double costMm() {
    return cost;
  }

  /** What the seams cost and what excess over the limit costs beside, mm. */
  double totalMm() {
    return total();
  }

  /** Searches; gives one entry per patch: its cell. */
  int[] run() {
    rounds();
    return label.clone();
  }

  private void rounds() {
    boolean[] changed = new boolean[cells];
    Arrays.fill(changed, true);
    for (int round = 0; round < ROUNDS; round++) {
      boolean[] now = new boolean[cells];
      boolean any = false;
      for (long pair : pairs()) {
        int a = (int) (pair >> 32);
        int b = (int) pair;
        if ((changed[a] || changed[b] || now[a] || now[b]) && improve(a, b)) {
          now[a] = true;
          now[b] = true;
          any = true;
        }
      }
      if (!any) {
        break;
      }
      changed = now;
    }
  }

  private long[] pairs() {
    long[] found = new long[patches.neighbour().length / 2];
    int count = 0;
    for (int p = 0; p < patches.count(); p++) {
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int a = label[p];
        int b = label[patches.neighbour()[i]];
        if (a < b) {
          found[count++] = (long) a << 32 | b;
        }
      }
    }
    return Arrays.stream(found, 0, count).sorted().distinct().toArray();
  }

  private double slope(int cell) {
    return price.slope(cell, worked[cell], AreaPrice.HARDEST);
  }

  private double total() {
    double sum = cost;
    for (int c = 0; c < cells; c++) {
      sum += price.of(c, worked[c], AreaPrice.HARDEST);
    }
    return sum;
  }

  /** Deals the patches of two cells out anew; says whether that helped. */
  private boolean improve(int a, int b) {
    gather(a, b);
    if (node.length < memberCount) {
      node = new int[members.length];
      sourceSide = new boolean[members.length];
    }
    boolean[] free = new boolean[memberCount];
    boolean better = cores(a, free) && deal(a, b, free);
    for (int m = 0; m < memberCount; m++) {
      local[members[m]] = -1;
    }
    return better;
  }

  private boolean deal(int a, int b, boolean[] free) {
    int[] before = new int[memberCount];
    for (int i = 0; i < memberCount; i++) {
      before[i] = label[members[i]];
    }
    double start = total();
    double best = start - LEAST_GAIN * side;
    int[] bestLabels = null;
    if (Math.abs(slope(a) - slope(b)) > 0) {
      double shifted = shift(slope(a) > slope(b) ? a : b, slope(a) > slope(b) ? b : a, free);
      if (shifted < best && connected(a) && connected(b)) {
        best = shifted;
        bestLabels = labels();
      }
      restore(before);
    }
    boolean[] withA = new boolean[memberCount];
    double low = -STEEPEST / side;
    double high = STEEPEST / side;
    double lambda = slope(a) - slope(b);
    for (int i = 0; i < BISECTIONS; i++) {
      lambda = Math.max(low, Math.min(high, lambda));
      solve(a, lambda, free, before, withA);
      for (int m = 0; m < memberCount; m++) {
        move(members[m], withA[m] ? a : b);
      }
      double now = total();
      double wanted = slope(a) - slope(b);
      if (now < best && connected(a) && connected(b)) {
        best = now;
        bestLabels = labels();
      }
      restore(before);
      if (Math.abs(wanted - lambda) < 1e-6 / side) {
        break;
      }
      if (wanted > lambda) {
        low = lambda;
      } else {
        high = lambda;
      }
      // The first guess goes straight to what is asked for, later ones halve what is left.
      lambda = i == 0 ? wanted : (low + high) / 2;
    }
    if (bestLabels != null) {
      restore(bestLabels);
    }
    return bestLabels != null;
  }

  private int[] labels() {
    int[] now = new int[memberCount];
    for (int m = 0; m < memberCount; m++) {
      now[m] = label[members[m]];
    }
    return now;
  }

  private void restore(int[] labels) {
    for (int m = 0; m < memberCount; m++) {
      move(members[m], labels[m]);
    }
  }

  /**
   * Moves the seam of two cells evenly into one of them, as far as is best, and gives the total
   * then. Cuts alone can't reach places between two lines that are both cheap.
   */
  private double shift(int from, int to, boolean[] free) {
    long[] order = new long[memberCount];
    int count = 0;
    for (int m = 0; m < memberCount; m++) {
      if (free[m] && label[members[m]] == from) {
        // Depths are not negative, so their bits sort as they do.
        order[count++] = (long) Float.floatToIntBits((float) depth[members[m]]) << 32 | m;
      }
    }
    Arrays.sort(order, 0, count);
    double best = Double.POSITIVE_INFINITY;
    int bestCount = 0;
    double most = Math.max(worked[from], cap) + LARGEST_SHIFT * cap;
    for (int i = 0; i < count && worked[to] < most; i++) {
      move(members[(int) order[i]], to);
      double now = total();
      if (now < best && connected(from) && connected(to)) {
        best = now;
        bestCount = i + 1;
      }
    }
    for (int i = count - 1; i >= bestCount; i--) {
      move(members[(int) order[i]], from);
    }
    return best;
  }

  private void gather(int a, int b) {
    memberCount = 0;
    for (int p = 0; p < label.length; p++) {
      if (label[p] == a || label[p] == b) {
        if (memberCount == members.length) {
          members = Arrays.copyOf(members, 2 * memberCount);
        }
        local[p] = memberCount;
        members[memberCount++] = p;
      }
    }
  }

  /** Marks the patches that may change hands: all but those deep inside. */
  private boolean cores(int a, boolean[] free) {
    for (int m = 0; m < memberCount; m++) {
      depth[members[m]] = Double.POSITIVE_INFINITY;
    }
    for (int m = 0; m < memberCount; m++) {
      int p = members[m];
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = patches.neighbour()[i];
        if (local[q] >= 0 && label[q] != label[p] && depth[p] > 0) {
          depth[p] = 0;
          heap.push(0, p, 0);
        }
      }
    }
    while (!heap.isEmpty()) {
      int p = heap.vertex();
      double here = heap.key();
      heap.pop();
      if (here > depth[p]) {
        continue;
      }
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = patches.neighbour()[i];
        if (local[q] >= 0 && label[q] == label[p]) {
          double there =
              here + (Math.sqrt(patches.areaMm2()[p]) + Math.sqrt(patches.areaMm2()[q])) / 2;
          if (there < depth[q]) {
            depth[q] = there;
            heap.push(there, q, 0);
          }
        }
      }
    }
    double deepestA = 0;
    double deepestB = 0;
    for (int m = 0; m < memberCount; m++) {
      double d = depth[members[m]];
      if (d < Double.POSITIVE_INFINITY && label[members[m]] == a) {
        deepestA = Math.max(deepestA, d);
      } else if (d < Double.POSITIVE_INFINITY) {
        deepestB = Math.max(deepestB, d);
      }
    }
    for (int m = 0; m < memberCount; m++) {
      free[m] = depth[members[m]] <= CORE * (label[members[m]] == a ? deepestA : deepestB);
    }
    return deepestA > 0 && deepestB > 0;
  }

  /** Cuts the free patches; the others pull their free neighbours to their side. */
  private void solve(int a, double lambda, boolean[] free, int[] before, boolean[] withA) {
    int nodes = 0;
    for (int m = 0; m < memberCount; m++) {
      node[m] = free[m] ? nodes++ : -1;
    }
    cut.reset(nodes);
    for (int m = 0; m < memberCount; m++) {
      if (!free[m]) {
        continue;
      }
      int p = members[m];
      // Area costs with a as much as it is worth with b.
      double pull = -lambda * patches.areaMm2()[p];
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = local[patches.neighbour()[i]];
        if (q >= 0 && !free[q]) {
          pull += before[q] == a ? patches.costMm()[i] : -patches.costMm()[i];
        } else if (q > m) {
          cut.edge(node[m], node[q], patches.costMm()[i]);
        }
      }
      cut.terminal(node[m], pull);
    }
    cut.cut(sourceSide);
    for (int m = 0; m < memberCount; m++) {
      withA[m] = free[m] ? sourceSide[node[m]] : before[m] == a;
    }
  }

  private void move(int p, int to) {
    int from = label[p];
    if (from == to) {
      return;
    }
    for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
      int other = label[patches.neighbour()[i]];
      double length = patches.lengthMm()[i];
      if (other == from) {
        cost += patches.costMm()[i];
        lap(to, from, length);
      } else if (other == to) {
        cost -= patches.costMm()[i];
        lap(from, to, -length);
      } else {
        lap(from, other, -length);
        lap(to, other, length);
      }
    }
    worked[from] -= patches.areaMm2()[p];
    worked[to] += patches.areaMm2()[p];
    label[p] = to;
  }

  /** Whether the members of a cell hang together. */
  private boolean connected(int cell) {
    boolean[] seen = new boolean[memberCount];
    int[] stack = new int[memberCount];
    int size = 0;
    int count = 0;
    for (int m = 0; m < memberCount; m++) {
      if (label[members[m]] == cell) {
        count++;
        if (size == 0) {
          stack[size++] = m;
          seen[m] = true;
        }
      }
    }
    int reached = 0;
    while (size > 0) {
      int p = members[stack[--size]];
      reached++;
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = local[patches.neighbour()[i]];
        if (q >= 0 && !seen[q] && label[members[q]] == cell) {
          seen[q] = true;
          stack[size++] = q;
        }
      }
    }
    return count > 0 && reached == count;
  }
}
