package org.seamwright.measure;

import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;

/**
 * How large a ball can touch a place of a surface from outside without cutting into it elsewhere.
 *
 * <p>The ball's middle lies out along the normal of the face, or of the smooth surface that the
 * face stands for, whichever leaves more room. The largest ball is found by shrinking it to the
 * nearest place inside it, again and again (J. Ma, S. W. Bae, S. Choi, "3D medial axis point
 * approximation using nearest neighbors and the normal field", The Visual Computer 28, 2012). Which
 * side is outside is told by the turn of the faces; whether a ball can be brought there from far
 * away isn't asked.
 *
 * <p>Facets of a hollow curve lie nearer to its middle than the curve. So a ball may cut into a
 * face by that face's slack: {@link #SAGITTA} times its width times the turn to the next, never
 * more than {@link #MOST_SLACK} of the radius, on edges that are hollow and turn by less than
 * {@link #CURVE_DEGREES}; 0 elsewhere, as on all flat faces between sharp creases. The inside of a
 * tube of radius R in N facets counts as touched up to a radius between R and R(1 + 15/N²).
 *
 * <p>Cost: a nearest-point query for a place that is free, some ten for a largest ball.
 */
public final class TipReach {
  /** Edges that turn by less are part of a curve: twelve facets to the turn and finer ones. */
  public static final double CURVE_DEGREES = 32;

  /** A ball may be cut by this share of its radius at most: the facets of a dozen to the turn. */
  public static final double MOST_SLACK = 0.07;

  /**
   * Slack over width times turn. A facet of a tube is off by an eighth of that, a face of an even
   * sphere by less than a fifth, and the ball's middle and its far side both are.
   */
  private static final double SAGITTA = 0.75;

  /** Share of the radius that counts as nothing: far above rounding, far below any facet. */
  private static final double ROUNDING = 1e-6;

  /** A largest ball below this share of the radius counts as none. */
  private static final double LEAST = 1e-3;

  /** Steps that shrink a ball by a smaller share than this are the last: each is smaller still. */
  private static final double SETTLED = 1e-4;

  private static final int MOST_STEPS = 60;
  private static final int LEAST_PER_RANGE = 1 << 14;

  private final Mesh mesh;
  private final FaceTree tree;
  private final double[] normal;
  private final CornerNormals smooth;
  private final float[] slack;
  private final double radiusMm;

  /**
   * Prepares a piece.
   *
   * @param normal unit normals, 3 per face; all 0 for a face without area
   * @param radiusMm radius of the tip
   */
  public TipReach(
      Mesh mesh,
      Topology topology,
      FaceTree tree,
      double[] normal,
      double radiusMm,
      Progress progress) {
    this.mesh = mesh;
    this.tree = tree;
    this.normal = normal;
    this.radiusMm = radiusMm;
    this.smooth = CornerNormals.of(mesh, topology, Fans.of(mesh), CURVE_DEGREES, progress);
    this.slack = new float[mesh.faceCount()];
    double least = Math.cos(Math.toRadians(CURVE_DEGREES));
    Parallel.split(
        slack.length,
        Parallel.ranges(slack.length, LEAST_PER_RANGE),
        (from, to) -> {
          for (int h = 3 * from; h < 3 * to; h++) {
            slack[h / 3] = (float) Math.max(slack[h / 3], slack(topology, h, least));
          }
        });
  }

  private double slack(Topology topology, int h, double leastCosine) {
    int twin = topology.twin(h);
    if (twin < 0) {
      return 0;
    }
    int n = 3 * (h / 3);
    int m = 3 * (twin / 3);
    double cosine =
        normal[n] * normal[m] + normal[n + 1] * normal[m + 1] + normal[n + 2] * normal[m + 2];
    int a = mesh.corner()[h];
    int far = mesh.corner()[Topology.prev(twin)];
    double rise = 0;
    for (int axis = 0; axis < 3; axis++) {
      rise += (mesh.xyz()[3 * far + axis] - mesh.xyz()[3 * a + axis]) * normal[n + axis];
    }
    if (!(cosine >= leastCosine) || !(rise > 0)) {
      return 0;
    }
    double length = Faces.length(mesh, a, mesh.corner()[Topology.next(h)]);
    double width = 2 * Math.min(Faces.area(mesh, h / 3), Faces.area(mesh, twin / 3)) / length;
    double turn = Math.acos(Math.min(1, cosine));
    return length > 0 ? Math.min(SAGITTA * width * turn, MOST_SLACK * radiusMm) : 0;
  }

  /**
   * Whether the tip touches a place.
   *
   * @param face the face that it lies in
   */
  public boolean isFree(int face, double x, double y, double z) {
    return largest(face, x, y, z, radiusMm, radiusMm) >= radiusMm;
  }

  /**
   * Radius of the largest ball that touches a place, mm; no more than a limit.
   *
   * @param face the face that it lies in
   */
  public double largest(int face, double x, double y, double z, double mostMm) {
    return largest(face, x, y, z, mostMm, 0);
  }

  /** The same, but any number below {@code leastMm} if it is below that. */
  private double largest(int face, double x, double y, double z, double mostMm, double leastMm) {
    double[] p = {x, y, z};
    double[] n = {normal[3 * face], normal[3 * face + 1], normal[3 * face + 2]};
    double byFace = shrunk(face, p, n, mostMm, leastMm);
    if (byFace >= mostMm || !smoothNormal(face, p, n)) {
      return byFace;
    }
    return Math.max(byFace, shrunk(face, p, n, mostMm, leastMm));
  }

  /**
   * Distance of the middle of the tip that touches a place from the nearest surface, mm; the radius
   * if nothing is nearer. It changes by no more than the place is moved in the plane of its face.
   *
   * @param face the face that it lies in
   */
  public double distance(int face, double x, double y, double z) {
    double cx = x + radiusMm * normal[3 * face];
    double cy = y + radiusMm * normal[3 * face + 1];
    double cz = z + radiusMm * normal[3 * face + 2];
    return tree.nearest(cx, cy, cz, radiusMm)
        .map(
            q -> {
              double dx = q.at(mesh, 0) - cx;
              double dy = q.at(mesh, 1) - cy;
              double dz = q.at(mesh, 2) - cz;
              return Math.sqrt(dx * dx + dy * dy + dz * dz);
            })
        .orElse(radiusMm);
  }

  /**
   * Whether anything rises above the plane of a face so near that it might be in a tip's way.
   *
   * @param face the face
   * @param reachMm how far from the place the tip may touch the face
   */
  public boolean isOverhung(int face, double x, double y, double z, double reachMm) {
    double half = radiusMm + reachMm;
    double[] n = {normal[3 * face], normal[3 * face + 1], normal[3 * face + 2]};
    double cx = x + radiusMm * n[0];
    double cy = y + radiusMm * n[1];
    double cz = z + radiusMm * n[2];
    Bounds room = new Bounds(cx - half, cy - half, cz - half, cx + half, cy + half, cz + half);
    boolean[] rises = {false};
    double flat = x * n[0] + y * n[1] + z * n[2] + Math.max(slack[face], ROUNDING * radiusMm);
    tree.inBox(
        room,
        g -> {
          for (int h = 3 * g; h < 3 * g + 3 && !rises[0]; h++) {
            int v = mesh.corner()[h];
            rises[0] = mesh.x(v) * n[0] + mesh.y(v) * n[1] + mesh.z(v) * n[2] > flat;
          }
        });
    return rises[0];
  }

  private double shrunk(int face, double[] p, double[] n, double mostMm, double leastMm) {
    double radius = mostMm;
    for (int step = 0; step < MOST_STEPS; step++) {
      double cx = p[0] + radius * n[0];
      double cy = p[1] + radius * n[1];
      double cz = p[2] + radius * n[2];
      SurfacePoint q = tree.nearest(cx, cy, cz, radius - ROUNDING * radiusMm).orElse(null);
      if (q == null) {
        return radius;
      }
      double dx = q.at(mesh, 0) - p[0];
      double dy = q.at(mesh, 1) - p[1];
      double dz = q.at(mesh, 2) - p[2];
      double room = Math.max(ROUNDING * radiusMm, Math.min(slack[face], slack[q.face()]));
      double rise = dx * n[0] + dy * n[1] + dz * n[2] - room;
      if (!(rise > 0)) {
        return radius;
      }
      double smaller = (dx * dx + dy * dy + dz * dz - room * room) / (2 * rise);
      if (!(smaller > LEAST * radiusMm)) {
        return 0;
      }
      if (!(smaller < radius * (1 - SETTLED))) {
        return Math.min(radius, smaller);
      }
      radius = smaller;
      if (radius < leastMm) {
        return radius;
      }
    }
    return radius;
  }

  /** Turns a normal to that of the smooth surface; false if the face has no other. */
  private boolean smoothNormal(int face, double[] p, double[] n) {
    double[] own = n.clone();
    double[] at = new double[3];
    double[] sum = new double[3];
    double whole = 0;
    for (int k = 0; k < 3; k++) {
      double weight = weight(face, k, p, own);
      whole += weight;
      smooth.at(3 * face + k, at);
      for (int axis = 0; axis < 3; axis++) {
        sum[axis] += weight * at[axis];
      }
    }
    double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
    if (!(whole > 0) || !(length > 0)) {
      return false;
    }
    double along = 0;
    for (int axis = 0; axis < 3; axis++) {
      n[axis] = sum[axis] / length;
      along += n[axis] * own[axis];
    }
    return along < 1 - ROUNDING;
  }

  /** Weight of a corner at a place of a face, times twice the face's area. */
  private double weight(int face, int k, double[] p, double[] n) {
    int a = 3 * mesh.corner()[3 * face + (k + 1) % 3];
    int b = 3 * mesh.corner()[3 * face + (k + 2) % 3];
    double[] xyz = mesh.xyz();
    double ux = xyz[b] - xyz[a];
    double uy = xyz[b + 1] - xyz[a + 1];
    double uz = xyz[b + 2] - xyz[a + 2];
    double vx = p[0] - xyz[a];
    double vy = p[1] - xyz[a + 1];
    double vz = p[2] - xyz[a + 2];
    double twice =
        (uy * vz - uz * vy) * n[0] + (uz * vx - ux * vz) * n[1] + (ux * vy - uy * vx) * n[2];
    return Math.max(0, twice);
  }
}
