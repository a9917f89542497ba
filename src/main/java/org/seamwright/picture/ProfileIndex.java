package org.seamwright.picture;

import java.util.Arrays;
import java.util.List;

/**
 * Finds the segment of several profile chains that a place of the surface lies on: the nearest one
 * within a tolerance whose side looks the same way. A grid over radius and height; cost about O(1)
 * a question.
 */
final class ProfileIndex {
  /** Cells along each axis of the grid. */
  private static final int CELLS = 256;

  /** Largest angle between the surface and the profile that it lies on. */
  private static final double SAME_WAY = Math.cos(Math.toRadians(50));

  private final List<Profile.Chain> chains;
  private final double toleranceMm;
  private final double cellMm;
  private final double lowMm;
  private final int[] begin = new int[CELLS * CELLS + 1];
  private final int[] entry;

  /** First number of each chain's segments. */
  private final int[] first;

  ProfileIndex(List<Profile.Chain> chains, double toleranceMm) {
    this.chains = chains;
    this.toleranceMm = toleranceMm;
    double far = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    first = new int[chains.size() + 1];
    for (int c = 0; c < chains.size(); c++) {
      Profile.Chain chain = chains.get(c);
      for (int i = 0; i < chain.points(); i++) {
        far = Math.max(far, chain.radius(i));
        low = Math.min(low, chain.height(i));
        high = Math.max(high, chain.height(i));
      }
      first[c + 1] = first[c] + chain.points() - 1;
    }
    lowMm = low;
    cellMm = Math.max(toleranceMm, Math.max(far, high - low) / (CELLS - 1));
    int[] count = new int[CELLS * CELLS + 1];
    eachCell((cell, segment) -> count[cell + 1]++);
    for (int i = 0; i < CELLS * CELLS; i++) {
      begin[i + 1] = begin[i] + count[i + 1];
    }
    entry = new int[begin[CELLS * CELLS]];
    int[] fill = Arrays.copyOf(begin, CELLS * CELLS);
    eachCell((cell, segment) -> entry[fill[cell]++] = segment);
  }

  private interface Entry {
    void at(int cell, int segment);
  }

  private void eachCell(Entry entry) {
    for (int c = 0; c < chains.size(); c++) {
      Profile.Chain chain = chains.get(c);
      for (int i = 0; i + 1 < chain.points(); i++) {
        int r0 = cell(Math.min(chain.radius(i), chain.radius(i + 1)) - toleranceMm);
        int r1 = cell(Math.max(chain.radius(i), chain.radius(i + 1)) + toleranceMm);
        int z0 = cell(Math.min(chain.height(i), chain.height(i + 1)) - toleranceMm - lowMm);
        int z1 = cell(Math.max(chain.height(i), chain.height(i + 1)) + toleranceMm - lowMm);
        for (int z = z0; z <= z1; z++) {
          for (int r = r0; r <= r1; r++) {
            entry.at(z * CELLS + r, first[c] + i);
          }
        }
      }
    }
  }

  private int cell(double mm) {
    return (int) Math.max(0, Math.min(CELLS - 1, Math.floor(mm / cellMm)));
  }

  int segments() {
    return first[first.length - 1];
  }

  int chainOf(int segment) {
    int c = Arrays.binarySearch(first, segment);
    // Of chains without segments the last one that starts here.
    while (c >= 0 && first[c + 1] == segment) {
      c++;
    }
    return c >= 0 ? c : -c - 2;
  }

  int inChain(int segment) {
    return segment - first[chainOf(segment)];
  }

  /**
   * The segment that a place lies on.
   *
   * @param radius mm
   * @param height mm
   * @param out part of the surface's normal away from the axis
   * @param up part along it
   * @return its number over all chains; −1 if there is none
   */
  int find(double radius, double height, double out, double up) {
    int at = cell(height - lowMm) * CELLS + cell(radius);
    int best = -1;
    double least = toleranceMm;
    for (int k = begin[at]; k < begin[at + 1]; k++) {
      int segment = entry[k];
      Profile.Chain chain = chains.get(chainOf(segment));
      int i = segment - first[chainOf(segment)];
      double dr = chain.radius(i + 1) - chain.radius(i);
      double dz = chain.height(i + 1) - chain.height(i);
      double length = Math.hypot(dr, dz);
      // The outside is on the left.
      if (dr * up - dz * out < SAME_WAY * length || length == 0) {
        continue;
      }
      double away = distance(chain, i, radius, height);
      if (away < least) {
        least = away;
        best = segment;
      }
    }
    return best;
  }

  static double distance(Profile.Chain chain, int i, double radius, double height) {
    double t = share(chain, i, radius, height);
    double dr = chain.radius(i + 1) - chain.radius(i);
    double dz = chain.height(i + 1) - chain.height(i);
    return Math.hypot(radius - chain.radius(i) - t * dr, height - chain.height(i) - t * dz);
  }

  /** How far along a segment the foot of a place lies, 0 to 1. */
  static double share(Profile.Chain chain, int i, double radius, double height) {
    double dr = chain.radius(i + 1) - chain.radius(i);
    double dz = chain.height(i + 1) - chain.height(i);
    double square = dr * dr + dz * dz;
    double dot = (radius - chain.radius(i)) * dr + (height - chain.height(i)) * dz;
    return square > 0 ? Math.max(0, Math.min(1, dot / square)) : 0;
  }
}
