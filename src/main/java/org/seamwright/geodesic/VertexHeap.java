package org.seamwright.geodesic;

import java.util.Arrays;

/**
 * A heap of vertices by key with four children a node, that knows where each vertex is, so that a
 * key can be lowered in place. Emptying it costs only what is in it.
 */
final class VertexHeap {
  /** Place of a vertex that was never put in. */
  static final int UNSEEN = -1;

  /** Place of a vertex that was taken out. */
  static final int TAKEN = -2;

  private final int[] place;
  private int[] vertex = new int[256];
  private double[] key = new double[256];
  private int size;

  VertexHeap(int vertices) {
    place = new int[vertices];
    Arrays.fill(place, UNSEEN);
  }

  int size() {
    return size;
  }

  double leastKey() {
    return key[0];
  }

  int vertexAt(int index) {
    return vertex[index];
  }

  boolean taken(int v) {
    return place[v] == TAKEN;
  }

  /** Forgets that a vertex was taken out. */
  void forget(int v) {
    place[v] = UNSEEN;
  }

  /** Puts a vertex in, or changes its key. */
  void put(int v, double k) {
    int at = place[v];
    if (at < 0) {
      if (size == vertex.length) {
        vertex = Arrays.copyOf(vertex, 2 * size);
        key = Arrays.copyOf(key, 2 * size);
      }
      at = size++;
    } else if (k > key[at]) {
      sink(at, v, k);
      return;
    }
    while (at > 0) {
      int parent = (at - 1) >> 2;
      if (key[parent] <= k) {
        break;
      }
      key[at] = key[parent];
      vertex[at] = vertex[parent];
      place[vertex[at]] = at;
      at = parent;
    }
    key[at] = k;
    vertex[at] = v;
    place[v] = at;
  }

  /** Takes out a vertex of least key. */
  int take() {
    int top = vertex[0];
    place[top] = TAKEN;
    size--;
    if (size > 0) {
      sink(0, vertex[size], key[size]);
    }
    return top;
  }

  private void sink(int from, int v, double k) {
    int at = from;
    while (true) {
      int child = 4 * at + 1;
      if (child >= size) {
        break;
      }
      int least = child;
      int end = Math.min(child + 4, size);
      for (int i = child + 1; i < end; i++) {
        if (key[i] < key[least]) {
          least = i;
        }
      }
      if (key[least] >= k) {
        break;
      }
      key[at] = key[least];
      vertex[at] = vertex[least];
      place[vertex[at]] = at;
      at = least;
    }
    key[at] = k;
    vertex[at] = v;
    place[v] = at;
  }

  /** Empties the heap. */
  void clear() {
    for (int i = 0; i < size; i++) {
      place[vertex[i]] = UNSEEN;
    }
    size = 0;
  }
}
