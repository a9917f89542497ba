package org.seamwright.mend;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Closes a long boundary loop by cutting ears: seen along the loop's mean normal (M. Newell's, as
 * in F. Preparata and M. Shamos's books), the sharpest corner that turns inwards and has no other
 * corner in its triangle is cut off, again and again. Where no corner will do, because the loop
 * winds over itself, the sharpest is cut all the same.
 *
 * <p>O(n²) as a rule. The result is a plain fill, not the one that bends least.
 */
final class EarCut {
  private final double[] x;
  private final double[] y;
  private final int n;
  private final int[] before;
  private final int[] after;

  /** One entry per corner: sharpness if it is an ear, infinite if not. */
  private final double[] score;

  private EarCut(Mesh mesh, int[] loop) {
    n = loop.length;
    x = new double[n];
    y = new double[n];
    before = new int[n];
    after = new int[n];
    score = new double[n];
    project(mesh, loop);
    for (int i = 0; i < n; i++) {
      before[i] = (i + n - 1) % n;
      after[i] = (i + 1) % n;
    }
  }

  /** Triangulates a loop; corners three per face, turned like the faces around. */
  static int[] fill(Mesh mesh, HoleLoops hole) {
    int[] loop = hole.vertices();
    EarCut cut = new EarCut(mesh, loop);
    int[] corners = new int[3 * (loop.length - 2)];
    for (int i = 0; i < loop.length; i++) {
      cut.weigh(i);
    }
    int out = 0;
    int at = 0;
    for (int left = loop.length; left > 2; left--) {
      int best = cut.sharpest(at, left);
      int a = cut.before[best];
      int c = cut.after[best];
      corners[out++] = loop[a];
      corners[out++] = hole.forward() ? loop[c] : loop[best];
      corners[out++] = hole.forward() ? loop[best] : loop[c];
      cut.after[a] = c;
      cut.before[c] = a;
      cut.weigh(a);
      cut.weigh(c);
      at = a;
    }
    return corners;
  }

  private void project(Mesh mesh, int[] loop) {
    double[] normal = new double[3];
    for (int i = 0; i < n; i++) {
      int a = loop[i];
      int b = loop[(i + 1) % n];
      normal[0] += (mesh.y(a) - mesh.y(b)) * (mesh.z(a) + mesh.z(b) - 2 * mesh.z(loop[0]));
      normal[1] += (mesh.z(a) - mesh.z(b)) * (mesh.x(a) + mesh.x(b) - 2 * mesh.x(loop[0]));
      normal[2] += (mesh.x(a) - mesh.x(b)) * (mesh.y(a) + mesh.y(b) - 2 * mesh.y(loop[0]));
    }
    double length = Math.hypot(normal[0], Math.hypot(normal[1], normal[2]));
    double[] w = length > 0 ? normal : new double[] {0, 0, 1};
    double scale = length > 0 ? 1 / length : 1;
    for (int axis = 0; axis < 3; axis++) {
      w[axis] *= scale;
    }
    int least = Math.abs(w[0]) < Math.abs(w[1]) ? 0 : 1;
    least = Math.abs(w[2]) < Math.abs(w[least]) ? 2 : least;
    double[] u = new double[3];
    u[(least + 1) % 3] = -w[(least + 2) % 3];
    u[(least + 2) % 3] = w[(least + 1) % 3];
    double unit = Math.hypot(u[0], Math.hypot(u[1], u[2]));
    for (int axis = 0; axis < 3; axis++) {
      u[axis] /= unit;
    }
    double[] v = {w[1] * u[2] - w[2] * u[1], w[2] * u[0] - w[0] * u[2], w[0] * u[1] - w[1] * u[0]};
    for (int i = 0; i < n; i++) {
      double px = mesh.x(loop[i]) - mesh.x(loop[0]);
      double py = mesh.y(loop[i]) - mesh.y(loop[0]);
      double pz = mesh.z(loop[i]) - mesh.z(loop[0]);
      x[i] = px * u[0] + py * u[1] + pz * u[2];
      y[i] = px * v[0] + py * v[1] + pz * v[2];
    }
  }

  private double cross(int a, int b, int c) {
    return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
  }

  /** The smaller the sharper; beyond 2 π for a corner that is no ear. */
  private void weigh(int i) {
    int a = before[i];
    int c = after[i];
    double ux = x[a] - x[i];
    double uy = y[a] - y[i];
    double vx = x[c] - x[i];
    double vy = y[c] - y[i];
    double turn = Math.atan2(vx * uy - vy * ux, ux * vx + uy * vy);
    double inside = turn < 0 ? turn + 2 * Math.PI : turn;
    boolean ear = inside > 0 && inside < Math.PI && free(a, i, c);
    score[i] = ear ? inside : 2 * Math.PI + inside;
  }

  private boolean free(int a, int b, int c) {
    for (int i = after[c]; i != a; i = after[i]) {
      if (cross(a, b, i) >= 0 && cross(b, c, i) >= 0 && cross(c, a, i) >= 0) {
        return false;
      }
    }
    return true;
  }

  private int sharpest(int from, int left) {
    int best = from;
    int at = from;
    for (int i = 0; i < left; i++) {
      if (score[at] < score[best] || (score[at] == score[best] && at < best)) {
        best = at;
      }
      at = after[at];
    }
    // What was in the way of an ear may have been cut off since; look again before giving in.
    if (score[best] > 2 * Math.PI) {
      at = from;
      for (int i = 0; i < left; i++) {
        weigh(at);
        best = score[at] < score[best] ? at : best;
        at = after[at];
      }
    }
    return best;
  }

  /** Area of a fill, mm². */
  static double area(Mesh mesh, int[] corners) {
    double area = 0;
    for (int i = 0; i < corners.length; i += 3) {
      area += Faces.area(mesh.xyz(), corners[i], corners[i + 1], corners[i + 2]);
    }
    return area;
  }
}
