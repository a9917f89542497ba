package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.seamwright.mesh.Bounds;
import org.seamwright.region.Mark;

/**
 * The places of a mark that can be taken and moved after the fact: points of a stroke, corners of
 * an outline or a box, the place of a plane or a fill, limits of a ring or a slice.
 */
final class MarkHandles {
  private MarkHandles() {}

  /**
   * Where the handles of a mark are; none if it has no places.
   *
   * @param axis the piece's axis, for marks that go about it
   * @param foot the surface, on which limits about an axis are shown
   */
  static List<Vector3D> of(Mark mark, Optional<PieceAxis> axis, SurfaceFoot foot) {
    if (mark instanceof Mark.Near near) {
      return near.path();
    }
    if (mark instanceof Mark.Outline outline) {
      List<Vector3D> handles = new ArrayList<>(outline.path());
      handles.add(outline.inside());
      return handles;
    }
    if (mark instanceof Mark.InBox box) {
      return List.of(box.low(), box.high());
    }
    if (mark instanceof Mark.HalfSpace plane) {
      return List.of(plane.point());
    }
    if (mark instanceof Mark.CreaseFill fill) {
      return List.of(fill.point());
    }
    if (mark instanceof Mark.WholePart part) {
      return List.of(part.point());
    }
    if (mark instanceof Mark.Ring ring && about(ring, axis).isPresent()) {
      return limits(ring, about(ring, axis).get(), foot);
    }
    if (mark instanceof Mark.Sector sector && sector.found().isEmpty()) {
      return List.of(
          outward(sector, sector.fromDegrees(), foot), outward(sector, sector.toDegrees(), foot));
    }
    return List.of();
  }

  private static Optional<PieceAxis> about(Mark.Ring ring, Optional<PieceAxis> axis) {
    if (ring.found().isEmpty()) {
      return Optional.of(new PieceAxis(ring.point(), ring.axis().normalize(), false));
    }
    return ring.found().get().ownPoint() ? Optional.empty() : axis.filter(PieceAxis::isFound);
  }

  private static List<Vector3D> limits(Mark.Ring ring, PieceAxis axis, SurfaceFoot foot) {
    if (Double.isInfinite(ring.fromMm()) || Double.isInfinite(ring.toMm())) {
      return List.of();
    }
    List<Vector3D> handles = new ArrayList<>();
    Vector3D aside = axis.direction().orthogonal().multiply(foot.diagonalMm());
    for (double height : new double[] {ring.fromMm(), ring.toMm()}) {
      Vector3D on = axis.point().add(axis.direction().multiply(height));
      handles.add(foot.under(on.add(aside)).point());
    }
    return handles;
  }

  private static Vector3D centre(SurfaceFoot foot) {
    Bounds b = foot.mesh().bounds();
    return Vector3D.of(
        (b.minX() + b.maxX()) / 2, (b.minY() + b.maxY()) / 2, (b.minZ() + b.maxZ()) / 2);
  }

  private static Vector3D outward(Mark.Sector sector, double degrees, SurfaceFoot foot) {
    Vector3D axis = sector.axis().normalize();
    Vector3D zero = sector.zero().reject(axis).normalize();
    Vector3D way = QuaternionRotation.fromAxisAngle(axis, Math.toRadians(degrees)).apply(zero);
    Vector3D middle = axis.multiply(centre(foot).subtract(sector.point()).dot(axis));
    return foot.under(sector.point().add(middle).add(way.multiply(foot.diagonalMm() / 2))).point();
  }

  /**
   * The mark with a handle in another place; empty if that leaves no mark.
   *
   * @param to the place, mm
   */
  static Optional<Mark> moved(Mark mark, int handle, Vector3D to, Optional<PieceAxis> axis) {
    try {
      return moving(mark, handle, to, axis);
    } catch (IllegalArgumentException e) {
      // A box of no volume or a ring of no height: the pointer has gone too far.
      return Optional.empty();
    }
  }

  private static Optional<Mark> moving(
      Mark mark, int handle, Vector3D to, Optional<PieceAxis> axis) {
    if (mark instanceof Mark.Near m) {
      return Optional.of(
          new Mark.Near(m.name(), m.treatment(), replaced(m.path(), handle, to), m.radiusMm()));
    }
    if (mark instanceof Mark.Outline m) {
      boolean corner = handle < m.path().size();
      return Optional.of(
          new Mark.Outline(
              m.name(),
              m.treatment(),
              corner ? replaced(m.path(), handle, to) : m.path(),
              corner ? m.inside() : to));
    }
    if (mark instanceof Mark.InBox m) {
      return Optional.of(
          new Mark.InBox(
              m.name(), m.treatment(), handle == 0 ? to : m.low(), handle == 0 ? m.high() : to));
    }
    if (mark instanceof Mark.HalfSpace m) {
      return Optional.of(new Mark.HalfSpace(m.name(), m.treatment(), to, m.normal()));
    }
    if (mark instanceof Mark.CreaseFill m) {
      return Optional.of(
          new Mark.CreaseFill(m.name(), m.treatment(), to, m.angleDegrees(), m.gapsMm()));
    }
    if (mark instanceof Mark.WholePart m) {
      return Optional.of(new Mark.WholePart(m.name(), m.treatment(), to));
    }
    if (mark instanceof Mark.Ring m && about(m, axis).isPresent()) {
      double height = Math.rint(1e4 * about(m, axis).get().height(to)) / 1e4;
      return Optional.of(
          new Mark.Ring(
              m.name(),
              m.treatment(),
              m.point(),
              m.axis(),
              handle == 0 ? height : m.fromMm(),
              handle == 0 ? m.toMm() : height,
              m.innerMm(),
              m.outerMm(),
              m.found()));
    }
    return mark instanceof Mark.Sector m ? turned(m, handle, to) : Optional.empty();
  }

  /** Limits stay within one turn of each other: the one that moves takes the nearest such angle. */
  private static Optional<Mark> turned(Mark.Sector m, int handle, Vector3D to) {
    Vector3D axis = m.axis().normalize();
    Vector3D way = to.subtract(m.point()).reject(axis);
    Vector3D zero = m.zero().reject(axis);
    double degrees =
        Math.rint(100 * Math.toDegrees(Math.atan2(axis.dot(zero.cross(way)), zero.dot(way)))) / 100;
    double was = handle == 0 ? m.fromDegrees() : m.toDegrees();
    degrees += 360 * Math.rint((was - degrees) / 360);
    return Optional.of(
        new Mark.Sector(
            m.name(),
            m.treatment(),
            m.point(),
            m.axis(),
            m.zero(),
            handle == 0 ? degrees : m.fromDegrees(),
            handle == 0 ? m.toDegrees() : degrees,
            m.found()));
  }

  private static List<Vector3D> replaced(List<Vector3D> path, int index, Vector3D with) {
    List<Vector3D> after = new ArrayList<>(path);
    after.set(index, with);
    return after;
  }

  /** The line that joins handles, if the mark has one: how many of them, from the first. */
  static int joined(Mark mark) {
    return mark instanceof Mark.Near near
        ? near.path().size()
        : mark instanceof Mark.Outline outline ? outline.path().size() : 0;
  }
}
