package org.seamwright.picture;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.VertexFans;

/**
 * Normals for smooth shading that keep creases: at each corner of a face, the sum of the normals,
 * weighted by area, of those faces around the vertex whose normals lie within the crease angle of
 * the face's own.
 *
 * <p>Slivers, as cutting leaves them, have no normal to trust: they take the plain sum. Cost
 * O(faces × faces around a vertex).
 */
public final class CornerNormals {
  /** Faces meeting at more than this are shaded as an edge. Choice of this program. */
  public static final double CREASE_DEGREES = 40;

  /** Around a vertex with more faces (the tip of a fan) every face keeps its own normal. */
  private static final int LARGEST_FAN = 512;

  /** Height over longest edge below which a face's normal is mostly rounding of its corners. */
  private static final double SLIVER = 1e-4;

  private static final int BLOCK = 1 << 14;

  private CornerNormals() {}

  /** Unit normals, 3 numbers per half-edge; all zero where faces have no area. */
  public static float[] of(Mesh mesh) {
    int faces = mesh.faceCount();
    // Unit normal and area per face, kept apart.
    float[] unit = new float[3 * faces];
    float[] area = new float[faces];
    boolean[] sliver = new boolean[faces];
    Bands.ranges(
        faces,
        BLOCK,
        (from, to) -> {
          double[] n = new double[3];
          for (int f = from; f < to; f++) {
            faceNormal(mesh, f, n, unit, area, sliver);
          }
        });
    VertexFans fans = VertexFans.of(mesh);
    float[] normal = new float[9 * faces];
    float cosine = (float) Math.cos(Math.toRadians(CREASE_DEGREES));
    Bands.ranges(
        faces,
        BLOCK,
        (from, to) -> {
          for (int h = 3 * from; h < 3 * to; h++) {
            corner(mesh, fans, h, unit, area, sliver[h / 3] ? -1 : cosine, normal);
          }
        });
    return normal;
  }

  private static void faceNormal(
      Mesh mesh, int f, double[] n, float[] unit, float[] area, boolean[] sliver) {
    int a = mesh.corner()[3 * f];
    int b = mesh.corner()[3 * f + 1];
    int c = mesh.corner()[3 * f + 2];
    Faces.areaVector(mesh.xyz(), a, b, c, n);
    double twice = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    double longest =
        Math.max(
            Faces.length(mesh, a, b), Math.max(Faces.length(mesh, b, c), Faces.length(mesh, c, a)));
    sliver[f] = !(twice > SLIVER * longest * longest);
    area[f] = (float) (twice / 2);
    for (int axis = 0; axis < 3 && twice > 0; axis++) {
      unit[3 * f + axis] = (float) (n[axis] / twice);
    }
  }

  private static void corner(
      Mesh mesh, VertexFans fans, int h, float[] unit, float[] area, float least, float[] into) {
    int vertex = mesh.corner()[h];
    int own = 3 * (h / 3);
    double x = 0;
    double y = 0;
    double z = 0;
    boolean summed = fans.begin(vertex + 1) - fans.begin(vertex) <= LARGEST_FAN;
    for (int i = fans.begin(vertex); summed && i < fans.begin(vertex + 1); i++) {
      int other = fans.halfEdge(i) / 3;
      float dot =
          unit[own] * unit[3 * other]
              + unit[own + 1] * unit[3 * other + 1]
              + unit[own + 2] * unit[3 * other + 2];
      if (dot >= least || 3 * other == own) {
        x += area[other] * unit[3 * other];
        y += area[other] * unit[3 * other + 1];
        z += area[other] * unit[3 * other + 2];
      }
    }
    double length = Math.sqrt(x * x + y * y + z * z);
    if (length > 0) {
      into[3 * h] = (float) (x / length);
      into[3 * h + 1] = (float) (y / length);
      into[3 * h + 2] = (float) (z / length);
    } else {
      System.arraycopy(unit, own, into, 3 * h, 3);
    }
  }
}
