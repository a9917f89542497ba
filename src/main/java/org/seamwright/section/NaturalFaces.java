package org.seamwright.section;

import java.util.Arrays;

/**
 * A start for {@link SeamSearch} from the faces that the piece itself has: regions between the
 * lines that seams keep to, the smallest joined to a neighbour until there are as many as cells.
 * Cost: O(n α(n)), and O(patches) per region joined.
 */
final class NaturalFaces {
  private static final int MOST_REGIONS = 500;

  private NaturalFaces() {}

  /**
   * Deals patches out.
   *
   * @param cells number of cells
   * @return one entry per patch: its cell; empty if there are not as many regions
   */
  static int[] start(Ground ground, Patches patches, int cells) {
    int[] root = new int[patches.of().length];
    Arrays.setAll(root, f -> f);
    for (int h = 0; h < 3 * root.length; h++) {
      int other = ground.wayRings().next(h);
      if (other < h && !ground.cost().isLine(h)) {
        int a = find(root, h / 3);
        int b = find(root, other / 3);
        root[Math.max(a, b)] = Math.min(a, b);
      }
    }
    int[] region = new int[patches.count()];
    for (int f = root.length - 1; f >= 0; f--) {
      region[patches.of()[f]] = find(root, f);
    }
    int[] names = Arrays.stream(region).sorted().distinct().toArray();
    int[] label = new int[region.length];
    Arrays.setAll(label, p -> Arrays.binarySearch(names, region[p]));
    int count = join(patches, label, names.length, cells);
    return count == cells ? label : new int[0];
  }

  /** Joins the smallest region to the neighbour it has most border with, until few enough. */
  private static int join(Patches patches, int[] label, int regions, int cells) {
    double[] area = new double[regions];
    for (int p = 0; p < label.length; p++) {
      area[label[p]] += patches.areaMm2()[p];
    }
    int count = regions;
    // Regions by the hundred are letters or noise: nothing to start from.
    while (count > cells && regions <= MOST_REGIONS) {
      int least = -1;
      for (int r = 0; r < regions; r++) {
        least = area[r] >= 0 && (least < 0 || area[r] < area[least]) ? r : least;
      }
      int to = neighbour(patches, label, least, regions);
      if (to < 0) {
        return 0;
      }
      for (int p = 0; p < label.length; p++) {
        label[p] = label[p] == least ? to : label[p];
      }
      area[to] += area[least];
      area[least] = -1;
      count--;
    }
    int[] names = Arrays.stream(label).sorted().distinct().toArray();
    for (int p = 0; p < label.length; p++) {
      label[p] = Arrays.binarySearch(names, label[p]);
    }
    return count;
  }

  private static int neighbour(Patches patches, int[] label, int region, int regions) {
    double[] border = new double[regions];
    for (int p = 0; p < label.length; p++) {
      for (int i = patches.begin()[p]; label[p] == region && i < patches.begin()[p + 1]; i++) {
        border[label[patches.neighbour()[i]]] += patches.lengthMm()[i];
      }
    }
    border[region] = 0;
    int best = -1;
    for (int r = 0; r < regions; r++) {
      best = border[r] > 0 && (best < 0 || border[r] > border[best]) ? r : best;
    }
    return best;
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }
}
