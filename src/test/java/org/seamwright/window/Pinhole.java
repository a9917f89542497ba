package org.seamwright.window;

import org.seamwright.mesh.Mesh;

/**
 * A camera and a ray test written a second time, with sines and cosines and over every face, to
 * hold the window's own against.
 */
final class Pinhole {
  private Pinhole() {}

  /** Right, up and ahead of a viewer on a turntable about z, 3 numbers each. */
  static double[][] axes(double azimuthDegrees, double elevationDegrees) {
    double a = Math.toRadians(azimuthDegrees);
    double e = Math.toRadians(elevationDegrees);
    return new double[][] {
      {Math.cos(a), Math.sin(a), 0},
      {-Math.sin(a) * Math.sin(e), Math.cos(a) * Math.sin(e), Math.cos(e)},
      {-Math.sin(a) * Math.cos(e), Math.cos(a) * Math.cos(e), -Math.sin(e)}
    };
  }

  /** Origin and unit direction of the ray through a pixel. */
  static double[] ray(OrbitCamera.Pose pose, double width, double height, double px, double py) {
    double[][] axes = axes(pose.azimuthDegrees(), pose.elevationDegrees());
    double[] target = {pose.x(), pose.y(), pose.z()};
    double tan = Math.tan(Math.toRadians(OrbitCamera.FIELD_OF_VIEW_DEGREES) / 2);
    double r = (px - width / 2) / (height / 2) * tan;
    double u = (height / 2 - py) / (height / 2) * tan;
    double norm = Math.sqrt(1 + r * r + u * u);
    double[] ray = new double[6];
    for (int i = 0; i < 3; i++) {
      ray[i] = target[i] - pose.distance() * axes[2][i];
      ray[3 + i] = (axes[2][i] + r * axes[0][i] + u * axes[1][i]) / norm;
    }
    return ray;
  }

  /** The pixel of a point. */
  static double[] pixel(
      OrbitCamera.Pose pose, double width, double height, double x, double y, double z) {
    double[][] axes = axes(pose.azimuthDegrees(), pose.elevationDegrees());
    double[] p = {x - pose.x(), y - pose.y(), z - pose.z()};
    double tan = Math.tan(Math.toRadians(OrbitCamera.FIELD_OF_VIEW_DEGREES) / 2);
    double depth = dot(p, axes[2]) + pose.distance();
    double scale = height / 2 / tan / depth;
    return new double[] {width / 2 + scale * dot(p, axes[0]), height / 2 - scale * dot(p, axes[1])};
  }

  /** The first face along a ray, tried one by one by the sides the ray passes; -1 for none. */
  static int firstFace(Mesh mesh, double[] ray) {
    double nearest = Double.POSITIVE_INFINITY;
    int first = -1;
    double[] origin = {ray[0], ray[1], ray[2]};
    double[] d = {ray[3], ray[4], ray[5]};
    for (int f = 0; f < mesh.faceCount(); f++) {
      double[] a = from(origin, mesh, mesh.corner()[3 * f]);
      double[] b = from(origin, mesh, mesh.corner()[3 * f + 1]);
      double[] c = from(origin, mesh, mesh.corner()[3 * f + 2]);
      double ab = dot(d, cross(a, b));
      double bc = dot(d, cross(b, c));
      double ca = dot(d, cross(c, a));
      boolean inside = Math.min(ab, Math.min(bc, ca)) >= 0 || Math.max(ab, Math.max(bc, ca)) <= 0;
      double sum = ab + bc + ca;
      if (inside && sum != 0) {
        double distance = 0;
        for (int i = 0; i < 3; i++) {
          distance += d[i] * (bc * a[i] + ca * b[i] + ab * c[i]) / sum;
        }
        if (distance > 0 && distance < nearest) {
          nearest = distance;
          first = f;
        }
      }
    }
    return first;
  }

  private static double[] from(double[] origin, Mesh mesh, int v) {
    return new double[] {mesh.x(v) - origin[0], mesh.y(v) - origin[1], mesh.z(v) - origin[2]};
  }

  static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }
}
