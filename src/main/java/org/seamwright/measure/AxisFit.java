package org.seamwright.measure;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Finds the line that the normals of a surface meet, or come nearest to meeting.
 *
 * <p>A normal through q along n meets the line of direction a and moment b where a · (q × n) + b ·
 * n = 0; the sum of squares over the surface is least for an eigenvector of a 3 by 3 matrix left
 * when b is eliminated. Source: H. Pottmann and T. Randrup, "Rotational and helical surface
 * approximation for reverse engineering", Computing 60 (1998). Repeated with weights that fall off
 * with the angle (S. Geman and D. McClure, "Statistical methods for tomographic image
 * reconstruction", 1987), so that spokes, handles and lettering lose their say.
 */
final class AxisFit {
  /** Sines of the angle at which a normal has lost three quarters of its say, pass by pass. */
  private static final double[] SCALES = {0.7, 0.5, 0.35, 0.25, 0.18, 0.12, 0.09, 0.06, 0.06, 0.06};

  /** For the last passes; wide at first, so that coarse facets settle evenly round the line. */
  private static final double[] LAST_SCALES = {0.35, 0.35, 0.2, 0.2, 0.12, 0.12, 0.08, 0.08};

  /** Eigenvalues below this share of the largest say nothing: far above rounding. */
  private static final double NOTHING = 1e-9;

  /** A line. */
  record Line(Vector3D point, Vector3D direction) {}

  private final Oriented surface;
  private final double[] weight;
  private final double[] centre = new double[3];
  private double size;

  AxisFit(Oriented surface) {
    this.surface = surface;
    this.weight = surface.weight().clone();
  }

  /** Lines to begin with: those of the unweighted fit, and the axes of inertia and of normals. */
  List<Line> starts() {
    List<Line> starts = new ArrayList<>(solve());
    Vector3D middle = Vector3D.of(centre);
    double[][] inertia = new double[3][3];
    double[][] normals = new double[3][3];
    for (int i = 0; i < surface.count(); i++) {
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 3; k++) {
          double[] p = surface.xyz();
          double[] n = surface.normal();
          inertia[j][k] +=
              weight[i] * (p[3 * i + j] - centre[j]) * (p[3 * i + k] - centre[k]) / (size * size);
          normals[j][k] += weight[i] * n[3 * i + j] * n[3 * i + k];
        }
      }
    }
    for (SymmetricEigen eigen : List.of(new SymmetricEigen(inertia), new SymmetricEigen(normals))) {
      for (int i = 0; i < 3; i++) {
        starts.add(new Line(middle, Vector3D.of(eigen.vector(i))));
      }
    }
    return starts;
  }

  /** Follows a start to the line near it that most of the surface agrees on. */
  Line follow(Line start) {
    return follow(start, SCALES);
  }

  /** Makes a line that is nearly right exact. */
  Line refine(Line near) {
    return follow(near, LAST_SCALES);
  }

  private Line follow(Line start, double[] scales) {
    Line line = start;
    for (double scale : scales) {
      for (int i = 0; i < weight.length; i++) {
        double d = sine(line, i) / scale;
        double say = 1 / (1 + d * d);
        weight[i] = surface.weight()[i] * say * say;
      }
      Line before = line;
      // Of the three stationary lines the one most like the last: others belong to other shapes.
      line =
          solve().stream()
              .max(
                  (a, b) ->
                      Double.compare(
                          Math.abs(a.direction().dot(before.direction())),
                          Math.abs(b.direction().dot(before.direction()))))
              .orElseThrow();
    }
    return line;
  }

  /** Sine of the angle between a normal and the plane through the line and its place. */
  double sine(Line line, int i) {
    Vector3D a = line.direction();
    double[] p = surface.xyz();
    double[] n = surface.normal();
    double x = p[3 * i] - line.point().getX();
    double y = p[3 * i + 1] - line.point().getY();
    double z = p[3 * i + 2] - line.point().getZ();
    double tx = a.getY() * z - a.getZ() * y;
    double ty = a.getZ() * x - a.getX() * z;
    double tz = a.getX() * y - a.getY() * x;
    double radius = Math.sqrt(tx * tx + ty * ty + tz * tz);
    return radius == 0
        ? 0
        : Math.abs(tx * n[3 * i] + ty * n[3 * i + 1] + tz * n[3 * i + 2]) / radius;
  }

  /** Sine of the angle between a normal and the line: how much it says of where the line is. */
  double steepness(Line line, int i) {
    double[] n = surface.normal();
    Vector3D normal = Vector3D.of(n[3 * i], n[3 * i + 1], n[3 * i + 2]);
    return normal.cross(line.direction()).norm();
  }

  /** The three stationary lines of the weighted fit, the best first. */
  private List<Line> solve() {
    frame();
    double[][] nn = new double[3][3];
    double[][] nm = new double[3][3];
    double[][] mm = new double[3][3];
    double[] n = new double[3];
    double[] q = new double[3];
    for (int i = 0; i < weight.length; i++) {
      for (int k = 0; k < 3; k++) {
        n[k] = surface.normal()[3 * i + k];
        q[k] = (surface.xyz()[3 * i + k] - centre[k]) / size;
      }
      double[] m = {
        q[1] * n[2] - q[2] * n[1], q[2] * n[0] - q[0] * n[2], q[0] * n[1] - q[1] * n[0]
      };
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 3; k++) {
          nn[j][k] += weight[i] * n[j] * n[k];
          nm[j][k] += weight[i] * n[j] * m[k];
          mm[j][k] += weight[i] * m[j] * m[k];
        }
      }
    }
    SymmetricEigen normals = new SymmetricEigen(nn);
    // Column k of the moments that go with direction k: b = -nn⁺ nm a.
    double[][] moment = new double[3][];
    double[][] rest = {mm[0].clone(), mm[1].clone(), mm[2].clone()};
    for (int k = 0; k < 3; k++) {
      moment[k] = normals.solve(new double[] {-nm[0][k], -nm[1][k], -nm[2][k]}, NOTHING);
      for (int j = 0; j < 3; j++) {
        rest[j][k] += nm[0][j] * moment[k][0] + nm[1][j] * moment[k][1] + nm[2][j] * moment[k][2];
      }
    }
    SymmetricEigen eigen = new SymmetricEigen(rest);
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      Vector3D a = Vector3D.of(eigen.vector(i));
      double[] b = new double[3];
      for (int k = 0; k < 3; k++) {
        for (int j = 0; j < 3; j++) {
          b[j] += moment[k][j] * eigen.vector(i)[k];
        }
      }
      Vector3D nearest = a.cross(Vector3D.of(b)).multiply(size);
      lines.add(new Line(Vector3D.of(centre).add(nearest), a));
    }
    return lines;
  }

  /** Middle and size, so that figures are near 1 wherever the piece lies. */
  private void frame() {
    double sum = 0;
    double[] mean = new double[3];
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i];
      for (int k = 0; k < 3; k++) {
        mean[k] += weight[i] * (surface.xyz()[3 * i + k] - surface.xyz()[k]);
      }
    }
    double square = 0;
    for (int k = 0; k < 3; k++) {
      centre[k] = surface.xyz()[k] + mean[k] / sum;
    }
    for (int i = 0; i < weight.length; i++) {
      for (int k = 0; k < 3; k++) {
        double d = surface.xyz()[3 * i + k] - centre[k];
        square += weight[i] * d * d;
      }
    }
    size = Math.sqrt(square / sum);
  }

  /** The point that all normals come nearest to: the centre, if this is a sphere. */
  Vector3D hub() {
    double[][] matrix = new double[3][3];
    double[] right = new double[3];
    frame();
    for (int i = 0; i < weight.length; i++) {
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 3; k++) {
          double[] n = surface.normal();
          double across = (j == k ? 1 : 0) - n[3 * i + j] * n[3 * i + k];
          matrix[j][k] += weight[i] * across;
          right[j] += weight[i] * across * (surface.xyz()[3 * i + k] - centre[k]);
        }
      }
    }
    return Vector3D.of(centre).add(Vector3D.of(new SymmetricEigen(matrix).solve(right, NOTHING)));
  }
}
