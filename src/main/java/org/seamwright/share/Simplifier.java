package org.seamwright.share;

import java.util.Arrays;
import java.util.PriorityQueue;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Makes a mesh light for display: edges are collapsed in the order of the error that it causes
 * (Garland and Heckbert 1997), until few enough faces are left or the next collapse would go
 * further off than allowed, on the mean of the planes that a vertex stands for.
 *
 * <p>Lines where regions meet, and open edges, only give up their own vertices, and vertices where
 * such lines meet stay. A collapse that would fold a face over or join sheets (the link condition
 * of Dey et al. 1999) is left out. Lengths are taken relative to the middle of the piece, so that a
 * piece far from the origin comes out the same. O(n log n); some 400 bytes a face while it runs.
 */
final class Simplifier {
  /** How much dearer it is to leave a line between regions than to leave the surface. */
  private static final double LINE_WEIGHT = 10;

  /** A face may turn by at most 78 degrees. */
  private static final double LEAST_COSINE = 0.2;

  /** Where nothing is lost, as on flat ground, the shortest edges go first: faces stay even. */
  private static final double BY_LENGTH = 1e-7;

  /** A vertex that took in all of a flat face would have to be looked round again and again. */
  private static final int MOST_FACES_AROUND = 40;

  private static final int[] NONE = {};

  private final Mesh mesh;
  private final int[] region;
  private final double largest2;
  private final double[] middle = new double[3];
  private final double[] p;
  private final int[] corner;
  private final int[][] faces;
  private final boolean[] gone;
  private final boolean[] fixed;
  private final boolean[] onLine;
  private final int[] stamp;
  private final Quadrics quadrics;
  private final PriorityQueue<Collapse> queue = new PriorityQueue<>();
  private int left;

  /** An edge and the place it would shrink to; void once either end has changed. */
  private record Collapse(double cost, int a, int b, int stampA, int stampB, double[] place)
      implements Comparable<Collapse> {
    @Override
    public int compareTo(Collapse other) {
      int byError = Double.compare(cost, other.cost);
      int byFirst = byError != 0 ? byError : Integer.compare(a, other.a);
      return byFirst != 0 ? byFirst : Integer.compare(b, other.b);
    }

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  /**
   * What is left.
   *
   * @param mesh the lighter mesh
   * @param region one entry per face
   */
  record Light(Mesh mesh, int[] region) {}

  private Simplifier(Mesh mesh, int[] region, double largestMm) {
    this.mesh = mesh;
    this.region = region;
    this.largest2 = largestMm * largestMm;
    this.left = mesh.faceCount();
    p = mesh.xyz().clone();
    centre();
    corner = mesh.corner().clone();
    gone = new boolean[mesh.faceCount()];
    int vertices = mesh.vertexCount();
    fixed = new boolean[vertices];
    onLine = new boolean[vertices];
    stamp = new int[vertices];
    quadrics = new Quadrics(vertices);
    faces = facesOfVertices();
    planes();
    lines();
  }

  /**
   * Simplifies.
   *
   * @param region one entry per face; lines between regions are kept
   * @param target number of faces to come down to
   * @param largestMm root mean square distance allowed to the planes that a vertex stands for, mm
   */
  static Light of(Mesh mesh, int[] region, int target, double largestMm) {
    if (mesh.faceCount() <= target) {
      return new Light(mesh, region);
    }
    Simplifier simplifier = new Simplifier(mesh, region, largestMm);
    simplifier.run(target);
    return simplifier.light();
  }

  private void centre() {
    var bounds = mesh.bounds();
    middle[0] = (bounds.minX() + bounds.maxX()) / 2;
    middle[1] = (bounds.minY() + bounds.maxY()) / 2;
    middle[2] = (bounds.minZ() + bounds.maxZ()) / 2;
    for (int i = 0; i < p.length; i++) {
      p[i] -= middle[i % 3];
    }
  }

  private int[][] facesOfVertices() {
    int[] count = new int[mesh.vertexCount()];
    for (int v : corner) {
      count[v]++;
    }
    int[][] of = new int[count.length][];
    for (int v = 0; v < of.length; v++) {
      of[v] = count[v] == 0 ? NONE : new int[count[v]];
    }
    Arrays.fill(count, 0);
    for (int h = 0; h < corner.length; h++) {
      of[corner[h]][count[corner[h]]++] = h / 3;
    }
    return of;
  }

  private void planes() {
    double[] n = new double[3];
    for (int f = 0; f < gone.length; f++) {
      if (unitNormal(f, n)) {
        int a = 3 * corner[3 * f];
        double d = -(n[0] * p[a] + n[1] * p[a + 1] + n[2] * p[a + 2]);
        for (int k = 0; k < 3; k++) {
          quadrics.add(corner[3 * f + k], n[0], n[1], n[2], d, 1);
        }
      }
    }
  }

  /** Edges on lines get a plane upright on their face; where lines meet or end nothing moves. */
  private void lines() {
    int[] ring = EdgeRings.of(mesh, Topology.of(mesh)).toArray();
    byte[] meeting = new byte[fixed.length];
    double[] n = new double[3];
    for (int h = 0; h < corner.length; h++) {
      int twin = ring[h];
      boolean open = twin == h;
      boolean simple = !open && ring[twin] == h;
      boolean line = !simple || region[h / 3] != region[twin / 3];
      int a = corner[h];
      int b = corner[Topology.next(h)];
      if (line && a != b) {
        onLine[a] = true;
        onLine[b] = true;
        if (open || h < twin || !simple) {
          meeting[a] = (byte) Math.min(100, meeting[a] + 1);
          meeting[b] = (byte) Math.min(100, meeting[b] + 1);
        }
        if (!open && !simple) {
          fixed[a] = true;
          fixed[b] = true;
        }
        if (unitNormal(h / 3, n)) {
          upright(a, b, n);
        }
      }
    }
    for (int v = 0; v < fixed.length; v++) {
      fixed[v] |= onLine[v] && meeting[v] != 2;
    }
  }

  private void upright(int a, int b, double[] n) {
    double dx = p[3 * b] - p[3 * a];
    double dy = p[3 * b + 1] - p[3 * a + 1];
    double dz = p[3 * b + 2] - p[3 * a + 2];
    double x = dy * n[2] - dz * n[1];
    double y = dz * n[0] - dx * n[2];
    double z = dx * n[1] - dy * n[0];
    double length = Math.sqrt(x * x + y * y + z * z);
    if (length > 0) {
      x /= length;
      y /= length;
      z /= length;
      double d = -(x * p[3 * a] + y * p[3 * a + 1] + z * p[3 * a + 2]);
      quadrics.add(a, x, y, z, d, LINE_WEIGHT);
      quadrics.add(b, x, y, z, d, LINE_WEIGHT);
    }
  }

  private void run(int target) {
    for (int h = 0; h < corner.length; h++) {
      int a = corner[h];
      int b = corner[Topology.next(h)];
      // Each inner edge is seen from two faces: once is enough; open edges are seen once.
      if (a < b || onLine[a]) {
        offer(a, b);
      }
    }
    while (left > target && !queue.isEmpty()) {
      Collapse next = queue.poll();
      if (stamp[next.a] == next.stampA
          && stamp[next.b] == next.stampB
          && isAllowed(next.a, next.b, next.place)) {
        collapse(next.a, next.b, next.place);
      }
    }
  }

  /** Puts an edge in the queue, unless it may not shrink or would go too far off. */
  private void offer(int u, int v) {
    int a = Math.min(u, v);
    int b = Math.max(u, v);
    if (a == b || (fixed[a] && fixed[b])) {
      return;
    }
    double[] place = place(a, b);
    if (place == null) {
      return;
    }
    double error = quadrics.error(a, b, place[0], place[1], place[2]);
    if (error <= largest2) {
      double dx = p[3 * a] - p[3 * b];
      double dy = p[3 * a + 1] - p[3 * b + 1];
      double dz = p[3 * a + 2] - p[3 * b + 2];
      double cost = error + BY_LENGTH * (dx * dx + dy * dy + dz * dz);
      queue.add(new Collapse(cost, a, b, stamp[a], stamp[b], place));
    }
  }

  private double[] place(int a, int b) {
    double[] atA = {p[3 * a], p[3 * a + 1], p[3 * a + 2]};
    double[] atB = {p[3 * b], p[3 * b + 1], p[3 * b + 2]};
    if (onLine[a] != onLine[b]) {
      // A line takes in what lies beside it and stays where it is.
      return onLine[a] ? atA : atB;
    }
    if (fixed[a] || fixed[b]) {
      return fixed[a] ? atA : atB;
    }
    double[] best = quadrics.best(a, b);
    double reach2 = 4 * distance2(atA, atB);
    if (best != null && distance2(best, atA) < reach2 && distance2(best, atB) < reach2) {
      return best;
    }
    double[] half = {(atA[0] + atB[0]) / 2, (atA[1] + atB[1]) / 2, (atA[2] + atB[2]) / 2};
    double[] least = half;
    for (double[] other : new double[][] {atA, atB}) {
      boolean better =
          quadrics.error(a, b, other[0], other[1], other[2])
              < quadrics.error(a, b, least[0], least[1], least[2]);
      least = better ? other : least;
    }
    return least;
  }

  private static double distance2(double[] u, double[] v) {
    double x = u[0] - v[0];
    double y = u[1] - v[1];
    double z = u[2] - v[2];
    return x * x + y * y + z * z;
  }

  private boolean isAllowed(int a, int b, double[] place) {
    int shared = 0;
    int sameRegion = -1;
    boolean acrossLine = false;
    for (int f : faces[a]) {
      if (has(f, b)) {
        shared++;
        acrossLine |= sameRegion >= 0 && sameRegion != region[f];
        sameRegion = region[f];
      }
    }
    boolean lineEdge = shared == 1 || acrossLine;
    // Two vertices on lines may only join along a line, never across a face between lines.
    if (shared == 0 || shared > 2 || (onLine[a] && onLine[b] && !lineEdge)) {
      return false;
    }
    if (faces[a].length + faces[b].length - 2 * shared > MOST_FACES_AROUND) {
      return false;
    }
    return linkHolds(a, b, shared) && !folds(a, b, place) && !folds(b, a, place);
  }

  private boolean has(int f, int v) {
    return corner[3 * f] == v || corner[3 * f + 1] == v || corner[3 * f + 2] == v;
  }

  /** Neighbours that both ends share are just those of the faces on the edge. */
  private boolean linkHolds(int a, int b, int shared) {
    int[] around = neighbours(a);
    int common = 0;
    for (int v : neighbours(b)) {
      common += Arrays.binarySearch(around, v) >= 0 ? 1 : 0;
    }
    return common == shared;
  }

  private int[] neighbours(int v) {
    int[] around = new int[2 * faces[v].length];
    int count = 0;
    for (int f : faces[v]) {
      for (int k = 0; k < 3; k++) {
        if (corner[3 * f + k] != v) {
          around[count++] = corner[3 * f + k];
        }
      }
    }
    return Arrays.stream(around, 0, count).sorted().distinct().toArray();
  }

  /** Whether a face of one end, which stays, would turn over when that end moves. */
  private boolean folds(int end, int other, double[] place) {
    double[] before = new double[3];
    double[] after = new double[3];
    double x = p[3 * end];
    double y = p[3 * end + 1];
    double z = p[3 * end + 2];
    boolean folds = false;
    for (int f : faces[end]) {
      if (!folds && !has(f, other)) {
        boolean hadArea = unitNormal(f, before);
        set(end, place[0], place[1], place[2]);
        boolean hasArea = unitNormal(f, after);
        set(end, x, y, z);
        double dot = before[0] * after[0] + before[1] * after[1] + before[2] * after[2];
        folds = hadArea && (!hasArea || dot < LEAST_COSINE);
      }
    }
    return folds;
  }

  private void set(int v, double x, double y, double z) {
    p[3 * v] = x;
    p[3 * v + 1] = y;
    p[3 * v + 2] = z;
  }

  /** Makes b part of a. */
  private void collapse(int a, int b, double[] place) {
    set(a, place[0], place[1], place[2]);
    quadrics.join(b, a);
    fixed[a] |= fixed[b];
    onLine[a] |= onLine[b];
    int[] kept = new int[faces[a].length + faces[b].length];
    int count = 0;
    for (int f : faces[a]) {
      if (has(f, b)) {
        gone[f] = true;
        left--;
        drop(f, a, b);
      } else {
        kept[count++] = f;
      }
    }
    for (int f : faces[b]) {
      if (!gone[f]) {
        for (int k = 0; k < 3; k++) {
          corner[3 * f + k] = corner[3 * f + k] == b ? a : corner[3 * f + k];
        }
        kept[count++] = f;
      }
    }
    faces[a] = Arrays.copyOf(kept, count);
    faces[b] = NONE;
    stamp[a]++;
    stamp[b]++;
    for (int v : neighbours(a)) {
      offer(a, v);
    }
  }

  /** Takes a face out of the list of its third vertex. */
  private void drop(int f, int a, int b) {
    for (int k = 0; k < 3; k++) {
      int v = corner[3 * f + k];
      if (v != a && v != b) {
        faces[v] = Arrays.stream(faces[v]).filter(g -> g != f).toArray();
      }
    }
  }

  private boolean unitNormal(int f, double[] into) {
    Faces.areaVector(p, corner[3 * f], corner[3 * f + 1], corner[3 * f + 2], into);
    double length = Math.sqrt(into[0] * into[0] + into[1] * into[1] + into[2] * into[2]);
    for (int axis = 0; axis < 3 && length > 0; axis++) {
      into[axis] /= length;
    }
    return length > 0;
  }

  private Light light() {
    int[] number = new int[faces.length];
    Arrays.fill(number, -1);
    int[] corners = new int[3 * left];
    int[] regions = new int[left];
    double[] xyz = new double[p.length];
    int next = 0;
    int vertices = 0;
    for (int f = 0; f < gone.length; f++) {
      if (!gone[f]) {
        regions[next] = region[f];
        for (int k = 0; k < 3; k++) {
          int v = corner[3 * f + k];
          if (number[v] < 0) {
            for (int axis = 0; axis < 3; axis++) {
              xyz[3 * vertices + axis] = p[3 * v + axis] + middle[axis];
            }
            number[v] = vertices++;
          }
          corners[3 * next + k] = number[v];
        }
        next++;
      }
    }
    return new Light(Mesh.of(Arrays.copyOf(xyz, 3 * vertices), corners), regions);
  }
}
