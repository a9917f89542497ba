package org.seamwright.meshfile;

import java.util.Arrays;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/**
 * Welds corners of exactly equal coordinates and drops the faces that collapse by it. Vertices are
 * numbered in the order of the first face corner that uses them, so the same faces give the same
 * mesh from any format. O(n).
 *
 * @param mesh the welded faces
 * @param labels names of the faces that are left
 * @param dropped faces left out since two of their corners are one point
 */
record Weld(Mesh mesh, Labels labels, int dropped) {
  /** Distinct points per corner that the table is first sized for; a closed mesh has 1/6. */
  private static final int CORNERS_PER_VERTEX = 5;

  private static final int STRIDE = 1 << 15;

  /** Welds the corners of parsed faces. */
  static Weld of(RawFaces raw, Progress progress) {
    int corners = raw.corner().length == 0 ? raw.points().count() : raw.corner().length;
    VertexTable table = new VertexTable(corners / CORNERS_PER_VERTEX);
    int[] welded =
        raw.corner().length == 0
            ? ofSoup(raw.points(), table, progress)
            : ofIndexed(raw.points(), raw.corner(), table, progress);
    return withoutCollapsed(raw, welded, table);
  }

  private static int[] ofSoup(RawFaces.Points points, VertexTable table, Progress progress) {
    int[] welded = new int[points.count()];
    if (points instanceof RawFaces.Points.Single single) {
      float[] p = single.xyz();
      for (int i = 0; i < welded.length; i++) {
        welded[i] = table.number(p[3 * i], p[3 * i + 1], p[3 * i + 2]);
        tell(progress, i, welded.length);
      }
    } else if (points instanceof RawFaces.Points.Wide wide) {
      double[] p = wide.xyz();
      for (int i = 0; i < welded.length; i++) {
        welded[i] = table.number(p[3 * i], p[3 * i + 1], p[3 * i + 2]);
        tell(progress, i, welded.length);
      }
    }
    return welded;
  }

  private static int[] ofIndexed(
      RawFaces.Points points, int[] corner, VertexTable table, Progress progress) {
    double[] p = ((RawFaces.Points.Wide) points).xyz();
    int[] number = new int[points.count()];
    Arrays.fill(number, -1);
    int[] welded = new int[corner.length];
    for (int i = 0; i < corner.length; i++) {
      int v = corner[i];
      if (number[v] < 0) {
        number[v] = table.number(p[3 * v], p[3 * v + 1], p[3 * v + 2]);
      }
      welded[i] = number[v];
      tell(progress, i, corner.length);
    }
    return welded;
  }

  private static void tell(Progress progress, int done, int all) {
    if ((done & (STRIDE - 1)) == 0) {
      progress.at((double) done / all);
    }
  }

  private static Weld withoutCollapsed(RawFaces raw, int[] welded, VertexTable table) {
    boolean named = raw.label().length > 0;
    int[] label = named ? raw.label().clone() : new int[0];
    int kept = 0;
    for (int h = 0; h < welded.length; h += 3) {
      int a = welded[h];
      int b = welded[h + 1];
      int c = welded[h + 2];
      if (a != b && b != c && c != a) {
        welded[3 * kept] = a;
        welded[3 * kept + 1] = b;
        welded[3 * kept + 2] = c;
        if (named) {
          label[kept] = label[h / 3];
        }
        kept++;
      }
    }
    int dropped = welded.length / 3 - kept;
    double[] xyz = table.toArray();
    int[] corner = dropped == 0 ? welded : Arrays.copyOf(welded, 3 * kept);
    if (dropped > 0) {
      xyz = onlyUsed(xyz, corner);
    }
    Labels labels = named ? new Labels(raw.names(), Arrays.copyOf(label, kept)) : Labels.none(kept);
    return new Weld(Mesh.of(xyz, corner), labels, dropped);
  }

  /** Leaves out the vertices that only dropped faces had; renumbers the corners in place. */
  private static double[] onlyUsed(double[] xyz, int[] corner) {
    int[] number = new int[xyz.length / 3];
    Arrays.fill(number, -1);
    double[] used = new double[xyz.length];
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      int v = corner[h];
      if (number[v] < 0) {
        System.arraycopy(xyz, 3 * v, used, 3 * count, 3);
        number[v] = count++;
      }
      corner[h] = number[v];
    }
    return Arrays.copyOf(used, 3 * count);
  }
}
