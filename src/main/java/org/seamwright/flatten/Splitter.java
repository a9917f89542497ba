package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.geodesic.FieldCut;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Cuts a patch apart until every piece lies flat within the allowed stretch. A piece that was laid
 * out is cut along a straight line of its layout, through where it is stretched and across its
 * short way; one that cannot be laid out, along a plane through its middle. Faces are cut exactly,
 * so a seam runs straight however the mesh lies.
 *
 * <p>Ends where pieces get smaller than {@link #SMALLEST_MM2}: rough scans never lie flat.
 */
final class Splitter {
  /** Pieces below this area are not cut any further: nobody cuts film smaller. */
  static final double SMALLEST_MM2 = 16;

  /** Each cut halves a piece, more or less: 2^10 pieces are too many to lay by hand. */
  private static final int DEEPEST = 10;

  /** A patch that is curved by more than a hemisphere in all is cut before it is laid out. */
  private static final double MOST_CURVED = 2 * Math.PI * 1.05;

  private static final int DIRECTIONS = 12;

  /** The patch, cut so far. */
  private Mesh mesh;

  private Topology topology;

  /** One entry per face: its piece. */
  private int[] piece;

  private int pieces = 1;
  private final double allowed;
  private final SortedMap<Integer, Integer> depth = new TreeMap<>();

  /** Faces and layout of a piece; no layout if none was found or none was tried. */
  record Laid(int piece, int[] faces, Optional<Layout> layout) {}

  private Splitter(Mesh mesh, double allowed) {
    this.mesh = mesh;
    this.topology = Topology.of(mesh);
    this.piece = new int[mesh.faceCount()];
    this.allowed = allowed;
  }

  /**
   * The pieces of a patch.
   *
   * @param mesh the patch, cut
   * @param piece one entry per face: its piece
   * @param laid pieces in order
   */
  record Result(Mesh mesh, int[] piece, List<Laid> laid) {}

  /**
   * Cuts a patch.
   *
   * @param patch connected, each vertex one fan, faces turned alike
   * @param allowed stretch to keep to
   */
  static Result split(Mesh patch, double allowed, Progress progress) {
    Splitter splitter = new Splitter(patch, allowed);
    SortedMap<Integer, Laid> done = splitter.run(progress);
    // A later cut may have split faces at an earlier piece's edge.
    List<Laid> laid = new ArrayList<>();
    for (Laid one : done.values()) {
      int[] faces = splitter.facesOf(one.piece());
      laid.add(
          faces.length == one.faces().length
              ? new Laid(one.piece(), faces, one.layout())
              : splitter.lay(one.piece()));
    }
    return new Result(splitter.mesh, splitter.piece, laid);
  }

  private SortedMap<Integer, Laid> run(Progress progress) {
    SortedMap<Integer, Laid> done = new TreeMap<>();
    List<Integer> pending = new ArrayList<>(List.of(0));
    depth.put(0, 0);
    while (!pending.isEmpty()) {
      progress.at((double) done.size() / (done.size() + pending.size()));
      Laid[] laid = new Laid[pending.size()];
      List<Integer> now = pending;
      Parallel.each(laid.length, i -> laid[i] = lay(now.get(i)));
      pending = new ArrayList<>();
      for (Laid one : laid) {
        if (isGood(one) || isLast(one) || !cut(one, pending)) {
          done.put(one.piece(), one);
        }
      }
    }
    return done;
  }

  private boolean isGood(Laid one) {
    return one.layout().isPresent() && one.layout().get().stretch().nearlyAll() <= allowed;
  }

  private boolean isLast(Laid one) {
    return depth.get(one.piece()) >= DEEPEST || area(facesOf(one.piece())) < SMALLEST_MM2;
  }

  private double area(int[] faces) {
    double sum = 0;
    for (int f : faces) {
      sum += Faces.area(mesh, f);
    }
    return sum;
  }

  private int[] facesOf(int which) {
    int[] list = new int[piece.length];
    int count = 0;
    for (int f = 0; f < piece.length; f++) {
      if (piece[f] == which) {
        list[count++] = f;
      }
    }
    return Arrays.copyOf(list, count);
  }

  private Laid lay(int which) {
    int[] faces = facesOf(which);
    Mesh part = Sheets.extract(mesh, faces).mesh();
    Topology partTopology = Topology.of(part);
    Sheets.Sheet sheet = Sheets.open(part, partTopology, new boolean[part.corner().length]);
    return new Laid(
        which,
        faces,
        tooCurved(sheet.mesh())
            ? Optional.empty()
            : Layout.of(sheet.mesh(), allowed, Progress.NONE));
  }

  /** Whether the sheet's curvature adds up to more than a layout can take well. */
  private static boolean tooCurved(Mesh sheet) {
    Topology topology = Topology.of(sheet);
    double[] curvature = Angles.inside(RestShapes.of(sheet), Angles.onBoundary(sheet, topology));
    double sum = 0;
    for (double c : curvature) {
      sum += c;
    }
    return Math.abs(sum) > MOST_CURVED;
  }

  /** Cuts a piece in two or more and adds them to those to be laid out; false if it can't be. */
  private boolean cut(Laid one, List<Integer> pending) {
    // Cuts of other pieces may have split faces at the edge since it was laid out.
    int[] faces = facesOf(one.piece());
    Optional<double[]> field =
        one.layout()
            .filter(l -> faces.length == one.faces().length && noneSlit(l))
            .flatMap(l -> flatLine(l, faces))
            .or(() -> plane(faces));
    if (field.isEmpty()) {
      return false;
    }
    int which = one.piece();
    int[] before = piece;
    CutMesh cut = FieldCut.along(mesh, field.get(), 0, f -> before[f] == which);
    boolean[] below = FieldCut.below(cut, field.get(), 0);
    int[] label = cut.carryFaces(before);
    int[] fresh = label.clone();
    for (int f = 0; f < label.length; f++) {
      if (label[f] == which) {
        fresh[f] = below[f] ? which : -2;
      }
    }
    mesh = cut.mesh();
    topology = Topology.of(mesh);
    piece = fresh;
    number(which, label, pending);
    return true;
  }

  private static boolean noneSlit(Layout layout) {
    for (boolean slit : layout.slit()) {
      if (slit) {
        return false;
      }
    }
    return true;
  }

  /** Gives each connected part of the two sides a number of its own. */
  private void number(int which, int[] label, List<Integer> pending) {
    int deeper = depth.get(which) + 1;
    boolean[] seen = new boolean[label.length];
    boolean first = true;
    int[] stack = new int[label.length];
    for (int seed = 0; seed < label.length; seed++) {
      if (label[seed] != which || seen[seed]) {
        continue;
      }
      int side = piece[seed];
      int number = first ? which : pieces++;
      first = false;
      depth.put(number, deeper);
      pending.add(number);
      int top = 0;
      stack[top++] = seed;
      seen[seed] = true;
      List<Integer> members = new ArrayList<>();
      while (top > 0) {
        int f = stack[--top];
        members.add(f);
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          int g = topology.faceAcross(h);
          if (g >= 0 && !seen[g] && label[g] == which && piece[g] == side) {
            seen[g] = true;
            stack[top++] = g;
          }
        }
      }
      for (int f : members) {
        piece[f] = number;
      }
    }
  }

  /** A line of the layout, as a field per vertex of the patch that is 0 on it. */
  private Optional<double[]> flatLine(Layout layout, int[] faces) {
    double[] uv = layout.uv();
    RestShapes rest = RestShapes.of(layout.mesh());
    double[] j = new double[4];
    double[] middle = new double[2];
    double[] stretched = new double[2];
    double total = 0;
    double totalStretch = 0;
    for (int f = 0; f < rest.faceCount(); f++) {
      rest.derivative(f, uv, j);
      double a = rest.area()[f];
      double s = a * Math.min(1, Stretch.ofFace(j));
      total += a;
      totalStretch += s;
      for (int k = 0; k < 3; k++) {
        int v = layout.mesh().corner()[3 * f + k];
        for (int axis = 0; axis < 2; axis++) {
          middle[axis] += a * uv[2 * v + axis] / 3;
          stretched[axis] += s * uv[2 * v + axis] / 3;
        }
      }
    }
    double x = (middle[0] / total + stretched[0] / totalStretch) / 2;
    double y = (middle[1] / total + stretched[1] / totalStretch) / 2;
    List<double[]> fields = new ArrayList<>();
    for (int i = 0; i < DIRECTIONS; i++) {
      double angle = Math.PI * i / DIRECTIONS;
      double[] field = new double[mesh.vertexCount()];
      for (int h = 0; h < 3 * faces.length; h++) {
        int v = layout.mesh().corner()[h];
        field[mesh.corner()[3 * faces[h / 3] + h % 3]] =
            (uv[2 * v] - x) * Math.cos(angle) + (uv[2 * v + 1] - y) * Math.sin(angle);
      }
      fields.add(field);
    }
    return best(fields, faces);
  }

  /** A plane through the middle, as such a field. */
  private Optional<double[]> plane(int[] faces) {
    double[] middle = new double[3];
    double[] at = new double[3];
    double total = 0;
    for (int f : faces) {
      double a = Faces.area(mesh, f);
      Faces.centroid(mesh, f, at);
      total += a;
      for (int axis = 0; axis < 3; axis++) {
        middle[axis] += a * at[axis];
      }
    }
    List<double[]> fields = new ArrayList<>();
    for (int code = 14; code < 27; code++) {
      // Half of the 26 directions to the neighbours of a cube among cubes.
      double nx = code / 9 - 1;
      double ny = code / 3 % 3 - 1;
      double nz = code % 3 - 1;
      double norm = Math.sqrt(nx * nx + ny * ny + nz * nz);
      double[] field = new double[mesh.vertexCount()];
      for (int v = 0; v < field.length; v++) {
        field[v] =
            ((mesh.x(v) - middle[0] / total) * nx
                    + (mesh.y(v) - middle[1] / total) * ny
                    + (mesh.z(v) - middle[2] / total) * nz)
                / norm;
      }
      fields.add(field);
    }
    return best(fields, faces);
  }

  /** The field with the shortest line for what it parts; nothing if none parts the faces. */
  private Optional<double[]> best(List<double[]> fields, int[] faces) {
    double least = Double.POSITIVE_INFINITY;
    Optional<double[]> best = Optional.empty();
    for (double[] field : fields) {
      double length = 0;
      double below = 0;
      double above = 0;
      for (int f : faces) {
        length += chord(field, f);
        double a = Faces.area(mesh, f);
        int[] c = mesh.corner();
        double sum = field[c[3 * f]] + field[c[3 * f + 1]] + field[c[3 * f + 2]];
        below += sum < 0 ? a : 0;
        above += sum < 0 ? 0 : a;
      }
      double parted = Math.min(below, above);
      double cost = parted > 0 ? length * (below + above) / parted : Double.POSITIVE_INFINITY;
      // A hair's breadth, so that rounding does not choose between equals.
      if (cost < least * (1 - 1e-9)) {
        least = cost;
        best = Optional.of(field);
      }
    }
    return best;
  }

  /** Length of the field's zero line in a face, mm. */
  private double chord(double[] field, int f) {
    double[] ends = new double[6];
    int count = 0;
    for (int k = 0; k < 3 && count < 2; k++) {
      int a = mesh.corner()[3 * f + k];
      int b = mesh.corner()[3 * f + (k + 1) % 3];
      if (field[a] < 0 != field[b] < 0) {
        double t = field[a] / (field[a] - field[b]);
        for (int axis = 0; axis < 3; axis++) {
          double from = mesh.xyz()[3 * a + axis];
          ends[3 * count + axis] = from + t * (mesh.xyz()[3 * b + axis] - from);
        }
        count++;
      }
    }
    return count < 2
        ? 0
        : Math.hypot(Math.hypot(ends[3] - ends[0], ends[4] - ends[1]), ends[5] - ends[2]);
  }
}
