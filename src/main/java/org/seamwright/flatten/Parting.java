package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.measure.Crease;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * A patch on its way to pieces: the mesh as cut so far, which piece each face is in, and the slits
 * that open a piece without parting it. Cuts go through faces, so pieces stay welded along their
 * seams and a slit is a set of edges.
 */
final class Parting {
  /**
   * Share of an edge within which a line goes through its end: rows of vertices lie on a level but
   * for the file's rounding, and a line through both sides of it would leave needles.
   */
  private static final double NEAR_SHARE = 0.01;

  /** Turn from which crumbs stay by themselves: the wall of a letter is no part of its ground. */
  private static final double SHARPEST = 75;

  private Mesh mesh;
  private Topology topology;

  /** One entry per face: its piece. */
  private int[] piece;

  private int count = 1;

  /** Edges that are slit open, as {@link #key}. Only asked for membership, never listed. */
  private final Set<Long> slits = new HashSet<>();

  /** Of each cut, one entry per face after it: the face before it. */
  private final List<int[]> parents = new ArrayList<>();

  Parting(Mesh patch) {
    this.mesh = patch;
    this.topology = Topology.of(patch);
    this.piece = new int[patch.faceCount()];
  }

  /**
   * Some faces as a sheet of their own.
   *
   * @param cuts how many cuts the patch had
   * @param faces in the patch, in the order of the sheet's faces
   * @param sheet opened along slits
   * @param vertex one entry per vertex of the sheet: its number in the patch
   * @param whole whether nothing had to be opened, so that each vertex of the patch is there once
   */
  record Part(int cuts, int[] faces, Mesh sheet, int[] vertex, boolean whole) {
    double areaMm2() {
      double sum = 0;
      for (int f = 0; f < sheet.faceCount(); f++) {
        sum += Faces.area(sheet, f);
      }
      return sum;
    }
  }

  Mesh mesh() {
    return mesh;
  }

  Topology topology() {
    return topology;
  }

  int[] piece() {
    return piece;
  }

  int[] facesOf(int which) {
    return facesOf(p -> p == which);
  }

  private int[] facesOf(IntPredicate wanted) {
    int[] list = new int[piece.length];
    int n = 0;
    for (int f = 0; f < piece.length; f++) {
      if (wanted.test(piece[f])) {
        list[n++] = f;
      }
    }
    return Arrays.copyOf(list, n);
  }

  /** The face that each was after so many cuts. */
  int[] ancestors(int cuts) {
    int[] ancestor = new int[piece.length];
    for (int f = 0; f < ancestor.length; f++) {
      int g = f;
      for (int i = parents.size() - 1; i >= cuts; i--) {
        g = parents.get(i)[g];
      }
      ancestor[f] = g;
    }
    return ancestor;
  }

  Part part(int which) {
    return part(facesOf(which));
  }

  /** Two pieces as if they were one. */
  Part both(int a, int b) {
    return part(facesOf(p -> p == a || p == b));
  }

  private Part part(int[] faces) {
    Sheets.Sheet welded = Sheets.extract(mesh, faces);
    boolean[] cut = new boolean[3 * faces.length];
    for (int h = 0; h < cut.length && !slits.isEmpty(); h++) {
      cut[h] = slits.contains(key(3 * faces[h / 3] + h % 3));
    }
    Sheets.Sheet open = Sheets.open(welded.mesh(), Topology.of(welded.mesh()), cut);
    int[] vertex = new int[open.parent().length];
    for (int v = 0; v < vertex.length; v++) {
      vertex[v] = welded.parent()[open.parent()[v]];
    }
    return new Part(
        parents.size(),
        faces,
        open.mesh(),
        vertex,
        open.mesh().vertexCount() == welded.mesh().vertexCount());
  }

  private long key(int h) {
    return key(mesh.corner()[h], mesh.corner()[Topology.next(h)]);
  }

  private static long key(int a, int b) {
    return (long) Math.min(a, b) << 32 | Math.max(a, b);
  }

  /** Values at a part's vertices as values at the patch's; 0 elsewhere. */
  double[] spread(Part part, double[] value) {
    double[] all = new double[mesh.vertexCount()];
    for (int v = 0; v < value.length; v++) {
      all[part.vertex()[v]] = value[v];
    }
    return all;
  }

  /**
   * Cuts a piece where a field is 0.
   *
   * @param field one entry per vertex of the patch; only those of the piece count; changed a little
   * @param parts set to the pieces it fell into, the first of which keeps its number
   * @return the cut, for carrying other fields
   */
  CutMesh cut(int which, double[] field, List<Integer> parts) {
    CutMesh cut = splitFaces(which, field);
    boolean[] below = FieldCut.below(cut, field, 0);
    int[] label = piece;
    int[] fresh = label.clone();
    for (int f = 0; f < label.length; f++) {
      if (label[f] == which) {
        fresh[f] = below[f] ? which : -2;
      }
    }
    piece = fresh;
    number(label, which, h -> true, parts);
    return cut;
  }

  private CutMesh splitFaces(int which, double[] field) {
    int[] before = piece;
    settle(which, field);
    CutMesh cut = FieldCut.along(mesh, field, 0, f -> before[f] == which);
    for (int i = 0; i < cut.edgeFrom().length; i++) {
      if (cut.third()[i] < 0 && slits.remove(key(cut.edgeFrom()[i], cut.edgeTo()[i]))) {
        slits.add(key(cut.edgeFrom()[i], cut.oldVertexCount() + i));
        slits.add(key(cut.oldVertexCount() + i, cut.edgeTo()[i]));
      }
    }
    parents.add(cut.parentFace());
    mesh = cut.mesh();
    topology = Topology.of(mesh);
    piece = cut.carryFaces(before);
    return cut;
  }

  /** Moves the line into vertices it passes by, by less than a knife's width of a face. */
  private void settle(int which, double[] field) {
    boolean[] near = new boolean[field.length];
    for (int h = 0; h < 3 * piece.length; h++) {
      int a = mesh.corner()[h];
      int b = mesh.corner()[Topology.next(h)];
      boolean finite = Double.isFinite(field[a]) && Double.isFinite(field[b]);
      if (finite && piece[h / 3] == which && field[a] < 0 != field[b] < 0) {
        double t = field[a] / (field[a] - field[b]);
        near[a] |= t < NEAR_SHARE;
        near[b] |= t > 1 - NEAR_SHARE;
      }
    }
    for (int v = 0; v < near.length; v++) {
      field[v] = near[v] ? 0 : field[v];
    }
  }

  /**
   * Slits a piece open along the line where a field is 0, inside the faces that the line goes
   * through; the piece stays one.
   *
   * @return the new slit's edges, for {@link #sew}
   */
  List<Long> slit(int which, double[] field) {
    CutMesh cut = splitFaces(which, field);
    double[] value = cut.carry(field);
    List<Long> made = new ArrayList<>();
    for (int h = 0; h < 3 * piece.length; h++) {
      int twin = topology.twin(h);
      if (twin > h
          && piece[h / 3] == which
          && piece[twin / 3] == which
          && isOnLine(mesh.corner()[h], field)
          && isOnLine(mesh.corner()[Topology.next(h)], field)
          && value[mesh.corner()[Topology.next(Topology.next(h))]]
                  * value[mesh.corner()[Topology.next(Topology.next(twin))]]
              < 0
          && slits.add(key(h))) {
        made.add(key(h));
      }
    }
    return made;
  }

  /** Whether a vertex lies on the line that was cut last: all new ones do. */
  private static boolean isOnLine(int vertex, double[] field) {
    return vertex >= field.length || field[vertex] == 0;
  }

  /** Takes a slit back. */
  void sew(List<Long> edges) {
    edges.forEach(slits::remove);
  }

  /** Parts a piece along its creases; one part, its own number, if none goes right through. */
  List<Integer> splitAtCreases(int which, double degrees, double leastMm2) {
    double[] crease = Crease.degrees(mesh, topology);
    List<Integer> parts = new ArrayList<>();
    number(piece.clone(), which, h -> crease[h] < degrees, parts);
    absorb(parts, leastMm2, crease);
    return parts;
  }

  /** Gives crumbs to the neighbour among the parts that goes on from them for the longest. */
  private void absorb(List<Integer> parts, double leastMm2, double[] crease) {
    double[] area = new double[count];
    for (int f = 0; f < piece.length; f++) {
      area[piece[f]] += Faces.area(mesh, f);
    }
    List<Integer> small = new ArrayList<>(parts);
    small.removeIf(p -> area[p] >= leastMm2);
    small.sort((a, b) -> Double.compare(area[a], area[b]));
    int[][] members = members();
    for (int p : small) {
      double[] shared = new double[count];
      int best = -1;
      for (int f : members[p]) {
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          int g = topology.faceAcross(h);
          if (g >= 0 && piece[g] != p && crease[h] < SHARPEST && parts.contains(piece[g])) {
            double level = Math.cos(Math.toRadians(crease[h]));
            shared[piece[g]] += lengthMm(h) * level * level;
            best = best < 0 || shared[piece[g]] > shared[best] ? piece[g] : best;
          }
        }
      }
      if (best >= 0) {
        for (int f : members[p]) {
          piece[f] = best;
        }
        int[] both = Arrays.copyOf(members[best], members[best].length + members[p].length);
        System.arraycopy(members[p], 0, both, members[best].length, members[p].length);
        members[best] = both;
        parts.remove((Integer) p);
      }
    }
  }

  private int[][] members() {
    int[] size = new int[count];
    for (int p : piece) {
      size[p]++;
    }
    int[][] members = new int[count][];
    for (int p = 0; p < count; p++) {
      members[p] = new int[size[p]];
    }
    for (int f = piece.length - 1; f >= 0; f--) {
      members[piece[f]][--size[piece[f]]] = f;
    }
    return members;
  }

  double lengthMm(int h) {
    return Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
  }

  /** The second piece becomes part of the first. */
  void join(int a, int b) {
    for (int f = 0; f < piece.length; f++) {
      piece[f] = piece[f] == b ? a : piece[f];
    }
  }

  /**
   * Gives each connected part of a piece, and of its two sides, a number of its own.
   *
   * @param label pieces as they were, one entry per face
   * @param open which half-edges don't part
   */
  private void number(int[] label, int which, IntPredicate open, List<Integer> parts) {
    boolean[] seen = new boolean[label.length];
    int[] stack = new int[label.length];
    int[] side = piece.clone();
    for (int seed = 0; seed < label.length; seed++) {
      if (label[seed] != which || seen[seed]) {
        continue;
      }
      int number = parts.isEmpty() ? which : count++;
      parts.add(number);
      int top = 0;
      stack[top++] = seed;
      seen[seed] = true;
      while (top > 0) {
        int f = stack[--top];
        piece[f] = number;
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          int g = topology.faceAcross(h);
          if (g >= 0
              && !seen[g]
              && label[g] == which
              && side[g] == side[f]
              && open.test(h)
              && !slits.contains(key(h))) {
            seen[g] = true;
            stack[top++] = g;
          }
        }
      }
    }
  }
}
