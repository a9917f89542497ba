package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.seamwright.basis.Parallel;

/**
 * Deals the nodes of a graph out to cells so that seams cost little. Nodes are paired again and
 * again; the few that remain are halved recursively ({@link Bisection}); and on the way back single
 * nodes move over seams ({@link SeamMoves}). Several tries with different pairings are then
 * crossed: pairs that two tries part stay apart, so the better of both is where the next descent
 * starts and seams of either can be kept piece by piece.
 *
 * <p>References: B. Hendrickson and R. Leland, "A multilevel algorithm for partitioning graphs",
 * 1995; P. Sanders and C. Schulz, "Distributed evolutionary graph partitioning", 2012, for the
 * crossing. The same graph gives the same cells on any number of cores. Cost: O(tries n log n).
 */
final class Multilevel {
  /** Nodes per cell at which pairing ends. */
  private static final int LEAST_NODES = 12;

  /** Pairing that leaves more than this share of the nodes has come to its end. */
  private static final double LEAST_SHRINK = 0.95;

  /** Largest node, in areas of a cell. */
  private static final double LARGEST_NODE = 0.12;

  /** Crossings after which every try has been crossed with enough others. */
  private static final int GENERATIONS = 3;

  /** Tries kept from one generation to the next. */
  private static final int MOST_TRIES = 24;

  /** Nodes that are dealt out in all tries: what the time allows. */
  private static final int MOST_NODES = 40_000;

  /** Price of excess on the coarsest graph, against that on the finest. */
  private static final double SOFTEST = 0.05;

  private final PatchGraph graph;
  private final int[] group;
  private final int[][] cellsOf;
  private final double lapMm;
  private final AreaPrice price;

  /**
   * Prepares.
   *
   * @param group one entry per node: nodes of different groups never meet
   * @param cellsOf one list of cell numbers per group
   * @param lapMm the wider lap
   * @param price of worked area beyond the limit
   */
  Multilevel(PatchGraph graph, int[] group, int[][] cellsOf, double lapMm, AreaPrice price) {
    this.graph = graph;
    this.group = group;
    this.cellsOf = cellsOf;
    this.lapMm = lapMm;
    this.price = price;
  }

  private record Try(int[] label, double total) {}

  /**
   * The best of several tries and their crossings, best first.
   *
   * @param known tries made otherwise, to be crossed with these
   */
  List<int[]> best(List<int[]> known) {
    int tries = Math.max(4, Math.min(MOST_TRIES, MOST_NODES / graph.count()));
    Try[] now = new Try[tries + known.size()];
    Parallel.each(
        now.length,
        i -> {
          Random random = new Random(i);
          Try first =
              i < tries
                  ? descend(new int[0][], null, random)
                  : improved(known.get(i - tries).clone());
          now[i] = descend(new int[][] {first.label}, first, random);
        });
    List<Try> kept = new ArrayList<>(List.of(now));
    kept.sort((a, b) -> Double.compare(a.total, b.total));
    for (int generation = 1; generation <= GENERATIONS; generation++) {
      int parents = Math.max(2, (kept.size() + 1) / 2);
      int seed = generation * MOST_TRIES;
      Try[] children = new Try[parents];
      List<Try> from = kept;
      Parallel.each(
          parents,
          i -> {
            Random random = new Random(seed + i);
            Try a = from.get(i);
            Try b = from.get((i + 1 + random.nextInt(from.size() - 1)) % from.size());
            Try better = a.total <= b.total ? a : b;
            children[i] = descend(new int[][] {a.label, b.label}, better, random);
          });
      kept = survivors(kept, children);
      if (kept.size() < 2) {
        break;
      }
    }
    return kept.stream().map(Try::label).toList();
  }

  /** The better half of old and new, no two of them equal. */
  private static List<Try> survivors(List<Try> old, Try[] children) {
    List<Try> all = new ArrayList<>(old);
    all.addAll(List.of(children));
    all.sort((a, b) -> Double.compare(a.total, b.total));
    List<Try> kept = new ArrayList<>();
    for (Try t : all) {
      boolean known = kept.stream().anyMatch(k -> Math.abs(k.total - t.total) < 1e-9 * t.total);
      if (!known && kept.size() < Math.max(2, old.size() - 1)) {
        kept.add(t);
      }
    }
    return kept;
  }

  private Try improved(int[] label) {
    double total = SeamMoves.improve(graph, label, lapMm, price, AreaPrice.HARDEST);
    return new Try(label, total);
  }

  /**
   * Pairs and comes back.
   *
   * @param apart tries whose seams are kept apart
   * @param start the one that is started from; null for a new one
   */
  private Try descend(int[][] apart, Try start, Random random) {
    List<PatchGraph> levels = new ArrayList<>(List.of(graph));
    List<int[]> joints = new ArrayList<>();
    int[][] kept = apart.clone();
    int[] groups = group;
    int[] label = start == null ? new int[0] : start.label;
    while (levels.get(joints.size()).count() > LEAST_NODES * price.cells()) {
      PatchGraph now = levels.get(joints.size());
      int[] to = now.paired(LARGEST_NODE * price.capMm2(), kept, random);
      int count = Arrays.stream(to).max().orElse(-1) + 1;
      if (count > LEAST_SHRINK * now.count()) {
        break;
      }
      joints.add(to);
      levels.add(now.joined(to, count));
      groups = carried(groups, to, count);
      label = label.length == 0 ? label : carried(label, to, count);
      for (int i = 0; i < kept.length; i++) {
        kept[i] = carried(kept[i], to, count);
      }
    }
    if (start == null) {
      label = Bisection.start(levels.get(joints.size()), groups, cellsOf, random.nextLong());
      levels.get(joints.size()).connect(label, price.cells());
    }
    double total = 0;
    for (int i = joints.size(); i >= 0; i--) {
      double share = joints.isEmpty() ? 1 : 1 - (double) i / joints.size();
      double hardness = AreaPrice.HARDEST * Math.pow(SOFTEST, 1 - share);
      if (i < joints.size()) {
        int[] coarse = label;
        int[] to = joints.get(i);
        label = new int[to.length];
        for (int p = 0; p < to.length; p++) {
          label[p] = coarse[to[p]];
        }
      } else {
        label = label.clone();
      }
      total = SeamMoves.improve(levels.get(i), label, lapMm, price, hardness);
    }
    return start != null && start.total <= total ? start : new Try(label, total);
  }

  private static int[] carried(int[] value, int[] to, int count) {
    int[] joint = new int[count];
    for (int p = 0; p < to.length; p++) {
      joint[to[p]] = value[p];
    }
    return joint;
  }
}
