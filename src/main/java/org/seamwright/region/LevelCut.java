package org.seamwright.region;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.seamwright.basis.Progress;

/**
 * Cuts a surface where a function of space is 0, however bent the function is: faces that the line
 * may cross are halved until the function is linear along their edges to within a tolerance. The
 * line is then off by no more than that, and by the function's bend inside the smallest faces.
 */
final class LevelCut {
  /** Each pass halves long edges at least once; a piece is not 2^40 times its mark. */
  private static final int MOST_PASSES = 40;

  /** A function of space that changes by no more than 1 mm per mm, such as a distance. */
  interface Field {
    /** Value at a place, mm. */
    double at(double x, double y, double z);
  }

  private final EditableSurface surface;
  private final Field field;
  private final double toleranceMm;
  private final Halving halving;

  LevelCut(EditableSurface surface, Field field, double toleranceMm) {
    this.surface = surface;
    this.field = field;
    this.toleranceMm = toleranceMm;
    this.halving = new Halving(surface);
  }

  /**
   * Cuts.
   *
   * @param facesToCut which faces; asked again for each piece
   * @return one entry per vertex: the field, exactly 0 along the cut
   */
  double[] cut(IntPredicate facesToCut, Progress progress) {
    int[] faces = all();
    for (int pass = 0; pass < MOST_PASSES && faces.length > 0; pass++) {
      progress.at(0.8 * pass / MOST_PASSES);
      int known = surface.faceCount();
      int[] bent = Arrays.stream(faces).filter(f -> facesToCut.test(f) && isBent(f)).toArray();
      for (int f : bent) {
        halving.choose(f);
      }
      halving.split(bent);
      faces = bent.length == 0 ? new int[0] : touched(faces, known);
    }
    double[] value = new double[surface.vertexCount()];
    for (int v = 0; v < value.length; v++) {
      value[v] = field.at(surface.at(v, 0), surface.at(v, 1), surface.at(v, 2));
    }
    return surface.cutAlongZero(value, facesToCut, progress.between(0.8, 1));
  }

  private int[] all() {
    int[] all = new int[surface.faceCount()];
    Arrays.setAll(all, f -> f);
    return all;
  }

  private int[] touched(int[] faces, int known) {
    int[] next = Arrays.copyOf(faces, faces.length + surface.faceCount() - known);
    for (int i = faces.length; i < next.length; i++) {
      next[i] = known + i - faces.length;
    }
    return next;
  }

  private boolean isBent(int face) {
    if (!surface.hasEdges(face)) {
      return false;
    }
    double longest = surface.length(halving.longestEdge(face));
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      least = Math.min(least, Math.abs(at(surface.from(3 * face + k))));
    }
    if (least > longest || longest <= toleranceMm) {
      return false;
    }
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      int a = surface.from(h);
      int b = surface.to(h);
      double middle =
          field.at(
              (surface.at(a, 0) + surface.at(b, 0)) / 2,
              (surface.at(a, 1) + surface.at(b, 1)) / 2,
              (surface.at(a, 2) + surface.at(b, 2)) / 2);
      if (Math.abs(middle - (at(a) + at(b)) / 2) > toleranceMm) {
        return true;
      }
    }
    return false;
  }

  private double at(int vertex) {
    return field.at(surface.at(vertex, 0), surface.at(vertex, 1), surface.at(vertex, 2));
  }
}
