package org.seamwright.section;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Areas of cells and lengths of their borders, with borders drawn straight through triangles where
 * the linearly interpolated keys of two cells are equal: what a cut along them would give, without
 * cutting. Cost O(n).
 *
 * @param areaMm2 one entry per cell
 * @param borders which cells meet, and along which length
 */
record CellMeasure(double[] areaMm2, Borders borders) {
  /** Wavefronts that run side by side leave their border undecided; no step relies on that. */
  private static final double LEAST_SLOPE = 0.2;

  /** Measures the cells of a spread. */
  static CellMeasure of(Surface surface, CellKeys distances, int cells) {
    return of(surface, distances, cells, new int[0], new int[0]);
  }

  /**
   * Measures cells of which some meet along edges of the mesh.
   *
   * @param line half-edges whose ends are both ties
   * @param across one entry per entry of {@code line}: the half-edge on the other side
   */
  static CellMeasure of(Surface surface, CellKeys distances, int cells, int[] line, int[] across) {
    Measurer measurer = new Measurer(surface, distances, cells);
    for (int i = 0; i < line.length; i++) {
      int a = measurer.tied(line[i] / 3);
      int b = measurer.tied(across[i] / 3);
      if (a != b) {
        int[] corner = surface.mesh().corner();
        double length =
            Faces.length(surface.mesh(), corner[line[i]], corner[Topology.next(line[i])]);
        measurer.borders.add(a, b, length, 0);
      }
    }
    for (int f = 0; f < surface.mesh().faceCount(); f++) {
      measurer.face(f);
    }
    return new CellMeasure(measurer.area, measurer.borders.build());
  }

  private static final class Measurer {
    final double[] area;
    final Borders.Builder borders = new Borders.Builder();
    private final Mesh mesh;
    private final double[] faceArea;
    private final CellKeys distances;

    Measurer(Surface surface, CellKeys distances, int cells) {
      this.mesh = surface.mesh();
      this.faceArea = surface.areaMm2();
      this.distances = distances;
      this.area = new double[cells];
    }

    void face(int f) {
      int[] corner = mesh.corner();
      int u = corner[3 * f];
      int v = corner[3 * f + 1];
      int w = corner[3 * f + 2];
      if (v == w) {
        strip(f, u, v);
        return;
      }
      int a = distances.cell(u);
      int b = distances.cell(v);
      int c = distances.cell(w);
      if (a == b && b == c) {
        if (a != CellKeys.NONE) {
          area[a == CellKeys.TIE ? distances.tiedFace(f) : a] += faceArea[f];
        }
      } else if (a == CellKeys.TIE || b == CellKeys.TIE || c == CellKeys.TIE) {
        beside(f, u, v, w);
      } else if (a < 0 || b < 0 || c < 0) {
        throw new IllegalStateException("A cell ends inside face " + f + " of its component");
      } else if (b == c) {
        corner(f, u, v, w);
      } else if (c == a) {
        corner(f, v, w, u);
      } else if (a == b) {
        corner(f, w, u, v);
      } else {
        three(f, u, v, w);
      }
    }

    /** Face whose corner u alone is of another cell than v and w. */
    private void corner(int f, int u, int v, int w) {
      double tv = crossing(u, v);
      double tw = crossing(u, w);
      int own = distances.cell(u);
      int other = distances.cell(v);
      area[own] += tv * tw * faceArea[f];
      area[other] += (1 - tv * tw) * faceArea[f];
      border(u, v, w, own, other, apart(u, v, w, 1 - tv, tv, 0, 1 - tw, 0, tw));
    }

    /** Cell of a face with two ties: that of its third corner. */
    int tied(int f) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        int cell = distances.cell(mesh.corner()[h]);
        if (cell != CellKeys.TIE) {
          return cell;
        }
      }
      return distances.tiedFace(f);
    }

    /** Face with ties among its corners, but not all: they go with the others. */
    private void beside(int f, int u, int v, int w) {
      if (distances.cell(u) == CellKeys.TIE) {
        beside(f, u, v, w, tied(f));
      } else if (distances.cell(v) == CellKeys.TIE) {
        beside(f, v, w, u, tied(f));
      } else {
        beside(f, w, u, v, tied(f));
      }
    }

    /** Corner u is a tie; if v and w are of two cells the border runs from u to between them. */
    private void beside(int f, int u, int v, int w, int cell) {
      int b = distances.cell(v);
      int c = distances.cell(w);
      if (b == CellKeys.TIE || c == CellKeys.TIE || b == c) {
        area[cell] += faceArea[f];
        return;
      }
      double at = crossing(v, w);
      area[b] += at * faceArea[f];
      area[c] += (1 - at) * faceArea[f];
      double step =
          Math.abs(
              distances.key(v, b)
                  - distances.key(v, c)
                  - distances.key(w, b)
                  + distances.key(w, c));
      double steep = Math.max(step, LEAST_SLOPE * Faces.length(mesh, v, w));
      double response = steep > 0 ? faceArea[f] / steep : 0;
      borders.add(b, c, apart(u, v, w, 1, 0, 0, 0, 1 - at, at), response);
    }

    /** Face without extent that stands for a strip from u to v, as wide as its area asks for. */
    private void strip(int f, int u, int v) {
      int own = distances.cell(u);
      int other = distances.cell(v);
      double at = own == other ? 1 : crossing(u, v);
      area[own] += at * faceArea[f];
      area[other] += (1 - at) * faceArea[f];
      double length = Faces.length(mesh, u, v);
      if (own != other && length > 0) {
        double width = faceArea[f] / length;
        double change =
            distances.key(u, own)
                - distances.key(u, other)
                - distances.key(v, own)
                + distances.key(v, other);
        double slope = Math.abs(change) / length;
        borders.add(own, other, width, width / Math.max(LEAST_SLOPE, slope));
      }
    }

    private void three(int f, int u, int v, int w) {
      int a = distances.cell(u);
      int b = distances.cell(v);
      int c = distances.cell(w);
      double uv = crossing(u, v);
      double vw = crossing(v, w);
      double wu = crossing(w, u);
      // Where the three keys are equal, or else the middle of the three crossings.
      double[] at = meeting(u, v, w, a, b, c);
      if (at == null) {
        at = new double[] {(1 - uv + wu) / 3, (uv + 1 - vw) / 3, (vw + 1 - wu) / 3};
      }
      // Each cell has the quadrilateral corner, crossing, meeting point, crossing.
      area[a] += (uv * at[2] + (1 - wu) * at[1]) * faceArea[f];
      area[b] += (vw * at[0] + (1 - uv) * at[2]) * faceArea[f];
      area[c] += (wu * at[1] + (1 - vw) * at[0]) * faceArea[f];
      border(u, v, w, a, b, apart(u, v, w, at[0], at[1], at[2], 1 - uv, uv, 0));
      border(u, v, w, b, c, apart(u, v, w, at[0], at[1], at[2], 0, 1 - vw, vw));
      border(u, v, w, c, a, apart(u, v, w, at[0], at[1], at[2], wu, 0, 1 - wu));
    }

    private void border(int u, int v, int w, int a, int b, double lengthMm) {
      double slope =
          slope(
              u,
              v,
              w,
              distances.key(u, a) - distances.key(u, b),
              distances.key(v, a) - distances.key(v, b),
              distances.key(w, a) - distances.key(w, b));
      borders.add(a, b, lengthMm, lengthMm / Math.max(LEAST_SLOPE, slope));
    }

    /** Length of the gradient of the linear function with values fu, fv, fw at the corners. */
    private double slope(int u, int v, int w, double fu, double fv, double fw) {
      double[] p = mesh.xyz();
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double pu = p[3 * u + axis];
        double pv = p[3 * v + axis];
        double pw = p[3 * w + axis];
        double d = fu * (pw - pv) + fv * (pu - pw) + fw * (pv - pu);
        sum += d * d;
      }
      return Math.sqrt(sum) / (2 * Faces.area(p, u, v, w));
    }

    /** Share of the way from u to v at which their two cells meet. */
    private double crossing(int u, int v) {
      int a = distances.cell(u);
      int b = distances.cell(v);
      double atU = distances.key(u, b) - distances.key(u, a);
      double atV = distances.key(v, a) - distances.key(v, b);
      double sum = atU + atV;
      return sum > 0 ? atU / sum : 0.5;
    }

    /** Barycentric weights of the point where three keys are equal; null if it lies outside. */
    private double[] meeting(int u, int v, int w, int a, int b, int c) {
      double pu = distances.key(u, a) - distances.key(u, b);
      double pv = distances.key(v, a) - distances.key(v, b);
      double pw = distances.key(w, a) - distances.key(w, b);
      double qu = distances.key(u, a) - distances.key(u, c);
      double qv = distances.key(v, a) - distances.key(v, c);
      double qw = distances.key(w, a) - distances.key(w, c);
      double x = pv * qw - pw * qv;
      double y = pw * qu - pu * qw;
      double z = pu * qv - pv * qu;
      double sum = x + y + z;
      x /= sum;
      y /= sum;
      z /= sum;
      return x >= 0 && y >= 0 && z >= 0 ? new double[] {x, y, z} : null;
    }

    private double apart(
        int u, int v, int w, double u1, double v1, double w1, double u2, double v2, double w2) {
      double[] p = mesh.xyz();
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d =
            (u1 - u2) * p[3 * u + axis] + (v1 - v2) * p[3 * v + axis] + (w1 - w2) * p[3 * w + axis];
        sum += d * d;
      }
      return Math.sqrt(sum);
    }
  }
}
