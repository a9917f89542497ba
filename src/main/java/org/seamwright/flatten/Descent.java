package org.seamwright.flatten;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;
import java.util.Optional;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;

/**
 * Moves the vertices of a layout without folds to where {@link Isometry} is least, never folding a
 * face: limited-memory BFGS whose first guess of the curvature is the surface's stiffness matrix,
 * factored once.
 *
 * <p>Sources: J. Nocedal, "Updating quasi-Newton matrices with limited storage" (1980); the
 * stiffness matrix as guess: S. Kovalsky, M. Galun and Y. Lipman, "Accelerated quadratic proxy for
 * geometric optimization" (2016). Each step costs two solves with the factor.
 */
final class Descent {
  private static final int MEMORY = 8;

  /** Share of the way to the first fold that one step may go. */
  private static final double FOLD_SHARE = 0.8;

  /** Sufficient decrease of a step (Armijo). */
  private static final double DECREASE = 1e-4;

  private static final int HALVINGS = 12;

  /** Steps between looks at what they gained. */
  private static final int LOOKED_EVERY = 3;

  /** Faces that hardly count still keep the layout stiff by this share of the ones that do. */
  private static final double LEAST_WEIGHT = 0.02;

  /** A mean strain of about 1e-6: far below what a knife can follow. */
  private static final double NOTHING = 1e-11;

  private record Pair(double[] step, double[] change, double product) {}

  private final Isometry energy;
  private final SparseCholesky factor;
  private final int unknowns;
  private double scale;

  private Descent(Isometry energy, SparseCholesky factor, int unknowns, double scale) {
    this.energy = energy;
    this.factor = factor;
    this.unknowns = unknowns;
    this.scale = scale;
  }

  /**
   * Improves a layout in place.
   *
   * @param uv layout without folds
   * @param power see {@link Isometry}
   * @param steps the most steps to take
   * @param enough ends when three steps change the energy by less than this share
   */
  static void run(
      Mesh mesh,
      RestShapes rest,
      double[] uv,
      double power,
      int steps,
      double enough,
      Progress progress) {
    double unit = 1;
    if (power > 1) {
      double plain = new Isometry(rest, 1, 1).energy(uv);
      if (!(plain > NOTHING)) {
        return;
      }
      unit = plain;
    }
    Isometry energy = new Isometry(rest, power, unit);
    prepare(mesh, rest, energy, uv)
        .ifPresent(descent -> descent.descend(uv, steps, enough, progress));
  }

  private static Optional<Descent> prepare(
      Mesh mesh, RestShapes rest, Isometry energy, double[] uv) {
    int faces = rest.faceCount();
    double[] weight = new double[3 * faces];
    double[] ofFace = new double[faces];
    double[] j = new double[4];
    double most = 0;
    double total = 0;
    for (int f = 0; f < faces; f++) {
      ofFace[f] = energy.weight(f, uv, j);
      most = Math.max(most, ofFace[f]);
      total += rest.area()[f];
    }
    for (int h = 0; h < weight.length; h++) {
      weight[h] = rest.cotangent()[h] * Math.max(ofFace[h / 3], LEAST_WEIGHT * most);
    }
    int n = mesh.vertexCount();
    int[] free = new int[n - 1];
    double[] point = new double[3 * free.length];
    for (int i = 0; i < free.length; i++) {
      free[i] = i + 1;
    }
    System.arraycopy(mesh.xyz(), 3, point, 0, point.length);
    SparseMatrix matrix = SparseMatrix.stiffness(n, rest.corner(), weight).minor(free);
    // Near a layout that keeps lengths e grows as 4 times the squared strain.
    double scale = total / 8;
    return SparseCholesky.of(matrix, Dissection.order(matrix, point, 3))
        .map(factor -> new Descent(energy, factor, 2 * n, scale));
  }

  private void descend(double[] uv, int steps, double enough, Progress progress) {
    Deque<Pair> memory = new ArrayDeque<>();
    double[] gradient = new double[unknowns];
    double[] before = new double[unknowns];
    double now = energy.energy(uv);
    energy.gradient(uv, gradient);
    double mark = now;
    for (int i = 0; i < steps && now > NOTHING; i++) {
      progress.at((double) i / steps);
      double[] direction = direction(gradient, memory);
      double slope = dot(direction, gradient);
      if (!(slope < 0)) {
        return;
      }
      System.arraycopy(gradient, 0, before, 0, unknowns);
      double length = search(uv, direction, now, slope);
      if (length == 0) {
        if (memory.isEmpty()) {
          return;
        }
        memory.clear();
        continue;
      }
      now = energy.energy(uv);
      energy.gradient(uv, gradient);
      remember(memory, direction, length, before, gradient);
      if (i % LOOKED_EVERY == LOOKED_EVERY - 1) {
        if (mark - now < enough * mark) {
          return;
        }
        mark = now;
      }
    }
  }

  /** Goes along a direction as far as pays, in place; gives the length, 0 if none pays. */
  private double search(double[] uv, double[] direction, double now, double slope) {
    double length = Math.min(1, FOLD_SHARE * energy.longestStep(uv, direction));
    double[] start = uv.clone();
    for (int i = 0; i < HALVINGS; i++) {
      for (int k = 0; k < unknowns; k++) {
        uv[k] = start[k] + length * direction[k];
      }
      if (energy.energy(uv) <= now + DECREASE * length * slope) {
        return length;
      }
      length /= 2;
    }
    System.arraycopy(start, 0, uv, 0, unknowns);
    return 0;
  }

  private void remember(
      Deque<Pair> memory, double[] direction, double length, double[] before, double[] after) {
    double[] step = new double[unknowns];
    double[] change = new double[unknowns];
    for (int k = 0; k < unknowns; k++) {
      step[k] = length * direction[k];
      change[k] = after[k] - before[k];
    }
    double product = dot(step, change);
    if (!(product > 0)) {
      return;
    }
    double[] solved = solve(change);
    scale = product / Math.max(Double.MIN_NORMAL, dot(change, solved));
    if (memory.size() == MEMORY) {
      memory.removeFirst();
    }
    memory.addLast(new Pair(step, change, product));
  }

  private double[] direction(double[] gradient, Deque<Pair> memory) {
    double[] q = gradient.clone();
    double[] alpha = new double[MEMORY];
    int k = memory.size();
    for (Iterator<Pair> it = memory.descendingIterator(); it.hasNext(); ) {
      Pair pair = it.next();
      alpha[--k] = dot(pair.step(), q) / pair.product();
      add(q, -alpha[k], pair.change());
    }
    double[] z = solve(q);
    for (int i = 0; i < unknowns; i++) {
      z[i] *= scale;
    }
    for (Pair pair : memory) {
      double beta = dot(pair.change(), z) / pair.product();
      add(z, alpha[k++] - beta, pair.step());
    }
    for (int i = 0; i < unknowns; i++) {
      z[i] = -z[i];
    }
    return z;
  }

  /** Solves with the stiffness matrix, the first vertex held. */
  private double[] solve(double[] b) {
    double[] out = new double[unknowns];
    double[] moved = factor.solvePairs(Arrays.copyOfRange(b, 2, unknowns));
    System.arraycopy(moved, 0, out, 2, moved.length);
    return out;
  }

  private static void add(double[] to, double factor, double[] what) {
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * what[i];
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
