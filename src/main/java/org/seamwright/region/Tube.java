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
    double[] middle = new double[3];
    double reach = Spread.of(surface, face, middle);
    SurfacePoint at = tree.nearest(middle[0], middle[1], middle[2]).orElseThrow();
    double dx = at.at(segments, 0) - middle[0];
    double dy = at.at(segments, 1) - middle[1];
    double dz = at.at(segments, 2) - middle[2];
    return Math.sqrt(dx * dx + dy * dy + dz * dz) <= radiusMm + reach;
  }
}
