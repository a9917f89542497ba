package org.seamwright.mend;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Locale;
import org.seamwright.basis.Count;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Splits open edges at corners of other faces that lie on them, as a boolean leaves them where one
 * long edge runs along several short ones. The face of the edge is split with it; its neighbours
 * then share corners and edges and are joined.
 *
 * <p>Corners are looked for among those on open edges only, through a tree: near O(n log n). The
 * surface moves by no more than the tolerance.
 */
final class EdgeSplit {
  /** A long edge is searched in boxes of about this many mean open edges. */
  private static final int EDGES_PER_BOX = 8;

  private static final int MOST_BOXES = 256;
  private static final int[] NONE = {};

  private final Mesh mesh;
  private final double tolerance;
  private final FaceTree tree;
  private final double boxLength;
  private final Ints corners = new Ints(16);
  private final Ints parents = new Ints(16);
  private long splits;

  private EdgeSplit(Mesh mesh, Topology topology, BitSet at, double tolerance) {
    this.mesh = mesh;
    this.tolerance = tolerance;
    int[] vertex = at.stream().toArray();
    int[] corner = new int[3 * vertex.length];
    for (int h = 0; h < corner.length; h++) {
      corner[h] = vertex[h / 3];
    }
    tree = FaceTree.of(Mesh.of(mesh.xyz(), corner));
    vertexOf = vertex;
    boxLength = EDGES_PER_BOX * meanOpenEdge(mesh, topology);
  }

  /** One entry per face of the tree: the vertex that it stands for. */
  private final int[] vertexOf;

  /** Splits open edges at all corners on open edges, until none is left to split. */
  static Change split(Mesh mesh, Topology topology, double toleranceMm) {
    Change all = Change.none(mesh, "");
    Topology edges = topology;
    long splits = 0;
    while (true) {
      BitSet border = new BitSet();
      Arrays.stream(Borders.vertices(all.mesh(), edges)).forEach(border::set);
      Change next = at(all.mesh(), edges, border, toleranceMm);
      all = all.then(next);
      splits += next.count();
      if (next.count() == 0) {
        break;
      }
      edges = Topology.of(all.mesh());
    }
    String text =
        String.format(
            Locale.ROOT,
            "open edges split at %s within %.3g mm of them",
            Count.of(splits, "corner"),
            toleranceMm);
    return new Change(all.mesh(), all.parent(), splits, text);
  }

  /** Splits open edges once, at some corners. */
  static Change at(Mesh mesh, Topology topology, BitSet at, double toleranceMm) {
    if (topology.openEdges() == 0 || at.isEmpty()) {
      return Change.none(mesh, "");
    }
    EdgeSplit split = new EdgeSplit(mesh, topology, at, toleranceMm);
    for (int f = 0; f < mesh.faceCount(); f++) {
      int[][] on = new int[3][];
      for (int k = 0; k < 3; k++) {
        int h = 3 * f + k;
        on[k] = Borders.isOpen(mesh, topology, h) ? split.on(h) : NONE;
      }
      int[] c = mesh.corner();
      split.face(f, c[3 * f], c[3 * f + 1], c[3 * f + 2], on[0], on[1], on[2]);
    }
    if (split.splits == 0) {
      return Change.none(mesh, "");
    }
    return new Change(
        Mesh.of(mesh.xyz(), split.corners.toArray()), split.parents.toArray(), split.splits, "");
  }

  private static double meanOpenEdge(Mesh mesh, Topology topology) {
    double sum = 0;
    int count = 0;
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      if (Borders.isOpen(mesh, topology, h)) {
        sum += Faces.length(mesh, corner[h], corner[Topology.next(h)]);
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  /** Corners on the edge of a half-edge, in the order from its start. */
  private int[] on(int h) {
    int a = mesh.corner()[h];
    int b = mesh.corner()[Topology.next(h)];
    int far = mesh.corner()[Topology.prev(h)];
    double length = Faces.length(mesh, a, b);
    if (!(length > 2 * tolerance)) {
      return NONE;
    }
    BitSet found = new BitSet();
    int boxes = (int) Math.max(1, Math.min(MOST_BOXES, Math.ceil(length / boxLength)));
    for (int i = 0; i < boxes; i++) {
      tree.inBox(box(a, b, (double) i / boxes, (i + 1.0) / boxes), f -> found.set(vertexOf[f]));
    }
    return found.stream()
        .filter(v -> v != a && v != b && v != far && isOn(a, b, length, v))
        .boxed()
        .sorted(
            (v, w) -> {
              int byPlace = Double.compare(along(a, b, v), along(a, b, w));
              return byPlace != 0 ? byPlace : Integer.compare(v, w);
            })
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private Bounds box(int a, int b, double from, double to) {
    double[] lo = new double[3];
    double[] hi = new double[3];
    double[] p = mesh.xyz();
    for (int axis = 0; axis < 3; axis++) {
      double start = p[3 * a + axis] + from * (p[3 * b + axis] - p[3 * a + axis]);
      double end = p[3 * a + axis] + to * (p[3 * b + axis] - p[3 * a + axis]);
      lo[axis] = Math.min(start, end) - tolerance;
      hi[axis] = Math.max(start, end) + tolerance;
    }
    return new Bounds(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]);
  }

  /** Place along the edge from a to b, in squares of its length. */
  private double along(int a, int b, int v) {
    return (mesh.x(b) - mesh.x(a)) * (mesh.x(v) - mesh.x(a))
        + (mesh.y(b) - mesh.y(a)) * (mesh.y(v) - mesh.y(a))
        + (mesh.z(b) - mesh.z(a)) * (mesh.z(v) - mesh.z(a));
  }

  /** Whether a corner lies on the edge and clear of its ends. */
  private boolean isOn(int a, int b, double length, int v) {
    double along = along(a, b, v) / length;
    return along > tolerance
        && along < length - tolerance
        && 2 * Faces.area(mesh.xyz(), a, b, v) <= tolerance * length;
  }

  /** Splits a triangle with corners on its edges, at the middle one of an edge's first. */
  private void face(int parent, int a, int b, int c, int[] ab, int[] bc, int[] ca) {
    if (ab.length == 0 && bc.length == 0 && ca.length == 0) {
      corners.add(a);
      corners.add(b);
      corners.add(c);
      parents.add(parent);
      return;
    }
    if (ab.length == 0) {
      // Turned until the first edge has a corner on it.
      face(parent, b, c, a, bc, ca, ab);
      return;
    }
    splits++;
    int middle = ab.length / 2;
    int v = ab[middle];
    int[] before = Arrays.copyOf(ab, middle);
    int[] after = Arrays.copyOfRange(ab, middle + 1, ab.length);
    face(parent, a, v, c, before, NONE, ca);
    face(parent, v, b, c, after, bc, NONE);
  }
}
