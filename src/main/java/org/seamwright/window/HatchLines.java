package org.seamwright.window;

import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Patterns on the surface, so that classes are told apart without colours: what stays bare is
 * hatched, what is no part of the work is hatched crosswise, what a draft would change is hatched
 * closely. Lines are where the surface meets planes at equal distances, so they run through from
 * face to face; drawn as strips a little above the surface. O(faces + strips).
 */
final class HatchLines {
  /** Distance of the planes, as a share of the piece's diagonal. */
  private static final double PITCH = 1.0 / 75;

  /** Half the width of a line, as a share of the diagonal. */
  private static final double HALF_WIDTH = 0.00045;

  /** Height over the surface, as a share of half the width: below the lines of edges. */
  private static final double LIFT = 0.45;

  /** Directions square to the planes; along none of them does a wall or a floor usually lie. */
  private static final double[][] ACROSS = {{0.48, 0.36, 0.80}, {-0.60, 0.48, 0.64}};

  private final Mesh mesh;
  private final double[] centre;
  private final double half;
  private float[] points = new float[1 << 12];
  private int used;

  private HatchLines(PieceModel model, Mesh mesh) {
    this.mesh = mesh;
    this.centre = model.centre();
    this.half = HALF_WIDTH * model.bounds().diagonal();
  }

  /** The pattern of faces by class; 0 for none, 1 hatched, 2 crosswise, 3 closely. */
  interface Pattern {
    int of(int faceClass);
  }

  /** The lines of a surface. */
  static EdgeLines of(PieceModel model, ShownSurface surface, Pattern pattern) {
    HatchLines lines = new HatchLines(model, surface.mesh());
    double pitch = PITCH * model.bounds().diagonal();
    for (int f = 0; f < surface.mesh().faceCount(); f++) {
      int kind = pattern.of(surface.faceClass(f));
      if (kind > 0) {
        lines.face(f, ACROSS[0], kind == 3 ? pitch / 2 : pitch);
      }
      if (kind == 2) {
        lines.face(f, ACROSS[1], pitch);
      }
    }
    return lines.strips();
  }

  private void face(int f, double[] across, double pitch) {
    double[] height = new double[3];
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      int v = 3 * mesh.corner()[3 * f + k];
      double[] p = mesh.xyz();
      height[k] = (across[0] * p[v] + across[1] * p[v + 1] + across[2] * p[v + 2]) / pitch;
      least = Math.min(least, height[k]);
      most = Math.max(most, height[k]);
    }
    for (double at = Math.ceil(least); at < most; at++) {
      segment(f, height, at);
    }
  }

  /** The line through a face at a height: between the two edges that pass it. */
  private void segment(int f, double[] height, double at) {
    double[] ends = new double[6];
    int found = 0;
    for (int k = 0; k < 3 && found < 2; k++) {
      int next = (k + 1) % 3;
      if (height[k] < at == height[next] < at) {
        continue;
      }
      double share = (at - height[k]) / (height[next] - height[k]);
      int a = 3 * mesh.corner()[3 * f + k];
      int b = 3 * mesh.corner()[3 * f + next];
      for (int axis = 0; axis < 3; axis++) {
        double from = mesh.xyz()[a + axis];
        ends[3 * found + axis] = from + share * (mesh.xyz()[b + axis] - from);
      }
      found++;
    }
    if (found == 2) {
      strip(f, ends);
    }
  }

  private void strip(int f, double[] ends) {
    double[] n = new double[3];
    Faces.normal(mesh, f, n);
    double[] d = {ends[3] - ends[0], ends[4] - ends[1], ends[5] - ends[2]};
    double length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    if (!(length > 0)) {
      return;
    }
    if (used + 12 > points.length) {
      points = Arrays.copyOf(points, 2 * points.length);
    }
    double s = half / length;
    double[] side = {
      s * (n[1] * d[2] - n[2] * d[1]),
      s * (n[2] * d[0] - n[0] * d[2]),
      s * (n[0] * d[1] - n[1] * d[0])
    };
    for (int corner = 0; corner < 4; corner++) {
      int end = corner == 1 || corner == 2 ? 3 : 0;
      double to = corner < 2 ? -1 : 1;
      for (int axis = 0; axis < 3; axis++) {
        points[used++] =
            (float) (ends[end + axis] + to * side[axis] + LIFT * half * n[axis] - centre[axis]);
      }
    }
  }

  private EdgeLines strips() {
    int strips = used / 12;
    int[] faces = new int[18 * strips];
    int[] order = {0, 1, 2, 0, 2, 3};
    for (int i = 0; i < strips; i++) {
      for (int k = 0; k < order.length; k++) {
        faces[18 * i + 3 * k] = 4 * i + order[k];
      }
    }
    return new EdgeLines(Arrays.copyOf(points, used), faces);
  }
}
