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
 * for regular local mesh refinement", 1983).
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
    private final int[] middle = new int[3];

    Pass(Mesh mesh) {
      this.mesh = mesh;
      parent = new int[mesh.faceCount()];
      Arrays.setAll(parent, f -> f);
    }

    /** Halves each long edge once; says whether there was one. */
    boolean run(double maxEdgeMm, IntPredicate faces) {
      int[] corner = mesh.corner();
      EdgeTable middles = markLongEdges(maxEdgeMm, faces);
      if (middles.size() == 0) {
        return false;
      }
      int vertices = mesh.vertexCount();
      double[] xyz = Arrays.copyOf(mesh.xyz(), 3 * (vertices + middles.size()));
      IntList pieces = new IntList(corner.length + 9 * middles.size());
      IntList pieceParent = new IntList(parent.length + 3 * middles.size());
      for (int f = 0; f < parent.length; f++) {
        for (int k = 0; k < 3; k++) {
          middle[k] = middles.find(corner[3 * f + k], corner[3 * f + (k + 1) % 3]);
        }
        int before = pieces.size();
        split(corner[3 * f], corner[3 * f + 1], corner[3 * f + 2], pieces);
        for (int i = before; i < pieces.size(); i += 3) {
          pieceParent.add(parent[f]);
        }
      }
      place(middles, vertices, xyz);
      mesh = Mesh.of(xyz, pieces.toArray());
      parent = pieceParent.toArray();
      return true;
    }

    /** Numbers the middles of long edges, in the order in which faces meet them. */
    private EdgeTable markLongEdges(double maxEdgeMm, IntPredicate faces) {
      int[] corner = mesh.corner();
      EdgeTable middles = new EdgeTable(64);
      int next = mesh.vertexCount();
      for (int f = 0; f < parent.length; f++) {
        if (faces.test(parent[f])) {
          for (int k = 0; k < 3; k++) {
            int a = corner[3 * f + k];
            int b = corner[3 * f + (k + 1) % 3];
            if (a != b && Faces.length(mesh, a, b) > maxEdgeMm && middles.put(a, b, next)) {
              next++;
            }
          }
        }
      }
      return middles;
    }

    private void place(EdgeTable middles, int vertices, double[] xyz) {
      int count = middles.size();
      if (added + count > from.length) {
        from = Arrays.copyOf(from, Math.max(2 * from.length, added + count));
        to = Arrays.copyOf(to, from.length);
      }
      int base = added;
      middles.forEach(
          (a, b, v) -> {
            for (int axis = 0; axis < 3; axis++) {
              xyz[3 * v + axis] = (xyz[3 * a + axis] + xyz[3 * b + axis]) / 2;
            }
            from[base + v - vertices] = a;
            to[base + v - vertices] = b;
          });
      added += count;
    }

    /** Adds the pieces of face (a, b, c), whose edges ab, bc, ca have the given middles or -1. */
    private void split(int a, int b, int c, IntList out) {
      int ab = middle[0];
      int bc = middle[1];
      int ca = middle[2];
      int long3 = (ab >= 0 ? 1 : 0) + (bc >= 0 ? 1 : 0) + (ca >= 0 ? 1 : 0);
      if (long3 == 0) {
        out.add3(a, b, c);
      } else if (long3 == 3) {
        out.add3(a, ab, ca);
        out.add3(ab, b, bc);
        out.add3(ca, bc, c);
        out.add3(ab, bc, ca);
      } else if (long3 == 1) {
        if (ab >= 0) {
          halve(a, b, c, ab, out);
        } else if (bc >= 0) {
          halve(b, c, a, bc, out);
        } else {
          halve(c, a, b, ca, out);
        }
      } else if (ab < 0) {
        third(a, b, c, bc, ca, out);
      } else if (bc < 0) {
        third(b, c, a, ca, ab, out);
      } else {
        third(c, a, b, ab, bc, out);
      }
    }

    private static void halve(int a, int b, int c, int ab, IntList out) {
      out.add3(a, ab, c);
      out.add3(ab, b, c);
    }

    /** Face (a, b, c) with the middles of bc and ca; the quad is halved on its shorter diagonal. */
    private void third(int a, int b, int c, int bc, int ca, IntList out) {
      out.add3(ca, bc, c);
      // The middles are not placed yet: compare the diagonals a–bc and b–ca by the corners.
      if (diagonal2(a, b, c) <= diagonal2(b, a, c)) {
        out.add3(a, b, bc);
        out.add3(a, bc, ca);
      } else {
        out.add3(a, b, ca);
        out.add3(b, bc, ca);
      }
    }

    /** Squared length from a to the middle of b and c. */
    private double diagonal2(int a, int b, int c) {
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double[] p = mesh.xyz();
        double d = (p[3 * b + axis] + p[3 * c + axis]) / 2 - p[3 * a + axis];
        sum += d * d;
      }
      return sum;
    }
  }
}
