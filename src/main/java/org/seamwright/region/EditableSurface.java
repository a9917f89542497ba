package org.seamwright.region;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * A triangle surface that can be cut locally: split an edge at a point, split a face at a point.
 *
 * <p>Half-edges of one edge form a ring, {@link #ring}, of one member at a boundary, two inside,
 * three or more where the surface branches; faces turned against each other are no special case. A
 * split splits all faces of the ring, so neighbours stay welded. Old faces and vertices keep their
 * numbers, pieces get numbers at the end, so a split costs the size of the ring and not of the
 * mesh. (The radial-edge structure: K. Weiler, "Edge-Based Data Structures for Solid Modeling in
 * Curved-Surface Environments", 1985, without its vertex and shell rings.)
 *
 * <p>Faces that name a vertex twice have no area and no edges; they are carried along untouched.
 */
final class EditableSurface {
  private static final int LEAST_PER_RANGE = 1 << 14;

  private static final byte MARKED = 1;
  private static final byte DUE = 2;

  private double[] xyz;
  private int[] corner;
  private int[] ring;
  private int[] parent;
  private int[] nextPiece;
  private byte[] treatment;

  /** One entry per half-edge: {@link #MARKED} and {@link #DUE}, the same all round its ring. */
  private byte[] flags;

  private int vertices;
  private int faces;

  /** Starts from a mesh and its {@link EdgeRings}, every face with the same treatment code. */
  EditableSurface(Mesh mesh, int[] ring, byte ground) {
    vertices = mesh.vertexCount();
    faces = mesh.faceCount();
    xyz = mesh.xyz().clone();
    corner = mesh.corner().clone();
    parent = new int[faces];
    nextPiece = new int[faces];
    treatment = new byte[faces];
    for (int f = 0; f < faces; f++) {
      parent[f] = f;
    }
    Arrays.fill(nextPiece, -1);
    Arrays.fill(treatment, ground);
    this.ring = ring.clone();
    flags = new byte[corner.length];
  }

  /** Starts as a copy of another. */
  private EditableSurface(EditableSurface other) {
    xyz = other.xyz.clone();
    corner = other.corner.clone();
    ring = other.ring.clone();
    parent = other.parent.clone();
    nextPiece = other.nextPiece.clone();
    treatment = other.treatment.clone();
    flags = other.flags.clone();
    vertices = other.vertices;
    faces = other.faces;
  }

  EditableSurface copy() {
    return new EditableSurface(this);
  }

  int vertexCount() {
    return vertices;
  }

  int faceCount() {
    return faces;
  }

  /** Start vertex of a half-edge. */
  int from(int h) {
    return corner[h];
  }

  /** End vertex of a half-edge. */
  int to(int h) {
    return corner[Topology.next(h)];
  }

  /** The next half-edge on the same edge; after all of them h again. */
  int ring(int h) {
    return ring[h];
  }

  /** Coordinate of a vertex along an axis, mm. */
  double at(int vertex, int axis) {
    return xyz[3 * vertex + axis];
  }

  /** Coordinates, 3 per vertex, mm; valid until the next split and longer than needed. */
  double[] coordinates() {
    return xyz;
  }

  /** Start vertices of half-edges; valid until the next split and longer than needed. */
  int[] corners() {
    return corner;
  }

  /** The face of the mesh at the start that a face is a piece of. */
  int parent(int face) {
    return parent[face];
  }

  /** Another piece of the same parent, or -1 after the last; the list starts at the parent. */
  int nextPiece(int face) {
    return nextPiece[face];
  }

  /** Marks an edge; its pieces stay marked. */
  void mark(int h) {
    setFlag(h, MARKED);
  }

  /** Whether a half-edge belongs to a marked edge. */
  boolean isMarked(int h) {
    return (flags[h] & MARKED) != 0;
  }

  /** Takes all marks off. */
  void clearMarks() {
    Arrays.fill(flags, (byte) 0);
  }

  /** Says that an edge is to be split; its halves no longer are. */
  void setDue(int h) {
    setFlag(h, DUE);
  }

  /** Whether the edge of a half-edge is to be split. */
  boolean isDue(int h) {
    return (flags[h] & DUE) != 0;
  }

  private void setFlag(int h, byte flag) {
    int member = h;
    do {
      flags[member] |= flag;
      member = ring[member];
    } while (member != h);
  }

  byte treatment(int face) {
    return treatment[face];
  }

  void setTreatment(int face, byte code) {
    treatment[face] = code;
  }

  /** Whether a face names three different vertices, and so has edges. */
  boolean hasEdges(int face) {
    int a = corner[3 * face];
    int b = corner[3 * face + 1];
    int c = corner[3 * face + 2];
    return a != b && b != c && c != a;
  }

  double area(int face) {
    return Faces.area(xyz, corner[3 * face], corner[3 * face + 1], corner[3 * face + 2]);
  }

  /** Distance between two vertices, mm. */
  double distance(int a, int b) {
    double dx = xyz[3 * a] - xyz[3 * b];
    double dy = xyz[3 * a + 1] - xyz[3 * b + 1];
    double dz = xyz[3 * a + 2] - xyz[3 * b + 2];
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** Length of a half-edge, mm. */
  double length(int h) {
    return distance(from(h), to(h));
  }

  /**
   * Whether the pieces of all faces on an edge keep an area, and their side, if it is split.
   *
   * @param h a half-edge of the edge
   * @param share of the way from its start to its end
   */
  boolean splitsSoundly(int h, double share) {
    int a = from(h);
    int b = to(h);
    double[] m = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      m[axis] = xyz[3 * a + axis] + share * (xyz[3 * b + axis] - xyz[3 * a + axis]);
    }
    int member = h;
    do {
      double[] c = new double[3];
      System.arraycopy(xyz, 3 * corner[Topology.prev(member)], c, 0, 3);
      double[] first = areaVector(xyz, 3 * a, m, 0, c);
      double[] second = areaVector(m, 0, xyz, 3 * b, c);
      double dot = first[0] * second[0] + first[1] * second[1] + first[2] * second[2];
      if (!(dot > 0)) {
        return false;
      }
      member = ring[member];
    } while (member != h);
    return true;
  }

  private static double[] areaVector(double[] p, int i, double[] q, int j, double[] c) {
    double ux = p[i] - c[0];
    double uy = p[i + 1] - c[1];
    double uz = p[i + 2] - c[2];
    double vx = q[j] - c[0];
    double vy = q[j + 1] - c[1];
    double vz = q[j + 2] - c[2];
    return new double[] {uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx};
  }

  /**
   * Splits an edge and every face on it.
   *
   * @param h a half-edge of the edge
   * @param share of the way from its start to its end, between 0 and 1
   * @return the new vertex
   */
  int splitEdge(int h, double share) {
    int a = from(h);
    int b = to(h);
    int m = addVertex();
    for (int axis = 0; axis < 3; axis++) {
      double p = xyz[3 * a + axis];
      xyz[3 * m + axis] = p + share * (xyz[3 * b + axis] - p);
    }
    int atA = -1;
    int atB = -1;
    int member = h;
    do {
      int following = ring[member];
      boolean startsAtA = from(member) == a;
      int far = halve(member, m);
      atA = joinRing(atA, startsAtA ? member : far);
      atB = joinRing(atB, startsAtA ? far : member);
      member = following;
    } while (member != h);
    return m;
  }

  /** Splits a face from the vertex m on its half-edge h; gives the half-edge beyond m. */
  private int halve(int h, int m) {
    int face = h / 3;
    int next = Topology.next(h);
    int b = corner[next];
    int c = corner[Topology.prev(h)];
    int piece = addFace(face, m, b, c);
    corner[next] = m;
    flags[h] &= MARKED;
    flags[3 * piece] = flags[h];
    moveFlags(next, 3 * piece + 1);
    replaceInRing(next, 3 * piece + 1);
    ring[next] = 3 * piece + 2;
    ring[3 * piece + 2] = next;
    return 3 * piece;
  }

  /**
   * Splits a face into three.
   *
   * @return the new vertex, at the weighted mean of the face's corners
   */
  int splitFace(int face, double w0, double w1, double w2) {
    int a = corner[3 * face];
    int b = corner[3 * face + 1];
    int c = corner[3 * face + 2];
    int m = addVertex();
    for (int axis = 0; axis < 3; axis++) {
      xyz[3 * m + axis] = w0 * xyz[3 * a + axis] + w1 * xyz[3 * b + axis] + w2 * xyz[3 * c + axis];
    }
    int second = addFace(face, b, c, m);
    int third = addFace(face, c, a, m);
    moveFlags(3 * face + 1, 3 * second);
    moveFlags(3 * face + 2, 3 * third);
    replaceInRing(3 * face + 1, 3 * second);
    replaceInRing(3 * face + 2, 3 * third);
    corner[3 * face + 2] = m;
    pair(3 * face + 1, 3 * second + 2);
    pair(3 * second + 1, 3 * third + 2);
    pair(3 * third + 1, 3 * face + 2);
    return m;
  }

  /**
   * Turns the edge between two faces that are alike in all but their corners: faces a b c and b a d
   * become c d b and d c a. The caller has made sure that these lie in one plane, face one way and
   * that their four sides bulge outwards.
   */
  void flip(int h) {
    int g = ring[h];
    // Each side moves to the place of the next, going round the four.
    int[] side = {Topology.next(h), Topology.prev(h), Topology.next(g), Topology.prev(g)};
    int[] start = new int[4];
    int[] following = new int[4];
    byte[] flag = new byte[4];
    for (int i = 0; i < 4; i++) {
      start[i] = corner[side[i]];
      following[i] = ring[side[i]];
      flag[i] = flags[side[i]];
    }
    int[] before = new int[4];
    for (int i = 0; i < 4; i++) {
      before[i] = side[i];
      while (ring[before[i]] != side[i]) {
        before[i] = ring[before[i]];
      }
    }
    for (int i = 0; i < 4; i++) {
      int to = side[(i + 1) % 4];
      int at = indexIn(side, following[i]);
      corner[to] = start[i];
      flags[to] = flag[i];
      ring[to] = at < 0 ? following[i] : side[(at + 1) % 4];
      if (indexIn(side, before[i]) < 0) {
        ring[before[i]] = to;
      }
    }
    corner[h] = start[1];
    corner[g] = start[3];
  }

  private static int indexIn(int[] list, int value) {
    for (int i = 0; i < list.length; i++) {
      if (list[i] == value) {
        return i;
      }
    }
    return -1;
  }

  /** Cuts faces along the line where a field is 0: see {@link ZeroCut}. */
  double[] cutAlongZero(double[] value, IntPredicate facesToCut, Progress progress) {
    return new ZeroCut(this).cut(value, facesToCut, progress);
  }

  /** One entry per face: what a test says, worked out side by side. */
  boolean[] facesWhere(IntPredicate test) {
    boolean[] where = new boolean[faces];
    Parallel.split(
        faces,
        Parallel.ranges(faces, LEAST_PER_RANGE),
        (from, to) -> {
          for (int f = from; f < to; f++) {
            where[f] = test.test(f);
          }
        });
    return where;
  }

  /** The surface as it is now. */
  Mesh toMesh() {
    return Mesh.of(Arrays.copyOf(xyz, 3 * vertices), Arrays.copyOf(corner, 3 * faces));
  }

  /** One entry per face: the face at the start that it is a piece of. */
  int[] parents() {
    return Arrays.copyOf(parent, faces);
  }

  /** One entry per face: its treatment code. */
  byte[] treatments() {
    return Arrays.copyOf(treatment, faces);
  }

  private int addVertex() {
    if (3 * vertices == xyz.length) {
      xyz = Arrays.copyOf(xyz, 3 * grown(vertices + 1));
    }
    return vertices++;
  }

  private int addFace(int of, int a, int b, int c) {
    if (faces == parent.length) {
      int capacity = grown(faces + 1);
      corner = Arrays.copyOf(corner, 3 * capacity);
      ring = Arrays.copyOf(ring, 3 * capacity);
      flags = Arrays.copyOf(flags, 3 * capacity);
      parent = Arrays.copyOf(parent, capacity);
      nextPiece = Arrays.copyOf(nextPiece, capacity);
      treatment = Arrays.copyOf(treatment, capacity);
    }
    corner[3 * faces] = a;
    corner[3 * faces + 1] = b;
    corner[3 * faces + 2] = c;
    parent[faces] = parent[of];
    nextPiece[faces] = nextPiece[of];
    nextPiece[of] = faces;
    treatment[faces] = treatment[of];
    return faces++;
  }

  private void moveFlags(int old, int to) {
    flags[to] = flags[old];
    flags[old] = 0;
  }

  static int grown(int needed) {
    return needed + (needed >> 2) + 64;
  }

  private void pair(int h, int g) {
    ring[h] = g;
    ring[g] = h;
  }

  /** Adds a half-edge to a ring given by its first member, -1 if there is none yet. */
  private int joinRing(int head, int h) {
    if (head < 0) {
      ring[h] = h;
      return h;
    }
    ring[h] = ring[head];
    ring[head] = h;
    return head;
  }

  /** Puts a half-edge in the place of another. */
  private void replaceInRing(int old, int by) {
    if (ring[old] == old) {
      ring[by] = by;
      return;
    }
    int before = old;
    while (ring[before] != old) {
      before = ring[before];
    }
    ring[before] = by;
    ring[by] = ring[old];
  }
}
