package org.seamwright.meshfile;

import java.util.Arrays;

/** Flat arrays that grow by half: the only lists that hot parsing loops use. */
final class Growing {
  /** Largest length every Java machine can give an array. */
  private static final int MOST = Integer.MAX_VALUE - 8;

  private Growing() {}

  /** A growing array of ints. */
  static final class Ints {
    private int[] items = new int[64];
    private int size;

    void add(int item) {
      if (size == items.length) {
        items = Arrays.copyOf(items, longer(size));
      }
      items[size++] = item;
    }

    int get(int i) {
      return items[i];
    }

    void clear() {
      size = 0;
    }

    int size() {
      return size;
    }

    void copyTo(int[] other, int at) {
      System.arraycopy(items, 0, other, at, size);
    }

    /** The items in an array of their own, whatever happens to this one. */
    int[] copy() {
      return Arrays.copyOf(items, size);
    }

    /** The items; this must not be used any more. */
    int[] toArray() {
      return size == items.length ? items : Arrays.copyOf(items, size);
    }
  }

  /** A growing array of doubles. */
  static final class Doubles {
    private double[] items = new double[64];
    private int size;

    void add(double item) {
      if (size == items.length) {
        items = Arrays.copyOf(items, longer(size));
      }
      items[size++] = item;
    }

    void clear() {
      size = 0;
    }

    double get(int i) {
      return items[i];
    }

    /** The array itself, longer than the list. */
    double[] items() {
      return items;
    }

    int size() {
      return size;
    }

    /** The items in an array of their own, whatever happens to this one. */
    double[] copy() {
      return Arrays.copyOf(items, size);
    }

    /** The items; this must not be used any more. */
    double[] toArray() {
      return size == items.length ? items : Arrays.copyOf(items, size);
    }
  }

  /** Room for at least one more than so many. */
  static int longer(int size) {
    if (size == MOST) {
      throw new OutOfMemoryError("an array of the mesh would need over 2^31 entries");
    }
    return (int) Math.min(MOST, size + (size >> 1) + 64L);
  }
}
