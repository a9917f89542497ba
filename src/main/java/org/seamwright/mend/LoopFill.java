package org.seamwright.mend;

import java.util.Arrays;
import java.util.BitSet;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Closes a boundary loop by the triangulation that bends least: the largest angle between
 * neighbouring faces, those around the hole included, is as small as can be, and of such
 * triangulations the one of least area is taken.
 *
 * <p>By dynamic programming over stretches of the loop, O(n³) for n edges: G. Barequet, M. Sharir,
 * "Filling gaps in the boundary of a polyhedron" (1995), with the weights of P. Liepa, "Filling
 * holes in meshes" (2003), section 3. A chord that is an edge of the mesh already is not used
 * again, which would make an edge of three faces. The angle is compared with that of each stretch's
 * best triangulation, as there; so the angle is near the least possible rather than the least.
 */
final class LoopFill {
  private static final double REFUSED = Double.POSITIVE_INFINITY;

  /** Angles nearer than this, in radians, count as equal; area then decides. */
  private static final double SAME_ANGLE = 1e-6;

  private final Mesh mesh;
  private final int[] loop;
  private final int[] beside;
  private final boolean forward;
  private final int n;
  private final double[] angle;
  private final double[] area;
  private final int[] middle;
  private final BitSet taken;

  private LoopFill(Mesh mesh, HoleLoops hole, BitSet taken) {
    this.mesh = mesh;
    this.loop = hole.vertices();
    this.beside = hole.faces();
    this.forward = hole.forward();
    this.n = loop.length;
    this.angle = new double[n * n];
    this.area = new double[n * n];
    this.middle = new int[n * n];
    this.taken = taken;
  }

  /**
   * Triangulates a loop.
   *
   * @param taken chords (i, k), i before k, at index i · n + k, that are edges of the mesh
   * @return corners, three per face, turned like the faces around; empty if there is no way
   */
  static int[] fill(Mesh mesh, HoleLoops hole, BitSet taken) {
    LoopFill fill = new LoopFill(mesh, hole, taken);
    fill.weigh();
    if (fill.angle[fill.n - 1] == REFUSED) {
      return new int[0];
    }
    Ints corners = new Ints(3 * fill.n);
    fill.collect(0, fill.n - 1, corners);
    return corners.toArray();
  }

  private void weigh() {
    Arrays.fill(middle, -1);
    for (int span = 2; span < n; span++) {
      for (int i = 0; i + span < n; i++) {
        weigh(i, i + span);
      }
    }
  }

  private void weigh(int i, int k) {
    int slot = i * n + k;
    angle[slot] = REFUSED;
    boolean last = i == 0 && k == n - 1;
    if (!last && taken.get(slot)) {
      return;
    }
    double[] normal = new double[3];
    double[] other = new double[3];
    for (int m = i + 1; m < k; m++) {
      double bend = Math.max(angle[i * n + m], angle[m * n + k]);
      if (bend == REFUSED
          || bend > angle[slot] + SAME_ANGLE
          || !normal(loop[i], loop[m], loop[k], normal)) {
        continue;
      }
      bend = Math.max(bend, bend(i, m, normal, other));
      bend = Math.max(bend, bend(m, k, normal, other));
      if (last) {
        faceNormal(beside[n - 1], other);
        bend = Math.max(bend, between(normal, other));
      }
      double size =
          area[i * n + m] + area[m * n + k] + Faces.area(mesh.xyz(), loop[i], loop[m], loop[k]);
      boolean better =
          bend < angle[slot] - SAME_ANGLE
              || (bend <= angle[slot] + SAME_ANGLE && size < area[slot]);
      if (middle[slot] < 0 || better) {
        angle[slot] = bend;
        area[slot] = size;
        middle[slot] = m;
      }
    }
  }

  /** Angle across a chord or edge of the loop between a face and what lies beyond. */
  private double bend(int i, int m, double[] normal, double[] other) {
    if (m == i + 1) {
      faceNormal(beside[i], other);
    } else if (!normal(loop[i], loop[middle[i * n + m]], loop[m], other)) {
      return Math.PI;
    }
    return between(normal, other);
  }

  private static double between(double[] a, double[] b) {
    double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    return Math.acos(Math.max(-1, Math.min(1, dot)));
  }

  private void faceNormal(int face, double[] into) {
    Faces.normal(mesh, face, into);
  }

  /** Normal of a face of the fill, turned like the faces around; false if it has no area. */
  private boolean normal(int a, int b, int c, double[] into) {
    Faces.areaVector(mesh.xyz(), a, b, c, into);
    double length = Math.sqrt(into[0] * into[0] + into[1] * into[1] + into[2] * into[2]);
    if (!(length > 0)) {
      return false;
    }
    double scale = (forward ? -1 : 1) / length;
    for (int axis = 0; axis < 3; axis++) {
      into[axis] *= scale;
    }
    return true;
  }

  private void collect(int from, int to, Ints corners) {
    // An explicit stack: a fan over a long loop is as deep as the loop.
    int[] open = new int[4 * n];
    int size = 0;
    open[size++] = from;
    open[size++] = to;
    while (size > 0) {
      int k = open[--size];
      int i = open[--size];
      if (k < i + 2) {
        continue;
      }
      int m = middle[i * n + k];
      corners.add(loop[i]);
      corners.add(forward ? loop[k] : loop[m]);
      corners.add(forward ? loop[m] : loop[k]);
      open[size++] = i;
      open[size++] = m;
      open[size++] = m;
      open[size++] = k;
    }
  }
}
