package org.seamwright.mask;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Where tape beside a line would have to wrap a sharp corner of the piece, under which it lifts: a
 * crease of {@value #SHARP_DEGREES}° and more on the bare side nearer to the line than the tape is
 * wide. Near is meant in space, between middles of edges and places of the line.
 */
final class Wraps {
  /** Below that tape lies down by itself: shop setting. */
  static final double SHARP_DEGREES = 40;

  private final double reachMm;
  private final Map<Long, int[]> cells = new HashMap<>();
  private final double[] places;
  private final double[] stretch;

  private Wraps(List<MaskEdge> edges, double reachMm) {
    this.reachMm = reachMm;
    int count = edges.stream().mapToInt(e -> e.points().length / 3).sum();
    places = new double[3 * count];
    stretch = new double[count];
    int next = 0;
    for (MaskEdge edge : edges) {
      int n = edge.points().length / 3;
      for (int i = 0; i < n; i++) {
        System.arraycopy(edge.points(), 3 * i, places, 3 * next, 3);
        // Half of the sides before and after it belong to a place.
        stretch[next] = (side(edge, i - 1) + side(edge, i)) / 2;
        add(next++);
      }
    }
  }

  private static double side(MaskEdge edge, int i) {
    int n = edge.points().length / 3;
    if (!edge.closed() && (i < 0 || i + 1 >= n)) {
      return 0;
    }
    int a = Math.floorMod(i, n);
    int b = (a + 1) % n;
    double[] p = edge.points();
    double dx = p[3 * b] - p[3 * a];
    double dy = p[3 * b + 1] - p[3 * a + 1];
    double dz = p[3 * b + 2] - p[3 * a + 2];
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** Length of edge beside which a crease runs through the tape, mm. */
  static double alongMm(Mesh bare, List<MaskEdge> edges, double reachMm) {
    Wraps wraps = new Wraps(edges, reachMm);
    boolean[] wrapped = new boolean[wraps.stretch.length];
    Topology topology = Topology.of(bare);
    double least = Math.cos(Math.toRadians(SHARP_DEGREES));
    double[] n = new double[3];
    double[] m = new double[3];
    for (int h = 0; h < bare.corner().length; h++) {
      int twin = topology.twin(h);
      if (twin > h) {
        Faces.normal(bare, h / 3, n);
        Faces.normal(bare, twin / 3, m);
        if (n[0] * m[0] + n[1] * m[1] + n[2] * m[2] < least) {
          wraps.mark(bare, bare.corner()[h], bare.corner()[Topology.next(h)], wrapped);
        }
      }
    }
    double sum = 0;
    for (int i = 0; i < wrapped.length; i++) {
      sum += wrapped[i] ? wraps.stretch[i] : 0;
    }
    return sum;
  }

  /** Marks the places near the middle of an edge of the mesh. */
  private void mark(Mesh mesh, int a, int b, boolean[] wrapped) {
    double[] p = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      p[axis] = (mesh.xyz()[3 * a + axis] + mesh.xyz()[3 * b + axis]) / 2;
    }
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        for (int dz = -1; dz <= 1; dz++) {
          int[] cell = cells.get(key(cell(p[0]) + dx, cell(p[1]) + dy, cell(p[2]) + dz));
          for (int i = 0; cell != null && i < cell[0]; i++) {
            int place = cell[i + 1];
            wrapped[place] |= near(p, place);
          }
        }
      }
    }
  }

  private boolean near(double[] p, int place) {
    double square = 0;
    for (int axis = 0; axis < 3; axis++) {
      double d = p[axis] - places[3 * place + axis];
      square += d * d;
    }
    return square < reachMm * reachMm;
  }

  private void add(int place) {
    long key =
        key(cell(places[3 * place]), cell(places[3 * place + 1]), cell(places[3 * place + 2]));
    int[] cell = cells.computeIfAbsent(key, k -> new int[5]);
    if (cell[0] + 1 == cell.length) {
      cell = Arrays.copyOf(cell, 2 * cell.length);
      cells.put(key, cell);
    }
    cell[++cell[0]] = place;
  }

  private long cell(double x) {
    return (long) Math.floor(x / reachMm);
  }

  /** 21 bits an axis: cells that share a key only cost time. */
  private static long key(long x, long y, long z) {
    long mask = (1 << 21) - 1;
    return (x & mask) << 42 | (y & mask) << 21 | (z & mask);
  }
}
