package org.seamwright.mend;

import java.util.Arrays;
import java.util.BitSet;
import org.seamwright.basis.Count;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Drops faces that add nothing: those that name the three corners of an earlier one, turned either
 * way, and those without area.
 *
 * <p>A face without area may still hold its neighbours together: one with a corner in the middle of
 * its longest edge lies between one long face and two short ones. Where such a face goes, the long
 * neighbour is split at that corner ({@link EdgeSplit}), and where one goes because two of its
 * corners coincide, these become one; so no edge is torn open that was joined before. O(n log n).
 */
final class Faults {
  /** Height over longest edge below which a face has no area but rounding, as the survey counts. */
  private static final double NO_AREA = 1e-12;

  private Faults() {}

  static Change drop(Mesh mesh) {
    BitSet repeats = repeats(mesh);
    Change once =
        Change.keeping(
            mesh,
            f -> !repeats.get(f),
            repeats.cardinality(),
            Count.of(repeats.cardinality(), "repeated face") + " dropped");
    BitSet flat = withoutArea(once.mesh());
    long count = repeats.cardinality() + (long) flat.cardinality();
    String text =
        Count.of(repeats.cardinality(), "repeated face")
            + " and "
            + Count.of(flat.cardinality(), "face")
            + " without area dropped";
    if (flat.isEmpty()) {
      return new Change(once.mesh(), once.parent(), count, text);
    }
    Mesh joined = withCoincidentJoined(once.mesh(), flat);
    Change rest = Change.keeping(joined, f -> !flat.get(f) && !collapsed(joined, f), count, text);
    BitSet ends = corners(joined, flat);
    Change split =
        EdgeSplit.at(
            rest.mesh(), Topology.of(rest.mesh()), ends, NO_AREA * mesh.bounds().diagonal());
    Change all = once.then(rest).then(split);
    return new Change(all.mesh(), all.parent(), count, text);
  }

  /** Faces whose three corners an earlier face has too. */
  private static BitSet repeats(Mesh mesh) {
    int faces = mesh.faceCount();
    int[] corner = mesh.corner();
    // Faces sorted by lowest corner, so that only few need be compared with each other.
    int[] begin = new int[mesh.vertexCount() + 1];
    for (int f = 0; f < faces; f++) {
      begin[least(corner, f) + 1]++;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      begin[v + 1] += begin[v];
    }
    int[] fill = begin.clone();
    int[] order = new int[faces];
    for (int f = 0; f < faces; f++) {
      order[fill[least(corner, f)]++] = f;
    }
    BitSet repeats = new BitSet(faces);
    for (int v = 0; v < mesh.vertexCount(); v++) {
      int n = begin[v + 1] - begin[v];
      if (n < 2) {
        continue;
      }
      long[] key = new long[n];
      for (int i = 0; i < n; i++) {
        key[i] = others(corner, order[begin[v] + i]);
      }
      markRepeats(key, order, begin[v], repeats);
    }
    return repeats;
  }

  private static void markRepeats(long[] key, int[] order, int begin, BitSet repeats) {
    Integer[] rank = new Integer[key.length];
    Arrays.setAll(rank, i -> i);
    // Stable: of equal faces the first in the file comes first and stays.
    Arrays.sort(rank, (i, j) -> Long.compare(key[i], key[j]));
    for (int i = 1; i < rank.length; i++) {
      if (key[rank[i]] == key[rank[i - 1]]) {
        repeats.set(order[begin + rank[i]]);
      }
    }
  }

  private static int least(int[] corner, int f) {
    return Math.min(corner[3 * f], Math.min(corner[3 * f + 1], corner[3 * f + 2]));
  }

  /** The middle and highest corner of a face in one number. */
  private static long others(int[] corner, int f) {
    int a = corner[3 * f];
    int b = corner[3 * f + 1];
    int c = corner[3 * f + 2];
    int high = Math.max(a, Math.max(b, c));
    int middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    return (long) middle << 32 | high;
  }

  private static BitSet withoutArea(Mesh mesh) {
    BitSet flat = new BitSet(mesh.faceCount());
    for (int f = 0; f < mesh.faceCount(); f++) {
      double longest = longest(mesh, f);
      flat.set(f, !(2 * Faces.area(mesh, f) > NO_AREA * longest * longest));
    }
    return flat;
  }

  private static double longest(Mesh mesh, int f) {
    double longest = 0;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      longest =
          Math.max(longest, Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]));
    }
    return longest;
  }

  /** Corners of a flat face that lie a rounding apart become the lower-numbered of them. */
  private static Mesh withCoincidentJoined(Mesh mesh, BitSet flat) {
    int[] root = new int[mesh.vertexCount()];
    Arrays.setAll(root, v -> v);
    for (int f = flat.nextSetBit(0); f >= 0; f = flat.nextSetBit(f + 1)) {
      double near = NO_AREA * longest(mesh, f);
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        int a = mesh.corner()[h];
        int b = mesh.corner()[Topology.next(h)];
        if (a != b && Faces.length(mesh, a, b) <= near) {
          int ra = find(root, a);
          int rb = find(root, b);
          root[Math.max(ra, rb)] = Math.min(ra, rb);
        }
      }
    }
    int[] corner = new int[mesh.corner().length];
    for (int h = 0; h < corner.length; h++) {
      corner[h] = find(root, mesh.corner()[h]);
    }
    return Mesh.of(mesh.xyz(), corner);
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  static boolean collapsed(Mesh mesh, int f) {
    int[] c = mesh.corner();
    return c[3 * f] == c[3 * f + 1] || c[3 * f + 1] == c[3 * f + 2] || c[3 * f + 2] == c[3 * f];
  }

  private static BitSet corners(Mesh mesh, BitSet faces) {
    BitSet corners = new BitSet(mesh.vertexCount());
    for (int f = faces.nextSetBit(0); f >= 0; f = faces.nextSetBit(f + 1)) {
      for (int k = 0; k < 3; k++) {
        corners.set(mesh.corner()[3 * f + k]);
      }
    }
    return corners;
  }
}
