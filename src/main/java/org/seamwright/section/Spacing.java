package org.seamwright.section;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.seamwright.mesh.Mesh;

/**
 * Moves places where three sections meet apart: a spot round two of them that lie too close goes
 * whole to one of the sections there, the one with which seams cost least, so that the two come to
 * lie on either side of the spot.
 *
 * <p>Cost: O(n) per pair and section.
 */
final class Spacing {
  /** Radius of a spot in widths of a lap: its sides are then a lap apart with some to spare. */
  private static final double SPOT = 0.75;

  /** What crooked borders may take off a spot, in radii of patches. */
  private static final double CROOKED = 0.5;

  /** Least radius of a spot, in radii of patches: what is less goes in smoothing. */
  private static final double LEAST_SPOT = 1.2;

  private final Patches patches;
  private final PatchGraph graph;
  private final Mesh middles;
  private final int cells;
  private final double spotMm;

  /**
   * Prepares.
   *
   * @param middles vertices stand for clusters
   * @param radiusMm how crooked borders of patches are
   */
  Spacing(Patches patches, Mesh middles, int cells, double lapMm, double radiusMm) {
    this.patches = patches;
    this.graph = patches.graph();
    this.middles = middles;
    this.cells = cells;
    spotMm = Math.max(SPOT * lapMm + CROOKED * radiusMm, LEAST_SPOT * radiusMm);
  }

  /**
   * Moves pairs apart.
   *
   * @param label one entry per patch: its cell
   * @param found junctions; sections by id
   * @param cellOfId one entry per id and one before: its cell, or negative
   * @param total what cells cost
   * @return labels that differ near the pairs; the same if nothing can be done
   */
  int[] apart(int[] label, Junctions found, int[] cellOfId, ToDoubleFunction<int[]> total) {
    int[] now = label;
    for (Junctions.Close close : found.close()) {
      Junction a = found.places().get(close.first());
      Junction b = found.places().get(close.second());
      int[] around =
          IntStream.concat(
                  a.sections().stream().mapToInt(id -> cellOfId[id]),
                  b.sections().stream().mapToInt(id -> cellOfId[id]))
              .filter(c -> c >= 0)
              .sorted()
              .distinct()
              .toArray();
      now =
          spot(
              now,
              around,
              middle(a.xMm(), b.xMm()),
              middle(a.yMm(), b.yMm()),
              middle(a.zMm(), b.zMm()),
              total);
    }
    return now;
  }

  private static double middle(double a, double b) {
    return (a + b) / 2;
  }

  private int[] spot(
      int[] label, int[] around, double x, double y, double z, ToDoubleFunction<int[]> total) {
    int[] best = label;
    double least = Double.POSITIVE_INFINITY;
    for (int to : around) {
      int[] changed = label.clone();
      for (int p = 0; p < changed.length; p++) {
        int v = patches.cluster()[p];
        double dx = middles.x(v) - x;
        double dy = middles.y(v) - y;
        double dz = middles.z(v) - z;
        if (dx * dx + dy * dy + dz * dz <= spotMm * spotMm
            && Arrays.binarySearch(around, label[p]) >= 0) {
          changed[p] = to;
        }
      }
      int[] whole = changed.clone();
      graph.connect(whole, cells);
      if (!Arrays.equals(changed, label) && Arrays.equals(whole, changed)) {
        double cost = total.applyAsDouble(changed);
        if (cost < least) {
          least = cost;
          best = changed;
        }
      }
    }
    return best;
  }
}
