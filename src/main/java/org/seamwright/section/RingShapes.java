package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Which sections close on themselves: bands round a handle or a rim, and what has another section
 * inside. Told by Euler's number, corners − edges + faces, which is 1 for what can be laid out flat
 * as a disc and 1 less for every hole. Holes whose edge is shorter than half the side of a square
 * as large as the section, such as a screw's, don't count: a brush goes round them without notice.
 *
 * <p>Cost: O(n α(n)).
 */
final class RingShapes {
  /** Shortest edge of a hole that counts, in sides of a square as large as the section. */
  private static final double LEAST_HOLE = 0.5;

  private RingShapes() {}

  /**
   * Looks at sections.
   *
   * @param label one entry per face: section from 0, or negative for none
   * @return one entry per section: whether it closes on itself
   */
  static boolean[] of(Mesh mesh, EdgeRings rings, int[] label, int sections) {
    int[] corner = corners(mesh, rings, label);
    double[] euler = new double[sections];
    double[] area = new double[sections];
    boolean[] outer = new boolean[corner.length];
    for (int h = 0; h < corner.length; h++) {
      int section = label[h / 3];
      if (section < 0) {
        continue;
      }
      boolean first = true;
      boolean alone = true;
      for (int g = rings.next(h); g != h; g = rings.next(g)) {
        boolean same = label[g / 3] == section;
        alone &= !same;
        first &= !same || g > h;
      }
      outer[h] = alone;
      euler[section] += (corner[h] == h ? 1 : 0) - (first ? 1 : 0) + (h % 3 == 0 ? 1 : 0);
      area[section] += h % 3 == 0 ? Faces.area(mesh, h / 3) : 0;
    }
    addSmallHoles(mesh, label, corner, outer, area, euler);
    boolean[] ring = new boolean[sections];
    for (int s = 0; s < sections; s++) {
      ring[s] = area[s] > 0 && euler[s] < 1;
    }
    return ring;
  }

  /** Per corner: the first of those that hang together round a vertex within a section. */
  private static int[] corners(Mesh mesh, EdgeRings rings, int[] label) {
    int[] root = new int[3 * label.length];
    Arrays.setAll(root, i -> i);
    for (int h = 0; h < root.length; h++) {
      for (int g = rings.next(h); g != h; g = rings.next(g)) {
        if (g < h && label[h / 3] >= 0 && label[g / 3] == label[h / 3]) {
          boolean same = mesh.corner()[g] == mesh.corner()[h];
          join(root, h, same ? g : Topology.next(g));
          join(root, Topology.next(h), same ? Topology.next(g) : g);
        }
      }
    }
    for (int i = 0; i < root.length; i++) {
      root[i] = find(root, i);
    }
    return root;
  }

  private static void addSmallHoles(
      Mesh mesh, int[] label, int[] corner, boolean[] outer, double[] area, double[] euler) {
    int[] loop = new int[corner.length];
    Arrays.setAll(loop, i -> i);
    for (int h = 0; h < outer.length; h++) {
      if (outer[h]) {
        join(loop, corner[h], corner[Topology.next(h)]);
      }
    }
    double[] length = new double[corner.length];
    for (int h = 0; h < outer.length; h++) {
      if (outer[h]) {
        length[find(loop, corner[h])] +=
            Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
      }
    }
    for (int i = 0; i < length.length; i++) {
      int section = label[i / 3];
      if (length[i] > 0 && length[i] < LEAST_HOLE * Math.sqrt(area[section])) {
        euler[section]++;
      }
    }
  }

  private static void join(int[] root, int a, int b) {
    int x = find(root, a);
    int y = find(root, b);
    root[Math.max(x, y)] = Math.min(x, y);
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }
}
