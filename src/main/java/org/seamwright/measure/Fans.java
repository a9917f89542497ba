package org.seamwright.measure;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;

/**
 * For each vertex one of its corners and their number: enough to walk round it. Two ints a vertex.
 */
final class Fans {
  /** Entry of a vertex no face uses. */
  private static final int UNUSED = -1;

  private static final int BLOCK = 1 << 16;

  private final int[] start;
  private final int[] valence;

  private Fans(int[] start, int[] valence) {
    this.start = start;
    this.valence = valence;
  }

  /** Finds them in one walk over the corners. */
  static Fans of(Mesh mesh) {
    int[] start = new int[mesh.vertexCount()];
    int[] valence = new int[mesh.vertexCount()];
    Arrays.fill(start, UNUSED);
    note(mesh.corner(), start, valence);
    return new Fans(start, valence);
  }

  private static void note(int[] corner, int[] start, int[] valence) {
    for (int h = 0; h < corner.length; h++) {
      int v = corner[h];
      start[v] = h;
      valence[v]++;
    }
  }

  /** The last corner at a vertex; negative if it has none. */
  int start(int vertex) {
    return start[vertex];
  }

  /** Number of corners at a vertex. */
  int valence(int vertex) {
    return valence[vertex];
  }

  /** Number of vertices that faces use. */
  int used() {
    int used = 0;
    for (int h : start) {
      used += h >= 0 ? 1 : 0;
    }
    return used;
  }

  /** The smallest box around all vertices that a face uses; all zero if there is none. */
  Bounds bounds(Mesh mesh) {
    if (mesh.faceCount() == 0) {
      return new Bounds(0, 0, 0, 0, 0, 0);
    }
    int blocks = (start.length + BLOCK - 1) / BLOCK;
    double[][] box = new double[blocks][];
    IntStream range = IntStream.range(0, blocks);
    (blocks > 1 ? range.parallel() : range)
        .forEach(
            b ->
                box[b] =
                    box(mesh.xyz(), b * BLOCK, (int) Math.min(start.length, (b + 1L) * BLOCK)));
    double[] all = box[0];
    for (double[] one : box) {
      for (int axis = 0; axis < 3; axis++) {
        all[axis] = Math.min(all[axis], one[axis]);
        all[3 + axis] = Math.max(all[3 + axis], one[3 + axis]);
      }
    }
    return new Bounds(all[0], all[1], all[2], all[3], all[4], all[5]);
  }

  private double[] box(double[] p, int from, int to) {
    double[] box = new double[6];
    Arrays.fill(box, 0, 3, Double.POSITIVE_INFINITY);
    Arrays.fill(box, 3, 6, Double.NEGATIVE_INFINITY);
    for (int v = from; v < to; v++) {
      if (start[v] >= 0) {
        for (int axis = 0; axis < 3; axis++) {
          double value = p[3 * v + axis];
          box[axis] = Math.min(box[axis], value);
          box[3 + axis] = Math.max(box[3 + axis], value);
        }
      }
    }
    return box;
  }

  /**
   * Corners of some of the vertices, listed vertex by vertex and in rising order.
   *
   * @param wanted whether a vertex is, one entry each
   */
  Lists lists(Mesh mesh, byte[] wanted, byte value) {
    int[] offset = new int[start.length];
    int n = 0;
    for (int v = 0; v < start.length; v++) {
      offset[v] = n;
      n += wanted[v] == value ? valence[v] : 0;
    }
    int[] list = new int[n];
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      int v = corner[h];
      if (wanted[v] == value) {
        list[offset[v]++] = h;
      }
    }
    return new Lists(list, offset, valence);
  }

  /** Corners of some vertices. */
  static final class Lists {
    private final int[] list;

    /** Where a vertex's corners end. */
    private final int[] end;

    private final int[] valence;

    private Lists(int[] list, int[] end, int[] valence) {
      this.list = list;
      this.end = end;
      this.valence = valence;
    }

    int begin(int vertex) {
      return end[vertex] - valence[vertex];
    }

    int end(int vertex) {
      return end[vertex];
    }

    /** The corner at a place of the list. */
    int corner(int index) {
      return list[index];
    }
  }
}
