package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.mesh.EdgeRings;

/**
 * The intrinsic triangles of a domain gathered into small patches, with what a seam between two of
 * them costs: the graph on which seams are searched. A patch holds the triangles of one cluster of
 * vertices, and ends where lines that seams keep to run through it, so a seam can follow such a
 * line exactly.
 *
 * <p>Cost: O(n α(n)).
 *
 * @param of one entry per intrinsic triangle: its patch
 * @param cluster one entry per patch: the vertex of the coarse domain it comes from
 * @param areaMm2 one entry per patch
 * @param begin one entry per patch and one more: its first border with a neighbour
 * @param neighbour one entry per border: the patch on its other side
 * @param costMm one entry per border: length times cost of a seam along it
 * @param lengthMm one entry per border: the length
 */
record Patches(
    int[] of,
    int[] cluster,
    double[] areaMm2,
    int[] begin,
    int[] neighbour,
    double[] costMm,
    double[] lengthMm) {
  /**
   * Length of all borders of regular hexagons, per hexagon, in square roots of its area: half of
   * their outline, √(6/√3). Borders of clusters, which are crooked, are scaled to that in the mean.
   */
  private static final double HEXAGON = Math.sqrt(6 / Math.sqrt(3));

  /**
   * The straight line is this much shorter than a way along the sides of hexagons that it crosses:
   * 3/2 to √3 sides lead from one to the next (mean of the two directions of symmetry, √3/2 and 1,
   * in units of the way).
   */
  private static final double STRAIGHT = (Math.sqrt(3) / 2 + 1) / 2 * Math.sqrt(3) / 2;

  /**
   * Cuts choose the less crooked borders, which lose less when straightened: measured on the sample
   * pieces, where seams were 1.25 times as long as borders scaled by the mean.
   */
  private static final double CHOSEN = 1.25;

  /** Number of patches. */
  int count() {
    return cluster.length;
  }

  /** Patches as nodes. */
  PatchGraph graph() {
    return new PatchGraph(areaMm2, begin, neighbour, costMm, lengthMm);
  }

  /**
   * Gathers patches.
   *
   * @param owner one entry per vertex: its cluster
   */
  static Patches of(Ground ground, int[] owner) {
    int[] of = clusters(ground, owner);
    int faces = of.length;
    EdgeRings rings = ground.wayRings();
    int[] root = new int[faces];
    Arrays.setAll(root, f -> f);
    for (int h = 0; h < 3 * faces; h++) {
      for (int other = rings.next(h); other != h; other = rings.next(other)) {
        if (other < h && of[other / 3] == of[h / 3] && !ground.cost().isLine(h)) {
          int a = find(root, h / 3);
          int b = find(root, other / 3);
          root[Math.max(a, b)] = Math.min(a, b);
        }
      }
    }
    int[] cluster = new int[256];
    int count = 0;
    int[] number = new int[faces];
    for (int f = 0; f < faces; f++) {
      int top = find(root, f);
      if (top == f) {
        cluster = count < cluster.length ? cluster : Arrays.copyOf(cluster, 2 * count);
        cluster[count] = of[f];
        number[f] = count++;
      }
      number[f] = number[top];
    }
    double[] area = new double[count];
    for (int f = 0; f < faces; f++) {
      area[number[f]] += ground.wayMm2()[f];
    }
    return borders(ground, number, Arrays.copyOf(cluster, count), area);
  }

  /** Cluster per triangle: that of two of its corners, or of a neighbour where three meet. */
  private static int[] clusters(Ground ground, int[] owner) {
    int[] corner = ground.domain().surface().way();
    double[] edge = ground.domain().surface().edgeMm();
    int[] of = new int[corner.length / 3];
    for (int f = 0; f < of.length; f++) {
      int a = owner[corner[3 * f]];
      int b = owner[corner[3 * f + 1]];
      int c = owner[corner[3 * f + 2]];
      of[f] = a == b || a == c ? a : b == c ? b : -1;
    }
    for (int f = 0; f < of.length; f++) {
      if (of[f] < 0) {
        int best = owner[corner[3 * f]];
        double longest = -1;
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          int beside = of[ground.wayRings().next(h) / 3];
          if (beside >= 0 && edge[h] > longest && !ground.cost().isLine(h)) {
            longest = edge[h];
            best = beside;
          }
        }
        of[f] = best;
      }
    }
    return of;
  }

  private static Patches borders(Ground ground, int[] of, int[] cluster, double[] area) {
    double[] edge = ground.domain().surface().edgeMm();
    EdgeRings rings = ground.wayRings();
    SeamCost cost = ground.cost();
    double straightened = straightened(ground, of, cluster, area);
    PairSums sums = new PairSums();
    for (int h = 0; h < edge.length; h++) {
      for (int other = rings.next(h); other != h; other = rings.next(other)) {
        if (other < h && of[other / 3] != of[h / 3]) {
          boolean line = cost.isLine(h) || cost.isLine(other);
          double straight = line ? edge[h] : straightened * edge[h];
          sums.add(of[h / 3], of[other / 3], cost.along(h, other) * straight, straight);
        }
      }
    }
    return sums.build(of, cluster, area);
  }

  /** How much shorter a seam is than the crooked borders that it will be smoothed from. */
  private static double straightened(Ground ground, int[] of, int[] cluster, double[] area) {
    double[] edge = ground.domain().surface().edgeMm();
    double crooked = 0;
    for (int h = 0; h < edge.length; h++) {
      int other = ground.wayRings().next(h);
      if (other < h && cluster[of[other / 3]] != cluster[of[h / 3]]) {
        crooked += edge[h];
      }
    }
    double[] clusterMm2 = new double[Arrays.stream(cluster).max().orElse(-1) + 1];
    for (int p = 0; p < cluster.length; p++) {
      clusterMm2[cluster[p]] += area[p];
    }
    double regular = HEXAGON * Arrays.stream(clusterMm2).map(Math::sqrt).sum();
    return Math.min(1, CHOSEN * STRAIGHT * regular / crooked);
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  /** Two sums per pair of patches, in an open-addressing table; built in the order of keys. */
  private static final class PairSums {
    private long[] key = new long[1 << 12];
    private double[] cost = new double[key.length];
    private double[] length = new double[key.length];
    private int count;

    PairSums() {
      Arrays.fill(key, -1);
    }

    void add(int a, int b, double costMm, double lengthMm) {
      int slot = slot((long) Math.min(a, b) << 32 | Math.max(a, b));
      cost[slot] += costMm;
      length[slot] += lengthMm;
      if (2 * count > key.length) {
        grow();
      }
    }

    private int slot(long wanted) {
      int mask = key.length - 1;
      int slot = (int) ((wanted * 0x9E3779B97F4A7C15L) >>> 32) & mask;
      while (key[slot] >= 0 && key[slot] != wanted) {
        slot = (slot + 1) & mask;
      }
      if (key[slot] < 0) {
        key[slot] = wanted;
        count++;
      }
      return slot;
    }

    private void grow() {
      long[] oldKey = key;
      double[] oldCost = cost;
      double[] oldLength = length;
      key = new long[2 * oldKey.length];
      Arrays.fill(key, -1);
      cost = new double[key.length];
      length = new double[key.length];
      count = 0;
      for (int i = 0; i < oldKey.length; i++) {
        if (oldKey[i] >= 0) {
          int slot = slot(oldKey[i]);
          cost[slot] = oldCost[i];
          length[slot] = oldLength[i];
        }
      }
    }

    Patches build(int[] of, int[] cluster, double[] area) {
      long[] keys = Arrays.stream(key).filter(k -> k >= 0).sorted().toArray();
      int[] begin = new int[cluster.length + 1];
      for (long k : keys) {
        begin[(int) (k >> 32) + 1]++;
        begin[(int) k + 1]++;
      }
      for (int p = 0; p < cluster.length; p++) {
        begin[p + 1] += begin[p];
      }
      int[] neighbour = new int[2 * keys.length];
      double[] costMm = new double[neighbour.length];
      double[] lengthMm = new double[neighbour.length];
      int[] fill = Arrays.copyOf(begin, cluster.length);
      for (long k : keys) {
        int slot = slot(k);
        for (int side = 0; side < 2; side++) {
          int at = fill[(int) (side == 0 ? k >> 32 : k)]++;
          neighbour[at] = (int) (side == 0 ? k : k >> 32);
          costMm[at] = cost[slot];
          lengthMm[at] = length[slot];
        }
      }
      return new Patches(of, cluster, area, begin, neighbour, costMm, lengthMm);
    }
  }
}
