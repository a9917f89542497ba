package org.seamwright.region;

import java.util.List;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

/**
 * Whether a face may come within a distance, through space, of some polylines. A way over the
 * surface is never shorter than the one through space, so what is near over the surface is in here.
 */
final class Tube implements IntPredicate {
  /** Size of a piece of a face, as a share of the radius, whose distance is close enough. */
  private static final double DOUBT = 0.25;

  /** A face 2^10 times as long as the radius is wide is still looked at closely. */
  private static final int MOST_HALVINGS = 20;

  private final EditableSurface surface;
  private final double radiusMm;
  private final Mesh segments;
  private final FaceTree tree;

  /**
   * Makes a tube.
   *
   * @param lines polylines of one point or more
   */
  Tube(EditableSurface surface, List<List<Vector3D>> lines, double radiusMm) {
    this.surface = surface;
    this.radiusMm = radiusMm;
    int points = lines.stream().mapToInt(List::size).sum();
    double[] xyz = new double[3 * points];
    // A segment is a triangle whose second and third corner are one; so is a point, all three.
    int[] corner = new int[3 * points];
    int v = 0;
    for (List<Vector3D> line : lines) {
      for (int i = 0; i < line.size(); i++) {
        System.arraycopy(line.get(i).toArray(), 0, xyz, 3 * v, 3);
        corner[3 * v] = Math.max(v - i, v - 1);
        corner[3 * v + 1] = v;
        corner[3 * v + 2] = v;
        v++;
      }
    }
    segments = Mesh.of(xyz, corner);
    tree = FaceTree.of(segments);
  }

  @Override
  public boolean test(int face) {
    double[] p = surface.coordinates();
    double[] corners = new double[9];
    for (int k = 0; k < 3; k++) {
      System.arraycopy(p, 3 * surface.from(3 * face + k), corners, 3 * k, 3);
    }
    return mayReach(corners, MOST_HALVINGS);
  }

  /** Whether a triangle may come near: halved at its longest side while its size leaves doubt. */
  private boolean mayReach(double[] corners, int halvings) {
    double[] middle = new double[3];
    double reach = Spread.of(corners, middle);
    SurfacePoint at = tree.nearest(middle[0], middle[1], middle[2]).orElseThrow();
    double dx = at.at(segments, 0) - middle[0];
    double dy = at.at(segments, 1) - middle[1];
    double dz = at.at(segments, 2) - middle[2];
    double distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (distance > radiusMm + reach) {
      return false;
    }
    if (distance <= radiusMm || reach <= DOUBT * radiusMm || halvings == 0) {
      return true;
    }
    int k = Spread.longestSide(corners);
    double[] half = corners.clone();
    double[] other = corners.clone();
    int end = (k + 1) % 3;
    for (int axis = 0; axis < 3; axis++) {
      double centre = (corners[3 * k + axis] + corners[3 * end + axis]) / 2;
      half[3 * end + axis] = centre;
      other[3 * k + axis] = centre;
    }
    return mayReach(half, halvings - 1) || mayReach(other, halvings - 1);
  }
}
