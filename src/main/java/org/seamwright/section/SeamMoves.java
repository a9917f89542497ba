package org.seamwright.section;

import java.util.Arrays;

/**
 * Improves cells by moving single nodes over their seams, the move that saves most first, each node
 * once a pass; a pass goes on through moves that don't pay and ends with the best it has met on the
 * way (C. M. Fiduccia and R. M. Mattheyses, 1982, for many cells as in L. A. Sanchis, 1989).
 *
 * <p>Cells that are one piece stay so, and none vanishes. Cost: O(moves (log n + nodes of a cell))
 * a pass at worst, the search for a way round a node seldom going far.
 */
final class SeamMoves {
  private static final int PASSES = 6;

  /** Moves in a row that don't pay before a pass ends. */
  private static final int PATIENCE = 120;

  /** Gains below this share of a side are rounding. */
  private static final double LEAST_GAIN = 1e-7;

  private final PatchGraph graph;
  private final int[] label;
  private final double lapMm;
  private final AreaPrice price;
  private final double hardness;
  private final double side;
  private final double[] worked;
  private final double[] gain;
  private final boolean[] moved;
  private final double[] toLabel;
  private final double[] lengthTo;
  private final int[] touched;
  private final int[] seen;
  private final int[] queue;
  private int look;
  private final KeyHeap heap = new KeyHeap();
  private double total;

  private SeamMoves(PatchGraph graph, int[] label, double lapMm, AreaPrice price, double hardness) {
    this.graph = graph;
    this.label = label;
    this.lapMm = lapMm;
    this.price = price;
    int cells = price.cells();
    this.hardness = hardness;
    side = price.sideMm();
    worked = new double[cells];
    gain = new double[graph.count()];
    moved = new boolean[graph.count()];
    toLabel = new double[cells];
    lengthTo = new double[cells];
    touched = new int[cells];
    seen = new int[graph.count()];
    queue = new int[graph.count()];
    for (int p = 0; p < label.length; p++) {
      worked[label[p]] += graph.areaMm2()[p];
      for (int i = graph.begin()[p]; i < graph.begin()[p + 1]; i++) {
        if (label[graph.neighbour()[i]] != label[p]) {
          total += graph.costMm()[i] / 2;
          worked[label[p]] += lapMm * graph.lengthMm()[i] / 2;
        }
      }
    }
    for (int c = 0; c < cells; c++) {
      total += price(c, worked[c]);
    }
  }

  /**
   * Improves.
   *
   * @param label one entry per node: its cell; changed
   * @param lapMm the wider lap, half of which counts to either side of a seam
   * @param price of worked area beyond the limit
   * @param hardness of the price
   * @return what seams cost then, and excess beside, mm
   */
  static double improve(
      PatchGraph graph, int[] label, double lapMm, AreaPrice price, double hardness) {
    SeamMoves moves = new SeamMoves(graph, label, lapMm, price, hardness);
    for (int pass = 0; pass < PASSES && moves.pass(); pass++) {
      // Until a pass gains nothing.
    }
    return moves.total;
  }

  private double price(int cell, double workedMm2) {
    return price.of(cell, workedMm2, hardness);
  }

  private boolean pass() {
    Arrays.fill(moved, false);
    for (int p = 0; p < label.length; p++) {
      offer(p);
    }
    int[] node = new int[label.length];
    int[] from = new int[label.length];
    int count = 0;
    int bestCount = 0;
    double start = total;
    double best = total;
    while (!heap.isEmpty() && count < bestCount + PATIENCE) {
      int p = heap.vertex();
      double key = heap.key();
      heap.pop();
      if (moved[p] || key != gain[p]) {
        continue;
      }
      int to = bestTarget(p);
      if (to < 0 || !mayLeave(p)) {
        continue;
      }
      if (gain[p] > key + LEAST_GAIN * side) {
        // Areas have changed since; it waits for its turn.
        heap.push(gain[p], p, 0);
        continue;
      }
      node[count] = p;
      from[count++] = label[p];
      move(p, to);
      moved[p] = true;
      for (int i = graph.begin()[p]; i < graph.begin()[p + 1]; i++) {
        if (!moved[graph.neighbour()[i]]) {
          offer(graph.neighbour()[i]);
        }
      }
      if (total < best - LEAST_GAIN * side) {
        best = total;
        bestCount = count;
      }
    }
    while (!heap.isEmpty()) {
      heap.pop();
    }
    for (int i = count - 1; i >= bestCount; i--) {
      move(node[i], from[i]);
    }
    return total < start - LEAST_GAIN * side;
  }

  private void offer(int p) {
    if (bestTarget(p) >= 0) {
      heap.push(gain[p], p, 0);
    } else {
      gain[p] = Double.NaN;
    }
  }

  /** Gathers what a node's borders with each cell around cost; gives how many cells that are. */
  private int around(int p) {
    int count = 0;
    for (int i = graph.begin()[p]; i < graph.begin()[p + 1]; i++) {
      int l = label[graph.neighbour()[i]];
      if (lengthTo[l] == 0) {
        touched[count++] = l;
        lengthTo[l] = Double.MIN_NORMAL;
      }
      toLabel[l] += graph.costMm()[i];
      lengthTo[l] += graph.lengthMm()[i];
    }
    return count;
  }

  private void forget(int count) {
    for (int k = 0; k < count; k++) {
      toLabel[touched[k]] = 0;
      lengthTo[touched[k]] = 0;
    }
  }

  /** The cell a node had best go to, -1 if it meets no other; sets what the total grows by. */
  private int bestTarget(int p) {
    int own = label[p];
    int count = around(p);
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    double area = graph.areaMm2()[p];
    double all = 0;
    for (int k = 0; k < count; k++) {
      all += lengthTo[touched[k]];
    }
    for (int k = 0; k < count; k++) {
      int to = touched[k];
      if (to == own) {
        continue;
      }
      // Half of each lap lies on either side; other neighbours' halves stay as they are.
      double others = all - lengthTo[own] - lengthTo[to];
      double ownAfter = worked[own] - area + lapMm / 2 * (lengthTo[own] - lengthTo[to] - others);
      double toAfter = worked[to] + area + lapMm / 2 * (lengthTo[own] - lengthTo[to] + others);
      double change = toLabel[own] - toLabel[to];
      change += price(own, ownAfter) - price(own, worked[own]);
      change += price(to, toAfter) - price(to, worked[to]);
      if (change < least || (change == least && to < best)) {
        least = change;
        best = to;
      }
    }
    forget(count);
    gain[p] = least;
    return best;
  }

  /** Whether the nodes of its cell around a node hang together without it, and there are any. */
  private boolean mayLeave(int p) {
    int own = label[p];
    int wanted = 0;
    int from = -1;
    look += 2;
    for (int i = graph.begin()[p]; i < graph.begin()[p + 1]; i++) {
      int q = graph.neighbour()[i];
      if (label[q] == own) {
        seen[q] = look;
        from = q;
        wanted++;
      }
    }
    if (wanted == 0) {
      return false;
    }
    // Nodes around p that are to be reached are marked with the look, reached ones one higher.
    int end = 0;
    seen[p] = look + 1;
    seen[from] = look + 1;
    queue[end++] = from;
    wanted--;
    for (int at = 0; at < end && wanted > 0; at++) {
      int q = queue[at];
      for (int i = graph.begin()[q]; i < graph.begin()[q + 1]; i++) {
        int r = graph.neighbour()[i];
        if (label[r] == own && seen[r] != look + 1) {
          wanted -= seen[r] == look ? 1 : 0;
          seen[r] = look + 1;
          queue[end++] = r;
        }
      }
    }
    return wanted == 0;
  }

  private void move(int p, int to) {
    int own = label[p];
    int count = around(p);
    double all = 0;
    for (int k = 0; k < count; k++) {
      all += lengthTo[touched[k]];
    }
    double others = all - lengthTo[own] - lengthTo[to];
    total += toLabel[own] - toLabel[to] - price(own, worked[own]) - price(to, worked[to]);
    worked[own] += lapMm / 2 * (lengthTo[own] - lengthTo[to] - others) - graph.areaMm2()[p];
    worked[to] += lapMm / 2 * (lengthTo[own] - lengthTo[to] + others) + graph.areaMm2()[p];
    total += price(own, worked[own]) + price(to, worked[to]);
    forget(count);
    label[p] = to;
  }
}
