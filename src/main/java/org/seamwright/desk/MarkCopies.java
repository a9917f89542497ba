package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.seamwright.region.Mark;

/**
 * What a tool marks in the same breath elsewhere on the piece: in a mirror through its axis, or
 * round the axis.
 */
public enum MarkCopies {
  /** Nowhere else. */
  NONE,
  /** Left and right alike. */
  MIRROR_X,
  /** Front and back alike. */
  MIRROR_Y,
  /** Round the axis. */
  TURN;

  /** Its name. */
  public String title() {
    return Messages.text("copies." + name().toLowerCase(java.util.Locale.ROOT));
  }

  /**
   * A mark and its copies; the mark alone where its kind has no place to be repeated.
   *
   * @param count how many there are in all round the axis, from 2
   */
  List<Mark> of(Mark mark, PieceAxis axis, int count, double diagonalMm) {
    List<Mark> all = new ArrayList<>(List.of(mark));
    switch (this) {
      case NONE -> {
        return all;
      }
      case MIRROR_X, MIRROR_Y -> {
        Vector3D n = this == MIRROR_X ? Vector3D.Unit.PLUS_X : Vector3D.Unit.PLUS_Y;
        add(all, mark, v -> v.subtract(n.multiply(2 * v.dot(n))), axis, diagonalMm);
      }
      case TURN -> {
        for (int k = 1; k < count; k++) {
          QuaternionRotation turn =
              QuaternionRotation.fromAxisAngle(axis.direction(), 2 * Math.PI * k / count);
          add(all, mark, turn::apply, axis, diagonalMm);
        }
      }
    }
    return all;
  }

  /** Adds a copy unless it is the mark itself over again, as on the mirror. */
  private static void add(
      List<Mark> all, Mark mark, UnaryOperator<Vector3D> way, PieceAxis axis, double diagonalMm) {
    UnaryOperator<Vector3D> place =
        p -> Tidy.point(axis.point().add(way.apply(p.subtract(axis.point()))), diagonalMm);
    UnaryOperator<Vector3D> direction = d -> Tidy.direction(way.apply(d));
    Mark copy = copy(mark, place, direction);
    if (!all.contains(copy)) {
      all.add(copy);
    }
  }

  private static Mark copy(
      Mark mark, UnaryOperator<Vector3D> place, UnaryOperator<Vector3D> direction) {
    if (mark instanceof Mark.Near m) {
      return new Mark.Near(
          m.name(), m.treatment(), m.path().stream().map(place).toList(), m.radiusMm());
    }
    if (mark instanceof Mark.Outline m) {
      return new Mark.Outline(
          m.name(), m.treatment(), m.path().stream().map(place).toList(), place.apply(m.inside()));
    }
    if (mark instanceof Mark.CreaseFill m) {
      return new Mark.CreaseFill(
          m.name(), m.treatment(), place.apply(m.point()), m.angleDegrees(), m.gapsMm());
    }
    if (mark instanceof Mark.WholePart m) {
      return new Mark.WholePart(m.name(), m.treatment(), place.apply(m.point()));
    }
    if (mark instanceof Mark.HalfSpace m) {
      return new Mark.HalfSpace(
          m.name(), m.treatment(), place.apply(m.point()), direction.apply(m.normal()));
    }
    if (mark instanceof Mark.Facing m) {
      return new Mark.Facing(
          m.name(), m.treatment(), direction.apply(m.direction()), m.angleDegrees());
    }
    return mark;
  }
}
