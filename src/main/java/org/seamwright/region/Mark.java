package org.seamwright.region;

import java.util.List;
import java.util.Objects;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * One thing the user says of the piece: a place, in the piece's own coordinates (mm), and what is
 * to become of it. Marks apply in order; a later one overrides an earlier one where they overlap.
 *
 * <p>A mark is geometry, never a list of face numbers, so it survives a finer or coarser model of
 * the same piece.
 */
public sealed interface Mark {
  /** What the user calls it; may be empty. */
  String name();

  /** What becomes of the marked place. */
  Treatment treatment();

  /**
   * Everything on one side of a plane; a face lying in the plane belongs to it.
   *
   * @param point a point of the plane, mm
   * @param normal points to the marked side; any length but zero
   */
  record HalfSpace(String name, Treatment treatment, Vector3D point, Vector3D normal)
      implements Mark {
    /** Checks the plane. */
    public HalfSpace {
      check(name, treatment);
      requireDirection(normal, "normal");
    }
  }

  /**
   * Everything within a distance, along the surface, of a point or polyline on the surface. Points
   * are first dropped to the nearest place of the surface; legs between them follow the surface by
   * the shortest way.
   *
   * @param path one point for a disc, two or more for a stroke, mm
   * @param radiusMm distance along the surface, above 0
   */
  record Near(String name, Treatment treatment, List<Vector3D> path, double radiusMm)
      implements Mark {
    /** Checks the path and radius. */
    public Near {
      check(name, treatment);
      path = List.copyOf(path);
      if (path.isEmpty()) {
        throw new IllegalArgumentException("A path needs a point");
      }
      requirePositive(radiusMm, "radiusMm");
    }
  }

  /**
   * Everything that can be reached from a point without crossing a crease.
   *
   * @param point where the fill starts, mm
   * @param angleDegrees the normals of two neighbouring faces must differ by at least this much to
   *     stop the fill; above 0 and at most 180
   */
  record CreaseFill(String name, Treatment treatment, Vector3D point, double angleDegrees)
      implements Mark {
    /** Checks the angle. */
    public CreaseFill {
      check(name, treatment);
      if (!(angleDegrees > 0 && angleDegrees <= 180)) {
        throw new IllegalArgumentException("Crease angle must be in (0, 180]: " + angleDegrees);
      }
    }
  }

  /**
   * The whole connected part nearest to a point.
   *
   * @param point any place on or near the part, mm
   */
  record WholePart(String name, Treatment treatment, Vector3D point) implements Mark {
    /** Checks the names. */
    public WholePart {
      check(name, treatment);
      Objects.requireNonNull(point, "point");
    }
  }

  /**
   * An angular sector about an axis, like a slice of cake.
   *
   * @param point a point of the axis, mm
   * @param axis direction of the axis; angles turn about it by the right-hand rule
   * @param zero direction of angle 0; its part along the axis doesn't count
   * @param fromDegrees where the sector starts
   * @param toDegrees where it ends, above {@code fromDegrees} by less than 360
   */
  record Sector(
      String name,
      Treatment treatment,
      Vector3D point,
      Vector3D axis,
      Vector3D zero,
      double fromDegrees,
      double toDegrees)
      implements Mark {
    /** Checks the axis and the angles. */
    public Sector {
      check(name, treatment);
      requireDirection(axis, "axis");
      if (!(axis.cross(zero).norm() > 1e-9 * axis.norm() * zero.norm())) {
        throw new IllegalArgumentException("Direction of angle 0 must not lie along the axis");
      }
      if (!(toDegrees > fromDegrees && toDegrees - fromDegrees < 360)) {
        throw new IllegalArgumentException(
            "A sector must span more than 0 and less than 360 degrees: "
                + fromDegrees
                + " to "
                + toDegrees);
      }
    }
  }

  /**
   * Everything inside a box parallel to the axes; a face lying in a side belongs to it.
   *
   * @param low corner with the smallest coordinates, mm
   * @param high corner with the largest coordinates, mm
   */
  record InBox(String name, Treatment treatment, Vector3D low, Vector3D high) implements Mark {
    /** Checks that the box has a volume. */
    public InBox {
      check(name, treatment);
      if (!(low.getX() < high.getX() && low.getY() < high.getY() && low.getZ() < high.getZ())) {
        throw new IllegalArgumentException("Box is empty: " + low + " to " + high);
      }
    }
  }

  private static void check(String name, Treatment treatment) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(treatment, "treatment");
  }

  private static void requireDirection(Vector3D direction, String what) {
    if (!(direction.norm() > 0) || !direction.isFinite()) {
      throw new IllegalArgumentException("A direction must not be zero: " + what);
    }
  }

  private static void requirePositive(double value, String what) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " must be above 0: " + value);
    }
  }
}
