package org.seamwright.flatten;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.seamwright.mesh.Mesh;

/**
 * A layout carried over to faces that were split since, at the piece's edge by the cut of a
 * neighbour: new vertices go where they lie in the faces' images, so nothing moves.
 */
final class CarriedLayout {
  /** A corner this near a side, as a share of the face, lies on it: cuts go from side to side. */
  private static final double ON_SIDE = 1e-5;

  private final Mesh after;
  private final Splitter.Laid laid;
  private final Layout layout;

  /** New vertices by the layout's edge they lie on and their number in the patch. */
  private final Map<Key, Integer> made = new HashMap<>();

  private double[] xyz;
  private double[] uv;
  private int[] parent;
  private int vertices;

  private record Key(int low, int high, int vertex) {}

  private CarriedLayout(Mesh after, Splitter.Laid laid) {
    this.after = after;
    this.laid = laid;
    this.layout = laid.layout().orElseThrow();
    this.vertices = layout.mesh().vertexCount();
    this.xyz = layout.mesh().xyz().clone();
    this.uv = layout.uv().clone();
    this.parent = layout.parent().clone();
  }

  /**
   * Carries a layout over.
   *
   * @param after the patch now
   * @param laid the piece as it was laid out
   * @param faces the piece's faces now, ascending
   * @param ancestor one entry per face of the patch now: the face it was when it was laid out
   */
  static Layout over(Mesh after, Splitter.Laid laid, int[] faces, int[] ancestor) {
    return new CarriedLayout(after, laid).over(faces, ancestor);
  }

  private Layout over(int[] faces, int[] ancestor) {
    int[] corner = new int[3 * faces.length];
    boolean[] slit = new boolean[corner.length];
    double[] share = new double[9];
    for (int i = 0; i < faces.length; i++) {
      int old = Arrays.binarySearch(laid.faces(), ancestor[faces[i]]);
      for (int k = 0; k < 3; k++) {
        int v = after.corner()[3 * faces[i] + k];
        shares(old, v, share, 3 * k);
        corner[3 * i + k] = vertex(old, v, share, 3 * k);
      }
      for (int k = 0; k < 3; k++) {
        for (int side = 0; side < 3; side++) {
          // The side from corner s to the next lies across from the corner after that.
          int across = (side + 2) % 3;
          slit[3 * i + k] |=
              layout.slit()[3 * old + side]
                  && share[3 * k + across] < ON_SIDE
                  && share[3 * ((k + 1) % 3) + across] < ON_SIDE;
        }
      }
    }
    Mesh mesh = Mesh.of(Arrays.copyOf(xyz, 3 * vertices), corner);
    double[] at = Arrays.copyOf(uv, 2 * vertices);
    return new Layout(mesh, Arrays.copyOf(parent, vertices), at, layout.stretch(), slit);
  }

  /** Barycentric coordinates of a vertex of the patch in a face of the layout. */
  private void shares(int face, int v, double[] into, int from) {
    Mesh mesh = layout.mesh();
    double[] side = new double[9];
    for (int axis = 0; axis < 3; axis++) {
      double origin = mesh.xyz()[3 * mesh.corner()[3 * face] + axis];
      side[axis] = mesh.xyz()[3 * mesh.corner()[3 * face + 1] + axis] - origin;
      side[3 + axis] = mesh.xyz()[3 * mesh.corner()[3 * face + 2] + axis] - origin;
      side[6 + axis] = after.xyz()[3 * v + axis] - origin;
    }
    double aa = dot(side, 0, 0);
    double ab = dot(side, 0, 3);
    double bb = dot(side, 3, 3);
    double ap = dot(side, 0, 6);
    double bp = dot(side, 3, 6);
    double det = aa * bb - ab * ab;
    double second = det > 0 ? (bb * ap - ab * bp) / det : aa > 0 ? ap / aa : 0;
    double third = det > 0 ? (aa * bp - ab * ap) / det : 0;
    into[from] = 1 - second - third;
    into[from + 1] = second;
    into[from + 2] = third;
  }

  private static double dot(double[] v, int a, int b) {
    return v[a] * v[b] + v[a + 1] * v[b + 1] + v[a + 2] * v[b + 2];
  }

  private int vertex(int face, int v, double[] share, int from) {
    int[] c = layout.mesh().corner();
    int least = 0;
    for (int k = 0; k < 3; k++) {
      if (sameAs(c[3 * face + k], v)) {
        return c[3 * face + k];
      }
      least = share[from + k] < share[from + least] ? k : least;
    }
    int a = c[3 * face + (least + 1) % 3];
    int b = c[3 * face + (least + 2) % 3];
    return made.computeIfAbsent(
        new Key(Math.min(a, b), Math.max(a, b), v), key -> add(face, v, share, from));
  }

  private boolean sameAs(int old, int v) {
    for (int axis = 0; axis < 3; axis++) {
      if (layout.mesh().xyz()[3 * old + axis] != after.xyz()[3 * v + axis]) {
        return false;
      }
    }
    return true;
  }

  private int add(int face, int v, double[] share, int from) {
    if (3 * vertices == xyz.length) {
      int room = vertices + (vertices >> 2) + 8;
      xyz = Arrays.copyOf(xyz, 3 * room);
      uv = Arrays.copyOf(uv, 2 * room);
      parent = Arrays.copyOf(parent, room);
    }
    System.arraycopy(after.xyz(), 3 * v, xyz, 3 * vertices, 3);
    for (int k = 0; k < 3; k++) {
      int old = layout.mesh().corner()[3 * face + k];
      for (int axis = 0; axis < 2; axis++) {
        uv[2 * vertices + axis] += share[from + k] * layout.uv()[2 * old + axis];
      }
    }
    parent[vertices] = -1;
    return vertices++;
  }
}
