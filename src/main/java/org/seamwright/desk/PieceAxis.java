package org.seamwright.desk;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.measure.Revolution;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.Mark;

/**
 * The axis that rings, sectors and repeats go about: the one the piece shows by its shape, or where
 * it shows none the upright through the middle of its box.
 *
 * @param point on the axis, level with the lowest place
 * @param direction unit vector
 * @param isFound whether the piece shows it
 */
public record PieceAxis(Vector3D point, Vector3D direction, boolean isFound) {
  /** Looks for it: seconds for a million faces. */
  static PieceAxis of(Mesh meshMm) {
    Revolution found = Revolution.of(meshMm);
    if (found.isSure()) {
      return new PieceAxis(found.point(), found.direction(), true);
    }
    Bounds b = meshMm.bounds();
    Vector3D foot = Vector3D.of((b.minX() + b.maxX()) / 2, (b.minY() + b.maxY()) / 2, b.minZ());
    return new PieceAxis(foot, Vector3D.Unit.PLUS_Z, false);
  }

  /** Height of a place along the axis, mm. */
  double height(Vector3D place) {
    return place.subtract(point).dot(direction);
  }

  /** The way from the axis to a place; zero on the axis. */
  Vector3D outward(Vector3D place) {
    Vector3D from = place.subtract(point);
    return from.subtract(direction.multiply(from.dot(direction)));
  }

  /** How a mark says that it goes about this axis. */
  Optional<Mark.FoundAxis> asFound() {
    return isFound ? Optional.of(new Mark.FoundAxis(false, false)) : Optional.empty();
  }
}
