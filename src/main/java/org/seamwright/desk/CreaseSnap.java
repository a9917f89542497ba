package org.seamwright.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.measure.Crease;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * The sharp edges of a piece, to lay corners and strokes on: a place near one becomes the nearest
 * place on it. O(n) to find them, then a few edges per place: they are kept in a grid.
 */
final class CreaseSnap {
  /** Cells of the grid per diagonal. */
  private static final double CELLS = 100;

  private final Mesh mesh;
  private final double cellMm;
  private final Map<Long, List<Integer>> cells = new HashMap<>();

  private CreaseSnap(Mesh mesh) {
    this.mesh = mesh;
    this.cellMm = Math.max(mesh.bounds().diagonal() / CELLS, 1e-9);
  }

  /**
   * Finds the edges of a piece.
   *
   * @param degrees how sharp an edge is, at least; borders of the mesh count too
   */
  static CreaseSnap of(Mesh mesh, double degrees) {
    CreaseSnap snap = new CreaseSnap(mesh);
    Topology topology = Topology.of(mesh);
    double[] angle = Crease.degrees(mesh, topology);
    for (int h = 0; h < angle.length; h++) {
      if (angle[h] >= degrees && topology.twin(h) < h) {
        snap.add(h);
      }
    }
    return snap;
  }

  private Vector3D end(int h) {
    int v = mesh.corner()[h];
    return Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
  }

  private void add(int h) {
    Vector3D from = end(h);
    Vector3D to = end(Topology.next(h));
    int steps = Math.max(1, (int) Math.ceil(2 * from.distance(to) / cellMm));
    long before = Long.MIN_VALUE;
    for (int i = 0; i <= steps; i++) {
      long cell = cell(from.lerp(to, (double) i / steps), 0, 0, 0);
      if (cell != before) {
        cells.computeIfAbsent(cell, k -> new ArrayList<>()).add(h);
        before = cell;
      }
    }
  }

  private long cell(Vector3D p, int dx, int dy, int dz) {
    long x = (long) Math.floor(p.getX() / cellMm) + dx;
    long y = (long) Math.floor(p.getY() / cellMm) + dy;
    long z = (long) Math.floor(p.getZ() / cellMm) + dz;
    return (x & 0x1FFFFF) << 42 | (y & 0x1FFFFF) << 21 | (z & 0x1FFFFF);
  }

  /** The nearest place on a sharp edge, if there is one within a hundredth of the diagonal. */
  Optional<Vector3D> near(Vector3D place) {
    Vector3D best = null;
    double least = cellMm;
    for (int i = 0; i < 27; i++) {
      long cell = cell(place, i % 3 - 1, i / 3 % 3 - 1, i / 9 - 1);
      for (int h : cells.getOrDefault(cell, List.of())) {
        Vector3D from = end(h);
        Vector3D along = end(Topology.next(h)).subtract(from);
        double share = place.subtract(from).dot(along) / Math.max(along.normSq(), 1e-300);
        Vector3D foot = from.add(along.multiply(Math.max(0, Math.min(1, share))));
        if (foot.distance(place) <= least) {
          least = foot.distance(place);
          best = foot;
        }
      }
    }
    return Optional.ofNullable(best);
  }
}
