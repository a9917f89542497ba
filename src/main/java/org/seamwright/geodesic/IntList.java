package org.seamwright.geodesic;

import java.util.Arrays;

/** A growing list of ints. */
final class IntList {
  private int[] entry;
  private int size;

  IntList(int capacity) {
    entry = new int[Math.max(16, capacity)];
  }

  void add(int value) {
    if (size == entry.length) {
      entry = Arrays.copyOf(entry, 2 * size);
    }
    entry[size++] = value;
  }

  void add3(int a, int b, int c) {
    add(a);
    add(b);
    add(c);
  }

  int get(int index) {
    return entry[index];
  }

  int size() {
    return size;
  }

  /** Takes the last entry off the list, which must have one. */
  int removeLast() {
    return entry[--size];
  }

  int[] toArray() {
    return Arrays.copyOf(entry, size);
  }
}
