package org.seamwright.region;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;

/** Cuts a surface along the line where a field, given per vertex and linear inside faces, is 0. */
final class ZeroCut {
  /** Faces between two reports of progress: well under 50 ms. */
  private static final int REPORT_MASK = (1 << 14) - 1;

  private static final int LEAST_PER_RANGE = 1 << 14;

  /**
   * A crossing nearer than this share of its edge to one end is moved into that end, so that pieces
   * keep 1e-12 of their parent's area, which the rounding of coordinates leaves positive.
   */
  private static final double SNAP_SHARE = 1e-6;

  private final EditableSurface surface;

  ZeroCut(EditableSurface surface) {
    this.surface = surface;
  }

  /**
   * Cuts faces along the line where a field is 0.
   *
   * @param value one entry per vertex, 0 on the line; values close to it are set to 0
   * @param facesToCut which faces; asked again for each piece. Others are only split where an edge
   *     they share is
   * @return the values of all vertices, new ones 0
   */
  double[] cut(double[] value, IntPredicate facesToCut, Progress progress) {
    double[] field = value;
    int[] crossed = crossedFaces(field);
    snapNearEnds(field, crossed);
    int known = surface.faceCount();
    for (int i = 0; i < crossed.length + surface.faceCount() - known; i++) {
      int f = i < crossed.length ? crossed[i] : known + i - crossed.length;
      if ((i & REPORT_MASK) == 0) {
        progress.at((double) i / (crossed.length + surface.faceCount() - known));
      }
      int h = crossedEdge(f, field);
      if (h < 0 || !surface.hasEdges(f) || !facesToCut.test(f)) {
        continue;
      }
      while (h >= 0) {
        double start = field[surface.from(h)];
        double share = start / (start - field[surface.to(h)]);
        if (!surface.splitsSoundly(h, share)) {
          // The line passes a sliver as thin as rounding: it goes by the nearer end instead.
          field[share <= 0.5 ? surface.from(h) : surface.to(h)] = 0;
          h = crossedEdge(f, field);
          continue;
        }
        int m = surface.splitEdge(h, share);
        if (m >= field.length) {
          field = Arrays.copyOf(field, EditableSurface.grown(m + 1));
        }
        field[m] = 0;
        h = crossedEdge(f, field);
      }
    }
    progress.at(1);
    return field;
  }

  /** Faces with corners on both sides, in order. */
  private int[] crossedFaces(double[] field) {
    int faces = surface.faceCount();
    int[] corner = surface.corners();
    int ranges = Parallel.ranges(faces, LEAST_PER_RANGE);
    int[][] found = new int[ranges][];
    Parallel.each(
        ranges,
        r -> {
          int[] some = new int[64];
          int count = 0;
          for (int f = Parallel.begin(faces, ranges, r);
              f < Parallel.begin(faces, ranges, r + 1);
              f++) {
            double a = field[corner[3 * f]];
            double b = field[corner[3 * f + 1]];
            double c = field[corner[3 * f + 2]];
            if (crosses(a, b) || crosses(b, c) || crosses(c, a)) {
              if (count == some.length) {
                some = Arrays.copyOf(some, 2 * count);
              }
              some[count++] = f;
            }
          }
          found[r] = Arrays.copyOf(some, count);
        });
    return Arrays.stream(found).flatMapToInt(Arrays::stream).toArray();
  }

  private void snapNearEnds(double[] field, int[] crossed) {
    for (int f : crossed) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        double a = field[surface.from(h)];
        double b = field[surface.to(h)];
        if (crosses(a, b)) {
          if (Math.abs(a) <= SNAP_SHARE * Math.abs(b)) {
            field[surface.from(h)] = 0;
          } else if (Math.abs(b) <= SNAP_SHARE * Math.abs(a)) {
            field[surface.to(h)] = 0;
          }
        }
      }
    }
  }

  private static boolean crosses(double a, double b) {
    return (a < 0 && b > 0) || (a > 0 && b < 0);
  }

  /** A half-edge whose ends lie on different sides, or -1. */
  private int crossedEdge(int face, double[] field) {
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      if (crosses(field[surface.from(h)], field[surface.to(h)])) {
        return h;
      }
    }
    return -1;
  }
}
