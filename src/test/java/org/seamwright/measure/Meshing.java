package org.seamwright.measure;

import java.util.Arrays;
import java.util.Random;
import org.seamwright.mesh.Mesh;

/** Ways to lay facets over a {@link KnownSurface}: every vertex lies on the surface. */
enum Meshing {
  /** Equal steps. */
  EVEN,
  /** Vertices moved along the surface by up to a third of a step, diagonals at random. */
  JITTERED,
  /** Eight times as many steps one way as the other. */
  LONG,
  /** Steps of random width up to ten to one, diagonals at random. */
  UNEVEN;

  /** Lays about so many facets. */
  Mesh lay(KnownSurface surface, int facets, Random random) {
    double cells = facets / 2.0;
    double share = this == LONG ? Math.sqrt(8) : 1;
    int sections = surface.rows().length - 1;
    int nu = Math.max(6, (int) Math.round(Math.sqrt(cells) * share));
    int nv = Math.max(Math.max(4, 2 * sections), (int) Math.round(cells / nu));
    double[] u = steps(new double[] {0, 1}, nu, random);
    double[] v = steps(surface.rows(), nv, random);
    return new Grid(surface, u, v, random).mesh();
  }

  private double[] steps(double[] fixed, int n, Random random) {
    double[] at = new double[n + 1];
    int done = 0;
    for (int s = 1; s < fixed.length; s++) {
      int end = s == fixed.length - 1 ? n : Math.max(done + 1, (int) Math.round(n * fixed[s]));
      end = Math.min(end, n - (fixed.length - 1 - s));
      double[] width = new double[end - done];
      for (int i = 0; i < width.length; i++) {
        width[i] = this == UNEVEN ? Math.pow(10, random.nextDouble()) : 1;
      }
      double total = Arrays.stream(width).sum();
      double reached = 0;
      for (int i = 0; i < width.length; i++) {
        at[done + i] = fixed[s - 1] + (fixed[s] - fixed[s - 1]) * reached / total;
        reached += width[i];
      }
      done = end;
    }
    at[n] = 1;
    return at;
  }

  private final class Grid {
    private final KnownSurface surface;
    private final double[] u;
    private final double[] v;
    private final Random random;
    private final int columns;
    private final int rows;

    Grid(KnownSurface surface, double[] u, double[] v, Random random) {
      this.surface = surface;
      this.u = u;
      this.v = v;
      this.random = random;
      this.columns = surface.wrapsU() ? u.length - 1 : u.length;
      this.rows = surface.wrapsV() ? v.length - 1 : v.length;
    }

    Mesh mesh() {
      double[] xyz = new double[3 * columns * rows];
      for (int j = 0; j < rows; j++) {
        for (int i = 0; i < columns; i++) {
          double[] p =
              surface
                  .map()
                  .at(moved(u, i, surface.wrapsU(), false), moved(v, j, surface.wrapsV(), true));
          System.arraycopy(p, 0, xyz, 3 * (j * columns + i), 3);
        }
      }
      int[] corner = new int[6 * (u.length - 1) * (v.length - 1)];
      int n = 0;
      for (int j = 0; j < v.length - 1; j++) {
        for (int i = 0; i < u.length - 1; i++) {
          int a = vertex(i, j);
          int b = vertex(i + 1, j);
          int c = vertex(i + 1, j + 1);
          int d = vertex(i, j + 1);
          boolean other = (outer() == JITTERED || outer() == UNEVEN) && random.nextBoolean();
          int[] two = other ? new int[] {a, b, d, b, c, d} : new int[] {a, b, c, a, c, d};
          for (int f = 0; f < 6; f += 3) {
            if (two[f] != two[f + 1] && two[f + 1] != two[f + 2] && two[f + 2] != two[f]) {
              System.arraycopy(two, f, corner, n, 3);
              n += 3;
            }
          }
        }
      }
      return Mesh.of(xyz, Arrays.copyOf(corner, n));
    }

    private Meshing outer() {
      return Meshing.this;
    }

    private int vertex(int i, int j) {
      int row = j % rows;
      boolean pole = surface.pole() && (j == 0 || j == v.length - 1);
      return row * columns + (pole ? 0 : i % columns);
    }

    /** Creases and borders stay where they are. */
    private double moved(double[] at, int i, boolean wraps, boolean isV) {
      boolean ends = !wraps && (i == 0 || i == at.length - 1);
      boolean fixed = isV && Arrays.stream(surface.rows()).anyMatch(row -> row == at[i]);
      if (outer() != JITTERED || ends || (fixed && !wraps)) {
        return at[i];
      }
      double step = i + 1 < at.length ? at[i + 1] - at[i] : at[i] - at[i - 1];
      return at[i] + step * 0.3 * (2 * random.nextDouble() - 1);
    }
  }
}
