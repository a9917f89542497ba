package org.seamwright.window;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Lines on the surface where one kind of face meets another: edges of marks, seams. Each is drawn
 * as two narrow strips, one in each face, a little above the surface, so that what stands before
 * hides them. Cost: one topology of the mesh.
 *
 * @param points x, y, z per corner, about the middle of the piece, mm
 * @param faces per corner: vertex, normal (0), texture (0)
 */
record EdgeLines(float[] points, int[] faces) {
  /** Half the width of a line, as a share of the piece's diagonal. */
  private static final double HALF_WIDTH = 0.0009;

  /** Height over the surface, as a share of half the width: enough to be in front of it. */
  private static final double LIFT = 0.5;

  /** Corners of a strip. */
  private static final int STRIP = 4;

  /**
   * The lines of a surface.
   *
   * @param kind of a class: between faces of different kinds there is a line
   */
  static EdgeLines of(PieceModel model, ShownSurface surface, IntUnaryOperator kind) {
    Mesh mesh = surface.mesh();
    Topology topology = Topology.of(mesh);
    int strips = 0;
    int halfEdges = mesh.corner().length;
    boolean[] line = new boolean[halfEdges];
    for (int h = 0; h < halfEdges; h++) {
      int across = topology.faceAcross(h);
      line[h] =
          across >= 0
              && kind.applyAsInt(surface.faceClass(h / 3))
                  != kind.applyAsInt(surface.faceClass(across));
      strips += line[h] ? 1 : 0;
    }
    float[] points = new float[3 * STRIP * strips];
    int[] faces = new int[18 * strips];
    double half = HALF_WIDTH * model.bounds().diagonal();
    int strip = 0;
    for (int h = 0; h < halfEdges; h++) {
      if (line[h]) {
        strip(mesh, model.centre(), h, half, points, 3 * STRIP * strip);
        int v = STRIP * strip;
        int[] corners = {v, v + 1, v + 2, v, v + 2, v + 3};
        for (int k = 0; k < corners.length; k++) {
          faces[18 * strip + 3 * k] = corners[k];
        }
        strip++;
      }
    }
    return new EdgeLines(points, faces);
  }

  /** Writes the four corners of a strip from a half-edge into its face. */
  private static void strip(
      Mesh mesh, double[] centre, int h, double half, float[] points, int at) {
    double[] n = new double[3];
    Faces.normal(mesh, h / 3, n);
    double[] p = mesh.xyz();
    int a = 3 * mesh.corner()[h];
    int b = 3 * mesh.corner()[Topology.next(h)];
    double[] d = {p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]};
    double length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    double s = length > 0 ? half / length : 0;
    // Square to the edge within the face, pointing into it: faces turn counter-clockwise.
    double[] in = {
      s * (n[1] * d[2] - n[2] * d[1]),
      s * (n[2] * d[0] - n[0] * d[2]),
      s * (n[0] * d[1] - n[1] * d[0])
    };
    for (int axis = 0; axis < 3; axis++) {
      double up = LIFT * half * n[axis] - centre[axis];
      points[at + axis] = (float) (p[a + axis] + up);
      points[at + 3 + axis] = (float) (p[b + axis] + up);
      points[at + 6 + axis] = (float) (p[b + axis] + in[axis] + up);
      points[at + 9 + axis] = (float) (p[a + axis] + in[axis] + up);
    }
  }

  /** These lines and others. */
  EdgeLines with(EdgeLines more) {
    float[] allPoints = Arrays.copyOf(points, points.length + more.points.length);
    System.arraycopy(more.points, 0, allPoints, points.length, more.points.length);
    int[] allFaces = Arrays.copyOf(faces, faces.length + more.faces.length);
    for (int i = 0; i < more.faces.length; i++) {
      allFaces[faces.length + i] = more.faces[i] + (i % 3 == 0 ? points.length / 3 : 0);
    }
    return new EdgeLines(allPoints, allFaces);
  }

  boolean isEmpty() {
    return faces.length == 0;
  }
}
