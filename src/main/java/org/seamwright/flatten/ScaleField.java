package org.seamwright.flatten;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Foretells how much a sheet stretches without laying it flat.
 *
 * <p>Of all conformal maps of a disc into the plane the one whose scale is the same all along the
 * rim differs least in scale (P. Chebyshev, 1856; J. Milnor, "A problem in cartography", 1969, from
 * memory). The logarithm u of its scale solves Δu = K with u = 0 on the rim, K being the curvature:
 * one sparse linear system, and half of what u differs by is the stretch to come. Cutting the sheet
 * along a line makes u vanish there as well, so lines of cutting can be compared by the same.
 */
final class ScaleField {
  private final Mesh sheet;
  private final SparseMatrix stiffness;
  private final double[] curvature;
  private final boolean[] onRim;

  ScaleField(Mesh sheet) {
    this.sheet = sheet;
    RestShapes rest = RestShapes.of(sheet);
    this.stiffness = SparseMatrix.stiffness(sheet.vertexCount(), rest.corner(), rest.cotangent());
    this.onRim = Angles.onBoundary(sheet, Topology.of(sheet));
    this.curvature = Angles.inside(rest, onRim);
  }

  /**
   * Logarithm of the scale at each vertex.
   *
   * @param also vertices beside the rim where it is 0, one entry per vertex
   * @return nothing if there is no such vertex at all, or if digits fail
   */
  Optional<double[]> scale(boolean[] also) {
    return harmonic(v -> onRim[v] || also[v] ? 0 : Double.NaN, curvature);
  }

  /** The same for the sheet as it is. */
  Optional<double[]> scale() {
    return scale(new boolean[onRim.length]);
  }

  /** Stretch to come, as a share: from below, and infinite where nothing can be told. */
  double stretch() {
    return scale().map(u -> half(u, v -> true)).orElse(Double.POSITIVE_INFINITY);
  }

  /**
   * About how wide the sheet is at its widest, mm: exact for a long strip, 0.7 of a disc's
   * diameter, and blind to holes and bays elsewhere. From the torsion function, Δw = −1 with w = 0
   * on the rim, which is h² / 2 in the middle of a strip of half-width h and r² / 4 in that of a
   * disc.
   */
  double widestMm() {
    double[] load = Areas.ofVertices(sheet);
    for (int v = 0; v < load.length; v++) {
      load[v] = -load[v];
    }
    return harmonic(v -> onRim[v] ? 0 : Double.NaN, load)
        .map(w -> 2 * Math.sqrt(2 * Math.max(0, Arrays.stream(w).max().orElse(0))))
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Half of the range of the scale over some vertices and 0, as a share. */
  static double half(double[] scale, IntPredicate where) {
    double low = 0;
    double high = 0;
    for (int v = 0; v < scale.length; v++) {
      if (where.test(v)) {
        low = Math.min(low, scale[v]);
        high = Math.max(high, scale[v]);
      }
    }
    return Math.expm1((high - low) / 2);
  }

  /** A harmonic field with values given at some vertices, free elsewhere, also on the rim. */
  Optional<double[]> harmonic(IntToDoubleFunction given) {
    return harmonic(given, new double[onRim.length]);
  }

  private Optional<double[]> harmonic(IntToDoubleFunction given, double[] source) {
    int n = onRim.length;
    double[] value = new double[n];
    int[] list = new int[n];
    int count = 0;
    for (int v = 0; v < n; v++) {
      double known = given.applyAsDouble(v);
      if (Double.isNaN(known)) {
        list[count++] = v;
      } else {
        value[v] = known;
      }
    }
    if (count == n) {
      return Optional.empty();
    }
    int[] free = Arrays.copyOf(list, count);
    double[] b = new double[count];
    double[] point = new double[3 * count];
    for (int i = 0; i < count; i++) {
      b[i] = -source[free[i]] - stiffness.rowTimes(free[i], value);
      System.arraycopy(sheet.xyz(), 3 * free[i], point, 3 * i, 3);
    }
    SparseMatrix minor = stiffness.minor(free);
    return SparseCholesky.of(minor, Dissection.order(minor, point, 3))
        .map(
            factor -> {
              double[] x = factor.solve(b);
              for (int i = 0; i < free.length; i++) {
                value[free[i]] = x[i];
              }
              return value;
            });
  }
}
