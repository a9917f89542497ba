package org.seamwright.mesh;

/**
 * The boxes of a {@link FaceTree} as flat numbers.
 *
 * <p>Coordinates are relative to the middle of the mesh and scaled by a power of two to at most 1,
 * so that single precision serves at any size and offset. Every box is wider than what it holds by
 * {@link #ROUNDING} or more, and queries leave as much room again: none loses a face to rounding.
 *
 * <p>A query mostly waits for memory, so a node is {@link #NODE} numbers, about a cache line: the
 * lowest corner of all its boxes, a unit (a power of two), the boxes of {@link #CHILDREN} children
 * in whole units from that corner, rounded outwards, and their references. A reference to a node is
 * its first place in {@link #node}; a reference to a leaf is {@code ~i}, i being its first place in
 * {@link #leaf}. Where a child is missing the reference is {@link #NONE}.
 *
 * <p>Source of the layout: H. Ylitie, T. Karras, S. Laine, "Efficient incoherent ray traversal on
 * GPUs through compressed wide BVHs", High-Performance Graphics (2017).
 *
 * @param node the nodes: 3 coordinates and the unit as bits of single precision; for each axis 4
 *     lower bounds, then 4 upper ones, a byte each, the first child's lowest; 4 references
 * @param leaf the faces in the order of the leaves, 4 numbers each: the vertices, then the face;
 *     {@code ~face} for the last of a leaf
 * @param root reference to the root
 * @param middle middle of the mesh, mm
 * @param scale box units per mm
 * @param noise share of double precision's roundings in box units, for a place on the mesh
 */
record BoxTree(int[] node, int[] leaf, int root, double[] middle, double scale, double noise) {
  /** Most children of a node. */
  static final int CHILDREN = 4;

  /** Numbers of a box while building. */
  static final int BOX = 6;

  /** Numbers of a node, and where in it bounds and references begin. */
  static final int NODE = 14;

  static final int BOUNDS = 4;
  static final int REFERENCES = 10;

  /** Most units that a node's boxes reach. */
  static final int UNITS = 255;

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

  /** A byte of a number, as 0 to 255. */
  static int part(int packed, int k) {
    return packed >>> (8 * k) & UNITS;
  }

  /** Bytes kept for all nodes and leaves. */
  long bytes() {
    return 4L * (node.length + leaf.length);
  }
}
