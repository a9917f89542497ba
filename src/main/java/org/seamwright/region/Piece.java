package org.seamwright.region;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.measure.NestedParts;
import org.seamwright.measure.Revolution;
import org.seamwright.measure.TipReach;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;

/** The piece as read, with what marks look up in it, made when first asked for. */
final class Piece {
  private static final int LEAST_PER_RANGE = 1 << 14;

  private final Mesh mesh;
  private final Topology topology;
  private final int[] ring;
  private final double diagonalMm;
  private Optional<FaceTree> tree = Optional.empty();
  private Optional<Parts> parts = Optional.empty();
  private Optional<double[]> normals = Optional.empty();
  private Optional<Revolution> axis = Optional.empty();

  Piece(Mesh mesh) {
    this.mesh = mesh;
    this.topology = Topology.of(mesh);
    this.ring = EdgeRings.of(mesh, topology).toArray();
    this.diagonalMm = mesh.bounds().diagonal();
  }

  Mesh mesh() {
    return mesh;
  }

  /** {@link EdgeRings} of the piece. */
  int[] ring() {
    return ring;
  }

  double diagonalMm() {
    return diagonalMm;
  }

  Parts parts() {
    Parts found = parts.orElseGet(() -> Parts.of(mesh, topology));
    parts = Optional.of(found);
    return found;
  }

  /** One entry per face: whether its part lies wholly inside another, closed one. */
  boolean[] isInnerShell(Progress progress) {
    int[] depth = NestedParts.depth(mesh, topology, parts(), progress);
    boolean[] inner = new boolean[mesh.faceCount()];
    for (int f = 0; f < inner.length; f++) {
      inner[f] = depth[parts().of()[f]] > 0;
    }
    return inner;
  }

  /** What a tip of a radius can touch. */
  TipReach reach(double radiusMm, Progress progress) {
    return new TipReach(mesh, topology, tree(), normals(), radiusMm, progress);
  }

  /** The axis that the piece shows by its shape. */
  Revolution axis() {
    Revolution found = axis.orElseGet(() -> Revolution.of(mesh));
    axis = Optional.of(found);
    return found;
  }

  /** Unit normals, 3 per face; all 0 for a face without area. */
  double[] normals() {
    double[] found = normals.orElseGet(this::makeNormals);
    normals = Optional.of(found);
    return found;
  }

  private double[] makeNormals() {
    double[] all = new double[3 * mesh.faceCount()];
    Parallel.split(
        mesh.faceCount(),
        Parallel.ranges(mesh.faceCount(), LEAST_PER_RANGE),
        (from, to) -> {
          double[] own = new double[3];
          for (int f = from; f < to; f++) {
            Faces.normal(mesh, f, own);
            System.arraycopy(own, 0, all, 3 * f, 3);
          }
        });
    return all;
  }

  /** The place of the surface closest to a point; empty only for a piece without faces. */
  Optional<SurfacePoint> nearest(Vector3D point) {
    return tree().nearest(point.getX(), point.getY(), point.getZ());
  }

  /** The tree over the piece's faces. */
  FaceTree tree() {
    FaceTree made = tree.orElseGet(() -> FaceTree.of(mesh));
    tree = Optional.of(made);
    return made;
  }

  /** Coordinates of a place of the surface, mm. */
  Vector3D position(SurfacePoint at) {
    return Vector3D.of(at.at(mesh, 0), at.at(mesh, 1), at.at(mesh, 2));
  }
}
