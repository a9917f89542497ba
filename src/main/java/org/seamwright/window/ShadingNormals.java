package org.seamwright.window;

import org.seamwright.mesh.Mesh;
import org.seamwright.picture.CornerNormals;

/**
 * Normals for shading at any place on a face, between those of its corners, which are the ones that
 * the printed pictures have: smooth across gentle edges, sharp across creases. Belongs to one
 * thread.
 */
final class ShadingNormals {
  private final Mesh mesh;

  /** Nine numbers per face: x, y, z for each corner. */
  private final float[] normal;

  /** Scratch of {@link #weights}. */
  private final double[] weight = new double[3];

  private ShadingNormals(Mesh mesh, float[] normal) {
    this.mesh = mesh;
    this.normal = normal;
  }

  /** Computes the normals of a mesh. */
  static ShadingNormals of(Mesh mesh) {
    return new ShadingNormals(mesh, CornerNormals.of(mesh));
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
