package org.seamwright.mask;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamwright.geodesic.BoundaryLines;
import org.seamwright.mesh.Mesh;

/** Border lines as coordinates. */
final class MaskLines {
  private MaskLines() {}

  /** Takes lines over, longest first. */
  static List<MaskEdge> of(Mesh mesh, List<BoundaryLines.Line> lines) {
    List<MaskEdge> edges = new ArrayList<>();
    for (BoundaryLines.Line line : lines) {
      double[] points = new double[3 * line.vertices().length];
      for (int i = 0; i < line.vertices().length; i++) {
        System.arraycopy(mesh.xyz(), 3 * line.vertices()[i], points, 3 * i, 3);
      }
      edges.add(new MaskEdge(points, line.closed(), line.lengthMm(mesh)));
    }
    edges.sort(Comparator.comparingDouble(MaskEdge::lengthMm).reversed());
    return List.copyOf(edges);
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
