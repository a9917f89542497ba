package org.seamwright.geodesic;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Splits long edges at their middle until none is longer than asked, so that a value kept per
 * vertex (a distance, a score) follows a curved line even on a model whose flat faces are a few
 * huge triangles.
 *
 * <p>The surface stays the same to the last rounding: every new vertex is the middle of an edge.
 * Faces next to a split edge are split too, so neighbours stay welded, on any soup. A face with
 * three long edges is cut in four alike, with two in three, with one in two (the regular and
 * irregular refinements of R. E. Bank and others, "Some refinement algorithms and data structures
 * for regular local mesh refinement", 1983). A needle, whose third edge is short enough, is halved
 * to the end at once and gets rungs like a ladder; halving it step by step would give ever thinner
 * needles.
 *
 * <p>Cost: O(n) per halving; the result has about (edge length ÷ asked length)² times the faces.
 */
public final class Refinement {
  private Refinement() {}

  /**
   * Refines part of a mesh.
   *
   * @param mesh any triangle soup
   * @param maxEdgeMm longest edge allowed in the chosen faces, mm
   * @param faces which faces to refine, by number in {@code mesh}
   */
  public static CutMesh edges(Mesh mesh, double maxEdgeMm, IntPredicate faces) {
    if (!(maxEdgeMm > 0)) {
      throw new IllegalArgumentException("Longest edge must be above 0 mm: " + maxEdgeMm);
    }
    Pass state = new Pass(mesh);
    boolean again = true;
    while (again) {
      again = state.run(maxEdgeMm, faces);
    }
    return new CutMesh(
        state.mesh,
        state.parent,
        mesh.vertexCount(),
        Arrays.copyOf(state.from, state.added),
        Arrays.copyOf(state.to, state.added),
        halves(state.added));
  }

  private static double[] halves(int count) {
    double[] at = new double[count];
    Arrays.fill(at, 0.5);
    return at;
  }

  /** The mesh so far and how it came about. */
  private static final class Pass {
    Mesh mesh;
    int[] parent;
    int[] from = new int[16];
    int[] to = new int[16];
    int added;
    private EdgeTable middles;
    private double[] xyz;

    /** Vertices numbered so far in this pass. */
    private int vertices;

    Pass(Mesh mesh) {
      this.mesh = mesh;
      parent = new int[mesh.faceCount()];
      Arrays.setAll(parent, f -> f);
    }

    /** Halves long edges; says whether there was one. */
    boolean run(double maxEdgeMm, IntPredicate faces) {
      int[] corner = mesh.corner();
      middles = new EdgeTable(64);
      vertices = mesh.vertexCount();
      for (int f = 0; f < parent.length; f++) {
        if (faces.test(parent[f])) {
          markLongEdges(f, maxEdgeMm);
        }
      }
      if (middles.size() == 0) {
        return false;
      }
      xyz = Arrays.copyOf(mesh.xyz(), 3 * (mesh.vertexCount() + middles.size()));
      place();
      IntList pieces = new IntList(corner.length + 9 * middles.size());
      IntList pieceParent = new IntList(parent.length + 3 * middles.size());
      for (int f = 0; f < parent.length; f++) {
        int before = pieces.size();
        split(corner[3 * f], corner[3 * f + 1], corner[3 * f + 2], pieces);
        for (int i = before; i < pieces.size(); i += 3) {
          pieceParent.add(parent[f]);
        }
      }
      mesh = Mesh.of(xyz, pieces.toArray());
      parent = pieceParent.toArray();
      return true;
    }

    /** Numbers the middles of a face's long edges; those of a needle down to the last halving. */
    private void markLongEdges(int f, double maxEdgeMm) {
      int[] corner = mesh.corner();
      int longEdges = 0;
      for (int k = 0; k < 3; k++) {
        longEdges += length(f, k) > maxEdgeMm ? 1 : 0;
      }
      for (int k = 0; k < 3; k++) {
        double length = length(f, k);
        if (length > maxEdgeMm) {
          double least = longEdges == 2 ? maxEdgeMm : length / 2;
          halve(corner[3 * f + k], corner[3 * f + (k + 1) % 3], length, least);
        }
      }
    }

    private double length(int f, int k) {
      int[] corner = mesh.corner();
      return Faces.length(mesh, corner[3 * f + k], corner[3 * f + (k + 1) % 3]);
    }

    /**
     * Numbers the middles of an edge and its halves, and so on while they are longer than asked.
     */
    private void halve(int a, int b, double length, double maxEdgeMm) {
      if (a == b || !(length > maxEdgeMm)) {
        return;
      }
      if (middles.put(a, b, vertices)) {
        vertices++;
      }
      int middle = middles.find(a, b);
      halve(a, middle, length / 2, maxEdgeMm);
      halve(middle, b, length / 2, maxEdgeMm);
    }

    private void place() {
      int count = middles.size();
      if (added + count > from.length) {
        from = Arrays.copyOf(from, Math.max(2 * from.length, added + count));
        to = Arrays.copyOf(to, from.length);
      }
      int base = added - mesh.vertexCount();
      // In the order in which they were numbered: the ends of halves come before their middles.
      middles.forEach(
          (a, b, v) -> {
            for (int axis = 0; axis < 3; axis++) {
              xyz[3 * v + axis] = (xyz[3 * a + axis] + xyz[3 * b + axis]) / 2;
            }
            from[base + v] = a;
            to[base + v] = b;
          });
      added += count;
    }

    /** Adds the pieces of face (a, b, c), split at the middles of its edges and their halves. */
    private void split(int a, int b, int c, IntList out) {
      int ab = middles.find(a, b);
      int bc = middles.find(b, c);
      int ca = middles.find(c, a);
      int long3 = (ab >= 0 ? 1 : 0) + (bc >= 0 ? 1 : 0) + (ca >= 0 ? 1 : 0);
      if (long3 == 0) {
        out.add3(a, b, c);
      } else if (long3 == 3) {
        split(a, ab, ca, out);
        split(ab, b, bc, out);
        split(ca, bc, c, out);
        split(ab, bc, ca, out);
      } else if (long3 == 1) {
        if (ab >= 0) {
          halve(a, b, c, ab, out);
        } else if (bc >= 0) {
          halve(b, c, a, bc, out);
        } else {
          halve(c, a, b, ca, out);
        }
      } else if (ab < 0) {
        ladder(a, b, c, out);
      } else if (bc < 0) {
        ladder(b, c, a, out);
      } else {
        ladder(c, a, b, out);
      }
    }

    private void halve(int a, int b, int c, int ab, IntList out) {
      split(a, ab, c, out);
      split(ab, b, c, out);
    }

    /** Face (a, b, c) with points on ca and bc: rungs between the two, the shorter first. */
    private void ladder(int a, int b, int c, IntList out) {
      IntList left = new IntList(16);
      IntList right = new IntList(16);
      left.add(a);
      points(a, c, left);
      right.add(b);
      points(b, c, right);
      int i = 0;
      int j = 0;
      // Both sides end in c, which closes the last rung.
      while (i + 1 < left.size() - 1 || j + 1 < right.size() - 1) {
        boolean leftEnds = i + 1 == left.size() - 1;
        boolean rightEnds = j + 1 == right.size() - 1;
        if (rightEnds
            || (!leftEnds
                && distance2(left.get(i + 1), right.get(j))
                    <= distance2(left.get(i), right.get(j + 1)))) {
          out.add3(left.get(i), right.get(j), left.get(i + 1));
          i++;
        } else {
          out.add3(left.get(i), right.get(j), right.get(j + 1));
          j++;
        }
      }
      out.add3(left.get(i), right.get(j), c);
    }

    /** Adds the points on the way from a to b, and b. */
    private void points(int a, int b, IntList out) {
      int middle = middles.find(a, b);
      if (middle >= 0) {
        points(a, middle, out);
        points(middle, b, out);
      } else {
        out.add(b);
      }
    }

    private double distance2(int a, int b) {
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = xyz[3 * a + axis] - xyz[3 * b + axis];
        sum += d * d;
      }
      return sum;
    }
  }
}
