package org.seamwright.section;

import java.util.Arrays;
import java.util.Random;

/**
 * A start for {@link SeamSearch}: patches are halved, and the halves halved, each time along a line
 * that costs little. A half grows from a patch picked at random, by the patch that adds least to
 * the border, and is then improved by moving single patches over (C. M. Fiduccia and R. M.
 * Mattheyses, 1982); of a few tries the cheapest is taken. Recursion and growing as in G. Karypis
 * and V. Kumar, "A fast and high quality multilevel scheme for partitioning irregular graphs", SIAM
 * J. Sci. Comput. 1998.
 *
 * <p>Cost: O(n log n log k) per try. The same seed gives the same start.
 */
final class Bisection {
  private static final int TRIES = 4;
  private static final int PASSES = 3;

  /** How far a half may be from its share of the area, in areas of a cell. */
  private static final double UNEVEN = 0.01;

  /** Moves in a row that don't help before a pass ends. */
  private static final int PATIENCE = 60;

  private final PatchGraph patches;
  private final Random random;
  private final int[] label;
  private final int[] side;
  private final double[] pull;
  private final boolean[] fixed;
  private final KeyHeap heap = new KeyHeap();

  private Bisection(PatchGraph patches, int[] label, long seed) {
    this.patches = patches;
    this.label = label;
    random = new Random(seed);
    side = new int[patches.count()];
    Arrays.fill(side, -1);
    pull = new double[patches.count()];
    fixed = new boolean[patches.count()];
  }

  /**
   * Deals patches out.
   *
   * @param group one entry per patch: patches of different groups never meet
   * @param cells one list of cell numbers per group
   * @return one entry per patch: its cell
   */
  static int[] start(PatchGraph patches, int[] group, int[][] cells, long seed) {
    int[] label = new int[patches.count()];
    Bisection bisection = new Bisection(patches, label, seed);
    for (int g = 0; g < cells.length; g++) {
      int[] nodes = new int[group.length];
      int count = 0;
      for (int p = 0; p < group.length; p++) {
        if (group[p] == g) {
          nodes[count++] = p;
        }
      }
      bisection.deal(Arrays.copyOf(nodes, count), cells[g]);
    }
    return label;
  }

  private void deal(int[] nodes, int[] cells) {
    if (cells.length < 2 || nodes.length < 2) {
      for (int p : nodes) {
        label[p] = cells[0];
      }
      return;
    }
    int first = cells.length / 2;
    boolean[] best = halve(nodes, (double) first / cells.length, cells.length);
    int[] a = new int[nodes.length];
    int[] b = new int[nodes.length];
    int inA = 0;
    int inB = 0;
    for (int i = 0; i < nodes.length; i++) {
      if (best[i]) {
        a[inA++] = nodes[i];
      } else {
        b[inB++] = nodes[i];
      }
    }
    deal(Arrays.copyOf(a, inA), Arrays.copyOf(cells, first));
    deal(Arrays.copyOf(b, inB), Arrays.copyOfRange(cells, first, cells.length));
  }

  private boolean[] halve(int[] nodes, double share, int cells) {
    double total = 0;
    for (int p : nodes) {
      total += patches.areaMm2()[p];
    }
    double target = share * total;
    double slack = UNEVEN * total / cells;
    double least = Double.POSITIVE_INFINITY;
    boolean[] best = new boolean[nodes.length];
    for (int attempt = 0; attempt < TRIES; attempt++) {
      double area = grow(nodes, target);
      for (int pass = 0; pass < PASSES; pass++) {
        double before = area;
        double gained = improve(nodes, area, target, slack);
        area = areaOf(nodes);
        if (gained <= 0 && area == before) {
          break;
        }
      }
      double cost = cost(nodes) + Math.max(0, Math.abs(area - target) - slack);
      if (cost < least) {
        least = cost;
        for (int i = 0; i < nodes.length; i++) {
          best[i] = side[nodes[i]] == 1;
        }
      }
    }
    for (int p : nodes) {
      side[p] = -1;
    }
    return best;
  }

  private double areaOf(int[] nodes) {
    double area = 0;
    for (int p : nodes) {
      area += side[p] == 1 ? patches.areaMm2()[p] : 0;
    }
    return area;
  }

  private double cost(int[] nodes) {
    double cost = 0;
    for (int p : nodes) {
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        cost += side[p] == 1 && side[patches.neighbour()[i]] == 0 ? patches.costMm()[i] : 0;
      }
    }
    return cost;
  }

  /** Side 1 grows from a random patch up to an area; all others are on side 0. */
  private double grow(int[] nodes, double target) {
    for (int p : nodes) {
      side[p] = 0;
      // What the border grows by if the patch joins.
      pull[p] = 0;
    }
    for (int p : nodes) {
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        pull[p] += side[patches.neighbour()[i]] == 0 ? patches.costMm()[i] : 0;
      }
    }
    double area = 0;
    while (area < target) {
      if (heap.isEmpty()) {
        int next = nodes[random.nextInt(nodes.length)];
        for (int i = 0; side[next] == 1; i++) {
          next = nodes[i];
        }
        heap.push(pull[next], next, 0);
      }
      int p = heap.vertex();
      boolean current = side[p] == 0 && heap.key() == pull[p];
      heap.pop();
      if (current) {
        side[p] = 1;
        area += patches.areaMm2()[p];
        for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
          int q = patches.neighbour()[i];
          if (side[q] == 0) {
            pull[q] -= 2 * patches.costMm()[i];
            heap.push(pull[q], q, 0);
          }
        }
      }
    }
    clear();
    return area;
  }

  private void clear() {
    while (!heap.isEmpty()) {
      heap.pop();
    }
  }

  /** One pass of single moves, back to the best state on the way; gives what the cut gained. */
  private double improve(int[] nodes, double startMm2, double target, double slack) {
    for (int p : nodes) {
      fixed[p] = false;
      pull[p] = 0;
      boolean border = false;
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = patches.neighbour()[i];
        if (side[q] >= 0) {
          boolean other = side[q] != side[p];
          border |= other;
          // What the border grows by if the patch goes over.
          pull[p] += other ? -patches.costMm()[i] : patches.costMm()[i];
        }
      }
      if (border) {
        heap.push(pull[p], p, 0);
      }
    }
    int[] moved = new int[nodes.length];
    int count = 0;
    int bestCount = 0;
    double area = startMm2;
    double gain = 0;
    double bestGain = 0;
    double bestOff = Math.max(slack, Math.abs(area - target));
    while (!heap.isEmpty() && count < bestCount + PATIENCE) {
      int p = heap.vertex();
      boolean current = !fixed[p] && heap.key() == pull[p];
      heap.pop();
      double after = area + (side[p] == 1 ? -1 : 1) * patches.areaMm2()[p];
      double off = Math.abs(after - target);
      if (!current || (off > slack && off > Math.abs(area - target))) {
        continue;
      }
      gain -= pull[p];
      area = after;
      fixed[p] = true;
      side[p] = 1 - side[p];
      moved[count++] = p;
      for (int i = patches.begin()[p]; i < patches.begin()[p + 1]; i++) {
        int q = patches.neighbour()[i];
        if (side[q] >= 0 && !fixed[q]) {
          pull[q] += side[q] == side[p] ? 2 * patches.costMm()[i] : -2 * patches.costMm()[i];
          heap.push(pull[q], q, 0);
        }
      }
      double capped = Math.max(slack, off);
      if (capped < bestOff || (capped == bestOff && gain > bestGain)) {
        bestOff = capped;
        bestGain = gain;
        bestCount = count;
      }
    }
    clear();
    for (int i = count - 1; i >= bestCount; i--) {
      side[moved[i]] = 1 - side[moved[i]];
    }
    return bestGain;
  }
}
