package org.seamwright.flatten;

import java.util.Arrays;
import java.util.Optional;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * First layouts of a disc.
 *
 * <p>{@link #keepingTheRim}: the conformal map that keeps lengths along the rim, which of all
 * conformal maps differs least in scale; exact for surfaces that can be unrolled. How the rim turns
 * comes from one Poisson equation, the inside from a harmonic extension (R. Sawhney and K. Crane,
 * "Boundary First Flattening", ACM TOG 37, 2017, with u = 0 on the boundary). It may fold.
 *
 * <p>{@link #round}: rim on a circle, the inside at the mean of its neighbours; never folds (W. T.
 * Tutte, "How to draw a graph", 1963).
 */
final class FirstLayout {
  private final Mesh mesh;
  private final RestShapes rest;
  private final int[] rim;
  private final boolean[] onRim;
  private final int[] inside;

  /**
   * Prepares a disc.
   *
   * @param loop its one boundary loop, as half-edges
   */
  FirstLayout(Mesh mesh, RestShapes rest, int[] loop) {
    this.mesh = mesh;
    this.rest = rest;
    this.rim = new int[loop.length];
    this.onRim = new boolean[mesh.vertexCount()];
    for (int i = 0; i < loop.length; i++) {
      rim[i] = mesh.corner()[loop[i]];
      onRim[rim[i]] = true;
    }
    int[] list = new int[mesh.vertexCount()];
    int count = 0;
    for (int v = 0; v < list.length; v++) {
      if (!onRim[v]) {
        list[count++] = v;
      }
    }
    this.inside = Arrays.copyOf(list, count);
  }

  /** Layout with the rim's lengths kept as nearly as it closes; nothing if digits fail. */
  Optional<double[]> keepingTheRim() {
    SparseMatrix all = SparseMatrix.stiffness(mesh.vertexCount(), rest.corner(), rest.cotangent());
    Optional<SparseCholesky> factor = factor(all);
    if (factor.isEmpty()) {
      return Optional.empty();
    }
    double[] turn = Angles.turn(rest, onRim);
    double[] scale = new double[mesh.vertexCount()];
    double[] b = new double[inside.length];
    for (int i = 0; i < inside.length; i++) {
      b[i] = -turn[inside[i]];
    }
    double[] u = factor.get().solve(b);
    for (int i = 0; i < inside.length; i++) {
      scale[inside[i]] = u[i];
    }
    double[] rimTurn = new double[rim.length];
    for (int i = 0; i < rim.length; i++) {
      rimTurn[i] = turn[rim[i]] + all.rowTimes(rim[i], scale);
    }
    double[] uv = new double[2 * mesh.vertexCount()];
    placeRim(rimTurn, uv);
    extend(all, factor.get(), uv);
    return Optional.of(uv);
  }

  /** Lays the rim as a closed line with those turns, its edges changed as little as can be. */
  private void placeRim(double[] turn, double[] uv) {
    int m = rim.length;
    double[] length = new double[m];
    double[] dx = new double[m];
    double[] dy = new double[m];
    double heading = 0;
    double sx = 0;
    double sy = 0;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < m; i++) {
      length[i] = Faces.length(mesh, rim[i], rim[(i + 1) % m]);
      dx[i] = Math.cos(heading);
      dy[i] = Math.sin(heading);
      heading += turn[(i + 1) % m];
      sx += length[i] * dx[i];
      sy += length[i] * dy[i];
      xx += length[i] * dx[i] * dx[i];
      xy += length[i] * dx[i] * dy[i];
      yy += length[i] * dy[i] * dy[i];
    }
    double det = xx * yy - xy * xy;
    double lx = det > 0 ? (yy * sx - xy * sy) / det : 0;
    double ly = det > 0 ? (xx * sy - xy * sx) / det : 0;
    double x = 0;
    double y = 0;
    for (int i = 0; i < m; i++) {
      uv[2 * rim[i]] = x;
      uv[2 * rim[i] + 1] = y;
      double fitted = length[i] * (1 - lx * dx[i] - ly * dy[i]);
      x += fitted * dx[i];
      y += fitted * dy[i];
    }
  }

  /** Rim on a circle of the sheet's area, inside at the mean of the neighbours. */
  Optional<double[]> round() {
    double[] ones = new double[rest.corner().length];
    Arrays.fill(ones, 1);
    SparseMatrix all = SparseMatrix.stiffness(mesh.vertexCount(), rest.corner(), ones);
    Optional<SparseCholesky> factor = factor(all);
    if (factor.isEmpty()) {
      return Optional.empty();
    }
    double area = 0;
    double around = 0;
    for (double a : rest.area()) {
      area += a;
    }
    for (int i = 0; i < rim.length; i++) {
      around += Faces.length(mesh, rim[i], rim[(i + 1) % rim.length]);
    }
    double radius = Math.sqrt(area / Math.PI);
    double[] uv = new double[2 * mesh.vertexCount()];
    double at = 0;
    for (int i = 0; i < rim.length; i++) {
      uv[2 * rim[i]] = radius * Math.cos(2 * Math.PI * at / around);
      uv[2 * rim[i] + 1] = radius * Math.sin(2 * Math.PI * at / around);
      at += Faces.length(mesh, rim[i], rim[(i + 1) % rim.length]);
    }
    extend(all, factor.get(), uv);
    return Optional.of(uv);
  }

  private Optional<SparseCholesky> factor(SparseMatrix all) {
    SparseMatrix minor = all.minor(inside);
    double[] point = new double[3 * inside.length];
    for (int i = 0; i < inside.length; i++) {
      System.arraycopy(mesh.xyz(), 3 * inside[i], point, 3 * i, 3);
    }
    return SparseCholesky.of(minor, Dissection.order(minor, point, 3));
  }

  private void extend(SparseMatrix all, SparseCholesky factor, double[] uv) {
    for (int axis = 0; axis < 2; axis++) {
      double[] known = new double[mesh.vertexCount()];
      for (int v : rim) {
        known[v] = uv[2 * v + axis];
      }
      double[] b = new double[inside.length];
      for (int i = 0; i < inside.length; i++) {
        b[i] = -all.rowTimes(inside[i], known);
      }
      double[] x = factor.solve(b);
      for (int i = 0; i < inside.length; i++) {
        uv[2 * inside[i] + axis] = x[i];
      }
    }
  }
}
