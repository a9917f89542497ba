package org.seamwright.measure;

import org.seamwright.basis.Sum;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;

/**
 * Volume enclosed by the faces, by the divergence theorem: a sixth of the sum of the determinants
 * of the corners.
 *
 * <p>Corners are taken relative to the middle of the bounding box, so that a piece far from the
 * origin loses no digits, and the sum is compensated. The same digits on any number of cores.
 */
public final class Volume {
  private Volume() {}

  /**
   * Signed volume, mm³: positive where faces are turned outwards. Has no meaning for a mesh that is
   * not closed.
   */
  public static double ofFaces(Mesh mesh) {
    Bounds bounds = mesh.bounds();
    double ox = bounds.minX() + bounds.sizeX() / 2;
    double oy = bounds.minY() + bounds.sizeY() / 2;
    double oz = bounds.minZ() + bounds.sizeZ() / 2;
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    return Sum.over(
            mesh.faceCount(),
            f -> {
              int a = 3 * corner[3 * f];
              int b = 3 * corner[3 * f + 1];
              int c = 3 * corner[3 * f + 2];
              double bx = p[b] - ox;
              double by = p[b + 1] - oy;
              double bz = p[b + 2] - oz;
              double cx = p[c] - ox;
              double cy = p[c + 1] - oy;
              double cz = p[c + 2] - oz;
              return (p[a] - ox) * (by * cz - bz * cy)
                  + (p[a + 1] - oy) * (bz * cx - bx * cz)
                  + (p[a + 2] - oz) * (bx * cy - by * cx);
            })
        / 6;
  }
}
