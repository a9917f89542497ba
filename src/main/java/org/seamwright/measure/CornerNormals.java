package org.seamwright.measure;

import java.util.Arrays;
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
 * turned to fit its neighbours, since a chord makes equal angles with the normals at its ends up to
 * the third order. Where faces differ too much to have a common normal, as at the tip of a cone,
 * each keeps its own. O(n).
 *
 * <p>Source: N. Max, "Weights for computing vertex normals from facet normals", Journal of Graphics
 * Tools 4 (1999).
 */
final class CornerNormals {
  /** Faces that lean from the common normal by more than this share of the limit make a tip. */
  private static final double TIP = 0.75;

  /** Turning a normal must remove all but this share of its squared misfit, else it is kept. */
  private static final double CLEARLY_BETTER = 0.25;

  /** Edges around a vertex that spread less (determinant over squared trace) fix no plane. */
  private static final double SPREAD = 1e-6;

  /** Numbers kept per sector while fitting: a symmetric 2 x 2 matrix, two sides, the misfit. */
  private static final int FIT = 6;

  /** Corners between two reports of progress. */
  private static final int STRIDE = 1 << 16;

  private final Mesh mesh;
  private final double[] faceNormals;

  /** Sector of a corner, or the ones' complement of it where the face is turned against it. */
  private final int[] sector;

  /** Three numbers per sector. */
  private double[] normal;

  private int sectors;
  private boolean[] tip;

  private CornerNormals(Mesh mesh, double[] faceNormals) {
    this.mesh = mesh;
    this.faceNormals = faceNormals;
    sector = new int[mesh.corner().length];
    normal = new double[3 * (mesh.vertexCount() + mesh.vertexCount() / 4 + 16)];
  }

  /**
   * Finds the sectors and their normals.
   *
   * @param faceNormals unit normals of the faces
   * @param sharp per half-edge
   * @param limitDegrees turn that counts as a crease
   * @param progress told the share done
   */
  static CornerNormals of(
      Mesh mesh,
      Topology topology,
      double[] faceNormals,
      boolean[] sharp,
      double limitDegrees,
      Progress progress) {
    CornerNormals result = new CornerNormals(mesh, faceNormals);
    Arrays.fill(result.sector, Integer.MIN_VALUE);
    FanWalk walk = new FanWalk(mesh.corner(), topology);
    for (int h = 0; h < result.sector.length; h++) {
      if (result.sector[h] == Integer.MIN_VALUE) {
        result.gather(h, walk, sharp);
      }
      tell(progress.between(0, 0.5), h, result.sector.length);
    }
    for (int s = 0; s < result.sectors; s++) {
      unit(result.normal, 3 * s);
    }
    double leastCosine = Math.cos(Math.toRadians(TIP * limitDegrees));
    result.tip = new boolean[result.sectors];
    result.markTips(leastCosine);
    result.fitToNeighbours(progress.between(0.5, 1));
    result.markTips(leastCosine);
    return result;
  }

  private static void tell(Progress progress, int done, int all) {
    if ((done & (STRIDE - 1)) == 0) {
      progress.at((double) done / all);
    }
  }

  private void gather(int h, FanWalk walk, boolean[] sharp) {
    if (3 * sectors == normal.length) {
      normal = Arrays.copyOf(normal, 3 * (sectors + sectors / 2));
    }
    add(h, false);
    walk.start(h, true);
    while (walk.step(sharp)) {
      add(walk.at(), walk.turned());
    }
    if (!walk.isClosed()) {
      walk.start(h, false);
      while (walk.step(sharp)) {
        add(walk.at(), walk.turned());
      }
    }
    sectors++;
  }

  private void add(int h, boolean turned) {
    sector[h] = turned ? ~sectors : sectors;
    int[] corner = mesh.corner();
    double area = Faces.area(mesh, h / 3);
    double a = Faces.length(mesh, corner[h], corner[Topology.next(h)]);
    double b = Faces.length(mesh, corner[h], corner[Topology.prev(h)]);
    double weight = area > 0 ? (turned ? -area : area) / (a * a * b * b) : 0;
    for (int axis = 0; axis < 3; axis++) {
      normal[3 * sectors + axis] += weight * faceNormals[3 * (h / 3) + axis];
    }
  }

  private static void unit(double[] v, int i) {
    double length = Math.sqrt(v[i] * v[i] + v[i + 1] * v[i + 1] + v[i + 2] * v[i + 2]);
    for (int axis = 0; axis < 3; axis++) {
      v[i + axis] = length > 0 ? v[i + axis] / length : 0;
    }
  }

  /** Turns each normal towards what its edges' far ends ask for, if that fits clearly better. */
  private void fitToNeighbours(Progress progress) {
    double[] fit = new double[FIT * sectors];
    double[] along = new double[3];
    for (int h = 0; h < sector.length; h++) {
      int next = Topology.next(h);
      double length2 = edge(h, along);
      if (length2 > 0) {
        double misfit = dot(h, along) + dot(next, along);
        addTo(fit, index(h), along, sector[h] < 0 ? -misfit : misfit, 1 / length2);
        addTo(fit, index(next), along, sector[next] < 0 ? -misfit : misfit, 1 / length2);
      }
      tell(progress, h, sector.length);
    }
    double[] turned = new double[3];
    for (int s = 0; s < sectors; s++) {
      solve(fit, s, turned);
    }
  }

  /** Unit vector along the edge of a half-edge; returns its squared length. */
  private double edge(int h, double[] into) {
    double[] p = mesh.xyz();
    int v = 3 * mesh.corner()[h];
    int w = 3 * mesh.corner()[Topology.next(h)];
    for (int axis = 0; axis < 3; axis++) {
      into[axis] = p[w + axis] - p[v + axis];
    }
    double length2 = into[0] * into[0] + into[1] * into[1] + into[2] * into[2];
    unit(into, 0);
    return length2;
  }

  private double dot(int h, double[] along) {
    return along[0] * at(h, 0) + along[1] * at(h, 1) + along[2] * at(h, 2);
  }

  private void addTo(double[] fit, int s, double[] along, double misfit, double weight) {
    double u = 0;
    double v = 0;
    for (int axis = 0; axis < 3; axis++) {
      u += along[axis] * tangent(s, 0, axis);
      v += along[axis] * tangent(s, 1, axis);
    }
    fit[FIT * s] += weight * u * u;
    fit[FIT * s + 1] += weight * u * v;
    fit[FIT * s + 2] += weight * v * v;
    fit[FIT * s + 3] += weight * u * misfit;
    fit[FIT * s + 4] += weight * v * misfit;
    fit[FIT * s + 5] += weight * misfit * misfit;
  }

  /**
   * Component of one of two unit vectors across a sector's normal. T. Duff et al., "Building an
   * orthonormal basis, revisited", JCGT 6 (2017).
   */
  private double tangent(int s, int which, int axis) {
    double x = normal[3 * s];
    double y = normal[3 * s + 1];
    double z = normal[3 * s + 2];
    double sign = Math.copySign(1, z);
    double a = -1 / (sign + z);
    double b = x * y * a;
    if (which == 0) {
      return axis == 0 ? 1 + sign * x * x * a : axis == 1 ? sign * b : -sign * x;
    }
    return axis == 0 ? b : axis == 1 ? sign + y * y * a : -y;
  }

  private void solve(double[] fit, int s, double[] turned) {
    double a = fit[FIT * s];
    double b = fit[FIT * s + 1];
    double c = fit[FIT * s + 2];
    double p = fit[FIT * s + 3];
    double q = fit[FIT * s + 4];
    double determinant = a * c - b * b;
    if (!(determinant > SPREAD * (a + c) * (a + c))) {
      return;
    }
    double u = -(c * p - b * q) / determinant;
    double v = -(a * q - b * p) / determinant;
    double left = fit[FIT * s + 5] + u * p + v * q;
    if (left < CLEARLY_BETTER * fit[FIT * s + 5]) {
      for (int axis = 0; axis < 3; axis++) {
        turned[axis] = normal[3 * s + axis] + u * tangent(s, 0, axis) + v * tangent(s, 1, axis);
      }
      System.arraycopy(turned, 0, normal, 3 * s, 3);
      unit(normal, 3 * s);
    }
  }

  private void markTips(double leastCosine) {
    for (int h = 0; h < sector.length; h++) {
      int f = 3 * (h / 3);
      int s = 3 * index(h);
      double cosine =
          normal[s] * faceNormals[f]
              + normal[s + 1] * faceNormals[f + 1]
              + normal[s + 2] * faceNormals[f + 2];
      tip[s / 3] |= (sector[h] < 0 ? -cosine : cosine) < leastCosine;
    }
  }

  private int index(int h) {
    return sector[h] < 0 ? ~sector[h] : sector[h];
  }

  /** Component of the normal at the corner where half-edge h starts, along an axis. */
  double at(int h, int axis) {
    int s = index(h);
    if (tip[s]) {
      return faceNormals[3 * (h / 3) + axis];
    }
    double value = normal[3 * s + axis];
    return sector[h] < 0 ? -value : value;
  }
}
