package org.seamwright.mesh;

/** One search for the point of a {@link FaceTree} closest to a place: nearer boxes first. */
final class NearestQuery {
  /**
   * Relative room for roundings when a box's squared distance in single precision is compared with
   * a face's: 64 units in the last place. What a place far off loses is a share of its distance.
   */
  private static final double ROOM = 1 + 0x1p-17;

  /** Bits of a power of two taken from this give those of two divided by it. */
  private static final int TWO_TURNED = 255 << 23;

  private final double[] xyz;
  private final BoxTree boxes;
  private final int[] node;
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

  /** Boxes whose {@link #far} is more can hold no better face. */
  private float limit;

  NearestQuery(double[] xyz, BoxTree boxes, double x, double y, double z, double reach) {
    this.xyz = xyz;
    this.boxes = boxes;
    this.x = x;
    this.y = y;
    this.z = z;
    node = boxes.node();
    bx = (float) ((x - boxes.middle()[0]) * boxes.scale());
    by = (float) ((y - boxes.middle()[1]) * boxes.scale());
    bz = (float) ((z - boxes.middle()[2]) * boxes.scale());
    best = reach * reach;
    limit();
  }

  private void limit() {
    double scale = boxes.scale();
    limit = (float) Math.min(Float.MAX_VALUE, 16 * best * scale * scale * ROOM);
  }

  /** Whether a face within reach is found. */
  boolean run() {
    NodeStack stack = new NodeStack();
    int at = boxes.root();
    while (true) {
      if (at < 0) {
        leaf(~at);
      } else {
        node(at, stack);
      }
      do {
        if (stack.isEmpty()) {
          return bestFace >= 0;
        }
        at = stack.pop();
      } while (stack.popped() > limit || at == BoxTree.NONE);
    }
  }

  /** Pushes the children of a node that are near enough. */
  private void node(int at, NodeStack stack) {
    int bits = node[at + 3];
    float unit = Float.intBitsToFloat(bits);
    // Two divided by a power of two: its exponent turned round, plus one.
    float halves = Float.intBitsToFloat(TWO_TURNED - bits);
    float px = (bx - Float.intBitsToFloat(node[at])) * halves;
    float py = (by - Float.intBitsToFloat(node[at + 1])) * halves;
    float pz = (bz - Float.intBitsToFloat(node[at + 2])) * halves;
    stack.push(
        NodeStack.key(far(at, 0, px, py, pz, unit), node[at + 10]),
        NodeStack.key(far(at, 1, px, py, pz, unit), node[at + 11]),
        NodeStack.key(far(at, 2, px, py, pz, unit), node[at + 12]),
        NodeStack.key(far(at, 3, px, py, pz, unit), node[at + 13]),
        limit);
  }

  /** 16 times the squared distance to a child's box, box units. */
  private float far(int at, int k, float px, float py, float pz, float unit) {
    float dx = apart(px, node[at + 4], node[at + 5], k) * unit;
    float dy = apart(py, node[at + 6], node[at + 7], k) * unit;
    float dz = apart(pz, node[at + 8], node[at + 9], k) * unit;
    return dx * dx + dy * dy + dz * dz;
  }

  /**
   * Four times the distance to a child's box along an axis, units: |2p - (low + high)| - (high -
   * low) is twice the gap if above 0, and v + |v| is twice v if above 0, else 0. No branches.
   *
   * @param twice two times the place, units from the node's corner
   */
  private static float apart(float twice, int lows, int highs, int k) {
    int low = BoxTree.part(lows, k);
    int high = BoxTree.part(highs, k);
    float gap = Math.abs(twice - (low + high)) - (high - low);
    return gap + Math.abs(gap);
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
