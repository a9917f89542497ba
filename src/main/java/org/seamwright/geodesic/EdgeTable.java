package org.seamwright.geodesic;

import java.util.Arrays;

/**
 * A number for each of some edges, looked up by the edge's two vertices in either order. Open
 * addressing with linear probing; entries are visited in the order in which they came.
 */
final class EdgeTable {
  /** Receives the lower and higher vertex of an edge and its number. */
  interface Visitor {
    void visit(int low, int high, int number);
  }

  private long[] key;
  private int[] number;
  private int[] slot;
  private int size;

  EdgeTable(int capacity) {
    int power = Integer.highestOneBit(Math.max(16, capacity) - 1) << 1;
    key = new long[power];
    number = new int[power];
    slot = new int[2 * power];
    Arrays.fill(slot, -1);
  }

  /** Adds an edge unless it is there; says whether it was added. */
  boolean put(int a, int b, int value) {
    long k = key(a, b);
    int at = locate(k);
    if (slot[at] >= 0) {
      return false;
    }
    if (size == key.length) {
      grow();
      at = locate(k);
    }
    key[size] = k;
    number[size] = value;
    slot[at] = size++;
    return true;
  }

  /** The number of an edge, or -1. */
  int find(int a, int b) {
    int at = locate(key(a, b));
    return slot[at] < 0 ? -1 : number[slot[at]];
  }

  int size() {
    return size;
  }

  void forEach(Visitor visitor) {
    for (int i = 0; i < size; i++) {
      visitor.visit((int) (key[i] >>> 32), (int) key[i], number[i]);
    }
  }

  private static long key(int a, int b) {
    return ((long) Math.min(a, b) << 32) | Math.max(a, b);
  }

  private int locate(long k) {
    int mask = slot.length - 1;
    int at = (int) ((k * 0x9E3779B97F4A7C15L) >>> 32) & mask;
    while (slot[at] >= 0 && key[slot[at]] != k) {
      at = (at + 1) & mask;
    }
    return at;
  }

  private void grow() {
    key = Arrays.copyOf(key, 2 * size);
    number = Arrays.copyOf(number, 2 * size);
    slot = new int[4 * size];
    Arrays.fill(slot, -1);
    for (int i = 0; i < size; i++) {
      slot[locate(key[i])] = i;
    }
  }
}
