package org.seamwright.region;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;

/**
 * Rings about an axis. Heights are cut along planes, exactly; radii along circles, true to {@link
 * #TOLERANCE} of the radius, so that the area of a disc is off by less than 2 parts in 10 000.
 */
final class RingMark {
  private static final double TOLERANCE = 1e-4;

  private final EditableSurface surface;
  private final Mark.Ring mark;
  private final Vector3D axis;
  private final double offset;
  private final double snapMm;

  RingMark(EditableSurface surface, Mark.Ring mark, double diagonalMm) {
    this.surface = surface;
    this.mark = mark;
    this.axis = mark.axis().normalize();
    this.offset = axis.dot(mark.point());
    this.snapMm = PlaneMarks.SNAP * diagonalMm;
  }

  /** Cuts along the ring's edges; gives for each face whether it is in the ring. */
  boolean[] cover(Progress progress) {
    double[] limits = {mark.fromMm(), mark.toMm()};
    for (int i = 0; i < 2; i++) {
      if (Double.isFinite(limits[i])) {
        double limit = limits[i];
        double[] field = new double[surface.vertexCount()];
        for (int v = 0; v < field.length; v++) {
          double value = height(v) - limit;
          field[v] = Math.abs(value) <= snapMm ? 0 : value;
        }
        surface.cutAlongZero(field, f -> true, progress.between(0.1 * i, 0.1 * (i + 1)));
      }
    }
    double[] inner = mark.innerMm() > 0 ? cutAt(mark.innerMm(), progress.between(0.2, 0.6)) : null;
    double[] outer =
        Double.isFinite(mark.outerMm()) ? cutAt(mark.outerMm(), progress.between(0.6, 1)) : null;
    return surface.facesWhere(
        f ->
            isBetweenHeights(f)
                && (inner == null || sum(f, inner, mark.innerMm()) >= 0)
                && (outer == null || sum(f, outer, mark.outerMm()) <= 0));
  }

  private double[] cutAt(double radius, Progress progress) {
    LevelCut cut =
        new LevelCut(surface, (x, y, z) -> snapped(radius(x, y, z) - radius), TOLERANCE * radius);
    return cut.cut(this::isBetweenHeights, progress);
  }

  private double snapped(double value) {
    return Math.abs(value) <= snapMm ? 0 : value;
  }

  /** Sum of a field over a face's corners; vertices made since the cut are looked up in space. */
  private double sum(int face, double[] field, double radius) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      int v = surface.from(3 * face + k);
      sum +=
          v < field.length
              ? field[v]
              : snapped(radius(surface.at(v, 0), surface.at(v, 1), surface.at(v, 2)) - radius);
    }
    return sum;
  }

  private boolean isBetweenHeights(int face) {
    double middle = 0;
    for (int k = 0; k < 3; k++) {
      middle += height(surface.from(3 * face + k)) / 3;
    }
    return middle >= mark.fromMm() - snapMm && middle <= mark.toMm() + snapMm;
  }

  private double height(int vertex) {
    return surface.at(vertex, 0) * axis.getX()
        + surface.at(vertex, 1) * axis.getY()
        + surface.at(vertex, 2) * axis.getZ()
        - offset;
  }

  private double radius(double x, double y, double z) {
    return Vector3D.of(x, y, z).subtract(mark.point()).cross(axis).norm();
  }
}
