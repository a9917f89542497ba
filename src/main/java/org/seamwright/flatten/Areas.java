package org.seamwright.flatten;

import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/** Fields over a sheet weighted by area. */
final class Areas {
  private Areas() {}

  /** A third of the area of the faces round each vertex, mm². */
  static double[] ofVertices(Mesh sheet) {
    double[] area = new double[sheet.vertexCount()];
    for (int f = 0; f < sheet.faceCount(); f++) {
      double third = Faces.area(sheet, f) / 3;
      for (int k = 0; k < 3; k++) {
        area[sheet.corner()[3 * f + k]] += third;
      }
    }
    return area;
  }

  static double mean(Mesh sheet, double[] field) {
    double[] area = ofVertices(sheet);
    double sum = 0;
    double total = 0;
    for (int v = 0; v < area.length; v++) {
      sum += area[v] * field[v];
      total += area[v];
    }
    return sum / total;
  }

  /** The value below which a share of the area lies. */
  static double quantile(Mesh sheet, double[] field, double share) {
    double[] area = ofVertices(sheet);
    double total = 0;
    Integer[] order = new Integer[field.length];
    for (int v = 0; v < order.length; v++) {
      order[v] = v;
      total += area[v];
    }
    Arrays.sort(order, (a, b) -> Double.compare(field[a], field[b]));
    double left = share * total;
    int i = 0;
    while (i < order.length - 1 && left >= area[order[i]]) {
      left -= area[order[i++]];
    }
    // Between two vertices, so that the line does not run along edges for no reason.
    return i + 1 < order.length ? (field[order[i]] + field[order[i + 1]]) / 2 : field[order[i]];
  }
}
