package org.seamwright.section;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The axis that a way of making sections goes about.
 *
 * @param point a point of the axis, mm; empty for the one that belongs to the direction: the
 *     origin, or where the found axis has its lowest place
 * @param direction where it points; empty for the axis that the piece shows by its shape
 * @param zero direction of angle 0, not along the axis; empty to have it chosen
 */
public record SectionAxis(
    Optional<Vector3D> point, Optional<Vector3D> direction, Optional<Vector3D> zero) {
  /** The axis that the piece shows by its shape. */
  public static final SectionAxis FOUND =
      new SectionAxis(Optional.empty(), Optional.empty(), Optional.empty());

  /** An axis in numbers. */
  public static SectionAxis of(Vector3D point, Vector3D direction) {
    return new SectionAxis(Optional.of(point), Optional.of(direction), Optional.empty());
  }

  /** The same axis with a direction of angle 0. */
  public SectionAxis from(Vector3D angleZero) {
    return new SectionAxis(point, direction, Optional.of(angleZero));
  }
}
