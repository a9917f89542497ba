package org.seamwright.mesh;

/**
 * The boxes of a {@link FaceTree} as flat numbers.
 *
 * <p>Coordinates are relative to the middle of the mesh and scaled by a power of two to at most 1,
 * so that single precision serves at any size and offset. Every box is wider than what it holds by
 * {@link #ROUNDING} or more, and queries leave as much room again: none loses a face to rounding.
 *
 * <p>A node has up to {@link #CHILDREN} children, since waiting for memory is much of a query and
 * fewer, larger nodes wait less. A reference to a node is its number; a reference to a leaf is
 * {@code ~i}, i being its first place in {@link #leaf}. Where a child is missing its half is -∞,
 * which no query meets.
 *
 * @param box for each child of each node the middle (3 numbers) and half the size (3) of its box
 * @param child for each node the references to its children
 * @param leaf the faces in the order of the leaves, 4 numbers each: the vertices, then the face;
 *     {@code ~face} for the last of a leaf
 * @param root reference to the root
 * @param middle middle of the mesh, mm
 * @param scale box units per mm
 * @param noise share of double precision's roundings in box units, for a place on the mesh
 */
record BoxTree(
    float[] box, int[] child, int[] leaf, int root, double[] middle, double scale, double noise) {
  /** Most children of a node. */
  static final int CHILDREN = 4;

  /** Numbers of a box. */
  static final int BOX = 6;

  /** Reference of a missing child: no leaf starts there, as each face has 4 entries. */
  static final int NONE = Integer.MIN_VALUE;

  /**
   * Room for a few roundings of numbers near 1 in single precision: 8 units in the last place of
   * numbers under 1.
   */
  static final double ROUNDING = 0x1p-21;

  /** Room for roundings of a query in double precision: 64 units in the last place. */
  static final double FINE_ROUNDING = 0x1p-46;

  /** Longest stack that a query needs: all but one child of each node on the deepest path. */
  static final int STACK = (CHILDREN - 1) * BoxTreeBuilder.DEEPEST + 1;

  /** Bytes kept for all nodes and leaves. */
  long bytes() {
    return 4L * (box.length + child.length + leaf.length);
  }
}
