package org.seamwright.flatten;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * A slit from rim to rim of a ring that runs smoothly through faces, where a shortest way along
 * edges would zigzag.
 *
 * <p>With the ring slit along edges somewhere, the harmonic field that is 0 on the slit's one side
 * and 1 on its other goes once round the ring; each of its levels is a smooth line from rim to rim
 * that meets both at right angles. The shortest of a dozen levels is taken. On a turned ring that
 * is a meridian. One sparse solve.
 */
final class SmoothSlit {
  private static final int LEVELS = 20;

  private SmoothSlit() {}

  /**
   * Finds the line.
   *
   * @param part a ring: two rims, no slit
   * @return a field per vertex of the part that is 0 on the line, and far from 0 across the slit
   *     along edges; nothing if there is none
   */
  static Optional<double[]> of(Parting.Part part) {
    Mesh ring = part.sheet();
    Topology topology = Topology.of(ring);
    List<int[]> loops = Sheets.loops(ring, topology);
    if (!part.whole() || loops.size() != 2 || Sheets.euler(ring, topology) != 0) {
      return Optional.empty();
    }
    boolean[] slit = Slits.of(ring, topology, loops, new double[ring.vertexCount()]);
    Sheets.Sheet open = Sheets.open(ring, topology, slit);
    double[] given = new double[open.mesh().vertexCount()];
    Arrays.fill(given, Double.NaN);
    int[] way = sideOf(open.mesh(), slit);
    for (int v = 0; v < way.length; v++) {
      if (way[v] >= 0) {
        given[v] = way[v];
      }
    }
    return new ScaleField(open.mesh())
        .harmonic(v -> given[v])
        .flatMap(field -> shortest(open.mesh(), field, way))
        .map(found -> onRing(ring, open, found));
  }

  /** 0 for vertices on the first side of the slit, 1 on the second, −1 elsewhere. */
  private static int[] sideOf(Mesh open, boolean[] slit) {
    int[] side = new int[open.vertexCount()];
    Arrays.fill(side, -1);
    int[] loop = Sheets.loops(open, Topology.of(open)).get(0);
    // The one loop of the opened ring: rim, slit, other rim, slit back.
    int n = loop.length;
    int start = 0;
    while (start < n && !(slit[loop[start]] && !slit[loop[(start + n - 1) % n]])) {
      start++;
    }
    int run = 0;
    for (int i = start; i < start + n; i++) {
      int h = loop[i % n];
      if (!slit[h]) {
        continue;
      }
      run += i > start && !slit[loop[(i - 1) % n]] ? 1 : 0;
      side[open.corner()[h]] = run;
      side[open.corner()[Topology.next(h)]] = run;
    }
    return side;
  }

  /** The field less the level whose line is shortest, of those clear of the slit along edges. */
  private static Optional<double[]> shortest(Mesh open, double[] field, int[] way) {
    double least = Double.POSITIVE_INFINITY;
    double best = Double.NaN;
    for (int i = 1; i < LEVELS; i++) {
      double level = (double) i / LEVELS;
      double length = length(open, field, level, way);
      // A hair's breadth, so that rounding does not choose between equals.
      if (length < least * (1 - 1e-6)) {
        least = length;
        best = level;
      }
    }
    double[] out = new double[field.length];
    for (int v = 0; v < out.length; v++) {
      out[v] = field[v] - best;
    }
    return Double.isNaN(best) ? Optional.empty() : Optional.of(out);
  }

  /** Length of a level, infinite if it goes through a face at the slit along edges. */
  private static double length(Mesh open, double[] field, double level, int[] way) {
    double sum = 0;
    double[] at = new double[6];
    for (int f = 0; f < open.faceCount(); f++) {
      int count = 0;
      for (int k = 0; k < 3 && count < 2; k++) {
        int a = open.corner()[3 * f + k];
        int b = open.corner()[3 * f + (k + 1) % 3];
        if (field[a] < level != field[b] < level) {
          double t = (level - field[a]) / (field[b] - field[a]);
          for (int d = 0; d < 3; d++) {
            at[3 * count + d] =
                open.xyz()[3 * a + d] + t * (open.xyz()[3 * b + d] - open.xyz()[3 * a + d]);
          }
          count++;
        }
      }
      for (int k = 0; k < 3 && count == 2; k++) {
        sum += way[open.corner()[3 * f + k]] >= 0 ? Double.POSITIVE_INFINITY : 0;
      }
      sum += count < 2 ? 0 : Math.hypot(Math.hypot(at[3] - at[0], at[4] - at[1]), at[5] - at[2]);
    }
    return sum;
  }

  /** Faces at the slit along edges have both values at its vertices: not finite there. */
  private static double[] onRing(Mesh ring, Sheets.Sheet open, double[] found) {
    double[] field = new double[ring.vertexCount()];
    Arrays.fill(field, Double.NaN);
    for (int v = 0; v < found.length; v++) {
      int there = open.parent()[v];
      field[there] = Double.isNaN(field[there]) ? found[v] : Double.POSITIVE_INFINITY;
    }
    return field;
  }
}
