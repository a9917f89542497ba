package org.seamwright.desk;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Mark;

/**
 * Marks from what the pointer did: pure, so that each tool's rule can be read and tested alone. A
 * draft that is not complete yet is empty.
 */
final class Drafts {
  private static final String NO_NAME = "";

  private Drafts() {}

  /** The mark of a tool that needs one place. */
  static Optional<Mark> at(MarkTool tool, ToolSettings set, Touch touch, double diagonalMm) {
    Vector3D point = Tidy.point(touch.point(), diagonalMm);
    return switch (tool) {
      case FILL ->
          Optional.of(
              new Mark.CreaseFill(
                  NO_NAME, set.treatment(), point, set.creaseDegrees(), set.gapsMm()));
      case PART -> Optional.of(new Mark.WholePart(NO_NAME, set.treatment(), point));
      case FACING ->
          touch.normal().norm() > 0
              ? Optional.of(
                  new Mark.Facing(
                      NO_NAME,
                      set.treatment(),
                      Tidy.direction(touch.normal()),
                      set.facingDegrees()))
              : Optional.empty();
      case PLANE -> {
        Vector3D normal = set.side().normal(touch.normal());
        yield normal.norm() > 0
            ? Optional.of(
                new Mark.HalfSpace(NO_NAME, set.treatment(), point, Tidy.direction(normal)))
            : Optional.empty();
      }
      default -> Optional.empty();
    };
  }

  /** A stroke through places; one place makes a disc. */
  static Optional<Mark> stroke(ToolSettings set, List<Vector3D> places, double diagonalMm) {
    if (places.isEmpty()) {
      return Optional.empty();
    }
    List<Vector3D> path = places.stream().map(p -> Tidy.point(p, diagonalMm)).distinct().toList();
    return Optional.of(new Mark.Near(NO_NAME, set.treatment(), path, set.radiusMm()));
  }

  /** What lies between two places: heights for a ring, angles for a sector. */
  static Optional<Mark> between(
      MarkTool tool, ToolSettings set, PieceAxis axis, Vector3D a, Vector3D b, double diagonalMm) {
    return switch (tool) {
      case RING -> ring(set, axis, a, b, diagonalMm);
      case BOX -> box(set, a, b, diagonalMm);
      default -> sector(set, axis, a, b, diagonalMm);
    };
  }

  /**
   * A box from corner to corner; where these are nearer to each other than the depth to both sides,
   * as on a flat field, it is that deep about their middle.
   */
  private static Optional<Mark> box(ToolSettings set, Vector3D a, Vector3D b, double diagonalMm) {
    double[] low = new double[3];
    double[] high = new double[3];
    for (int i = 0; i < 3; i++) {
      double one = a.toArray()[i];
      double other = b.toArray()[i];
      double half = Math.abs(one - other) / 2;
      double out = half < set.byMm() ? set.byMm() - half : 0;
      low[i] = Tidy.length(Math.min(one, other) - out, diagonalMm);
      high[i] = Tidy.length(Math.max(one, other) + out, diagonalMm);
      if (!(low[i] < high[i])) {
        return Optional.empty();
      }
    }
    return Optional.of(
        new Mark.InBox(NO_NAME, set.treatment(), Vector3D.of(low), Vector3D.of(high)));
  }

  private static Optional<Mark> ring(
      ToolSettings set, PieceAxis axis, Vector3D a, Vector3D b, double diagonalMm) {
    double one = Tidy.length(axis.height(a), diagonalMm);
    double other = Tidy.length(axis.height(b), diagonalMm);
    if (one == other) {
      return Optional.empty();
    }
    return Optional.of(
        new Mark.Ring(
            NO_NAME,
            set.treatment(),
            axis.point(),
            axis.direction(),
            Math.min(one, other),
            Math.max(one, other),
            0,
            Double.POSITIVE_INFINITY,
            axis.asFound()));
  }

  /** From the first place to the second by the right-hand rule about the axis. */
  private static Optional<Mark> sector(
      ToolSettings set, PieceAxis axis, Vector3D a, Vector3D b, double diagonalMm) {
    Vector3D from = axis.outward(a);
    Vector3D to = axis.outward(b);
    double least = 1e-6 * diagonalMm;
    if (!(from.norm() > least) || !(to.norm() > least)) {
      return Optional.empty();
    }
    double angle = Math.toDegrees(Math.atan2(axis.direction().dot(from.cross(to)), from.dot(to)));
    double turned = Math.rint(100 * (angle < 0 ? angle + 360 : angle)) / 100;
    if (!(turned > 0 && turned < 360)) {
      return Optional.empty();
    }
    return Optional.of(
        new Mark.Sector(
            NO_NAME,
            set.treatment(),
            Tidy.point(axis.point(), diagonalMm),
            axis.direction(),
            Tidy.direction(from),
            0,
            turned));
  }

  /** The inside of an outline of three corners or more. */
  static Optional<Mark> outline(
      ToolSettings set, List<Vector3D> corners, Vector3D inside, double diagonalMm) {
    if (corners.size() < 3) {
      return Optional.empty();
    }
    List<Vector3D> path = corners.stream().map(p -> Tidy.point(p, diagonalMm)).toList();
    return Optional.of(
        new Mark.Outline(NO_NAME, set.treatment(), path, Tidy.point(inside, diagonalMm)));
  }

  /** The mark of a tool that needs no place. */
  static Optional<Mark> form(MarkTool tool, ToolSettings set, PieceAxis axis, double diagonalMm) {
    Vector3D middle = Tidy.point(axis.point(), diagonalMm);
    return switch (tool) {
      case NAMED ->
          set.label().isBlank()
              ? Optional.empty()
              : Optional.of(new Mark.Named(NO_NAME, set.treatment(), set.label()));
      case GROW ->
          Optional.of(new Mark.Grow(NO_NAME, set.treatment(), set.byMm(), Optional.empty()));
      case SMOOTH -> Optional.of(new Mark.Smooth(NO_NAME, set.treatment(), set.byMm()));
      case MIRROR -> {
        Vector3D across = set.side().normal(Vector3D.Unit.PLUS_X);
        yield Optional.of(new Mark.Mirror(NO_NAME, middle, across));
      }
      case TURN ->
          Optional.of(
              new Mark.Turn(NO_NAME, middle, axis.direction(), set.count(), axis.asFound()));
      case INVERT -> Optional.of(new Mark.Invert(NO_NAME));
      default -> Optional.empty();
    };
  }
}
