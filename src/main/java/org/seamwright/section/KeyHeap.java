package org.seamwright.section;

import java.util.Arrays;

/**
 * A binary heap of (key, vertex, label), least key first, in flat arrays. Entries of equal key come
 * out by vertex, then label, so that the order never depends on how they went in.
 */
final class KeyHeap {
  private double[] key = new double[1 << 10];
  private int[] vertex = new int[1 << 10];
  private int[] label = new int[1 << 10];
  private int size;

  boolean isEmpty() {
    return size == 0;
  }

  /** Key of the least entry. */
  double key() {
    return key[0];
  }

  /** Vertex of the least entry. */
  int vertex() {
    return vertex[0];
  }

  /** Label of the least entry. */
  int label() {
    return label[0];
  }

  void push(double newKey, int newVertex, int newLabel) {
    if (size == key.length) {
      key = Arrays.copyOf(key, 2 * size);
      vertex = Arrays.copyOf(vertex, 2 * size);
      label = Arrays.copyOf(label, 2 * size);
    }
    int at = size++;
    while (at > 0) {
      int up = (at - 1) >> 1;
      if (!before(newKey, newVertex, newLabel, up)) {
        break;
      }
      copy(up, at);
      at = up;
    }
    put(at, newKey, newVertex, newLabel);
  }

  /** Drops the least entry. */
  void pop() {
    size--;
    double lastKey = key[size];
    int lastVertex = vertex[size];
    int lastLabel = label[size];
    int at = 0;
    while (2 * at + 1 < size) {
      int down = 2 * at + 1;
      if (down + 1 < size && before(key[down + 1], vertex[down + 1], label[down + 1], down)) {
        down++;
      }
      if (before(lastKey, lastVertex, lastLabel, down)) {
        break;
      }
      copy(down, at);
      at = down;
    }
    put(at, lastKey, lastVertex, lastLabel);
  }

  private boolean before(double k, int v, int l, int other) {
    if (k != key[other]) {
      return k < key[other];
    }
    return v != vertex[other] ? v < vertex[other] : l < label[other];
  }

  private void copy(int from, int to) {
    key[to] = key[from];
    vertex[to] = vertex[from];
    label[to] = label[from];
  }

  private void put(int at, double k, int v, int l) {
    key[at] = k;
    vertex[at] = v;
    label[at] = l;
  }
}
