package org.seamwright.mesh;

/**
 * A point on a face, by barycentric weights of the face's corners 0, 1 and 2.
 *
 * @param face the face
 * @param w0 weight of corner 0
 * @param w1 weight of corner 1
 * @param w2 weight of corner 2; the three sum to 1 and none is below 0
 */
public record SurfacePoint(int face, double w0, double w1, double w2) {
  /** Position along an axis (0 = x, 1 = y, 2 = z), mm. */
  public double at(Mesh mesh, int axis) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    return w0 * p[3 * corner[3 * face] + axis]
        + w1 * p[3 * corner[3 * face + 1] + axis]
        + w2 * p[3 * corner[3 * face + 2] + axis];
  }
}
