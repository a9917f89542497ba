package org.seamwright.measure;

import java.util.Arrays;
import java.util.function.IntConsumer;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.RollingBall;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;

/**
 * Where a round tip can touch a surface from outside without cutting into it elsewhere.
 *
 * <p>A place is touched if a ball that touches it, its middle one radius out along the normal of
 * the face, is cut into by no face: {@link RollingBall} tells that of whole triangles exactly. The
 * normal of the smooth surface that the face stands for serves too, if it leaves more room. Which
 * side is outside is told by the turn of the faces; whether a ball can be brought there from far
 * away isn't asked.
 *
 * <p>Facets of a hollow curve lie nearer to its middle than the curve. So a ball may cut into a
 * face by that face's slack: {@link #SAGITTA} times its width times the turn to the next, never
 * more than {@link #MOST_SLACK} of the radius, on edges that are hollow and turn by less than
 * {@link #CURVE_DEGREES}; 0 elsewhere, as on all flat faces between sharp creases. The inside of a
 * tube of radius R in N facets counts as touched up to a radius between R and R(1 + 15/N²).
 *
 * <p>Cost: some microseconds for a triangle or place on a million faces.
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

  /** Steps from face to face that reach round a corner, as a rule. */
  private static final int RINGS = 2;

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
    this.slack = slacks(topology);
  }

  /**
   * Per face the most slack of its own edges and of faces near it on the same curve, mm: where a
   * curve turns from hollow to round, one of two faces at a corner has no hollow edge of its own.
   */
  private float[] slacks(Topology topology) {
    double least = Math.cos(Math.toRadians(CURVE_DEGREES));
    float[] own = new float[mesh.faceCount()];
    inRanges(h -> own[h / 3] = (float) Math.max(own[h / 3], slack(topology, h, least)));
    float[] all = own;
    for (int ring = 0; ring < RINGS; ring++) {
      float[] inner = all;
      float[] outer = all.clone();
      inRanges(
          h -> {
            int twin = topology.twin(h);
            if (twin >= 0 && cosine(h, twin) >= least) {
              outer[h / 3] = Math.max(outer[h / 3], inner[twin / 3]);
            }
          });
      all = outer;
    }
    return all;
  }

  /** Calls for each half-edge; those of a face on one thread. */
  private void inRanges(IntConsumer action) {
    Parallel.split(
        mesh.faceCount(),
        Parallel.ranges(mesh.faceCount(), LEAST_PER_RANGE),
        (from, to) -> {
          for (int h = 3 * from; h < 3 * to; h++) {
            action.accept(h);
          }
        });
  }

  private double cosine(int h, int twin) {
    int n = 3 * (h / 3);
    int m = 3 * (twin / 3);
    return normal[n] * normal[m] + normal[n + 1] * normal[m + 1] + normal[n + 2] * normal[m + 2];
  }

  private double slack(Topology topology, int h, double leastCosine) {
    int twin = topology.twin(h);
    if (twin < 0) {
      return 0;
    }
    int n = 3 * (h / 3);
    double cosine = cosine(h, twin);
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

  /** Whether a face stands for a hollow curve, so that cuts into it are let pass. */
  public boolean isCurved(int face) {
    return slack[face] > ROUNDING * radiusMm;
  }

  /** Looks at pieces of faces one after the other; one for each thread. */
  public Probe probe() {
    return new Probe();
  }

  /** Tells of one flat triangle after the other where the tip touches it. */
  public final class Probe {
    private final RollingBall ball = tree.rollingBall(slack, ROUNDING * radiusMm);
    private final double[] own = new double[3];
    private final double[] turned = new double[3];
    private final double[] corner = new double[3];
    private final double[] sum = new double[3];
    private final double[] middles = new double[9];
    private int face;
    private RollingBall.Finding found = RollingBall.Finding.CLEAR;

    /**
     * Looks at a triangle.
     *
     * @param of the face of the piece that it is a part of
     * @param triangle its corners, 9 numbers, mm
     * @param sampled whether its corners and its middle stand for it
     * @return {@code CLEAR} if the tip touches it all over, {@code STOPPED} if nowhere; else ask
     *     for places
     */
    public RollingBall.Finding look(int of, double[] triangle, boolean sampled) {
      face = of;
      System.arraycopy(normal, 3 * of, own, 0, 3);
      double margin = 0;
      double[] others = {};
      if (isCurved(of)) {
        others = middles;
        margin = turnedMiddles(triangle);
      }
      found = ball.roll(of, triangle, own, radiusMm, others, margin, 0, sampled);
      return found;
    }

    /**
     * Middles of the tip by smooth normals, and how far those in between may lie inwards of them.
     */
    private double turnedMiddles(double[] triangle) {
      Arrays.fill(sum, 0);
      for (int k = 0; k < 3; k++) {
        System.arraycopy(triangle, 3 * k, corner, 0, 3);
        System.arraycopy(own, 0, turned, 0, 3);
        smoothNormal(face, corner, turned);
        for (int axis = 0; axis < 3; axis++) {
          sum[axis] += turned[axis] / 3;
          middles[3 * k + axis] = corner[axis] + radiusMm * turned[axis];
        }
      }
      double mean = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
      return 2 * radiusMm * (1 - mean);
    }

    /**
     * Whether the tip touches a triangle all over but for what rises so little that it hides a spot
     * smaller than the line's fineness. To be asked instead of {@link #look}.
     *
     * @param depthMm how deep a cut counts as nothing
     */
    public boolean isClear(int of, double[] triangle, double depthMm) {
      System.arraycopy(normal, 3 * of, own, 0, 3);
      return ball.roll(of, triangle, own, radiusMm, new double[0], 0, depthMm, false)
          == RollingBall.Finding.CLEAR;
    }

    /** Whether the tip touches a place of the triangle looked at last. */
    public boolean isFree(double[] p) {
      boolean blocked = ball.isBlocked(p, own, radiusMm);
      boolean listed = found != RollingBall.Finding.MANY;
      if (!blocked && (listed || isFreeInTree(p, own))) {
        return true;
      }
      System.arraycopy(own, 0, turned, 0, 3);
      if (!isCurved(face) || !smoothNormal(face, p, turned)) {
        return false;
      }
      double lean = 0;
      for (int axis = 0; axis < 3; axis++) {
        lean += own[axis] * turned[axis];
      }
      // Leaning, the tip cuts into the face itself.
      return radiusMm * (1 - lean) <= slack[face]
          && !ball.isBlocked(p, turned, radiusMm)
          && isFreeInTree(p, turned);
    }

    private boolean isFreeInTree(double[] p, double[] n) {
      double x = p[0] + radiusMm * n[0];
      double y = p[1] + radiusMm * n[1];
      double z = p[2] + radiusMm * n[2];
      SurfacePoint q = tree.nearest(x, y, z, radiusMm * (1 - ROUNDING)).orElse(null);
      if (q == null) {
        return true;
      }
      double limit =
          radiusMm - Math.max(ROUNDING * radiusMm, Math.min(slack[face], slack[q.face()]));
      return squared(q, x, y, z) >= limit * limit;
    }

    /**
     * Whether the tip, wherever it touches the triangle looked at last, is cut into by so much that
     * no slack could let it pass.
     *
     * @param middle middle of the triangle
     * @param reachMm how far its corners lie from there
     */
    public boolean isDeep(double[] middle, double reachMm) {
      double x = middle[0] + radiusMm * own[0];
      double y = middle[1] + radiusMm * own[1];
      double z = middle[2] + radiusMm * own[2];
      double limit = radiusMm * (1 - MOST_SLACK) - reachMm;
      return limit > 0 && tree.nearest(x, y, z, limit).isPresent();
    }
  }

  private double squared(SurfacePoint q, double x, double y, double z) {
    double dx = q.at(mesh, 0) - x;
    double dy = q.at(mesh, 1) - y;
    double dz = q.at(mesh, 2) - z;
    return dx * dx + dy * dy + dz * dz;
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
