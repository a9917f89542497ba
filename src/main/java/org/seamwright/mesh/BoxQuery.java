package org.seamwright.mesh;

import java.util.function.IntConsumer;

/** One search for the faces of a {@link FaceTree} whose own boxes meet a box. */
final class BoxQuery {
  private final double[] xyz;
  private final BoxTree boxes;
  private final Bounds bounds;

  /** The box in box units with room for the roundings of that change; lower, then upper corner. */
  private final double[] box;

  BoxQuery(double[] xyz, BoxTree boxes, Bounds bounds) {
    this.xyz = xyz;
    this.boxes = boxes;
    this.bounds = bounds;
    box =
        new double[] {
          changed(bounds.minX(), 0, -1),
          changed(bounds.minY(), 1, -1),
          changed(bounds.minZ(), 2, -1),
          changed(bounds.maxX(), 0, 1),
          changed(bounds.maxY(), 1, 1),
          changed(bounds.maxZ(), 2, 1)
        };
  }

  private double changed(double value, int axis, int outwards) {
    double at = (value - boxes.middle()[axis]) * boxes.scale();
    return at + outwards * (boxes.noise() + BoxTree.FINE_ROUNDING * Math.abs(at));
  }

  void run(IntConsumer action) {
    int[] stack = new int[BoxTree.STACK];
    int top = 0;
    stack[top++] = boxes.root();
    while (top > 0) {
      int at = stack[--top];
      if (at < 0) {
        leaf(~at, action);
        continue;
      }
      for (int k = BoxTree.CHILDREN - 1; k >= 0; k--) {
        int child = boxes.node()[at + BoxTree.REFERENCES + k];
        if (child != BoxTree.NONE && meets(at, k)) {
          stack[top++] = child;
        }
      }
    }
  }

  private boolean meets(int at, int k) {
    int[] node = boxes.node();
    double unit = Float.intBitsToFloat(node[at + 3]);
    for (int axis = 0; axis < 3; axis++) {
      double corner = Float.intBitsToFloat(node[at + axis]);
      int low = BoxTree.part(node[at + BoxTree.BOUNDS + 2 * axis], k);
      int high = BoxTree.part(node[at + BoxTree.BOUNDS + 2 * axis + 1], k);
      if (corner + low * unit > box[axis + 3] || corner + high * unit < box[axis]) {
        return false;
      }
    }
    return true;
  }

  private void leaf(int begin, IntConsumer action) {
    int[] leaf = boxes.leaf();
    for (int i = begin; ; i += 4) {
      int a = 3 * leaf[i];
      int b = 3 * leaf[i + 1];
      int c = 3 * leaf[i + 2];
      int face = leaf[i + 3];
      if (overlaps(xyz[a], xyz[b], xyz[c], bounds.minX(), bounds.maxX())
          && overlaps(xyz[a + 1], xyz[b + 1], xyz[c + 1], bounds.minY(), bounds.maxY())
          && overlaps(xyz[a + 2], xyz[b + 2], xyz[c + 2], bounds.minZ(), bounds.maxZ())) {
        action.accept(face < 0 ? ~face : face);
      }
      if (face < 0) {
        return;
      }
    }
  }

  private static boolean overlaps(double a, double b, double c, double lo, double hi) {
    return Math.min(a, Math.min(b, c)) <= hi && Math.max(a, Math.max(b, c)) >= lo;
  }
}
