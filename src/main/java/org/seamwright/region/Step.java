package org.seamwright.region;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;

/**
 * One thing to carry out: a mark or a moved copy of one.
 *
 * @param owner number of the mark in the list it came from: itself or the one that repeats it
 * @param mark what to carry out, moved already but for a box or body
 * @param motion how it was moved
 */
record Step(int owner, Mark mark, AffineTransformMatrix3D motion) {
  /** Beyond this a list of repeats is a slip: each multiplies all before it. */
  private static final int MOST = 20_000;

  private static final AffineTransformMatrix3D NONE = AffineTransformMatrix3D.identity();

  /**
   * What a mark adds to the steps before it: itself, or a moved copy of each of them for each of
   * its motions.
   *
   * @param owner number of the mark in its list
   * @param before all steps so far
   */
  static List<Step> next(int owner, Mark mark, List<Step> before) throws MarkException {
    List<AffineTransformMatrix3D> motions = motions(mark);
    if (motions.isEmpty()) {
      return List.of(new Step(owner, mark, NONE));
    }
    if ((long) before.size() * (motions.size() + 1) > MOST) {
      throw new MarkException(
          owner,
          mark,
          "",
          "repeats of repeats make more than " + MOST + " marks",
          "Lower the count, or put the repeat before the other one.");
    }
    List<Step> steps = new ArrayList<>();
    for (AffineTransformMatrix3D motion : motions) {
      for (Step step : before) {
        AffineTransformMatrix3D both = motion.multiply(step.motion());
        moved(step.mark(), motion).ifPresent(m -> steps.add(new Step(owner, m, both)));
      }
    }
    return steps;
  }

  private static List<AffineTransformMatrix3D> motions(Mark mark) {
    List<AffineTransformMatrix3D> motions = new ArrayList<>();
    if (mark instanceof Mark.Mirror mirror) {
      motions.add(reflection(mirror.point(), mirror.normal().normalize()));
    } else if (mark instanceof Mark.Turn turn) {
      for (int k = 1; k < turn.count(); k++) {
        QuaternionRotation rotation =
            QuaternionRotation.fromAxisAngle(turn.axis(), 2 * Math.PI * k / turn.count());
        motions.add(AffineTransformMatrix3D.createRotation(turn.point(), rotation));
      }
    }
    return motions;
  }

  /** Householder's reflection in a plane. */
  private static AffineTransformMatrix3D reflection(Vector3D point, Vector3D n) {
    double x = n.getX();
    double y = n.getY();
    double z = n.getZ();
    double shift = 2 * n.dot(point);
    return AffineTransformMatrix3D.of(
        1 - 2 * x * x,
        -2 * x * y,
        -2 * x * z,
        shift * x,
        -2 * y * x,
        1 - 2 * y * y,
        -2 * y * z,
        shift * y,
        -2 * z * x,
        -2 * z * y,
        1 - 2 * z * z,
        shift * z);
  }

  /**
   * A mark moved; empty for marks that no motion moves. A box or body stays, since it has no axes.
   */
  private static Optional<Mark> moved(Mark mark, AffineTransformMatrix3D motion) {
    return mark.match(new Moving(motion));
  }

  /** Moves each kind of mark. */
  private record Moving(AffineTransformMatrix3D motion)
      implements Mark.Cases<Optional<Mark>, RuntimeException> {
    private Vector3D place(Vector3D point) {
      return motion.apply(point);
    }

    private Vector3D way(Vector3D direction) {
      return motion.applyVector(direction);
    }

    private List<Vector3D> places(List<Vector3D> points) {
      return points.stream().map(this::place).toList();
    }

    @Override
    public Optional<Mark> halfSpace(Mark.HalfSpace m) {
      return Optional.of(
          new Mark.HalfSpace(m.name(), m.treatment(), place(m.point()), way(m.normal())));
    }

    @Override
    public Optional<Mark> near(Mark.Near m) {
      return Optional.of(new Mark.Near(m.name(), m.treatment(), places(m.path()), m.radiusMm()));
    }

    @Override
    public Optional<Mark> creaseFill(Mark.CreaseFill m) {
      return Optional.of(
          new Mark.CreaseFill(
              m.name(), m.treatment(), place(m.point()), m.angleDegrees(), m.gapsMm()));
    }

    @Override
    public Optional<Mark> wholePart(Mark.WholePart m) {
      return Optional.of(new Mark.WholePart(m.name(), m.treatment(), place(m.point())));
    }

    @Override
    public Optional<Mark> sector(Mark.Sector m) {
      // In a mirror a right-hand turn becomes a left-hand one.
      boolean turned = motion.preservesOrientation();
      return Optional.of(
          new Mark.Sector(
              m.name(),
              m.treatment(),
              place(m.point()),
              way(m.axis()),
              way(m.zero()),
              turned ? m.fromDegrees() : -m.toDegrees(),
              turned ? m.toDegrees() : -m.fromDegrees()));
    }

    @Override
    public Optional<Mark> inBox(Mark.InBox m) {
      return Optional.of(m);
    }

    /** The body's mesh stays too: the motion is applied where it is cut. */
    @Override
    public Optional<Mark> inside(Mark.Inside m) {
      return Optional.of(m);
    }

    @Override
    public Optional<Mark> outOfReach(Mark.OutOfReach m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> innerShells(Mark.InnerShells m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> ring(Mark.Ring m) {
      return Optional.of(
          new Mark.Ring(
              m.name(),
              m.treatment(),
              place(m.point()),
              way(m.axis()),
              m.fromMm(),
              m.toMm(),
              m.innerMm(),
              m.outerMm()));
    }

    @Override
    public Optional<Mark> outline(Mark.Outline m) {
      return Optional.of(
          new Mark.Outline(m.name(), m.treatment(), places(m.path()), place(m.inside())));
    }

    @Override
    public Optional<Mark> facing(Mark.Facing m) {
      return Optional.of(
          new Mark.Facing(m.name(), m.treatment(), way(m.direction()), m.angleDegrees()));
    }

    @Override
    public Optional<Mark> named(Mark.Named m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> grow(Mark.Grow m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> smooth(Mark.Smooth m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> mirror(Mark.Mirror m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> turn(Mark.Turn m) {
      return Optional.empty();
    }

    @Override
    public Optional<Mark> invert(Mark.Invert m) {
      return Optional.empty();
    }
  }
}
