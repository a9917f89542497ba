package org.seamwright.mend;

import java.util.Arrays;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Connected parts taken apart where bodies only touch: two boxes written side by side with common
 * corners have edges of four faces between them, and are one part, but two bodies.
 *
 * <p>The faces around such an edge are sorted by angle. With outsides turned outwards, each second
 * wedge between them is full; the two faces of a full wedge belong to one body. Faces at the same
 * angle, as in a contact, are ordered so that the wedge before them ends first. A part is taken
 * apart only if all its edges fit this and the bodies are closed; else it stays whole. O(n), and b
 * log b for b half-edges on edges of more than two faces.
 *
 * <p>Source: the pairing is that of radial edges, K. Weiler, "Edge-based data structures for solid
 * modeling in curved-surface environments", IEEE CG&A 5(1), 1985.
 */
final class Shells {
  /** Faces nearer than this about an edge, in radians, lie on each other: far above rounding. */
  private static final double SAME_ANGLE = 1e-7;

  private final Mesh mesh;
  private final int[] root;
  private final boolean[] fits;
  private final Parts parts;

  private Shells(Mesh mesh, Parts parts) {
    this.mesh = mesh;
    this.parts = parts;
    this.root = new int[mesh.faceCount()];
    Arrays.setAll(root, f -> f);
    this.fits = new boolean[parts.count()];
    Arrays.fill(fits, true);
  }

  /** Parts of a mesh, those that are bodies which only touch taken apart. */
  static Parts of(Mesh mesh, Topology topology) {
    Parts parts = Parts.of(mesh, topology);
    return topology.branchingEdges() == 0 ? parts : new Shells(mesh, parts).apart(topology);
  }

  private Parts apart(Topology topology) {
    EdgeRings rings = EdgeRings.of(mesh, topology);
    boolean[] done = new boolean[mesh.corner().length];
    for (int h = 0; h < done.length; h++) {
      int twin = topology.twin(h);
      if (twin > h) {
        join(h / 3, twin / 3);
        fits[parts.of()[h / 3]] &= mesh.corner()[h] != mesh.corner()[twin];
      } else if (twin == Topology.OPEN) {
        fits[parts.of()[h / 3]] = false;
      } else if (twin == Topology.BRANCHING && !done[h]) {
        fits[parts.of()[h / 3]] &= pair(ring(rings, h, done));
      }
    }
    return numbered();
  }

  private static int[] ring(EdgeRings rings, int first, boolean[] done) {
    Ints ring = new Ints(4);
    int h = first;
    do {
      done[h] = true;
      ring.add(h);
      h = rings.next(h);
    } while (h != first);
    return ring.toArray();
  }

  /** Joins the two faces of each full wedge around an edge; false if the wedges don't close. */
  private boolean pair(int[] ring) {
    int low = Math.min(mesh.corner()[ring[0]], mesh.corner()[Topology.next(ring[0])]);
    double[] angle = angles(ring, low);
    // A half-edge that runs up ends a full wedge at its angle, one that runs down begins one.
    boolean[] ends = new boolean[ring.length];
    Integer[] order = new Integer[ring.length];
    for (int i = 0; i < ring.length; i++) {
      ends[i] = mesh.corner()[ring[i]] == low;
      order[i] = i;
    }
    Arrays.sort(order, (i, j) -> Double.compare(angle[i], angle[j]));
    sortSame(order, angle, ends);
    int open = -1;
    int pairs = 0;
    for (int step = 0; step < 2 * order.length && 2 * pairs < order.length; step++) {
      int i = order[step % order.length];
      if (!ends[i]) {
        if (open >= 0) {
          return false;
        }
        open = i;
      } else if (open >= 0) {
        join(ring[open] / 3, ring[i] / 3);
        pairs++;
        open = -1;
      } else if (step > 0) {
        // The first face may end a wedge that the last one begins; no other may.
        return false;
      }
    }
    return 2 * pairs == order.length;
  }

  /** Among faces at the same angle those that end a wedge come first. */
  private static void sortSame(Integer[] order, double[] angle, boolean[] ends) {
    int begin = 0;
    for (int k = 1; k <= order.length; k++) {
      if (k == order.length || angle[order[k]] - angle[order[k - 1]] > SAME_ANGLE) {
        Arrays.sort(order, begin, k, (i, j) -> Boolean.compare(ends[j], ends[i]));
        begin = k;
      }
    }
  }

  /** Angle of each face about the edge, from the first face on, anticlockwise seen from its top. */
  private double[] angles(int[] ring, int low) {
    int a = mesh.corner()[ring[0]];
    int b = mesh.corner()[Topology.next(ring[0])];
    int high = a == low ? b : a;
    double[] axis = unit(difference(high, low));
    double[] first = null;
    double[] second = null;
    double[] angle = new double[ring.length];
    for (int i = 0; i < ring.length; i++) {
      double[] d = difference(mesh.corner()[Topology.prev(ring[i])], low);
      double along = dot(d, axis);
      for (int k = 0; k < 3; k++) {
        d[k] -= along * axis[k];
      }
      if (i == 0) {
        first = unit(d);
        second = cross(axis, first);
      }
      double turn = Math.atan2(dot(d, second), dot(d, first));
      angle[i] = turn < -SAME_ANGLE ? turn + 2 * Math.PI : turn;
    }
    return angle;
  }

  private double[] difference(int v, int from) {
    return new double[] {
      mesh.x(v) - mesh.x(from), mesh.y(v) - mesh.y(from), mesh.z(v) - mesh.z(from)
    };
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static double[] unit(double[] v) {
    double length = Math.sqrt(dot(v, v));
    return new double[] {v[0] / length, v[1] / length, v[2] / length};
  }

  private void join(int f, int g) {
    int a = find(f);
    int b = find(g);
    root[Math.max(a, b)] = Math.min(a, b);
  }

  private int find(int f) {
    int top = f;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  /** Bodies of parts that fit, and the other parts, numbered by their first face. */
  private Parts numbered() {
    int[] of = new int[root.length];
    int[] ofBody = new int[root.length];
    int[] ofPart = new int[parts.count()];
    Arrays.fill(ofBody, -1);
    Arrays.fill(ofPart, -1);
    int count = 0;
    for (int f = 0; f < of.length; f++) {
      int part = parts.of()[f];
      int body = find(f);
      int known = fits[part] ? ofBody[body] : ofPart[part];
      of[f] = known < 0 ? count++ : known;
      ofBody[body] = of[f];
      ofPart[part] = of[f];
    }
    return new Parts(count, of);
  }
}
