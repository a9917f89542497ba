package org.seamwright.mesh;

/** One search for the point of a {@link FaceTree} closest to a place: nearer boxes first. */
final class NearestQuery {
  /**
   * Relative room for roundings when a box's squared distance in single precision is compared with
   * a face's: 64 units in the last place. What a place far off loses is a share of its distance.
   */
  private static final double ROOM = 1 + 0x1p-17;

  private final double[] xyz;
  private final BoxTree boxes;
  private final float[] box;
  private final double x;
  private final double y;
  private final double z;

  /** The place in box units. */
  private final float bx;

  private final float by;
  private final float bz;
  private final Closest closest = new Closest();
  private double best;
  private int bestFace = -1;
  private double w1;
  private double w2;

  /** Boxes farther than this can hold no better face; in the measure of {@link #apart}. */
  private float limit;

  NearestQuery(double[] xyz, BoxTree boxes, double x, double y, double z, double reach) {
    this.xyz = xyz;
    this.boxes = boxes;
    this.x = x;
    this.y = y;
    this.z = z;
    box = boxes.box();
    bx = (float) ((x - boxes.middle()[0]) * boxes.scale());
    by = (float) ((y - boxes.middle()[1]) * boxes.scale());
    bz = (float) ((z - boxes.middle()[2]) * boxes.scale());
    best = reach * reach;
    limit();
  }

  private void limit() {
    double scale = boxes.scale();
    limit = (float) Math.min(Float.MAX_VALUE, 4 * best * scale * scale * ROOM);
  }

  /** Whether a face within reach is found. */
  boolean run() {
    int[] stack = new int[BoxTree.STACK];
    float[] away = new float[BoxTree.STACK];
    int top = 0;
    int at = boxes.root();
    int[] child = boxes.child();
    while (true) {
      if (at < 0) {
        leaf(~at);
      } else {
        int bottom = top;
        int first = BoxTree.CHILDREN * at;
        for (int k = first; k < first + BoxTree.CHILDREN; k++) {
          float far = apart(BoxTree.BOX * k);
          if (far <= limit) {
            int i = top++;
            for (; i > bottom && away[i - 1] < far; i--) {
              away[i] = away[i - 1];
              stack[i] = stack[i - 1];
            }
            away[i] = far;
            stack[i] = child[k];
          }
        }
      }
      do {
        if (top == 0) {
          return bestFace >= 0;
        }
      } while (away[--top] > limit);
      at = stack[top];
    }
  }

  /**
   * Four times the squared distance to a box, box units: |d| - half is the gap along an axis if
   * above 0, and v + |v| is twice v if above 0, else 0. No branches.
   */
  private float apart(int at) {
    float dx = Math.abs(bx - box[at]) - box[at + 3];
    float dy = Math.abs(by - box[at + 1]) - box[at + 4];
    float dz = Math.abs(bz - box[at + 2]) - box[at + 5];
    dx += Math.abs(dx);
    dy += Math.abs(dy);
    dz += Math.abs(dz);
    return dx * dx + dy * dy + dz * dz;
  }

  private void leaf(int begin) {
    int[] leaf = boxes.leaf();
    for (int i = begin; ; i += 4) {
      int face = leaf[i + 3];
      closest.find(xyz, leaf[i], leaf[i + 1], leaf[i + 2], x, y, z);
      int f = face < 0 ? ~face : face;
      double squared = closest.squared;
      if (squared < best || (squared == best && (bestFace < 0 || f < bestFace))) {
        best = squared;
        bestFace = f;
        w1 = closest.w1;
        w2 = closest.w2;
        limit();
      }
      if (face < 0) {
        return;
      }
    }
  }

  SurfacePoint point() {
    return new SurfacePoint(bestFace, 1 - w1 - w2, w1, w2);
  }
}
