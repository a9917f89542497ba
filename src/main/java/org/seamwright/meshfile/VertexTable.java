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
  private static final int MOST_EXPECTED = 1 << 28;

  private double[] xyz;
  private int count;

  /** Vertex number + 1, or 0 for a free slot. */
  private int[] slot;

  private int shift;
  private double[] low;
  private double[] high;

  /** Makes a table for about so many distinct points; it grows when there are more. */
  VertexTable(long expected) {
    int room = (int) Math.max(8, Math.min(expected, MOST_EXPECTED));
    int bits = 32 - Integer.numberOfLeadingZeros(room * 2 - 1);
    slot = new int[1 << bits];
    shift = 64 - bits;
    xyz = new double[3 * room];
  }

  /** Number of a point, given a new one if it was not there. */
  int number(double px, double py, double pz) {
    double x = px + 0.0;
    double y = py + 0.0;
    double z = pz + 0.0;
    return number(x, y, z, hash(x, y, z));
  }

  /**
   * Brings the slot of a hash into the cache. Many of these in a row, with nothing between that
   * waits for one, take little longer than one.
   */
  int touch(long hash) {
    return slot[(int) (hash >>> shift)];
  }

  /**
   * The same for a point whose hash is known.
   *
   * @param x no negative zero; nor {@code y}, {@code z}
   */
  int number(double x, double y, double z, long hash) {
    int mask = slot.length - 1;
    int i = (int) (hash >>> shift);
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

  /** Computes the box outside of which {@link #find} need not look. */
  void close() {
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double[] high = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    for (int v = 0; v < 3 * count; v += 3) {
      for (int axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], xyz[v + axis]);
        high[axis] = Math.max(high[axis], xyz[v + axis]);
      }
    }
    this.low = low;
    this.high = high;
  }

  /** Number of a point of another table, or -1 if it is not in this one, which is closed. */
  int find(VertexTable other, int vertex) {
    double x = other.xyz[3 * vertex];
    double y = other.xyz[3 * vertex + 1];
    double z = other.xyz[3 * vertex + 2];
    if (x < low[0] || y < low[1] || z < low[2] || x > high[0] || y > high[1] || z > high[2]) {
      return -1;
    }
    int mask = slot.length - 1;
    int i = (int) (hash(x, y, z) >>> shift);
    while (slot[i] != 0) {
      int v = 3 * (slot[i] - 1);
      if (xyz[v] == x && xyz[v + 1] == y && xyz[v + 2] == z) {
        return slot[i] - 1;
      }
      i = (i + 1) & mask;
    }
    return -1;
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

  /**
   * Three multiplications that need not wait for each other, then one that spreads their bits to
   * the top. Turning the words keeps the many zeros of widened single precision apart.
   */
  static long hash(double x, double y, double z) {
    long h =
        (Double.doubleToRawLongBits(x) * 0x9E3779B97F4A7C15L)
            ^ (Long.rotateLeft(Double.doubleToRawLongBits(y), 21) * 0xC2B2AE3D27D4EB4FL)
            ^ (Long.rotateLeft(Double.doubleToRawLongBits(z), 42) * 0x165667B19E3779F9L);
    h ^= h >>> 32;
    return h * 0xD6E8FEB86659FD93L;
  }

  /** Number of distinct points. */
  int count() {
    return count;
  }

  /** Gives the slots back; points can be copied but no more looked up. */
  void forget() {
    slot = new int[0];
  }

  /** Copies a point to its place in another array, both counted in points. */
  void copy(int vertex, double[] into, int place) {
    System.arraycopy(xyz, 3 * vertex, into, 3 * place, 3);
  }

  /** Copies the first points to the beginning of another array. */
  void copyAll(double[] into) {
    System.arraycopy(xyz, 0, into, 0, 3 * count);
  }

  /** Their coordinates, 3 each; the table's own array if it is full. */
  double[] toArray() {
    return xyz.length == 3 * count ? xyz : Arrays.copyOf(xyz, 3 * count);
  }
}
