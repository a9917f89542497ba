package org.seamwright.mend;

import java.util.Arrays;
import org.seamwright.basis.Count;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.measure.PartBoxes;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Finds and drops what lies inside another closed part: the walls that a drawing leaves where
 * shells were pushed through each other and never made one. No brush reaches them.
 *
 * <p>Bodies that share corners or edges are taken apart first ({@link Shells}). Each part is cut
 * along the surface of each closed part whose box meets its own ({@link SolidCut}) and loses what
 * is inside. Where two surfaces coincide and face the same way, the earlier part keeps its faces;
 * where they lie against each other, both lose them. Then the parts are sewn together where they
 * were cut: corners on the two edges are joined and edges split at each other's corners.
 */
final class Hidden {
  /** How far apart the two edges of a cut may lie, as a share of the parts' smallest box. */
  private static final double SEAM = 1e-4;

  private final Mesh mesh;
  private final PartBoxes boxes;

  /** Corners of the faces that stay; vertices beyond the mesh's are in {@code added}. */
  private final Ints corners;

  private final Ints parents;
  private double[] added = new double[48];
  private int addedCount;
  private long touched;

  private Hidden(Mesh mesh, PartBoxes boxes) {
    this.mesh = mesh;
    this.boxes = boxes;
    this.corners = new Ints(mesh.corner().length);
    this.parents = new Ints(mesh.faceCount());
  }

  static Change drop(Mesh mesh, Topology topology, Progress progress) {
    Parts parts = Shells.of(mesh, topology);
    if (parts.count() < 2) {
      return Change.none(mesh, text(0));
    }
    Hidden hidden = new Hidden(mesh, new PartBoxes(mesh, topology, parts));
    for (int p = 0; p < parts.count(); p++) {
      hidden.part(p, progress.between((double) p / parts.count(), (p + 1.0) / parts.count()));
    }
    if (hidden.touched == 0) {
      return Change.none(mesh, text(0));
    }
    return sewn(hidden.change(), hidden.boxes.diagonal());
  }

  private static Change sewn(Change cut, double diagonalMm) {
    double tolerance = SEAM * diagonalMm;
    Change welded = BorderWeld.weld(cut.mesh(), Topology.of(cut.mesh()), tolerance);
    Change split = EdgeSplit.split(welded.mesh(), Topology.of(welded.mesh()), tolerance);
    Change all = cut.then(welded).then(split);
    return new Change(all.mesh(), all.parent(), cut.count(), cut.text());
  }

  /**
   * Area inside other closed parts, mm²; 0 without looking closer where no boxes meet.
   *
   * @return the area hidden, and the number of parts that have some
   */
  static double[] measure(Mesh mesh, Topology topology, Progress progress) {
    Change change = drop(mesh, topology, progress);
    if (change.count() == 0) {
      return new double[] {0, 0};
    }
    double all = Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
    double left = Sum.over(change.mesh().faceCount(), f -> Faces.area(change.mesh(), f));
    return new double[] {all - left, change.count()};
  }

  private static String text(long parts) {
    return "what lies inside another closed part dropped from " + Count.of(parts, "part");
  }

  private void part(int part, Progress progress) {
    int[] faces = boxes.faces(part);
    int[] others = boxes.meeting(part);
    Local local = null;
    for (int i = 0; i < others.length; i++) {
      Progress step = progress.between((double) i / others.length, (i + 1.0) / others.length);
      step.at(0);
      local = local == null ? Local.of(mesh, faces) : local;
      Change cut =
          SolidCut.outside(
              local.mesh, boxes.solid(part), boxes.solid(others[i]), part < others[i], step);
      local = cut.count() == 0 ? local : local.then(cut);
    }
    if (local == null || !local.changed) {
      for (int f : faces) {
        keep(f, mesh.corner()[3 * f], mesh.corner()[3 * f + 1], mesh.corner()[3 * f + 2]);
      }
      return;
    }
    touched++;
    int base = mesh.vertexCount() + addedCount - local.vertices.length;
    append(local.mesh.xyz(), local.vertices.length);
    int[] c = local.mesh.corner();
    for (int f = 0; f < local.parent.length; f++) {
      int[] global = new int[3];
      for (int k = 0; k < 3; k++) {
        int v = c[3 * f + k];
        global[k] = v < local.vertices.length ? local.vertices[v] : base + v;
      }
      keep(faces[local.parent[f]], global[0], global[1], global[2]);
    }
  }

  private void keep(int parent, int a, int b, int c) {
    corners.add(a);
    corners.add(b);
    corners.add(c);
    parents.add(parent);
  }

  /** Takes over the vertices from a number on. */
  private void append(double[] xyz, int from) {
    int count = xyz.length / 3 - from;
    if (3 * (addedCount + count) > added.length) {
      added = Arrays.copyOf(added, Math.max(2 * added.length, 3 * (addedCount + count)));
    }
    System.arraycopy(xyz, 3 * from, added, 3 * addedCount, 3 * count);
    addedCount += count;
  }

  private Change change() {
    double[] xyz = Arrays.copyOf(mesh.xyz(), mesh.xyz().length + 3 * addedCount);
    System.arraycopy(added, 0, xyz, mesh.xyz().length, 3 * addedCount);
    return new Change(Mesh.of(xyz, corners.toArray()), parents.toArray(), touched, text(touched));
  }

  /** A part with vertices of its own. */
  private static final class Local {
    /** Its faces. */
    final Mesh mesh;

    /** One entry per face: the place of its ancestor in the part. */
    final int[] parent;

    /** One entry per vertex that it had at first: its number in the whole. */
    final int[] vertices;

    final boolean changed;

    Local(Mesh mesh, int[] parent, int[] vertices, boolean changed) {
      this.mesh = mesh;
      this.parent = parent;
      this.vertices = vertices;
      this.changed = changed;
    }

    static Local of(Mesh whole, int[] faces) {
      int[] used = new int[3 * faces.length];
      for (int i = 0; i < used.length; i++) {
        used[i] = whole.corner()[3 * faces[i / 3] + i % 3];
      }
      int[] vertices = Arrays.stream(used).sorted().distinct().toArray();
      double[] xyz = new double[3 * vertices.length];
      for (int v = 0; v < vertices.length; v++) {
        System.arraycopy(whole.xyz(), 3 * vertices[v], xyz, 3 * v, 3);
      }
      int[] corner = new int[used.length];
      for (int i = 0; i < used.length; i++) {
        corner[i] = Arrays.binarySearch(vertices, used[i]);
      }
      int[] parent = new int[faces.length];
      Arrays.setAll(parent, f -> f);
      return new Local(Mesh.of(xyz, corner), parent, vertices, false);
    }

    Local then(Change change) {
      int[] first = new int[change.parent().length];
      for (int f = 0; f < first.length; f++) {
        first[f] = parent[change.parent()[f]];
      }
      return new Local(change.mesh(), first, vertices, true);
    }
  }
}
