package org.seamwright.region;

import java.util.Objects;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Marks that work on what the marks before them made. All are members of {@link Mark} and named by
 * it, as in {@code Mark.Grow}.
 */
public interface Edits {
  /**
   * The places with a treatment so far grow by a distance along the surface; those that they grow
   * into shrink.
   *
   * @param treatment what grows
   * @param byMm how far its edge moves, above 0
   * @param into what it may grow into; all else if empty
   */
  record Grow(String name, Treatment treatment, double byMm, Optional<Treatment> into)
      implements Mark.Place {
    /** Checks the distance. */
    public Grow {
      MarkChecks.check(name, treatment);
      Objects.requireNonNull(into, "into");
      MarkChecks.requirePositive(byMm, "byMm");
      if (into.isPresent() && into.get() == treatment) {
        throw new IllegalArgumentException("A treatment cannot grow into itself");
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
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
  record Smooth(String name, Treatment treatment, double radiusMm) implements Mark.Place {
    /** Checks the radius. */
    public Smooth {
      MarkChecks.check(name, treatment);
      MarkChecks.requirePositive(radiusMm, "radiusMm");
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
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
      MarkChecks.requireDirection(normal, "normal");
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
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
  record Turn(String name, Vector3D point, Vector3D axis, int count, Optional<Mark.FoundAxis> found)
      implements Mark {
    /** Copies about an axis that is given. */
    public Turn(String name, Vector3D point, Vector3D axis, int count) {
      this(name, point, axis, count, Optional.empty());
    }

    /** Checks axis and count. */
    public Turn {
      Objects.requireNonNull(name, "name");
      MarkChecks.requireDirection(axis, "axis");
      if (count < 2 || count > 360) {
        throw new IllegalArgumentException("A repeat needs 2 to 360 copies: " + count);
      }
    }

    @Override
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
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
    public <T, E extends Exception> T match(Mark.Cases<T, E> cases) throws E {
      return cases.invert(this);
    }
  }
}
