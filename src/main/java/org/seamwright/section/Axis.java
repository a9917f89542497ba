package org.seamwright.section;

import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.measure.Revolution;
import org.seamwright.mesh.Mesh;

/**
 * An axis in numbers, with angle 0 square to it.
 *
 * @param point a point of it, mm
 * @param direction unit vector
 * @param zero unit vector of angle 0
 * @param quarter unit vector of angle 90°, by the right-hand rule
 */
record Axis(Vector3D point, Vector3D direction, Vector3D zero, Vector3D quarter) {
  /** Cosine of 25 degrees: nearer than that to the axis, x is no good as direction of angle 0. */
  private static final double TOO_NEAR = 0.9;

  /** Sine of the angle between axis and direction of angle 0 below which there is no angle. */
  private static final double ALONG = 1e-6;

  /**
   * The axis that is asked for.
   *
   * @param whose what asks, for messages: "sections.way"
   * @param notices receives which axis was found
   * @throws SectionException if the piece doesn't show its axis, or angle 0 lies along it
   */
  static Axis of(SectionAxis wanted, Mesh mesh, String whose, List<Notice> notices)
      throws SectionException {
    Vector3D point;
    Vector3D direction;
    if (wanted.direction().isPresent()) {
      direction = wanted.direction().get().normalize();
      point = wanted.point().orElse(Vector3D.ZERO);
    } else {
      Revolution found = find(mesh, whose, notices);
      direction = found.direction();
      point = foot(found, wanted);
    }
    boolean alongX = Math.abs(direction.getX()) > TOO_NEAR;
    Vector3D towards = wanted.zero().orElse(alongX ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.PLUS_X);
    Vector3D across = towards.subtract(direction.multiply(direction.dot(towards)));
    if (across.norm() < ALONG * towards.norm()) {
      throw new SectionException(
          whose,
          whose + ".zero",
          "the direction of angle 0 lies along the axis",
          "Choose one across the axis, or leave it out.");
    }
    Vector3D zero = across.normalize();
    return new Axis(point, direction, zero, direction.cross(zero));
  }

  private static Vector3D foot(Revolution found, SectionAxis wanted) {
    if (wanted.point().isEmpty()) {
      return found.point();
    }
    double along = wanted.point().get().subtract(found.point()).dot(found.direction());
    return found.point().add(found.direction().multiply(along));
  }

  private static Revolution find(Mesh mesh, String whose, List<Notice> notices)
      throws SectionException {
    Revolution found = Revolution.of(mesh);
    if (!found.isSure()) {
      String problem =
          switch (found.kind()) {
            case SPHERE -> "the piece is a sphere, which turns about every line through its middle";
            case NONE -> "the piece shows no axis by its shape";
            case AXIS ->
                String.format(
                    Locale.ROOT,
                    "the piece shows no clear axis by its shape: %.0f%% of the area fits the best,"
                        + " and %.0f%% must",
                    100 * found.confidence(),
                    100 * Revolution.ENOUGH);
          };
      throw new SectionException(
          whose, whose + ".axis", problem, "Give point and axis in numbers.");
    }
    Vector3D p = found.point();
    Vector3D d = found.direction();
    notices.add(
        new Notice(
            SectionPlan.AXIS_FOUND,
            1,
            String.format(
                Locale.ROOT,
                "Sections go about the axis that the piece shows: from (%.3f, %.3f, %.3f) mm along"
                    + " (%.5f, %.5f, %.5f); %.0f%% of the area round it fits.",
                tidy(p.getX(), 5e-4),
                tidy(p.getY(), 5e-4),
                tidy(p.getZ(), 5e-4),
                tidy(d.getX(), 5e-6),
                tidy(d.getY(), 5e-6),
                tidy(d.getZ(), 5e-6),
                100 * found.confidence())));
    return found;
  }

  /** A number that prints as nothing but zeros has no sign. */
  private static double tidy(double value, double half) {
    return Math.abs(value) < half ? 0 : value;
  }

  /** Height of a place along the axis, mm. */
  double height(double x, double y, double z) {
    return (x - point.getX()) * direction.getX()
        + (y - point.getY()) * direction.getY()
        + (z - point.getZ()) * direction.getZ();
  }

  /** Distance of a place from the axis, mm. */
  double radius(double x, double y, double z) {
    return Math.hypot(along(zero, x, y, z), along(quarter, x, y, z));
  }

  /** Angle of a place about the axis, in turns from 0 to below 1. */
  double turns(double x, double y, double z) {
    double turns = Math.atan2(along(quarter, x, y, z), along(zero, x, y, z)) / (2 * Math.PI);
    return turns < 0 ? turns + 1 : turns;
  }

  private double along(Vector3D unit, double x, double y, double z) {
    return (x - point.getX()) * unit.getX()
        + (y - point.getY()) * unit.getY()
        + (z - point.getZ()) * unit.getZ();
  }

  /** Unit vector at an angle given in turns. */
  Vector3D at(double turns) {
    double angle = 2 * Math.PI * turns;
    return zero.multiply(Math.cos(angle)).add(quarter.multiply(Math.sin(angle)));
  }

  /** The same axis with angle 0 turned on. */
  Axis turned(double turns) {
    return new Axis(point, direction, at(turns), at(turns + 0.25));
  }

  /** Where a place goes when it is turned about the axis. */
  Vector3D turn(Vector3D place, double turns) {
    Vector3D from = place.subtract(point);
    double height = from.dot(direction);
    double x = from.dot(zero);
    double y = from.dot(quarter);
    double cos = Math.cos(2 * Math.PI * turns);
    double sin = Math.sin(2 * Math.PI * turns);
    return point
        .add(direction.multiply(height))
        .add(zero.multiply(x * cos - y * sin))
        .add(quarter.multiply(x * sin + y * cos));
  }
}
