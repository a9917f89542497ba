package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamwright.geodesic.BoundaryLines;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/** Border lines as coordinates. */
final class MaskLines {
  private MaskLines() {}

  /**
   * Takes lines over, longest first.
   *
   * @param bare how many faces, the first of the mesh, lie on the bare side
   */
  static List<MaskEdge> of(Mesh mesh, List<BoundaryLines.Line> lines, int bare) {
    double[] normals = normals(mesh, bare);
    List<MaskEdge> edges = new ArrayList<>();
    for (BoundaryLines.Line line : lines) {
      double[] points = new double[3 * line.vertices().length];
      double[] beside = new double[points.length];
      for (int i = 0; i < line.vertices().length; i++) {
        System.arraycopy(mesh.xyz(), 3 * line.vertices()[i], points, 3 * i, 3);
        System.arraycopy(normals, 3 * line.vertices()[i], beside, 3 * i, 3);
      }
      edges.add(new MaskEdge(points, line.closed(), line.lengthMm(mesh), beside));
    }
    edges.sort(Comparator.comparingDouble(MaskEdge::lengthMm).reversed());
    return List.copyOf(edges);
  }

  /** Unit normals of the vertices, each face counting with its area; 0 away from those faces. */
  private static double[] normals(Mesh mesh, int faces) {
    double[] normals = new double[3 * mesh.vertexCount()];
    double[] vector = new double[3];
    for (int f = 0; f < faces; f++) {
      int[] corner = mesh.corner();
      Faces.areaVector(mesh.xyz(), corner[3 * f], corner[3 * f + 1], corner[3 * f + 2], vector);
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        for (int axis = 0; axis < 3; axis++) {
          normals[3 * corner[h] + axis] += vector[axis];
        }
      }
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double length =
          Math.sqrt(
              normals[3 * v] * normals[3 * v]
                  + normals[3 * v + 1] * normals[3 * v + 1]
                  + normals[3 * v + 2] * normals[3 * v + 2]);
      for (int axis = 0; axis < 3 && length > 0; axis++) {
        normals[3 * v + axis] /= length;
      }
    }
    return normals;
  }

  /** The place half-way along the first line: x, y, z in mm. */
  static double[] middle(List<MaskEdge> edges) {
    MaskEdge edge = edges.get(0);
    double[] p = edge.points();
    int points = p.length / 3;
    double left = edge.lengthMm() / 2;
    for (int i = 0; i < points; i++) {
      int j = (i + 1) % points;
      double dx = p[3 * j] - p[3 * i];
      double dy = p[3 * j + 1] - p[3 * i + 1];
      double dz = p[3 * j + 2] - p[3 * i + 2];
      double step = Math.sqrt(dx * dx + dy * dy + dz * dz);
      if (step >= left && step > 0) {
        double share = left / step;
        return new double[] {
          p[3 * i] + share * dx, p[3 * i + 1] + share * dy, p[3 * i + 2] + share * dz
        };
      }
      left -= step;
    }
    return new double[] {p[0], p[1], p[2]};
  }
}
