package org.seamwright.mesh;

import java.util.Optional;
import java.util.function.IntConsumer;

/**
 * A tree of boxes over the faces of a mesh, for nearest-point, ray and box queries.
 *
 * <p>Built by splitting at the median centroid along the longest side: O(n log n). Coordinates are
 * double throughout, so the tree works at any scale and offset. Queries share no state and may run
 * on several threads.
 *
 * <p>Closest point of a triangle: C. Ericson, "Real-Time Collision Detection", 2005, section 5.1.5.
 * Rays don't slip between faces that share an edge: {@link Ray}.
 */
public final class FaceTree {
  private static final int LEAF = 4;

  private final Mesh mesh;
  private final int[] order;

  /** Six numbers per node: lower then upper corner; node 0 is the root. */
  private final double[] box;

  /** First child of a node (the second follows it), or -1 - first entry of a leaf in the order. */
  private final int[] child;

  /** Number of faces of a leaf; 0 for inner nodes. */
  private final int[] size;

  private int nodes;

  /**
   * The face a ray meets first.
   *
   * @param point where, on the mesh
   * @param distance along the ray, in lengths of its direction vector
   */
  public record Hit(SurfacePoint point, double distance) {}

  private FaceTree(Mesh mesh) {
    this.mesh = mesh;
    int faces = mesh.faceCount();
    int capacity = Math.max(1, 2 * faces);
    order = new int[faces];
    box = new double[6 * capacity];
    child = new int[capacity];
    size = new int[capacity];
  }

  /** Builds the tree of a mesh. */
  public static FaceTree of(Mesh mesh) {
    FaceTree tree = new FaceTree(mesh);
    int faces = mesh.faceCount();
    double[] centre = new double[3 * faces];
    double[] c = new double[3];
    for (int f = 0; f < faces; f++) {
      tree.order[f] = f;
      Faces.centroid(mesh, f, c);
      System.arraycopy(c, 0, centre, 3 * f, 3);
    }
    tree.nodes = 1;
    if (faces > 0) {
      tree.build(0, 0, faces, centre);
    }
    return tree;
  }

  private void build(int node, int from, int to, double[] centre) {
    double[] lo = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double[] hi = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    double[] clo = lo.clone();
    double[] chi = hi.clone();
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    for (int i = from; i < to; i++) {
      int f = order[i];
      for (int axis = 0; axis < 3; axis++) {
        for (int k = 0; k < 3; k++) {
          double value = p[3 * corner[3 * f + k] + axis];
          lo[axis] = Math.min(lo[axis], value);
          hi[axis] = Math.max(hi[axis], value);
        }
        clo[axis] = Math.min(clo[axis], centre[3 * f + axis]);
        chi[axis] = Math.max(chi[axis], centre[3 * f + axis]);
      }
    }
    System.arraycopy(lo, 0, box, 6 * node, 3);
    System.arraycopy(hi, 0, box, 6 * node + 3, 3);
    int axis = 0;
    for (int i = 1; i < 3; i++) {
      if (chi[i] - clo[i] > chi[axis] - clo[axis]) {
        axis = i;
      }
    }
    if (to - from <= LEAF || !(chi[axis] > clo[axis])) {
      child[node] = -1 - from;
      size[node] = to - from;
      return;
    }
    int middle = (from + to) >>> 1;
    select(from, to, middle, axis, centre);
    int first = nodes;
    nodes += 2;
    child[node] = first;
    build(first, from, middle, centre);
    build(first + 1, middle, to, centre);
  }

  /** Puts the entry of rank {@code middle} in its place, smaller ones before it (quickselect). */
  private void select(int from, int to, int middle, int axis, double[] centre) {
    int left = from;
    int right = to - 1;
    while (left < right) {
      double pivot = centre[3 * order[(left + right) >>> 1] + axis];
      int i = left;
      int j = right;
      while (i <= j) {
        while (centre[3 * order[i] + axis] < pivot) {
          i++;
        }
        while (centre[3 * order[j] + axis] > pivot) {
          j--;
        }
        if (i <= j) {
          int swap = order[i];
          order[i++] = order[j];
          order[j--] = swap;
        }
      }
      if (middle <= j) {
        right = j;
      } else if (middle >= i) {
        left = i;
      } else {
        return;
      }
    }
  }

  /**
   * The point of the surface closest to a place in space.
   *
   * @param x place, mm
   * @param y place, mm
   * @param z place, mm
   * @return empty only for a mesh without faces
   */
  public Optional<SurfacePoint> nearest(double x, double y, double z) {
    if (mesh.faceCount() == 0) {
      return Optional.empty();
    }
    double[] best = {Double.POSITIVE_INFINITY, 0, 0, 0};
    double[] trial = new double[4];
    int bestFace = -1;
    int[] stack = new int[128];
    int top = 0;
    stack[top++] = 0;
    while (top > 0) {
      int node = stack[--top];
      if (boxDistance2(node, x, y, z) >= best[0]) {
        continue;
      }
      if (child[node] < 0) {
        int begin = -1 - child[node];
        for (int i = begin; i < begin + size[node]; i++) {
          Closest.onFace(mesh, order[i], x, y, z, trial);
          if (trial[0] < best[0]) {
            System.arraycopy(trial, 0, best, 0, 4);
            bestFace = order[i];
          }
        }
      } else {
        int a = child[node];
        boolean firstNearer = boxDistance2(a, x, y, z) <= boxDistance2(a + 1, x, y, z);
        stack[top++] = firstNearer ? a + 1 : a;
        stack[top++] = firstNearer ? a : a + 1;
      }
    }
    return Optional.of(new SurfacePoint(bestFace, best[1], best[2], best[3]));
  }

  private double boxDistance2(int node, double x, double y, double z) {
    int b = 6 * node;
    double dx = Math.max(0, Math.max(box[b] - x, x - box[b + 3]));
    double dy = Math.max(0, Math.max(box[b + 1] - y, y - box[b + 4]));
    double dz = Math.max(0, Math.max(box[b + 2] - z, z - box[b + 5]));
    return dx * dx + dy * dy + dz * dz;
  }

  /**
   * The first face that a ray meets, from either side.
   *
   * @param ox origin, mm
   * @param oy origin, mm
   * @param oz origin, mm
   * @param dx direction, of any length but zero
   * @param dy direction
   * @param dz direction
   */
  public Optional<Hit> firstHit(double ox, double oy, double oz, double dx, double dy, double dz) {
    double[] best = {Double.POSITIVE_INFINITY, 0, 0};
    double[] trial = new double[3];
    int bestFace = -1;
    Ray ray = new Ray(ox, oy, oz, dx, dy, dz);
    double ix = 1 / dx;
    double iy = 1 / dy;
    double iz = 1 / dz;
    int[] stack = new int[128];
    int top = 0;
    if (mesh.faceCount() > 0) {
      stack[top++] = 0;
    }
    while (top > 0) {
      int node = stack[--top];
      if (entry(node, ox, oy, oz, ix, iy, iz) >= best[0]) {
        continue;
      }
      if (child[node] < 0) {
        int begin = -1 - child[node];
        for (int i = begin; i < begin + size[node]; i++) {
          if (ray.meets(mesh, order[i], trial) && trial[0] < best[0]) {
            System.arraycopy(trial, 0, best, 0, 3);
            bestFace = order[i];
          }
        }
      } else {
        int a = child[node];
        double ta = entry(a, ox, oy, oz, ix, iy, iz);
        double tb = entry(a + 1, ox, oy, oz, ix, iy, iz);
        stack[top++] = ta <= tb ? a + 1 : a;
        stack[top++] = ta <= tb ? a : a + 1;
      }
    }
    return bestFace < 0
        ? Optional.empty()
        : Optional.of(
            new Hit(new SurfacePoint(bestFace, 1 - best[1] - best[2], best[1], best[2]), best[0]));
  }

  /** Where the ray enters a box, in lengths of its direction; infinite if it misses. */
  private double entry(int node, double ox, double oy, double oz, double ix, double iy, double iz) {
    int b = 6 * node;
    double near = 0;
    double far = Double.POSITIVE_INFINITY;
    for (int axis = 0; axis < 3; axis++) {
      double o = axis == 0 ? ox : axis == 1 ? oy : oz;
      double inverse = axis == 0 ? ix : axis == 1 ? iy : iz;
      double lo = box[b + axis] - o;
      double hi = box[b + 3 + axis] - o;
      if (Double.isInfinite(inverse)) {
        if (lo > 0 || hi < 0) {
          return Double.POSITIVE_INFINITY;
        }
        continue;
      }
      double t1 = lo * inverse;
      double t2 = hi * inverse;
      // One rounding of slack, so that a face lying in the side of its box is not missed.
      double slack = 4 * Math.ulp(Math.max(Math.abs(t1), Math.abs(t2)));
      near = Math.max(near, Math.min(t1, t2) - slack);
      far = Math.min(far, Math.max(t1, t2) + slack);
    }
    return near <= far ? near : Double.POSITIVE_INFINITY;
  }

  /**
   * Calls for each face whose own box meets a box.
   *
   * @param bounds the box, mm
   * @param action receives face numbers, in no particular order
   */
  public void inBox(Bounds bounds, IntConsumer action) {
    int[] stack = new int[128];
    int top = 0;
    if (mesh.faceCount() > 0) {
      stack[top++] = 0;
    }
    while (top > 0) {
      int node = stack[--top];
      int b = 6 * node;
      if (box[b] > bounds.maxX()
          || box[b + 3] < bounds.minX()
          || box[b + 1] > bounds.maxY()
          || box[b + 4] < bounds.minY()
          || box[b + 2] > bounds.maxZ()
          || box[b + 5] < bounds.minZ()) {
        continue;
      }
      if (child[node] < 0) {
        int begin = -1 - child[node];
        for (int i = begin; i < begin + size[node]; i++) {
          if (Closest.faceBoxMeets(mesh, order[i], bounds)) {
            action.accept(order[i]);
          }
        }
      } else {
        stack[top++] = child[node] + 1;
        stack[top++] = child[node];
      }
    }
  }
}
