package org.seamwright.window;

import java.util.Arrays;
import java.util.Optional;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;

/**
 * A piece made ready to be drawn and pointed at, before any mark: search tree, light, and the
 * chunks it is drawn in. However it is cut afterwards, this stays as it is.
 *
 * <p>Chunks hold faces that lie near each other, whatever their order in the file: faces sorted
 * along a curve that fills space (G. M. Morton, "A computer oriented geodetic data base", 1966), so
 * that a stroke touches few chunks. Cost O(n log n), about a second for a million faces.
 */
final class PieceModel {
  /** Faces per chunk: few nodes for a large piece, little to hand over after a stroke. */
  static final int CHUNK = 1 << 14;

  private static final int GRID = 1 << 20;

  private final Mesh mesh;
  private final Bounds bounds;
  private final double[] centre;
  private final double[] outline;
  private final FaceTree tree;
  private final ShadingNormals shading;
  private final boolean isClosed;

  /** Faces in the order of chunks. */
  private final int[] order;

  private PieceModel(
      Mesh mesh,
      Bounds bounds,
      double[] centre,
      double[] outline,
      FaceTree tree,
      ShadingNormals shading,
      boolean isClosed,
      int[] order) {
    this.mesh = mesh;
    this.bounds = bounds;
    this.centre = centre;
    this.outline = outline;
    this.tree = tree;
    this.shading = shading;
    this.isClosed = isClosed;
    this.order = order;
  }

  /**
   * Makes a piece ready.
   *
   * @param isClosed whether it is known to have no holes, so that its inside need not be drawn
   */
  static PieceModel of(Mesh mesh, boolean isClosed) {
    Bounds bounds = mesh.bounds();
    double[] centre = {
      (bounds.minX() + bounds.maxX()) / 2,
      (bounds.minY() + bounds.maxY()) / 2,
      (bounds.minZ() + bounds.maxZ()) / 2
    };
    return new PieceModel(
        mesh,
        bounds,
        centre,
        Outline.of(mesh),
        FaceTree.of(mesh),
        ShadingNormals.of(mesh),
        isClosed,
        order(mesh, bounds));
  }

  private static int[] order(Mesh mesh, Bounds bounds) {
    int faces = mesh.faceCount();
    int[] order = new int[faces];
    if (faces <= CHUNK) {
      Arrays.setAll(order, f -> f);
      return order;
    }
    double size =
        Math.max(bounds.sizeX(), Math.max(bounds.sizeY(), Math.max(bounds.sizeZ(), 1e-300)));
    double[] p = mesh.xyz();
    long[] key = new long[faces];
    for (int f = 0; f < faces; f++) {
      int v = 3 * mesh.corner()[3 * f];
      long code =
          spread(cell(p[v] - bounds.minX(), size))
              | spread(cell(p[v + 1] - bounds.minY(), size)) << 1
              | spread(cell(p[v + 2] - bounds.minZ(), size)) << 2;
      // The upper 32 bits of the code tell cells of a thousandth of the piece apart: enough here.
      key[f] = code >>> 28 << 32 | f;
    }
    Arrays.sort(key);
    Arrays.setAll(order, i -> (int) key[i]);
    return order;
  }

  private static int cell(double offset, double size) {
    return Math.max(0, Math.min(GRID - 1, (int) (offset / size * GRID)));
  }

  /** The 20 bits of a number, two empty bits between neighbours. */
  private static long spread(int value) {
    long x = value;
    x = (x | x << 32) & 0x1F00000000FFFFL;
    x = (x | x << 16) & 0x1F0000FF0000FFL;
    x = (x | x << 8) & 0x100F00F00F00F00FL;
    x = (x | x << 4) & 0x10C30C30C30C30C3L;
    return (x | x << 2) & 0x1249249249249249L;
  }

  Mesh mesh() {
    return mesh;
  }

  /** Box around the piece. */
  Bounds bounds() {
    return bounds;
  }

  /** The middle of the box, about which it is drawn. */
  double[] centre() {
    return centre;
  }

  /** Light on the piece. */
  ShadingNormals shading() {
    return shading;
  }

  boolean isClosed() {
    return isClosed;
  }

  /** A viewer of the piece. */
  OrbitCamera camera() {
    return new OrbitCamera(bounds, outline);
  }

  /** Number of chunks. */
  int chunks() {
    return (order.length + CHUNK - 1) / CHUNK;
  }

  /** The faces of a chunk. */
  int[] chunk(int index) {
    return Arrays.copyOfRange(order, index * CHUNK, Math.min(order.length, (index + 1) * CHUNK));
  }

  /** The search tree over its faces. */
  FaceTree tree() {
    return tree;
  }

  /** What a ray meets first: O(log n). */
  Optional<FaceTree.Hit> firstHit(PickRay ray) {
    return tree.firstHit(ray.ox(), ray.oy(), ray.oz(), ray.dx(), ray.dy(), ray.dz());
  }

  /** The place of the surface nearest to a point, within a reach in mm. */
  Optional<double[]> nearest(double x, double y, double z, double reach) {
    return tree.nearest(x, y, z, reach)
        .map(p -> new double[] {p.at(mesh, 0), p.at(mesh, 1), p.at(mesh, 2)});
  }

  /**
   * Whether nothing of the piece stands between a place on it and the outside in a direction.
   *
   * @param place x, y, z on the surface, mm
   * @param dx direction towards the viewer, of length 1
   */
  boolean sees(double[] place, double dx, double dy, double dz) {
    // Starts off the surface by far more than rounding and far less than anything visible.
    double off = 1e-6 * bounds.diagonal();
    return tree.firstHit(place[0] + off * dx, place[1] + off * dy, place[2] + off * dz, dx, dy, dz)
        .isEmpty();
  }
}
