package org.seamwright.job;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

/**
 * How far a mesh lies from the surface that a job remembers: the distance of each remembered place
 * to the nearest place of the mesh. Surface added where there was none does not show in it, the
 * area does. Cost: a search tree over the faces.
 */
final class SurfaceShift {
  /** Rounding of the places, over the diagonal: what moved by less has not been moved. */
  static final double ROUNDING = 2e-5;

  /** A place further off than this share of the diagonal is off the piece. */
  static final double FAR = 0.02;

  /** With more than this share of the places off it, a mesh is another piece. */
  static final double MOST_FAR = 0.25;

  private final List<Vector3D> places;
  private final double diagonalMm;
  private final double[] distanceMm;
  private final int[] face;

  private SurfaceShift(SurfaceRecord record, double[] distanceMm, int[] face) {
    this.places = record.samples();
    this.diagonalMm = record.diagonalMm();
    this.distanceMm = distanceMm;
    this.face = face;
  }

  static SurfaceShift of(SurfaceRecord record, Mesh mesh) {
    FaceTree tree = FaceTree.of(mesh);
    int n = record.samples().size();
    double[] distanceMm = new double[n];
    int[] face = new int[n];
    for (int i = 0; i < n; i++) {
      Vector3D p = record.samples().get(i);
      SurfacePoint nearest = tree.nearest(p.getX(), p.getY(), p.getZ()).orElseThrow();
      Vector3D q = Vector3D.of(nearest.at(mesh, 0), nearest.at(mesh, 1), nearest.at(mesh, 2));
      distanceMm[i] = p.distance(q);
      face[i] = nearest.face();
    }
    return new SurfaceShift(record, distanceMm, face);
  }

  int count() {
    return distanceMm.length;
  }

  /** Distance of a place, mm. */
  double distanceMm(int i) {
    return distanceMm[i];
  }

  /** Face of the mesh nearest to a place. */
  int face(int i) {
    return face[i];
  }

  double medianMm() {
    double[] sorted = distanceMm.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  double mostMm() {
    return Arrays.stream(distanceMm).max().orElse(0);
  }

  /** The place that is furthest off. */
  Vector3D furthest() {
    int most = 0;
    for (int i = 1; i < distanceMm.length; i++) {
      most = distanceMm[i] > distanceMm[most] ? i : most;
    }
    return places.get(most);
  }

  double farMm() {
    return FAR * diagonalMm;
  }

  /** How many places lie off the piece. */
  long far() {
    return Arrays.stream(distanceMm).filter(d -> d > farMm()).count();
  }

  boolean isAnotherPiece() {
    return far() > MOST_FAR * count();
  }

  boolean isRoundingAlone() {
    return mostMm() <= roundingMm();
  }

  double roundingMm() {
    return ROUNDING * diagonalMm;
  }
}
