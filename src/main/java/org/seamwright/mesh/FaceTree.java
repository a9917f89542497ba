package org.seamwright.mesh;

import java.util.Optional;
import java.util.function.IntConsumer;

/**
 * A tree of boxes over the faces of a mesh, for nearest-point, ray and box queries.
 *
 * <p>Answers are those of going over all faces in double precision, at any scale and offset: the
 * tree only leaves out faces that can't matter ({@link BoxTree}). Of faces at the same distance the
 * one of the lowest number is given, so answers don't depend on the tree's shape. Queries share no
 * state and may run on several threads.
 *
 * <p>Building takes O(n log n) time ({@link BoxTreeBuilder}); about 25 bytes a face are kept beside
 * the mesh. A query near a surface visits O(log n) boxes. Rays don't slip between faces that share
 * an edge: {@link Ray}.
 */
public final class FaceTree {
  private final Mesh mesh;
  private final BoxTree boxes;

  /**
   * The face a ray meets first.
   *
   * @param point where, on the mesh
   * @param distance along the ray, in lengths of its direction vector
   */
  public record Hit(SurfacePoint point, double distance) {}

  private FaceTree(Mesh mesh, BoxTree boxes) {
    this.mesh = mesh;
    this.boxes = boxes;
  }

  /** Builds the tree of a mesh. */
  public static FaceTree of(Mesh mesh) {
    return new FaceTree(mesh, BoxTreeBuilder.of(mesh));
  }

  /** Bytes the tree keeps beside the mesh. */
  long bytes() {
    return boxes.bytes();
  }

  /**
   * The point of the surface closest to a place in space; of several faces at the same distance the
   * one with the lowest number.
   *
   * @param x place, mm
   * @param y place, mm
   * @param z place, mm
   * @return empty only for a mesh without faces or a place that is nowhere (not finite)
   */
  public Optional<SurfacePoint> nearest(double x, double y, double z) {
    return nearest(x, y, z, Double.POSITIVE_INFINITY);
  }

  /**
   * The point of the surface closest to a place in space, if it is near enough. The smaller the
   * reach, the quicker.
   *
   * @param x place, mm
   * @param y place, mm
   * @param z place, mm
   * @param reach farthest distance that counts, mm
   * @return empty if no face is as near as that
   */
  public Optional<SurfacePoint> nearest(double x, double y, double z, double reach) {
    boolean somewhere = Math.abs(x) + Math.abs(y) + Math.abs(z) <= Double.MAX_VALUE;
    if (mesh.faceCount() == 0 || !(reach >= 0) || !somewhere) {
      return Optional.empty();
    }
    NearestQuery query = new NearestQuery(mesh.xyz(), boxes, x, y, z, reach);
    return query.run() ? Optional.of(query.point()) : Optional.empty();
  }

  /**
   * The first face that a ray meets, from either side; of several at the same distance the one with
   * the lowest number. A face seen exactly edge-on is not met.
   *
   * @param ox origin, mm
   * @param oy origin, mm
   * @param oz origin, mm
   * @param dx direction, of any length but zero
   * @param dy direction
   * @param dz direction
   */
  public Optional<Hit> firstHit(double ox, double oy, double oz, double dx, double dy, double dz) {
    if (mesh.faceCount() == 0) {
      return Optional.empty();
    }
    RayQuery query = new RayQuery(mesh.xyz(), boxes, new Ray(ox, oy, oz, dx, dy, dz));
    return query.run() ? Optional.of(query.hit()) : Optional.empty();
  }

  /**
   * Calls for each face whose own box meets a box; touching counts.
   *
   * @param bounds the box, mm
   * @param action receives face numbers, each once, in an order that depends on the mesh alone
   */
  public void inBox(Bounds bounds, IntConsumer action) {
    if (mesh.faceCount() > 0) {
      new BoxQuery(mesh.xyz(), boxes, bounds).run(action);
    }
  }

  /**
   * Looks for what a ball cuts into that rolls over a triangle; one for each thread.
   *
   * @param slack per face how deep a cut is let pass, mm
   * @param leastMm cuts as deep as this are let pass everywhere
   */
  public RollingBall rollingBall(float[] slack, double leastMm) {
    return new RollingBall(mesh.xyz(), boxes, slack, leastMm);
  }
}
