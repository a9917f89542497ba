package org.seamwright.region;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
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

  /** Calls the case of this mark's kind. */
  <T, E extends Exception> T match(Cases<T, E> cases) throws E;

  /**
   * Says that a mark goes about the axis that the piece shows by its shape, and which of the mark's
   * own vectors count beside it. A point counts by its foot on that axis; without one heights count
   * from the level of the lowest place. Without a direction angles count from x, or from y where
   * the axis lies within 25 degrees of x.
   *
   * @param ownPoint whether the mark's point counts
   * @param ownZero whether the mark's direction of angle 0 counts
   */
  record FoundAxis(boolean ownPoint, boolean ownZero) {}

  /** A mark that says of a place what becomes of it. */
  sealed interface Place extends Mark {
    /** What becomes of the marked place. */
    Treatment treatment();
  }

  /**
   * One case per kind of mark.
   *
   * @param <T> what a case gives
   * @param <E> what it may throw
   */
  interface Cases<T, E extends Exception> {
    /** A half space. */
    T halfSpace(HalfSpace mark) throws E;

    /** A disc or stroke. */
    T near(Near mark) throws E;

    /** A fill up to creases. */
    T creaseFill(CreaseFill mark) throws E;

    /** A whole part. */
    T wholePart(WholePart mark) throws E;

    /** A sector about an axis. */
    T sector(Sector mark) throws E;

    /** A box. */
    T inBox(InBox mark) throws E;

    /** A ring about an axis. */
    T ring(Ring mark) throws E;

    /** A closed outline. */
    T outline(Outline mark) throws E;

    /** Faces that face a direction. */
    T facing(Facing mark) throws E;

    /** Faces with a name from the file. */
    T named(Named mark) throws E;

    /** A region growing. */
    T grow(Grow mark) throws E;

    /** A region's edge made smooth. */
    T smooth(Smooth mark) throws E;

    /** A mirror image of the marks so far. */
    T mirror(Mirror mark) throws E;

    /** Turned copies of the marks so far. */
    T turn(Turn mark) throws E;

    /** Plated and bare places changing roles. */
    T invert(Invert mark) throws E;
  }

  /**
   * Everything on one side of a plane; a face lying in the plane belongs to it.
   *
   * @param point a point of the plane, mm
   * @param normal points to the marked side; any length but zero
   */
  record HalfSpace(String name, Treatment treatment, Vector3D point, Vector3D normal)
      implements Place {
    /** Checks the plane. */
    public HalfSpace {
      check(name, treatment);
      requireDirection(normal, "normal");
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.halfSpace(this);
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
      implements Place {
    /** Checks the path and radius. */
    public Near {
      check(name, treatment);
      path = List.copyOf(path);
      if (path.isEmpty()) {
        throw new IllegalArgumentException("A path needs a point");
      }
      requirePositive(radiusMm, "radiusMm");
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.near(this);
    }
  }

  /**
   * Everything that can be reached from a point without crossing a crease.
   *
   * @param point where the fill starts, mm
   * @param angleDegrees the normals of two neighbouring faces must differ by at least this much to
   *     stop the fill; above 0 and at most 180
   * @param gapsMm breaks of a crease line up to this length don't let the fill through; 0 if they
   *     do
   */
  record CreaseFill(
      String name, Treatment treatment, Vector3D point, double angleDegrees, double gapsMm)
      implements Place {
    /** Checks angle and gaps. */
    public CreaseFill {
      check(name, treatment);
      if (!(gapsMm >= 0) || Double.isInfinite(gapsMm)) {
        throw new IllegalArgumentException("gapsMm must be 0 or more: " + gapsMm);
      }
      if (!(angleDegrees > 0 && angleDegrees <= 180)) {
        throw new IllegalArgumentException("Crease angle must be in (0, 180]: " + angleDegrees);
      }
    }

    /** A fill that breaks of creases let through. */
    public CreaseFill(String name, Treatment treatment, Vector3D point, double angleDegrees) {
      this(name, treatment, point, angleDegrees, 0);
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.creaseFill(this);
    }
  }

  /**
   * The whole connected part nearest to a point.
   *
   * @param point any place on or near the part, mm
   */
  record WholePart(String name, Treatment treatment, Vector3D point) implements Place {
    /** Checks the names. */
    public WholePart {
      check(name, treatment);
      Objects.requireNonNull(point, "point");
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.wholePart(this);
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
      Optional<FoundAxis> found)
      implements Place {
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
      requireDirection(zero, "zero");
      check(name, treatment);
      requireDirection(axis, "axis");
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
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.sector(this);
    }
  }

  /**
   * Everything inside a box parallel to the axes; a face lying in a side belongs to it.
   *
   * @param low corner with the smallest coordinates, mm
   * @param high corner with the largest coordinates, mm
   */
  record InBox(String name, Treatment treatment, Vector3D low, Vector3D high) implements Place {
    /** Checks that the box has a volume. */
    public InBox {
      check(name, treatment);
      if (!(low.getX() < high.getX() && low.getY() < high.getY() && low.getZ() < high.getZ())) {
        throw new IllegalArgumentException("Box is empty: " + low + " to " + high);
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
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
      Optional<FoundAxis> found)
      implements Place {
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
      check(name, treatment);
      requireDirection(axis, "axis");
      if (!(fromMm < toMm)) {
        throw new IllegalArgumentException("A ring's heights must rise: " + fromMm + " to " + toMm);
      }
      if (!(innerMm >= 0 && innerMm < outerMm)) {
        throw new IllegalArgumentException(
            "A ring's radii must grow from 0 or more: " + innerMm + " to " + outerMm);
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.ring(this);
    }
  }

  /**
   * Everything on one side of a closed outline on the surface: its points dropped to the nearest
   * place, its sides the shortest ways between them.
   *
   * @param path three corners or more, mm; the last is joined to the first
   * @param inside a point on the marked side, mm
   */
  record Outline(String name, Treatment treatment, List<Vector3D> path, Vector3D inside)
      implements Place {
    /** Checks the corners. */
    public Outline {
      check(name, treatment);
      path = List.copyOf(path);
      Objects.requireNonNull(inside, "inside");
      if (path.size() < 3) {
        throw new IllegalArgumentException("An outline needs three corners or more");
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.outline(this);
    }
  }

  /**
   * Every face of the piece whose normal lies within an angle of a direction.
   *
   * @param direction where the faces must look, such as up
   * @param angleDegrees above 0 and at most 180
   */
  record Facing(String name, Treatment treatment, Vector3D direction, double angleDegrees)
      implements Place {
    /** Checks direction and angle. */
    public Facing {
      check(name, treatment);
      requireDirection(direction, "direction");
      if (!(angleDegrees > 0 && angleDegrees <= 180)) {
        throw new IllegalArgumentException("An angle must be in (0, 180]: " + angleDegrees);
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.facing(this);
    }
  }

  /**
   * Every face with a name that came with the file: a group, object, material or solid.
   *
   * @param label the whole name, or one of the parts that " / " joins
   */
  record Named(String name, Treatment treatment, String label) implements Place {
    /** Checks the label. */
    public Named {
      check(name, treatment);
      if (label.isBlank()) {
        throw new IllegalArgumentException("A name to look for must not be empty");
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.named(this);
    }
  }

  /**
   * The places with a treatment so far grow by a distance along the surface; those that they grow
   * into shrink.
   *
   * @param treatment what grows
   * @param byMm how far its edge moves, above 0
   * @param into what it may grow into; all else if empty
   */
  record Grow(String name, Treatment treatment, double byMm, Optional<Treatment> into)
      implements Place {
    /** Checks the distance. */
    public Grow {
      check(name, treatment);
      Objects.requireNonNull(into, "into");
      requirePositive(byMm, "byMm");
      if (into.isPresent() && into.get() == treatment) {
        throw new IllegalArgumentException("A treatment cannot grow into itself");
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.grow(this);
    }
  }

  /**
   * The edge of the places with a treatment so far made smooth: notches narrower than twice the
   * radius are filled, spurs and specks thinner than that go, corners are rounded. Places that lose
   * the treatment take that of what is round them.
   *
   * @param treatment whose edge
   * @param radiusMm radius, along the surface, above 0
   */
  record Smooth(String name, Treatment treatment, double radiusMm) implements Place {
    /** Checks the radius. */
    public Smooth {
      check(name, treatment);
      requirePositive(radiusMm, "radiusMm");
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.smooth(this);
    }
  }

  /**
   * A mirror image of all marks before it, in order. Marks that no motion moves ({@link Named},
   * {@link Grow}, {@link Smooth}, {@link Invert}) are not repeated.
   *
   * @param point a point of the mirror, mm
   * @param normal square to the mirror; any length but zero
   */
  record Mirror(String name, Vector3D point, Vector3D normal) implements Mark {
    /** Checks the plane. */
    public Mirror {
      Objects.requireNonNull(name, "name");
      requireDirection(normal, "normal");
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.mirror(this);
    }
  }

  /**
   * Copies of all marks before it, turned about an axis by equal angles; as {@link Mirror} for the
   * rest.
   *
   * @param point a point of the axis, mm
   * @param axis its direction
   * @param count how many there are of each after it; 2 or more
   * @param found if there, the piece's own axis takes the place of {@code axis}
   */
  record Turn(String name, Vector3D point, Vector3D axis, int count, Optional<FoundAxis> found)
      implements Mark {
    /** Copies about an axis that is given. */
    public Turn(String name, Vector3D point, Vector3D axis, int count) {
      this(name, point, axis, count, Optional.empty());
    }

    /** Checks axis and count. */
    public Turn {
      Objects.requireNonNull(name, "name");
      requireDirection(axis, "axis");
      if (count < 2 || count > 360) {
        throw new IllegalArgumentException("A repeat needs 2 to 360 copies: " + count);
      }
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.turn(this);
    }
  }

  /** What is plated becomes bare and what is bare is plated; the rest stays out of scope. */
  record Invert(String name) implements Mark {
    /** Checks the name. */
    public Invert {
      Objects.requireNonNull(name, "name");
    }

    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return cases.invert(this);
    }
  }

  /**
   * A mark that is switched off: it keeps its place in the list and does nothing, nor is it
   * repeated.
   *
   * @param mark what it is when it is switched on
   */
  record Off(Mark mark) implements Mark {
    /** Checks that a mark is switched off once. */
    public Off {
      if (mark instanceof Off) {
        throw new IllegalArgumentException("A mark is switched off once");
      }
    }

    @Override
    public String name() {
      return mark.name();
    }

    /** Calls the case of the mark that is switched off. */
    @Override
    public <T, E extends Exception> T match(Cases<T, E> cases) throws E {
      return mark.match(cases);
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
