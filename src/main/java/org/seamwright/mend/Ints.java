package org.seamwright.mend;

import java.util.Arrays;

/** A growing list of ints. */
final class Ints {
  private int[] entry;
  private int size;

  Ints(int capacity) {
    entry = new int[Math.max(16, capacity)];
  }

  void add(int value) {
    if (size == entry.length) {
      entry = Arrays.copyOf(entry, 2 * size);
    }
    entry[size++] = value;
  }

  int get(int index) {
    return entry[index];
  }

  int size() {
    return size;
  }

  int[] toArray() {
    return Arrays.copyOf(entry, size);
  }
}
