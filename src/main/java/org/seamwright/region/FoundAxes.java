package org.seamwright.region;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.measure.Revolution;

/**
 * Puts the piece's own axis ({@link Revolution}) into marks that ask for it, before they are
 * carried out. A piece that doesn't show its axis clearly refuses them.
 */
final class FoundAxes {
  /** Cosine of 25 degrees: nearer than that to the axis, x is no good as direction of angle 0. */
  private static final double TOO_NEAR = 0.9;

  /** Sine of the angle between axis and direction of angle 0 below which there is no angle. */
  private static final double ALONG = 1e-6;

  private final Piece piece;
  private final int index;
  private final List<Notice> notices;

  /**
   * Prepares for a mark.
   *
   * @param index its place in the list, from 0
   * @param notices receives which axis was taken
   */
  FoundAxes(Piece piece, int index, List<Notice> notices) {
    this.piece = piece;
    this.index = index;
    this.notices = notices;
  }

  /** The mark about the axis found; the mark itself if it does not ask for one. */
  Mark resolve(Mark mark) throws MarkException {
    if (mark instanceof Mark.Ring ring && ring.found().isPresent()) {
      Revolution axis = require(mark);
      return new Mark.Ring(
          ring.name(),
          ring.treatment(),
          point(axis, ring.found(), ring.point()),
          axis.direction(),
          ring.fromMm(),
          ring.toMm(),
          ring.innerMm(),
          ring.outerMm());
    }
    if (mark instanceof Mark.Sector sector && sector.found().isPresent()) {
      Revolution axis = require(mark);
      return new Mark.Sector(
          sector.name(),
          sector.treatment(),
          point(axis, sector.found(), sector.point()),
          axis.direction(),
          zero(axis, sector),
          sector.fromDegrees(),
          sector.toDegrees());
    }
    if (mark instanceof Mark.Turn turn && turn.found().isPresent()) {
      Revolution axis = require(mark);
      return new Mark.Turn(
          turn.name(), point(axis, turn.found(), turn.point()), axis.direction(), turn.count());
    }
    return mark;
  }

  private static Vector3D point(Revolution axis, Optional<Mark.FoundAxis> found, Vector3D own) {
    if (!found.orElseThrow().ownPoint()) {
      return axis.point();
    }
    double along = own.subtract(axis.point()).dot(axis.direction());
    return axis.point().add(axis.direction().multiply(along));
  }

  private Vector3D zero(Revolution axis, Mark.Sector mark) throws MarkException {
    if (!mark.found().orElseThrow().ownZero()) {
      boolean alongX = Math.abs(axis.direction().getX()) > TOO_NEAR;
      return alongX ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.PLUS_X;
    }
    if (mark.zero().normalize().cross(axis.direction()).norm() < ALONG) {
      throw new MarkException(
          index,
          mark,
          "zero",
          "the direction of angle 0 lies along the axis that was found",
          "Choose one across the axis, or leave it out.");
    }
    return mark.zero();
  }

  private Revolution require(Mark mark) throws MarkException {
    Revolution axis = piece.axis();
    if (!axis.isSure()) {
      throw new MarkException(
          index, mark, "axis", problem(axis), "Give point and axis in numbers.");
    }
    Vector3D p = axis.point();
    Vector3D d = axis.direction();
    notices.add(
        new Notice(
            Marks.AXIS_FOUND,
            1,
            String.format(
                Locale.ROOT,
                "The %s goes about the axis that the piece shows: from (%.3f, %.3f, %.3f) mm along"
                    + " (%.5f, %.5f, %.5f); %.0f%% of the area round it fits.",
                Marks.called(index, mark),
                tidy(p.getX(), 5e-4),
                tidy(p.getY(), 5e-4),
                tidy(p.getZ(), 5e-4),
                tidy(d.getX(), 5e-6),
                tidy(d.getY(), 5e-6),
                tidy(d.getZ(), 5e-6),
                100 * axis.confidence())));
    return axis;
  }

  /** A number that prints as nothing but zeros has no sign. */
  private static double tidy(double value, double half) {
    return Math.abs(value) < half ? 0 : value;
  }

  private static String problem(Revolution axis) {
    return switch (axis.kind()) {
      case SPHERE -> "the piece is a sphere, which turns about every line through its middle";
      case NONE -> "the piece shows no axis by its shape";
      case AXIS ->
          String.format(
              Locale.ROOT,
              "the piece shows no clear axis by its shape: %.0f%% of the area fits the best, and"
                  + " %.0f%% must",
              100 * axis.confidence(),
              100 * Revolution.ENOUGH);
    };
  }
}
