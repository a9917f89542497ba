package org.seamwright.geodesic;

import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * The vertices that a cut adds: at most one per edge, found by the edge's two ends whichever face
 * asks, and any number inside faces. Positions are computed from the lower vertex to the higher, so
 * all faces at an edge get the same digits.
 */
final class NewVertices {
  private final Mesh mesh;

  /** Open addressing: lower end in the high half, higher end in the low half; -1 where free. */
  private long[] key = new long[64];

  private int[] slotVertex = new int[64];

  private int count;
  private int[] from = new int[32];
  private int[] to = new int[32];
  private double[] at = new double[32];
  private int[] third = new int[32];
  private double[] thirdAt = new double[32];
  private double[] xyz = new double[96];

  NewVertices(Mesh mesh) {
    this.mesh = mesh;
    Arrays.fill(key, -1);
  }

  int count() {
    return count;
  }

  /** Index of the new vertex on the edge between two vertices, or -1. */
  int onEdge(int a, int b) {
    return slotOf(a, b) < 0 ? -1 : slotVertex[slotOf(a, b)];
  }

  private int slotOf(int a, int b) {
    long wanted = (long) Math.min(a, b) << 32 | Math.max(a, b);
    int mask = key.length - 1;
    int slot = hash(wanted) & mask;
    while (key[slot] >= 0) {
      if (key[slot] == wanted) {
        return slot;
      }
      slot = (slot + 1) & mask;
    }
    return -1 - slot;
  }

  private static int hash(long x) {
    long h = x * 0x9E3779B97F4A7C15L;
    return (int) (h >>> 32);
  }

  /**
   * Adds the vertex on an edge unless it is there.
   *
   * @param low lower end
   * @param high higher end
   * @param share of the way from low to high
   */
  void addOnEdge(int low, int high, double share) {
    int slot = slotOf(low, high);
    if (slot >= 0) {
      return;
    }
    slot = -1 - slot;
    key[slot] = (long) low << 32 | high;
    slotVertex[slot] = count;
    append(low, high, share, -1, 0);
    if (2 * count > key.length) {
      grow();
    }
  }

  /** Adds a vertex inside a face by the weights of three old vertices; gives its index. */
  int addInside(int a, int b, int c, double wa, double wb, double wc) {
    append(a, b, wb / (wa + wb), c, wc / (wa + wb + wc));
    return count - 1;
  }

  private void append(int a, int b, double share, int c, double shareC) {
    if (count == from.length) {
      from = Arrays.copyOf(from, 2 * count);
      to = Arrays.copyOf(to, 2 * count);
      at = Arrays.copyOf(at, 2 * count);
      third = Arrays.copyOf(third, 2 * count);
      thirdAt = Arrays.copyOf(thirdAt, 2 * count);
      xyz = Arrays.copyOf(xyz, 6 * count);
    }
    from[count] = a;
    to[count] = b;
    at[count] = share;
    third[count] = c;
    thirdAt[count] = shareC;
    double[] p = mesh.xyz();
    for (int axis = 0; axis < 3; axis++) {
      double there = p[3 * a + axis] + share * (p[3 * b + axis] - p[3 * a + axis]);
      xyz[3 * count + axis] = c < 0 ? there : there + shareC * (p[3 * c + axis] - there);
    }
    count++;
  }

  private void grow() {
    long[] oldKey = key;
    int[] oldVertex = slotVertex;
    key = new long[2 * oldKey.length];
    slotVertex = new int[2 * oldKey.length];
    Arrays.fill(key, -1);
    int mask = key.length - 1;
    for (int i = 0; i < oldKey.length; i++) {
      if (oldKey[i] >= 0) {
        int slot = hash(oldKey[i]) & mask;
        while (key[slot] >= 0) {
          slot = (slot + 1) & mask;
        }
        key[slot] = oldKey[i];
        slotVertex[slot] = oldVertex[i];
      }
    }
  }

  /** Coordinates of the old and the new vertices. */
  double[] allXyz() {
    double[] all = Arrays.copyOf(mesh.xyz(), 3 * (mesh.vertexCount() + count));
    System.arraycopy(xyz, 0, all, 3 * mesh.vertexCount(), 3 * count);
    return all;
  }

  /** Share of the way to the end {@code towards} at which new vertex i lies, for one on an edge. */
  double share(int i, int towards) {
    return towards == to[i] ? at[i] : 1 - at[i];
  }

  /** The cut mesh with these vertices and the faces given. */
  CutMesh cut(double[] allXyz, int[] corner, int[] parentFace) {
    return new CutMesh(
        Mesh.of(allXyz, corner),
        parentFace,
        mesh.vertexCount(),
        Arrays.copyOf(from, count),
        Arrays.copyOf(to, count),
        Arrays.copyOf(at, count),
        Arrays.copyOf(third, count),
        Arrays.copyOf(thirdAt, count));
  }
}
