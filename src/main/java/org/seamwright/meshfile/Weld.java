package org.seamwright.meshfile;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.LongAdder;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/**
 * Welds corners of exactly equal coordinates and drops the faces that collapse by it. Vertices are
 * numbered in the order of the first face corner that uses them, so the same faces give the same
 * mesh from any format and on any number of cores. O(n).
 *
 * @param mesh the welded faces
 * @param labels names of the faces that are left
 * @param dropped faces left out since two of their corners are one point
 */
record Weld(Mesh mesh, Labels labels, int dropped) {
  private static final int LEAST_PER_RANGE = 1 << 16;

  private static final int STRIDE = 1 << 15;

  /** Welds the corners of parsed faces. */
  static Weld of(RawFaces raw, Progress progress) {
    WeldBlock.Joined joined = weldPoints(raw.points(), progress);
    if (raw.indexed()) {
      joined = inOrderOfUse(joined, raw.corner());
    }
    return of(joined, raw.label(), raw.names());
  }

  /** Welded points; a corner per point. */
  private static WeldBlock.Joined weldPoints(RawFaces.Points points, Progress progress) {
    int count = points.count();
    int[] corner = new int[count];
    WeldBlock[] blocks = new WeldBlock[Parallel.ranges(count, LEAST_PER_RANGE)];
    Parallel.each(
        blocks.length,
        b -> {
          int from = Parallel.begin(count, blocks.length, b);
          int to = Parallel.begin(count, blocks.length, b + 1);
          blocks[b] = WeldBlock.in(corner, from, to - from);
          for (int at = from; at < to; at += STRIDE) {
            add(points, at, Math.min(to, at + STRIDE), blocks[b]);
            if (b == 0) {
              progress.at((double) (at - from) / (to - from));
            }
          }
          blocks[b].close();
        });
    return WeldBlock.join(blocks);
  }

  private static void add(RawFaces.Points points, int from, int to, WeldBlock block) {
    if (points instanceof RawFaces.Points.Single single) {
      float[] p = single.xyz();
      for (int i = 3 * from; i < 3 * to; i += 3) {
        block.put(p[i], p[i + 1], p[i + 2]);
      }
    } else if (points instanceof RawFaces.Points.Wide wide) {
      double[] p = wide.xyz();
      for (int i = 3 * from; i < 3 * to; i += 3) {
        block.put(p[i], p[i + 1], p[i + 2]);
      }
    }
  }

  /** Welded corners of faces that name points by number. */
  private static WeldBlock.Joined inOrderOfUse(WeldBlock.Joined points, int[] corner) {
    int[] welded = corner.clone();
    double[] xyz = onlyUsed(points.xyz(), points.corner(), welded);
    return new WeldBlock.Joined(xyz, welded);
  }

  /**
   * Drops collapsed faces.
   *
   * @param joined welded corners, 3 a face; taken over
   * @param label an entry of {@code names} per face, or empty
   */
  static Weld of(WeldBlock.Joined joined, int[] label, List<String> names) {
    int[] corner = joined.corner();
    double[] xyz = joined.xyz();
    int faces = corner.length / 3;
    int dropped = collapsed(corner);
    int[] keptLabel = label;
    if (dropped > 0) {
      keptLabel = label.clone();
      corner = withoutCollapsed(corner, keptLabel, faces - dropped);
      xyz = onlyUsed(xyz, identity(xyz.length / 3), corner);
      keptLabel = Arrays.copyOf(keptLabel, Math.min(label.length, faces - dropped));
    }
    int kept = faces - dropped;
    Labels labels = label.length > 0 ? new Labels(names, keptLabel) : Labels.none(kept);
    return new Weld(Mesh.of(xyz, corner), labels, dropped);
  }

  private static int collapsed(int[] corner) {
    LongAdder all = new LongAdder();
    Parallel.split(
        corner.length / 3,
        Parallel.ranges(corner.length, LEAST_PER_RANGE),
        (from, to) -> {
          int some = 0;
          for (int h = 3 * from; h < 3 * to; h += 3) {
            some += isCollapsed(corner, h) ? 1 : 0;
          }
          all.add(some);
        });
    return all.intValue();
  }

  private static boolean isCollapsed(int[] corner, int h) {
    int a = corner[h];
    int b = corner[h + 1];
    int c = corner[h + 2];
    return a == b || b == c || c == a;
  }

  private static int[] identity(int count) {
    int[] same = new int[count];
    Arrays.setAll(same, i -> i);
    return same;
  }

  /** The other faces' corners; moves their labels to the front. */
  private static int[] withoutCollapsed(int[] corner, int[] label, int kept) {
    int[] other = new int[3 * kept];
    int n = 0;
    for (int h = 0; h < corner.length; h += 3) {
      if (!isCollapsed(corner, h)) {
        System.arraycopy(corner, h, other, 3 * n, 3);
        if (label.length > 0) {
          label[n] = label[h / 3];
        }
        n++;
      }
    }
    return other;
  }

  /**
   * Leaves out the vertices that no face has and numbers the others by first use.
   *
   * @param xyz coordinates of the vertices
   * @param vertex the vertex of each point
   * @param corner points; renumbered in place
   */
  private static double[] onlyUsed(double[] xyz, int[] vertex, int[] corner) {
    int[] number = new int[xyz.length / 3];
    Arrays.fill(number, -1);
    double[] used = new double[xyz.length];
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      int v = vertex[corner[h]];
      if (number[v] < 0) {
        used[3 * count] = xyz[3 * v];
        used[3 * count + 1] = xyz[3 * v + 1];
        used[3 * count + 2] = xyz[3 * v + 2];
        number[v] = count++;
      }
      corner[h] = number[v];
    }
    return count == number.length ? used : Arrays.copyOf(used, 3 * count);
  }
}
