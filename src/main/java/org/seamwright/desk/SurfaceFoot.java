package org.seamwright.desk;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

/**
 * The surface under points that are moved a little: O(log n) each.
 *
 * @param mesh the piece, mm
 * @param tree over its faces
 * @param diagonalMm of its box
 */
public record SurfaceFoot(Mesh mesh, FaceTree tree, double diagonalMm) {
  /** The surface of a piece. */
  public SurfaceFoot(Mesh mesh, FaceTree tree) {
    this(mesh, tree, mesh.bounds().diagonal());
  }

  /** The place nearest to a point. */
  public Touch under(Vector3D point) {
    SurfacePoint at = tree.nearest(point.getX(), point.getY(), point.getZ()).orElseThrow();
    double[] n = new double[3];
    Faces.normal(mesh, at.face(), n);
    return new Touch(Vector3D.of(at.at(mesh, 0), at.at(mesh, 1), at.at(mesh, 2)), Vector3D.of(n));
  }

  /** The face nearest to a point. */
  int face(Vector3D point) {
    return tree.nearest(point.getX(), point.getY(), point.getZ()).orElseThrow().face();
  }
}
