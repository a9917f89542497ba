package org.seamwright.window;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Mesh;

/**
 * Part of the piece in the arrays that the graphics library draws, in single precision about the
 * middle of the piece.
 *
 * <p>Shading normals come from the piece as read, by the place of each corner on its parent face,
 * so that cutting along marks and seams leaves no trace in the light.
 *
 * @param points x, y, z per vertex, mm
 * @param normals x, y, z per corner of a face
 * @param faces per corner: vertex, normal, class of the face
 */
record MeshChunk(float[] points, float[] normals, int[] faces) {
  /** Faces per chunk: few nodes for a large piece, small enough to hand over between two frames. */
  static final int FACES = 1 << 15;

  /** Splits the section plan's mesh, in face order. */
  static List<MeshChunk> of(
      PlannedJob job, double[] centre, CornerNormals shading, int[] faceClass) {
    Mesh mesh = job.sections().mesh();
    int[] local = new int[mesh.vertexCount()];
    List<MeshChunk> chunks = new ArrayList<>();
    for (int from = 0; from < mesh.faceCount(); from += FACES) {
      int to = Math.min(mesh.faceCount(), from + FACES);
      chunks.add(chunk(job, centre, shading, faceClass, local, from, to));
    }
    return chunks;
  }

  private static MeshChunk chunk(
      PlannedJob job,
      double[] centre,
      CornerNormals shading,
      int[] faceClass,
      int[] local,
      int from,
      int to) {
    Mesh mesh = job.sections().mesh();
    double[] xyz = mesh.xyz();
    Arrays.fill(local, -1);
    float[] points = new float[9 * (to - from)];
    float[] normals = new float[9 * (to - from)];
    int[] faces = new int[9 * (to - from)];
    int vertices = 0;
    for (int f = from; f < to; f++) {
      int origin = job.map().parentFace()[job.sections().parentFace()[f]];
      for (int k = 0; k < 3; k++) {
        int corner = 3 * (f - from) + k;
        int v = mesh.corner()[3 * f + k];
        if (local[v] < 0) {
          local[v] = vertices++;
          for (int axis = 0; axis < 3; axis++) {
            points[3 * local[v] + axis] = (float) (xyz[3 * v + axis] - centre[axis]);
          }
        }
        shading.at(origin, xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2], normals, 3 * corner);
        faces[3 * corner] = local[v];
        faces[3 * corner + 1] = corner;
        faces[3 * corner + 2] = faceClass[f];
      }
    }
    return new MeshChunk(Arrays.copyOf(points, 3 * vertices), normals, faces);
  }
}
