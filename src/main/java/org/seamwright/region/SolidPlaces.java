package org.seamwright.region;

import java.util.Objects;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.seamwright.mesh.Mesh;

/**
 * Marks of what lies in a part of space: their edges are cut through the faces exactly. All are
 * members of {@link Mark} and named by it, as in {@code Mark.HalfSpace}.
 */
public interface SolidPlaces {
  /**
   * Everything on one side of a plane; a face lying in the plane belongs to it.
   *
   * @param point a point of the plane, mm
   * @param normal points to the marked side; any length but zero
   */
  record HalfSpace(String name, Treatment treatment, Vector3D point, Vector3D normal)
      implements Mark.Place {
    /** Checks the plane. */
    public HalfSpace {
      MarkChecks.check(name, treatment);
      MarkChecks.requireDirection(normal, "normal");
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.halfSpace(this);
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
   * @param found if there, the piece's own axis takes the place of {@code axis}
   */
  record Sector(
      String name,
      Treatment treatment,
      Vector3D point,
      Vector3D axis,
      Vector3D zero,
      double fromDegrees,
      double toDegrees,
      Optional<Mark.FoundAxis> found)
      implements Mark.Place {
    /** A sector about an axis that is given. */
    public Sector(
        String name,
        Treatment treatment,
        Vector3D point,
        Vector3D axis,
        Vector3D zero,
        double fromDegrees,
        double toDegrees) {
      this(name, treatment, point, axis, zero, fromDegrees, toDegrees, Optional.empty());
    }

    /** Checks the axis and the angles. */
    public Sector {
      Objects.requireNonNull(found, "found");
      MarkChecks.requireDirection(zero, "zero");
      MarkChecks.check(name, treatment);
      MarkChecks.requireDirection(axis, "axis");
      if (found.isEmpty() && !(axis.cross(zero).norm() > 1e-9 * axis.norm() * zero.norm())) {
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

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.sector(this);
    }
  }

  /**
   * Everything inside a box parallel to the axes; a face lying in a side belongs to it.
   *
   * @param low corner with the smallest coordinates, mm
   * @param high corner with the largest coordinates, mm
   */
  record InBox(String name, Treatment treatment, Vector3D low, Vector3D high)
      implements Mark.Place {
    /** Checks that the box has a volume. */
    public InBox {
      MarkChecks.check(name, treatment);
      if (!(low.getX() < high.getX() && low.getY() < high.getY() && low.getZ() < high.getZ())) {
        throw new IllegalArgumentException("Box is empty: " + low + " to " + high);
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.inBox(this);
    }
  }

  /**
   * A ring about an axis: between two planes square to it and between two cylinders around it.
   *
   * @param point a point of the axis, from which heights count, mm
   * @param axis direction of the axis, along which heights grow
   * @param fromMm least height; may be minus infinity
   * @param toMm greatest height; may be infinity
   * @param innerMm radius of the inner cylinder; 0 if there is none
   * @param outerMm radius of the outer cylinder; may be infinity
   * @param found if there, the piece's own axis takes the place of {@code axis}
   */
  record Ring(
      String name,
      Treatment treatment,
      Vector3D point,
      Vector3D axis,
      double fromMm,
      double toMm,
      double innerMm,
      double outerMm,
      Optional<Mark.FoundAxis> found)
      implements Mark.Place {
    /** A ring about an axis that is given. */
    public Ring(
        String name,
        Treatment treatment,
        Vector3D point,
        Vector3D axis,
        double fromMm,
        double toMm,
        double innerMm,
        double outerMm) {
      this(name, treatment, point, axis, fromMm, toMm, innerMm, outerMm, Optional.empty());
    }

    /** Checks the axis and the limits. */
    public Ring {
      MarkChecks.check(name, treatment);
      MarkChecks.requireDirection(axis, "axis");
      if (!(fromMm < toMm)) {
        throw new IllegalArgumentException("A ring's heights must rise: " + fromMm + " to " + toMm);
      }
      if (!(innerMm >= 0 && innerMm < outerMm)) {
        throw new IllegalArgumentException(
            "A ring's radii must grow from 0 or more: " + innerMm + " to " + outerMm);
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.ring(this);
    }
  }

  /**
   * Everything inside a closed body; a face lying in the body's surface belongs to it.
   *
   * @param body where the body is kept and how it is placed
   * @param mesh the body as it lies, mm; empty until its file has been read
   */
  record Inside(String name, Treatment treatment, Body body, Optional<Mesh> mesh)
      implements Mark.Place {
    /** Checks the names. */
    public Inside {
      MarkChecks.check(name, treatment);
      Objects.requireNonNull(body, "body");
      Objects.requireNonNull(mesh, "mesh");
    }

    /** A mark whose body has not been read. */
    public Inside(String name, Treatment treatment, Body body) {
      this(name, treatment, body, Optional.empty());
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.inside(this);
    }
  }

  /**
   * A body in a file of its own, first turned about a line through its origin, then moved.
   *
   * @param file path relative to the job
   * @param unit unit of its numbers, as job files spell it; empty for the one the file names
   * @param sha256 digest of the file's content when the mark was made, in hex; empty if not known
   * @param axis line to turn about, by the right-hand rule
   * @param turnDegrees how far to turn
   * @param move how far to move, mm
   */
  record Body(
      String file, String unit, String sha256, Vector3D axis, double turnDegrees, Vector3D move) {
    /** Checks the placement. */
    public Body {
      MarkChecks.requireDirection(axis, "axis");
      if (file.isBlank() || !Double.isFinite(turnDegrees)) {
        throw new IllegalArgumentException("A body needs a file and an angle");
      }
    }

    /** From the body's own coordinates, in mm, to those of the piece. */
    public AffineTransformMatrix3D placement() {
      return AffineTransformMatrix3D.createRotation(
              Vector3D.ZERO, QuaternionRotation.fromAxisAngle(axis, Math.toRadians(turnDegrees)))
          .translate(move);
    }

    /** The same body with another digest. */
    public Body withSha256(String other) {
      return new Body(file, unit, other, axis, turnDegrees, move);
    }
  }
}
