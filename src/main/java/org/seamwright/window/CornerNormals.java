package org.seamwright.window;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Normals for shading, one per corner of a face: smooth across gentle edges, sharp across creases.
 *
 * <p>A corner's normal is the mean, weighted by angle at the vertex, of the normals of those faces
 * around the vertex that lean away from its own face by less than the crease angle. Needs no edges,
 * so any soup will do. Cost O(n) for the usual six faces around a vertex. Belongs to one thread.
 *
 * <p>Weights: G. Thürmer and C. Wüthrich, "Computing vertex normals from polygonal facets", Journal
 * of Graphics Tools 3(1), 1998.
 */
final class CornerNormals {
  /** Faces that lean apart by more show an edge; machined edges do, tessellated curves do not. */
  static final double CREASE_DEGREES = 38;

  /** Around a vertex with more faces (the tip of a fan) every face keeps its own normal. */
  private static final int LARGEST_FAN = 512;

  private final Mesh mesh;

  /** Nine numbers per face: x, y, z for each corner. */
  private final float[] normal;

  /** Scratch of {@link #weights}. */
  private final double[] weight = new double[3];

  private CornerNormals(Mesh mesh, float[] normal) {
    this.mesh = mesh;
    this.normal = normal;
  }

  /** Computes the normals of a mesh. */
  static CornerNormals of(Mesh mesh) {
    int faces = mesh.faceCount();
    double[] own = new double[3 * faces];
    double[] n = new double[3];
    for (int f = 0; f < faces; f++) {
      Faces.normal(mesh, f, n);
      System.arraycopy(n, 0, own, 3 * f, 3);
    }
    double[] angle = new double[3 * faces];
    for (int h = 0; h < angle.length; h++) {
      angle[h] = angleAt(mesh, h);
    }
    VertexFans fans = VertexFans.of(mesh);
    float[] normal = new float[9 * faces];
    double cosCrease = Math.cos(Math.toRadians(CREASE_DEGREES));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
        int h = fans.halfEdge(i);
        sumFan(fans, v, h, own, angle, cosCrease, n);
        store(n, own, h / 3, normal, 3 * h);
      }
    }
    return new CornerNormals(mesh, normal);
  }

  private static void sumFan(
      VertexFans fans, int v, int h, double[] own, double[] angle, double cosCrease, double[] n) {
    int f = 3 * (h / 3);
    n[0] = 0;
    n[1] = 0;
    n[2] = 0;
    if (fans.begin(v + 1) - fans.begin(v) > LARGEST_FAN) {
      return;
    }
    for (int j = fans.begin(v); j < fans.begin(v + 1); j++) {
      int other = fans.halfEdge(j);
      int g = 3 * (other / 3);
      double cos = own[f] * own[g] + own[f + 1] * own[g + 1] + own[f + 2] * own[g + 2];
      if (cos > cosCrease) {
        n[0] += angle[other] * own[g];
        n[1] += angle[other] * own[g + 1];
        n[2] += angle[other] * own[g + 2];
      }
    }
  }

  /** Writes the sum as a unit vector; the face's own normal where there is no sum. */
  private static void store(double[] n, double[] own, int face, float[] normal, int at) {
    double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    for (int axis = 0; axis < 3; axis++) {
      normal[at + axis] = (float) (length > 0 ? n[axis] / length : own[3 * face + axis]);
    }
  }

  private static double angleAt(Mesh mesh, int h) {
    int[] corner = mesh.corner();
    double[] p = mesh.xyz();
    int a = 3 * corner[h];
    int b = 3 * corner[Topology.next(h)];
    int c = 3 * corner[Topology.prev(h)];
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double cx = uy * vz - uz * vy;
    double cy = uz * vx - ux * vz;
    double cz = ux * vy - uy * vx;
    return Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ux * vx + uy * vy + uz * vz);
  }

  /**
   * The normal at a place on a face, of length 1 unless the corners' normals cancel.
   *
   * @param into receives x, y, z from index {@code offset}
   */
  void at(int face, double px, double py, double pz, float[] into, int offset) {
    weights(face, px, py, pz);
    int f = 9 * face;
    double x = 0;
    double y = 0;
    double z = 0;
    for (int k = 0; k < 3; k++) {
      x += weight[k] * normal[f + 3 * k];
      y += weight[k] * normal[f + 3 * k + 1];
      z += weight[k] * normal[f + 3 * k + 2];
    }
    double length = Math.sqrt(x * x + y * y + z * z);
    double scale = length > 0 ? 1 / length : 0;
    into[offset] = (float) (x * scale);
    into[offset + 1] = (float) (y * scale);
    into[offset + 2] = (float) (z * scale);
  }

  /** Barycentric weights of a place on a face, kept within the face; equal ones on a sliver. */
  private void weights(int face, double px, double py, double pz) {
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[3 * face];
    int b = 3 * mesh.corner()[3 * face + 1];
    int c = 3 * mesh.corner()[3 * face + 2];
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double wx = px - p[a];
    double wy = py - p[a + 1];
    double wz = pz - p[a + 2];
    double uu = ux * ux + uy * uy + uz * uz;
    double uv = ux * vx + uy * vy + uz * vz;
    double vv = vx * vx + vy * vy + vz * vz;
    double wu = wx * ux + wy * uy + wz * uz;
    double wv = wx * vx + wy * vy + wz * vz;
    double d = uu * vv - uv * uv;
    if (!(d > 0)) {
      weight[0] = 1;
      weight[1] = 1;
      weight[2] = 1;
      return;
    }
    weight[1] = Math.max(0, (vv * wu - uv * wv) / d);
    weight[2] = Math.max(0, (uu * wv - uv * wu) / d);
    weight[0] = Math.max(0, 1 - weight[1] - weight[2]);
  }
}
