package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Sets of faces as sheets: every vertex one fan of faces, every edge with one or two of them. */
final class Sheets {
  private Sheets() {}

  /**
   * A sheet made from a mesh.
   *
   * @param mesh the faces, in the order given
   * @param parent one entry per vertex: its number in the mesh it came from
   */
  record Sheet(Mesh mesh, int[] parent) {}

  /** The faces of a list as a mesh of their own, still welded as before. */
  static Sheet extract(Mesh mesh, int[] faces) {
    int[] number = new int[mesh.vertexCount()];
    Arrays.fill(number, -1);
    int[] parent = new int[Math.min(mesh.vertexCount(), 3 * faces.length)];
    int[] corner = new int[3 * faces.length];
    int count = 0;
    for (int i = 0; i < corner.length; i++) {
      int v = mesh.corner()[3 * faces[i / 3] + i % 3];
      if (number[v] < 0) {
        number[v] = count;
        parent[count++] = v;
      }
      corner[i] = number[v];
    }
    return of(mesh, corner, Arrays.copyOf(parent, count));
  }

  private static Sheet of(Mesh mesh, int[] corner, int[] parent) {
    double[] xyz = new double[3 * parent.length];
    for (int v = 0; v < parent.length; v++) {
      System.arraycopy(mesh.xyz(), 3 * parent[v], xyz, 3 * v, 3);
    }
    return new Sheet(Mesh.of(xyz, corner), parent);
  }

  /**
   * Cuts a mesh open along edges, and wherever it is no surface: at edges whose faces are turned
   * against each other or more than two, and at vertices where fans only touch.
   *
   * @param cut one entry per half-edge; set for both sides of an edge to cut
   */
  static Sheet open(Mesh mesh, Topology topology, boolean[] cut) {
    int[] corner = mesh.corner();
    int[] root = new int[corner.length];
    for (int h = 0; h < root.length; h++) {
      root[h] = h;
    }
    for (int h = 0; h < root.length; h++) {
      int g = topology.twin(h);
      if (g > h && !cut[h] && corner[h] != corner[g]) {
        join(root, h, Topology.next(g));
        join(root, Topology.next(h), g);
      }
    }
    int[] number = new int[corner.length];
    int[] parent = new int[corner.length];
    int[] opened = new int[corner.length];
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      int top = find(root, h);
      if (top == h) {
        parent[count] = corner[h];
        number[h] = count++;
      }
      opened[h] = number[top];
    }
    return of(mesh, opened, Arrays.copyOf(parent, count));
  }

  /** The lowest corner becomes the root. */
  private static void join(int[] root, int a, int b) {
    int ra = find(root, a);
    int rb = find(root, b);
    root[Math.max(ra, rb)] = Math.min(ra, rb);
  }

  private static int find(int[] root, int h) {
    int top = h;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  /**
   * Boundary loops of a sheet as half-edges in order, the faces on their left; the longest first,
   * then by lowest half-edge.
   */
  static List<int[]> loops(Mesh sheet, Topology topology) {
    int[] corner = sheet.corner();
    int[] out = new int[sheet.vertexCount()];
    Arrays.fill(out, -1);
    for (int h = 0; h < corner.length; h++) {
      if (topology.twin(h) < 0) {
        out[corner[h]] = h;
      }
    }
    boolean[] seen = new boolean[corner.length];
    List<int[]> loops = new ArrayList<>();
    for (int first = 0; first < corner.length; first++) {
      if (topology.twin(first) >= 0 || seen[first]) {
        continue;
      }
      int[] loop = new int[16];
      int length = 0;
      for (int h = first; h >= 0 && !seen[h]; h = out[corner[Topology.next(h)]]) {
        seen[h] = true;
        if (length == loop.length) {
          loop = Arrays.copyOf(loop, 2 * length);
        }
        loop[length++] = h;
      }
      loops.add(Arrays.copyOf(loop, length));
    }
    loops.sort((a, b) -> Double.compare(length(sheet, b), length(sheet, a)));
    return loops;
  }

  /** Length of a loop, mm. */
  static double length(Mesh sheet, int[] loop) {
    double sum = 0;
    for (int h : loop) {
      sum += Faces.length(sheet, sheet.corner()[h], sheet.corner()[Topology.next(h)]);
    }
    return sum;
  }

  /** V − E + F of a sheet: 1 for a disc, 0 for a band, 2 for a closed ball. */
  static int euler(Mesh sheet, Topology topology) {
    return sheet.vertexCount() - topology.edgeCount() + sheet.faceCount();
  }
}
