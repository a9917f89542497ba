package org.seamwright.job;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Mark;

/**
 * The keys of marks that go about an axis: {@code axis} is a direction or {@code "found"}, and with
 * the latter {@code point} and {@code zero} may be left out.
 */
record AxisKeys(Vector3D point, Vector3D axis, Vector3D zero, Optional<Mark.FoundAxis> found) {
  /** Reads the keys of a ring or turn. */
  static AxisKeys read(JobNode.Keys keys) throws JobFileException {
    return read(keys, false);
  }

  /** Reads the keys of a sector. */
  static AxisKeys readWithZero(JobNode.Keys keys) throws JobFileException {
    return read(keys, true);
  }

  private static AxisKeys read(JobNode.Keys keys, boolean needsZero) throws JobFileException {
    Optional<Vector3D> axis = keys.get("axis", AxisKeys::axis);
    if (axis.isPresent()) {
      return new AxisKeys(
          keys.get("point", JobNode::point),
          axis.get(),
          needsZero ? keys.get("zero", JobNode::direction) : Vector3D.Unit.PLUS_X,
          Optional.empty());
    }
    return new AxisKeys(
        keys.get("point", Vector3D.ZERO, JobNode::point),
        Vector3D.Unit.PLUS_Z,
        needsZero
            ? keys.get("zero", Vector3D.Unit.PLUS_X, JobNode::direction)
            : Vector3D.Unit.PLUS_X,
        Optional.of(new Mark.FoundAxis(keys.has("point"), needsZero && keys.has("zero"))));
  }

  /** A direction; empty for the piece's own. */
  static Optional<Vector3D> axis(JobNode node) throws JobFileException {
    boolean word =
        node.value() instanceof JsonValue.Text
            || (node.value() instanceof JsonValue.Typed typed
                && !typed.value().isBlank()
                && Character.isLetter(typed.value().strip().charAt(0)));
    if (!word) {
      return Optional.of(node.direction());
    }
    if (!node.text().strip().equals(JobKeys.FOUND)) {
      throw node.refuse(
          "\"" + node.text() + "\" is no axis",
          "Write a direction, such as [0, 0, 1], or \"" + JobKeys.FOUND + "\".");
    }
    return Optional.empty();
  }

  /** The point to write; empty where the mark has none of its own. */
  static Optional<Vector3D> ownPoint(Optional<Mark.FoundAxis> found, Vector3D point) {
    return found.map(Mark.FoundAxis::ownPoint).orElse(true) ? Optional.of(point) : Optional.empty();
  }

  /** The direction of angle 0 to write; empty where the mark has none of its own. */
  static Optional<Vector3D> ownZero(Optional<Mark.FoundAxis> found, Vector3D zero) {
    return found.map(Mark.FoundAxis::ownZero).orElse(true) ? Optional.of(zero) : Optional.empty();
  }
}
