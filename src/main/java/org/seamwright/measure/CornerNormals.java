package org.seamwright.measure;

import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Normals of the smooth surface at the corners of the faces: one for each sector, which is all
 * corners around a vertex that no sharp edge parts.
 *
 * <p>Faces are weighted so that the normal is exact on any sphere (Max). Where the curvature jumps,
 * as between a flat face and a rounding, or ends at a border, that leans; there the normal is
 * turned to fit its neighbours ({@link NormalFit}); where faces are uneven it is that of a quadric
 * through its neighbours ({@link QuadricFit}). Where faces differ too much to have a common normal,
 * as at the tip of a cone, each keeps its own.
 *
 * <p>Most vertices are plain: one closed fan, one sector. The others' corners are listed. 26 bytes
 * a vertex, 13 bytes more per face if there are others. O(n), the same on any number of cores.
 *
 * <p>Source: N. Max, "Weights for computing vertex normals from facet normals", Journal of Graphics
 * Tools 4 (1999).
 */
final class CornerNormals {
  /** Kinds of vertices; 0 if no face uses them. */
  private static final byte PLAIN = 1;

  private static final byte PARTED = 2;

  /** Turning a normal to its neighbours must leave no more than this share of the misfit. */
  private static final double ALMOST_WHOLLY = 0.02;

  /** A quadric that leaves more of the misfit does not belong there, if turning clearly helps. */
  private static final double HALF = 0.5;

  /** Mark of a vertex whose normal was turned. */
  static final byte TURNED = 2;

  /** Faces that lean from the common normal by more than this share of the limit make a tip. */
  private static final double TIP = 0.75;

  /** Vertices looked at in one go. */
  private static final int SHIFT = 12;

  private static final int BLOCK = 1 << SHIFT;

  private final Mesh mesh;
  private final Topology topology;
  private final Fans fans;
  private final double limitDegrees;
  private final double tipCosine;

  /** Per vertex. */
  private final byte[] kind;

  /** Three numbers per vertex: that of its only or first sector. */
  private final double[] normal;

  private final Sectors sectors;
  private final byte[] knownEdges;
  private final boolean doubtful;

  private CornerNormals(
      Mesh mesh, Topology topology, Fans fans, double limitDegrees, Progress progress) {
    this.mesh = mesh;
    this.topology = topology;
    this.fans = fans;
    this.limitDegrees = limitDegrees;
    this.tipCosine = Math.cos(Math.toRadians(TIP * limitDegrees));
    kind = new byte[mesh.vertexCount()];
    normal = new double[mesh.xyz().length];
    boolean[] doubt = new boolean[blocks()];
    boolean[] parted = new boolean[blocks()];
    Blocks.run(blocks(), progress.between(0, 0.6), b -> plain(b, doubt, parted));
    boolean others = any(parted);
    knownEdges = new byte[others ? mesh.corner().length : 0];
    sectors =
        others
            ? new Sectors(mesh, topology, fans.lists(mesh, kind, PARTED), normal, blocks(), SHIFT)
            : null;
    if (others) {
      Blocks.run(blocks(), progress.between(0.6, 0.8), b -> part(b, doubt));
    }
    doubtful = any(doubt);
  }

  /**
   * Finds the sectors and their normals.
   *
   * @param limitDegrees turn that counts as a crease
   * @param progress told the share done
   */
  static CornerNormals of(
      Mesh mesh, Topology topology, Fans fans, double limitDegrees, Progress progress) {
    return new CornerNormals(mesh, topology, fans, limitDegrees, progress);
  }

  private static boolean any(boolean[] flags) {
    boolean any = false;
    for (boolean flag : flags) {
      any |= flag;
    }
    return any;
  }

  private int blocks() {
    return (mesh.vertexCount() + BLOCK - 1) / BLOCK;
  }

  private void plain(int block, boolean[] doubt, boolean[] parted) {
    SharpEdges edges = new SharpEdges(mesh, topology, limitDegrees, new byte[0]);
    FanNormal fan = new FanNormal(mesh, topology, edges, tipCosine);
    int to = Math.min(mesh.vertexCount(), (block + 1) * BLOCK);
    for (int v = block * BLOCK; v < to; v++) {
      int start = fans.start(v);
      if (start >= 0) {
        boolean plain = fan.find(v, start, fans.valence(v), normal);
        kind[v] = plain ? PLAIN : PARTED;
        parted[block] |= !plain;
      }
    }
    doubt[block] |= fan.metDoubtful();
  }

  private void part(int block, boolean[] doubt) {
    SharpEdges edges = sharpEdges();
    Sectors.Builder builder = sectors.new Builder(edges, tipCosine);
    int to = Math.min(mesh.vertexCount(), (block + 1) * BLOCK);
    for (int v = block * BLOCK; v < to; v++) {
      if (kind[v] == PARTED) {
        builder.part(v);
      }
    }
    builder.finish(block);
    doubt[block] |= edges.metDoubtful();
  }

  /** Tells sharp edges, remembering what has been told for these normals; one per thread. */
  SharpEdges sharpEdges() {
    return new SharpEdges(mesh, topology, limitDegrees, knownEdges);
  }

  /** Whether some edge turns so far that it may or may not be a crease. */
  boolean metDoubtful() {
    return doubtful;
  }

  /** Whether a vertex has one sector all round. */
  boolean isPlain(int vertex) {
    return kind[vertex] == PLAIN;
  }

  /** Three numbers per vertex, good for plain ones. */
  double[] ofVertices() {
    return normal;
  }

  /** The normal at the corner where half-edge h starts. */
  void at(int h, double[] into) {
    int v = mesh.corner()[h];
    if (kind[v] == PLAIN) {
      System.arraycopy(normal, 3 * v, into, 0, 3);
    } else {
      sectors.at(h, into);
    }
  }

  /** Corners around the vertices that are not plain. */
  Fans.Lists cornersOfParted() {
    return sectors.lists();
  }

  /**
   * Fits the normals of the marked vertices to their neighbours.
   *
   * @param marks non-zero where wanted, one per vertex; afterwards 2 where a normal was turned
   * @return whether one was
   */
  boolean fit(byte[] marks, Progress progress) {
    Sectors.Turned[] turned = new Sectors.Turned[blocks()];
    boolean[] any = new boolean[blocks()];
    Blocks.run(blocks(), progress.between(0, 0.8), b -> turned[b] = fit(b, marks));
    Blocks.run(blocks(), progress.between(0.8, 1), b -> any[b] = turn(turned[b], marks));
    return any(any);
  }

  private Sectors.Turned fit(int block, byte[] marks) {
    Sectors.Turned turned = new Sectors.Turned();
    NormalFit fit = new NormalFit();
    QuadricFit quadric = new QuadricFit();
    int to = Math.min(mesh.vertexCount(), (block + 1) * BLOCK);
    for (int v = block * BLOCK; v < to; v++) {
      if (marks[v] != 0 && kind[v] == PLAIN) {
        fitPlain(v, fit, quadric, turned);
      } else if (marks[v] != 0 && kind[v] == PARTED) {
        sectors.fit(v, this, fit, turned);
      }
    }
    return turned;
  }

  /** Turns a plain vertex's normal if that fits almost wholly, else fits a quadric. */
  private void fitPlain(int v, NormalFit fit, QuadricFit quadric, Sectors.Turned turned) {
    fit.start(normal[3 * v], normal[3 * v + 1], normal[3 * v + 2]);
    int h = fans.start(v);
    do {
      addChords(h, 1, fit);
      h = topology.twin(Topology.prev(h));
    } while (h != fans.start(v));
    double[] to = new double[3];
    if (fit.solve(ALMOST_WHOLLY, to)) {
      turned.add(v, 0, to);
      return;
    }
    double left = fitQuadric(v, quadric, to) ? fit.left(to) : 1;
    boolean misplaced = left > HALF && fit.solve(NormalFit.CLEARLY_BETTER, to);
    if (misplaced || left < 1) {
      turned.add(v, 0, to);
    }
  }

  private boolean fitQuadric(int v, QuadricFit quadric, double[] to) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    double size = 0;
    int h = fans.start(v);
    do {
      size += Faces.length(mesh, v, corner[Topology.next(h)]) / fans.valence(v);
      h = topology.twin(Topology.prev(h));
    } while (h != fans.start(v));
    quadric.start(normal[3 * v], normal[3 * v + 1], normal[3 * v + 2]);
    do {
      int w = 3 * corner[Topology.next(h)];
      quadric.add(p[w] - p[3 * v], p[w + 1] - p[3 * v + 1], p[w + 2] - p[3 * v + 2], size);
      h = topology.twin(Topology.prev(h));
    } while (h != fans.start(v));
    return quadric.solve(to);
  }

  /** Adds the two chords of a face that meet at a corner. */
  void addChords(int h, double sign, NormalFit fit) {
    double[] p = mesh.xyz();
    double[] other = new double[3];
    int v = 3 * mesh.corner()[h];
    for (int far = Topology.next(h); far != h; far = Topology.next(far)) {
      int w = 3 * mesh.corner()[far];
      at(far, other);
      for (int axis = 0; axis < 3; axis++) {
        other[axis] *= sign;
      }
      double x = p[w] - p[v];
      double y = p[w + 1] - p[v + 1];
      double z = p[w + 2] - p[v + 2];
      if (x * x + y * y + z * z > 0) {
        fit.add(x, y, z, other);
      }
    }
  }

  private boolean turn(Sectors.Turned turned, byte[] marks) {
    double[] to = new double[3];
    boolean any = false;
    for (int i = 0; i < turned.count(); i++) {
      int v = turned.vertex(i);
      turned.normal(i, to);
      boolean done = true;
      if (kind[v] == PLAIN) {
        System.arraycopy(to, 0, normal, 3 * v, 3);
      } else {
        done = sectors.turn(v, turned.place(i), to, tipCosine);
      }
      if (done) {
        marks[v] = TURNED;
        any = true;
      }
    }
    return any;
  }
}
