package org.seamwright.mesh;

/** Packs the boxes of a node's children into the numbers that a {@link BoxTree} keeps. */
final class PackedBoxes {
  private PackedBoxes() {}

  /**
   * Writes corner, unit and bounds of a node; references are left to the caller.
   *
   * @param box for each child the middle (3 numbers) and half the size (3), box units; a half below
   *     0 for a missing child
   * @param from where in it the node's boxes begin
   * @param node takes the packed boxes
   * @param at where in it the node begins
   */
  static void write(float[] box, int from, int[] node, int at) {
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double size = 0;
    int end = from + BoxTree.BOX * BoxTree.CHILDREN;
    for (int axis = 0; axis < 3; axis++) {
      double high = -Double.MAX_VALUE;
      for (int b = from + axis; b < end; b += BoxTree.BOX) {
        if (box[b + 3] >= 0) {
          low[axis] = Math.min(low[axis], (double) box[b] - box[b + 3]);
          high = Math.max(high, (double) box[b] + box[b + 3]);
        }
      }
      low[axis] = below(low[axis]);
      size = Math.max(size, high - low[axis]);
      node[at + axis] = Float.floatToRawIntBits((float) low[axis]);
    }
    // One more than the exponent of the least unit that would do: a power of two that does.
    double unit = Math.scalb(1.0, Math.getExponent(size / BoxTree.UNITS) + 1);
    node[at + 3] = Float.floatToRawIntBits((float) unit);
    for (int axis = 0; axis < 3; axis++) {
      int lows = 0;
      int highs = 0;
      for (int k = 0; k < BoxTree.CHILDREN; k++) {
        int b = from + BoxTree.BOX * k + axis;
        if (box[b + 3] >= 0) {
          double first = Math.floor(((double) box[b] - box[b + 3] - low[axis]) / unit);
          double last = Math.ceil(((double) box[b] + box[b + 3] - low[axis]) / unit);
          lows |= (int) first << (8 * k);
          highs |= (int) last << (8 * k);
        } else {
          lows |= BoxTree.UNITS << (8 * k);
        }
      }
      node[at + BoxTree.BOUNDS + 2 * axis] = lows;
      node[at + BoxTree.BOUNDS + 2 * axis + 1] = highs;
    }
  }

  /** The largest number of single precision that is not above another number. */
  private static double below(double value) {
    float near = (float) value;
    return near > value ? Math.nextDown(near) : near;
  }
}
