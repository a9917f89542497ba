package org.seamwright.measure;

import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Normal of the smooth surface at a vertex all of whose faces lie round it in one closed fan
 * without a sharp edge: by far the most, and quickly told. Faces are weighted so that the normal is
 * exact on any sphere (N. Max, 1999). Holds scratch: one per thread.
 */
final class FanNormal {
  /** Vertices with more faces are left to those who can walk further. */
  private static final int MOST = 64;

  /** Faces with less than this (squared sine of an angle, roughly) may be needles. */
  private static final double PERHAPS_NEEDLE = 4 * Crease.NEEDLE * Crease.NEEDLE;

  private final int[] corner;
  private final double[] p;
  private final Topology topology;
  private final SharpEdges edges;
  private final double gentle2;
  private final double sharp2;
  private final double tip2;
  private final double doubtful2;

  private final int[] out = new int[MOST];
  private final double[] spoke = new double[3 * MOST];
  private final double[] length2 = new double[MOST];
  private final double[] cross = new double[3 * MOST];
  private final double[] cross2 = new double[MOST];
  private boolean doubtful;

  /**
   * Prepares to look at vertices of a mesh.
   *
   * @param tipCosine least cosine between a face's normal and the common one
   */
  FanNormal(Mesh mesh, Topology topology, SharpEdges edges, double tipCosine) {
    this.corner = mesh.corner();
    this.p = mesh.xyz();
    this.topology = topology;
    this.edges = edges;
    this.gentle2 = square(SharpEdges.LEAST_COSINE);
    this.sharp2 = square(edges.limitCosine());
    this.doubtful2 = square(SmoothSurface.PERHAPS_CREASE_COSINE);
    this.tip2 = square(tipCosine);
  }

  private static double square(double x) {
    return x * x;
  }

  /** Whether an edge was met that turns so far that some would call it a crease. */
  boolean metDoubtful() {
    return doubtful;
  }

  /**
   * Finds the unit normal at a vertex.
   *
   * @param start one of its corners
   * @param valence how many it has
   * @param normal receives three numbers at 3 * vertex
   * @return false, and nothing written, if the vertex is of another kind
   */
  boolean find(int vertex, int start, int valence, double[] normal) {
    if (valence < 3 || valence > MOST || !gather(vertex, start, valence)) {
      return false;
    }
    double nx = 0;
    double ny = 0;
    double nz = 0;
    for (int i = 0, j = valence - 1; i < valence; j = i++) {
      // The face between spokes j and i.
      double ax = spoke[3 * j];
      double ay = spoke[3 * j + 1];
      double az = spoke[3 * j + 2];
      double bx = spoke[3 * i];
      double by = spoke[3 * i + 1];
      double bz = spoke[3 * i + 2];
      double x = ay * bz - az * by;
      double y = az * bx - ax * bz;
      double z = ax * by - ay * bx;
      double area2 = x * x + y * y + z * z;
      double sum2 = length2[i] + length2[j];
      if (!(area2 > PERHAPS_NEEDLE * sum2 * sum2)) {
        return false;
      }
      cross[3 * j] = x;
      cross[3 * j + 1] = y;
      cross[3 * j + 2] = z;
      cross2[j] = area2;
      double weight = 1 / (length2[i] * length2[j]);
      nx += weight * x;
      ny += weight * y;
      nz += weight * z;
    }
    double size2 = nx * nx + ny * ny + nz * nz;
    if (!turnsGently(valence) || !isNear(valence, nx, ny, nz, tip2 * size2)) {
      return false;
    }
    double scale = 1 / Math.sqrt(size2);
    normal[3 * vertex] = nx * scale;
    normal[3 * vertex + 1] = ny * scale;
    normal[3 * vertex + 2] = nz * scale;
    return true;
  }

  /** Notes the spokes of a closed fan of like-turned faces, counter-clockwise. */
  private boolean gather(int vertex, int start, int valence) {
    double x = p[3 * vertex];
    double y = p[3 * vertex + 1];
    double z = p[3 * vertex + 2];
    int h = start;
    for (int i = 0; i < valence; i++) {
      int third = h % 3;
      int w = 3 * corner[third == 2 ? h - 2 : h + 1];
      double dx = p[w] - x;
      double dy = p[w + 1] - y;
      double dz = p[w + 2] - z;
      out[i] = h;
      spoke[3 * i] = dx;
      spoke[3 * i + 1] = dy;
      spoke[3 * i + 2] = dz;
      length2[i] = dx * dx + dy * dy + dz * dz;
      h = topology.twin(third == 0 ? h + 2 : h - 1);
      if (h < 0 || corner[h] != vertex || (h == start && i < valence - 1)) {
        return false;
      }
    }
    return h == start;
  }

  private boolean turnsGently(int valence) {
    for (int i = 0, j = valence - 1; i < valence; j = i++) {
      // Spoke i lies between the faces j and i.
      double dot =
          cross[3 * j] * cross[3 * i]
              + cross[3 * j + 1] * cross[3 * i + 1]
              + cross[3 * j + 2] * cross[3 * i + 2];
      double product = cross2[j] * cross2[i];
      double dot2 = dot * dot;
      if (!(dot > 0 && dot2 >= gentle2 * product)) {
        if (!(dot > 0 && dot2 >= sharp2 * product)) {
          return false;
        }
        doubtful |= dot2 < doubtful2 * product;
        if (!bendsBeside(i, j, valence, product - dot2) && edges.isSharp(out[i])) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * Whether a face beside the two at a spoke turns about it by at least half the sine, which is
   * enough to call the spoke smooth.
   *
   * @param sine2 squared sine between the two faces, times both their squared sizes
   */
  private boolean bendsBeside(int i, int j, int valence, double sine2) {
    int after = i + 1 < valence ? i + 1 : 0;
    int before = j > 0 ? j - 1 : valence - 1;
    double share2 = 0.25 * sine2 * length2[i];
    return share2 * cross2[after] <= square(turn(i, after, i)) * cross2[j]
        || share2 * cross2[before] <= square(turn(before, j, i)) * cross2[i];
  }

  /** Triple product of two faces' cross products and a spoke. */
  private double turn(int a, int b, int along) {
    return (cross[3 * a + 1] * cross[3 * b + 2] - cross[3 * a + 2] * cross[3 * b + 1])
            * spoke[3 * along]
        + (cross[3 * a + 2] * cross[3 * b] - cross[3 * a] * cross[3 * b + 2]) * spoke[3 * along + 1]
        + (cross[3 * a] * cross[3 * b + 1] - cross[3 * a + 1] * cross[3 * b])
            * spoke[3 * along + 2];
  }

  private boolean isNear(int valence, double nx, double ny, double nz, double least2) {
    for (int i = 0; i < valence; i++) {
      double dot = nx * cross[3 * i] + ny * cross[3 * i + 1] + nz * cross[3 * i + 2];
      if (!(dot > 0 && dot * dot >= least2 * cross2[i])) {
        return false;
      }
    }
    return true;
  }
}
