package org.seamwright.picture;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * A mesh in the coordinates of an axis: distance from it and height along it, mm, and angle about
 * it, radians, from the direction nearest to x.
 */
final class Turned {
  /** Cosine of 25 degrees: nearer than that to the axis, x is no good as direction of angle 0. */
  private static final double TOO_NEAR = 0.9;

  final Mesh mesh;

  /** Per vertex: coordinate towards angle 0, towards a quarter turn, height along the axis; mm. */
  final double[] across;

  final double[] aside;
  final double[] height;

  private final double[] along;
  private final double[] zero;
  private final double[] quarter;

  Turned(Mesh mesh, Vector3D point, Vector3D direction) {
    this.mesh = mesh;
    Vector3D unit = direction.normalize();
    Vector3D towards =
        Math.abs(unit.getX()) > TOO_NEAR ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.PLUS_X;
    Vector3D across = towards.subtract(unit.multiply(unit.dot(towards))).normalize();
    along = unit.toArray();
    zero = across.toArray();
    quarter = unit.cross(across).toArray();
    double[] foot = point.toArray();
    this.across = new double[mesh.vertexCount()];
    aside = new double[this.across.length];
    height = new double[this.across.length];
    for (int v = 0; v < height.length; v++) {
      this.across[v] = dot(v, foot, zero);
      aside[v] = dot(v, foot, quarter);
      height[v] = dot(v, foot, along);
    }
  }

  private double dot(int v, double[] foot, double[] axis) {
    return (mesh.x(v) - foot[0]) * axis[0]
        + (mesh.y(v) - foot[1]) * axis[1]
        + (mesh.z(v) - foot[2]) * axis[2];
  }

  /**
   * A face in its middle: radius, height, then its unit normal outward, up and about the axis, then
   * its area in mm².
   *
   * @param into 6 numbers
   */
  void face(int f, double[] into) {
    int a = mesh.corner()[3 * f];
    int b = mesh.corner()[3 * f + 1];
    int c = mesh.corner()[3 * f + 2];
    double x = (across[a] + across[b] + across[c]) / 3;
    double y = (aside[a] + aside[b] + aside[c]) / 3;
    into[0] = Math.hypot(x, y);
    into[1] = (height[a] + height[b] + height[c]) / 3;
    double[] n = new double[3];
    Faces.areaVector(mesh.xyz(), a, b, c, n);
    double twice = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
    double scale = twice > 0 ? 1 / twice : 0;
    double nx = (n[0] * zero[0] + n[1] * zero[1] + n[2] * zero[2]) * scale;
    double ny = (n[0] * quarter[0] + n[1] * quarter[1] + n[2] * quarter[2]) * scale;
    double outX = into[0] > 0 ? x / into[0] : 1;
    double outY = into[0] > 0 ? y / into[0] : 0;
    into[2] = nx * outX + ny * outY;
    into[3] = (n[0] * along[0] + n[1] * along[1] + n[2] * along[2]) * scale;
    into[4] = ny * outX - nx * outY;
    into[5] = twice / 2;
  }
}
