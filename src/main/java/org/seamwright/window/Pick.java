package org.seamwright.window;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.desk.Touch;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;

/**
 * A place that the pointer is on.
 *
 * @param face face of the uncut piece
 * @param x mm
 * @param y mm
 * @param z mm
 */
record Pick(int face, double x, double y, double z) {
  /** The place of a hit along a ray. */
  static Pick of(PieceModel model, PickRay ray, FaceTree.Hit hit) {
    double d = hit.distance();
    return new Pick(hit.point().face(), ray.at(d, 0), ray.at(d, 1), ray.at(d, 2));
  }

  /** What a ray meets first. */
  static Optional<Pick> under(PieceModel model, PickRay ray) {
    return model.firstHit(ray).map(hit -> of(model, ray, hit));
  }

  Vector3D point() {
    return Vector3D.of(x, y, z);
  }

  double[] xyz() {
    return new double[] {x, y, z};
  }

  /** The place as tools of marking know it. */
  Touch touch(PieceModel model) {
    double[] n = new double[3];
    Faces.normal(model.mesh(), face, n);
    return new Touch(point(), Vector3D.of(n[0], n[1], n[2]));
  }
}
