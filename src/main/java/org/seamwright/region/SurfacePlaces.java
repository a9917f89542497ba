package org.seamwright.region;

import java.util.List;
import java.util.Objects;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Marks of places told by the surface itself: by ways over it, its creases, parts, names. All are
 * members of {@link Mark} and named by it, as in {@code Mark.Near}.
 */
public interface SurfacePlaces {
  /**
   * Everything within a distance, along the surface, of a point or polyline on the surface. Points
   * are first dropped to the nearest place of the surface; legs between them follow the surface by
   * the shortest way.
   *
   * @param path one point for a disc, two or more for a stroke, mm
   * @param radiusMm distance along the surface, above 0
   */
  record Near(String name, Treatment treatment, List<Vector3D> path, double radiusMm)
      implements Mark.Place {
    /** Checks the path and radius. */
    public Near {
      MarkChecks.check(name, treatment);
      path = List.copyOf(path);
      if (path.isEmpty()) {
        throw new IllegalArgumentException("A path needs a point");
      }
      MarkChecks.requirePositive(radiusMm, "radiusMm");
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.near(this);
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
      implements Mark.Place {
    /** Checks the corners. */
    public Outline {
      MarkChecks.check(name, treatment);
      path = List.copyOf(path);
      Objects.requireNonNull(inside, "inside");
      if (path.size() < 3) {
        throw new IllegalArgumentException("An outline needs three corners or more");
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.outline(this);
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
      implements Mark.Place {
    /** Checks angle and gaps. */
    public CreaseFill {
      MarkChecks.check(name, treatment);
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
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.creaseFill(this);
    }
  }

  /**
   * The whole connected part nearest to a point.
   *
   * @param point any place on or near the part, mm
   */
  record WholePart(String name, Treatment treatment, Vector3D point) implements Mark.Place {
    /** Checks the names. */
    public WholePart {
      MarkChecks.check(name, treatment);
      Objects.requireNonNull(point, "point");
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.wholePart(this);
    }
  }

  /**
   * Every face of the piece whose normal lies within an angle of a direction.
   *
   * @param direction where the faces must look, such as up
   * @param angleDegrees above 0 and at most 180
   */
  record Facing(String name, Treatment treatment, Vector3D direction, double angleDegrees)
      implements Mark.Place {
    /** Checks direction and angle. */
    public Facing {
      MarkChecks.check(name, treatment);
      MarkChecks.requireDirection(direction, "direction");
      if (!(angleDegrees > 0 && angleDegrees <= 180)) {
        throw new IllegalArgumentException("An angle must be in (0, 180]: " + angleDegrees);
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.facing(this);
    }
  }

  /**
   * Every face with a name that came with the file: a group, object, material or solid.
   *
   * @param label the whole name, or one of the parts that " / " joins
   */
  record Named(String name, Treatment treatment, String label) implements Mark.Place {
    /** Checks the label. */
    public Named {
      MarkChecks.check(name, treatment);
      if (label.isBlank()) {
        throw new IllegalArgumentException("A name to look for must not be empty");
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.named(this);
    }
  }

  /**
   * Everything that no ball of a tip's radius can touch from outside: too narrow grooves, bores and
   * corners. Parts inside a closed part belong to it.
   *
   * @param radiusMm radius of the tip, above 0
   */
  record OutOfReach(String name, Treatment treatment, double radiusMm) implements Mark.Place {
    /** Checks the radius. */
    public OutOfReach {
      MarkChecks.check(name, treatment);
      MarkChecks.requirePositive(radiusMm, "radiusMm");
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.outOfReach(this);
    }
  }

  /** All parts that lie wholly inside another, closed part: the walls of hollows, loose bodies. */
  record InnerShells(String name, Treatment treatment) implements Mark.Place {
    /** Checks the names. */
    public InnerShells {
      MarkChecks.check(name, treatment);
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.innerShells(this);
    }
  }
}
