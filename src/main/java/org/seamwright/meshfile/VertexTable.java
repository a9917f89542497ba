package org.seamwright.meshfile;

import java.util.Arrays;

/**
 * Distinct points, numbered in the order in which they first come: open addressing with linear
 * probing over the raw bits of the coordinates. Negative zero counts as zero.
 *
 * <p>The table is kept at most half full; its size follows the number of distinct points, not of
 * corners, since a closed mesh has six corners to a vertex.
 */
final class VertexTable {
  private double[] xyz;
  private int count;

  /** Vertex number + 1, or 0 for a free slot. */
  private int[] slot;

  private int shift;

  /** Makes a table for about so many distinct points; it grows when there are more. */
  VertexTable(int expected) {
    int bits = 32 - Integer.numberOfLeadingZeros(Math.max(8, Math.min(expected, 1 << 28)) * 2 - 1);
    slot = new int[1 << bits];
    shift = 64 - bits;
    xyz = new double[3 * Math.max(8, Math.min(expected, 1 << 28))];
  }

  /** Number of a point, given a new one if it was not there. */
  int number(double px, double py, double pz) {
    double x = px + 0.0;
    double y = py + 0.0;
    double z = pz + 0.0;
    int mask = slot.length - 1;
    int i = (int) (hash(x, y, z) >>> shift);
    while (slot[i] != 0) {
      int v = 3 * (slot[i] - 1);
      if (xyz[v] == x && xyz[v + 1] == y && xyz[v + 2] == z) {
        return slot[i] - 1;
      }
      i = (i + 1) & mask;
    }
    if (3 * count + 3 > xyz.length) {
      xyz = Arrays.copyOf(xyz, 3 * (count + (count >> 1) + 8));
    }
    xyz[3 * count] = x;
    xyz[3 * count + 1] = y;
    xyz[3 * count + 2] = z;
    slot[i] = ++count;
    if (2 * count > slot.length) {
      grow();
    }
    return count - 1;
  }

  private void grow() {
    int[] wider = new int[2 * slot.length];
    shift--;
    int mask = wider.length - 1;
    for (int v = 0; v < count; v++) {
      int i = (int) (hash(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]) >>> shift);
      while (wider[i] != 0) {
        i = (i + 1) & mask;
      }
      wider[i] = v + 1;
    }
    slot = wider;
  }

  /** Multiplies and folds, so that the high bits depend on all bits of all three. */
  private static long hash(double x, double y, double z) {
    long h = Double.doubleToRawLongBits(x) * 0x9E3779B97F4A7C15L;
    h = (h ^ (h >>> 32) ^ Double.doubleToRawLongBits(y)) * 0xC2B2AE3D27D4EB4FL;
    h = (h ^ (h >>> 29) ^ Double.doubleToRawLongBits(z)) * 0x165667B19E3779F9L;
    h ^= h >>> 32;
    return h * 0x9E3779B97F4A7C15L;
  }

  /** Number of distinct points. */
  int count() {
    return count;
  }

  /** Their coordinates, 3 each. */
  double[] toArray() {
    return Arrays.copyOf(xyz, 3 * count);
  }
}
