package org.seamwright.mesh;

import java.util.Arrays;
import org.seamwright.mesh.BoxTreeBuilder.Run;

/** Splits runs of faces by their boxes for {@link BoxTreeBuilder}; one per thread. */
final class Splitter {
  /** Places tried along a side, plus one. */
  private static final int BINS = 16;

  /** The same for few faces, where clearing the bins costs more than the better split saves. */
  private static final int FEW_BINS = 8;

  private static final int FEW_FACES = 32;

  private static final int BOX = BoxTree.BOX;

  private final int[] face;
  private final float[] box;
  private final int[] count = new int[BINS];
  private final float[] bin = new float[BOX * BINS];

  /** Surface times faces of everything from a bin on. */
  private final double[] above = new double[BINS + 1];

  private final float[] sweep = new float[BOX];

  /** Bounds of the two sides of the last split. */
  private final float[] left = new float[BOX];

  private final float[] right = new float[BOX];

  Splitter(int[] face, float[] box) {
    this.face = face;
    this.box = box;
  }

  static float[] none() {
    float[] none = new float[BOX];
    clear(none);
    return none;
  }

  private static void clear(float[] bounds) {
    Arrays.fill(bounds, 0, 3, Float.POSITIVE_INFINITY);
    Arrays.fill(bounds, 3, 6, Float.NEGATIVE_INFINITY);
  }

  /** Grows bounds to hold a box. */
  static void grow(float[] bounds, int at, float[] box, int from) {
    for (int axis = 0; axis < 3; axis++) {
      if (box[from + axis] < bounds[at + axis]) {
        bounds[at + axis] = box[from + axis];
      }
      if (box[from + axis + 3] > bounds[at + axis + 3]) {
        bounds[at + axis + 3] = box[from + axis + 3];
      }
    }
  }

  /**
   * Puts the faces of a run in two sides, neither empty.
   *
   * @param halve whether both sides must have as many faces
   */
  Run[] split(Run run, boolean halve) {
    int middle = halve ? run.from() : bySurface(run.from(), run.to(), run.bounds());
    if (middle == run.from() || middle == run.to()) {
      middle = byMedian(run.from(), run.to());
    }
    return new Run[] {
      new Run(run.from(), middle, left.clone()), new Run(middle, run.to(), right.clone())
    };
  }

  private int bySurface(int from, int to, float[] bounds) {
    int axis = 0;
    for (int i = 1; i < 3; i++) {
      if (bounds[i + 3] - bounds[i] > bounds[axis + 3] - bounds[axis]) {
        axis = i;
      }
    }
    int bins = to - from <= FEW_FACES ? FEW_BINS : BINS;
    // Twice the middle of a box is compared with twice the bounds: no division per face.
    float start = 2 * bounds[axis];
    float size = 2 * bounds[axis + 3] - start;
    float scale = bins * 0.99999f / size;
    fill(from, to, axis, bins, start, scale);
    int cut = cheapest(bins);
    return cut == 0 ? from : partition(from, to, axis, start, scale, cut);
  }

  private void fill(int from, int to, int axis, int bins, float start, float scale) {
    for (int k = 0; k < bins; k++) {
      count[k] = 0;
      Arrays.fill(bin, BOX * k, BOX * k + 3, Float.POSITIVE_INFINITY);
      Arrays.fill(bin, BOX * k + 3, BOX * k + 6, Float.NEGATIVE_INFINITY);
    }
    for (int i = from; i < to; i++) {
      int k = (int) ((box[BOX * i + axis] + box[BOX * i + axis + 3] - start) * scale);
      count[k]++;
      grow(bin, BOX * k, box, BOX * i);
    }
  }

  /** The bin before which to cut, bounds of both sides set; 0 if all faces are in one bin. */
  private int cheapest(int bins) {
    clear(sweep);
    int n = 0;
    for (int k = bins - 1; k > 0; k--) {
      if (count[k] > 0) {
        grow(sweep, 0, bin, BOX * k);
        n += count[k];
      }
      above[k] = n == 0 ? Double.POSITIVE_INFINITY : n * surface(sweep);
    }
    clear(sweep);
    n = 0;
    int cut = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 1; k < bins; k++) {
      if (count[k - 1] > 0) {
        grow(sweep, 0, bin, BOX * (k - 1));
        n += count[k - 1];
        double cost = n * surface(sweep) + above[k];
        if (cost < least) {
          least = cost;
          cut = k;
          System.arraycopy(sweep, 0, left, 0, BOX);
        }
      }
    }
    clear(right);
    for (int k = cut; k < bins; k++) {
      grow(right, 0, bin, BOX * k);
    }
    return cut;
  }

  static double surface(float[] b) {
    double x = b[3] - b[0];
    double y = b[4] - b[1];
    double z = b[5] - b[2];
    return x * y + y * z + z * x;
  }

  private int partition(int from, int to, int axis, float start, float scale, int cut) {
    int i = from;
    int j = to - 1;
    while (true) {
      while (i <= j
          && (int) ((box[BOX * i + axis] + box[BOX * i + axis + 3] - start) * scale) < cut) {
        i++;
      }
      while (i <= j
          && (int) ((box[BOX * j + axis] + box[BOX * j + axis + 3] - start) * scale) >= cut) {
        j--;
      }
      if (i >= j) {
        return i;
      }
      swap(i++, j--);
    }
  }

  private void swap(int i, int j) {
    int f = face[i];
    face[i] = face[j];
    face[j] = f;
    int a = BOX * i;
    int b = BOX * j;
    for (int k = 0; k < BOX; k++) {
      float value = box[a + k];
      box[a + k] = box[b + k];
      box[b + k] = value;
    }
  }

  private float twiceMiddle(int i, int axis) {
    return box[BOX * i + axis] + box[BOX * i + axis + 3];
  }

  /**
   * Halves a run at the median of the faces' middles, along the axis where these reach furthest.
   */
  private int byMedian(int from, int to) {
    int axis = 0;
    float longest = -1;
    for (int k = 0; k < 3; k++) {
      float lo = Float.POSITIVE_INFINITY;
      float hi = Float.NEGATIVE_INFINITY;
      for (int i = from; i < to; i++) {
        lo = Math.min(lo, twiceMiddle(i, k));
        hi = Math.max(hi, twiceMiddle(i, k));
      }
      if (hi - lo > longest) {
        longest = hi - lo;
        axis = k;
      }
    }
    int middle = (from + to) >>> 1;
    if (longest > 0) {
      select(from, to - 1, middle, axis);
    }
    clear(left);
    clear(right);
    for (int i = from; i < to; i++) {
      grow(i < middle ? left : right, 0, box, BOX * i);
    }
    return middle;
  }

  /** Puts the face of rank {@code middle} in its place, smaller ones before it (quickselect). */
  private void select(int from, int to, int middle, int axis) {
    int low = from;
    int high = to;
    while (low < high) {
      float pivot = twiceMiddle((low + high) >>> 1, axis);
      int i = low;
      int j = high;
      while (i <= j) {
        while (twiceMiddle(i, axis) < pivot) {
          i++;
        }
        while (twiceMiddle(j, axis) > pivot) {
          j--;
        }
        if (i <= j) {
          swap(i++, j--);
        }
      }
      if (middle <= j) {
        high = j;
      } else if (middle >= i) {
        low = i;
      } else {
        return;
      }
    }
  }
}
