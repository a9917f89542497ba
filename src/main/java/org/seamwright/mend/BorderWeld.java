package org.seamwright.mend;

import java.util.Arrays;
import java.util.Locale;
import org.seamwright.basis.Count;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Joins corners on open edges that lie within a tolerance of each other. What is joined already is
 * not touched, so a thin wall or a fine relief cannot collapse, whatever the tolerance.
 *
 * <p>Corners are taken in their order; each moves onto the first earlier one that has stayed and is
 * near enough, or stays itself. So none moves by more than the tolerance, chains of near corners
 * don't run together, and corners that stay are further apart than the tolerance. Faces that lose a
 * corner by it are dropped. O(n) for n open edges, by cubes of the tolerance's size.
 */
final class BorderWeld {
  private final double[] xyz;
  private final double cell;
  private final int[] head;
  private final int[] next;

  private BorderWeld(double[] xyz, double toleranceMm, int count) {
    this.xyz = xyz;
    this.cell = toleranceMm;
    this.head = new int[Integer.highestOneBit(Math.max(8, count)) * 2];
    this.next = new int[xyz.length / 3];
    Arrays.fill(head, -1);
  }

  static Change weld(Mesh mesh, Topology topology, double toleranceMm) {
    int[] border = Borders.vertices(mesh, topology);
    int[] goes = new int[mesh.vertexCount()];
    Arrays.setAll(goes, v -> v);
    BorderWeld weld = new BorderWeld(mesh.xyz(), toleranceMm, border.length);
    int moved = 0;
    for (int v : border) {
      goes[v] = weld.place(v);
      moved += goes[v] != v ? 1 : 0;
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s on open edges moved onto another within %.3g mm",
            Count.of(moved, "corner"),
            toleranceMm);
    if (moved == 0) {
      return Change.none(mesh, text);
    }
    int[] corner = new int[mesh.corner().length];
    for (int h = 0; h < corner.length; h++) {
      corner[h] = goes[mesh.corner()[h]];
    }
    Mesh joined = Mesh.of(mesh.xyz(), corner);
    return Change.keeping(joined, f -> !Faults.collapsed(joined, f), moved, text);
  }

  /** The corner that stays for this one. */
  private int place(int v) {
    double x = xyz[3 * v];
    double y = xyz[3 * v + 1];
    double z = xyz[3 * v + 2];
    long cx = (long) Math.floor(x / cell);
    long cy = (long) Math.floor(y / cell);
    long cz = (long) Math.floor(z / cell);
    int found = Integer.MAX_VALUE;
    for (int k = 0; k < 27; k++) {
      int slot = slot(cx + k % 3 - 1, cy + k / 3 % 3 - 1, cz + k / 9 - 1);
      for (int w = head[slot]; w >= 0; w = next[w]) {
        double dx = xyz[3 * w] - x;
        double dy = xyz[3 * w + 1] - y;
        double dz = xyz[3 * w + 2] - z;
        if (w < found && dx * dx + dy * dy + dz * dz <= cell * cell) {
          found = w;
        }
      }
    }
    if (found != Integer.MAX_VALUE) {
      return found;
    }
    int own = slot(cx, cy, cz);
    next[v] = head[own];
    head[own] = v;
    return v;
  }

  private int slot(long x, long y, long z) {
    long h = (x * 0x9E3779B97F4A7C15L + y) * 0xC2B2AE3D27D4EB4FL + z;
    h = (h ^ (h >>> 32)) * 0x165667B19E3779F9L;
    return (int) (h >>> 33) & (head.length - 1);
  }
}
