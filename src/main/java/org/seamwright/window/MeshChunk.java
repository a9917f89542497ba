package org.seamwright.window;

import org.seamwright.mesh.Mesh;

/**
 * Part of what is shown in the arrays that the graphics library draws, in single precision about
 * the middle of the piece.
 *
 * <p>Shading normals come from the piece before it was cut, by the place of each corner on its
 * face, so that cutting along marks and seams leaves no trace in the light.
 *
 * @param points x, y, z per corner, mm
 * @param normals x, y, z per corner of a face
 * @param faces per corner: vertex, normal, class of the face
 */
record MeshChunk(float[] points, float[] normals, int[] faces) {
  /** The parts that faces of a chunk have been cut into. */
  static MeshChunk of(PieceModel model, ShownSurface surface, int chunk) {
    int[] pieceFaces = model.chunk(chunk);
    int parts = 0;
    for (int f : pieceFaces) {
      parts += surface.parts(f);
    }
    Mesh mesh = surface.mesh();
    double[] xyz = mesh.xyz();
    double[] centre = model.centre();
    float[] points = new float[9 * parts];
    float[] normals = new float[9 * parts];
    int[] faces = new int[9 * parts];
    int corner = 0;
    for (int pieceFace : pieceFaces) {
      for (int i = 0; i < surface.parts(pieceFace); i++) {
        int f = surface.part(pieceFace, i);
        for (int k = 0; k < 3; k++) {
          int v = 3 * mesh.corner()[3 * f + k];
          for (int axis = 0; axis < 3; axis++) {
            points[3 * corner + axis] = (float) (xyz[v + axis] - centre[axis]);
          }
          model.shading().at(pieceFace, xyz[v], xyz[v + 1], xyz[v + 2], normals, 3 * corner);
          faces[3 * corner] = corner;
          faces[3 * corner + 1] = corner;
          faces[3 * corner + 2] = surface.faceClass(f);
          corner++;
        }
      }
    }
    return new MeshChunk(points, normals, faces);
  }

  /** Whether nothing is left of the chunk. */
  boolean isEmpty() {
    return faces.length == 0;
  }
}
