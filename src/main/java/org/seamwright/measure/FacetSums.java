package org.seamwright.measure;

import java.util.stream.IntStream;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;

/**
 * What one walk over the facets gives: area, volume, and the count of those without area. The same
 * digits on any number of cores.
 *
 * <p>The volume is a sixth of the sum of the determinants of the corners (divergence theorem),
 * taken relative to the middle of the box, so that a piece far from the origin loses no digits.
 *
 * @param areaMm2 sum of the areas, mm²
 * @param volumeMm3 signed volume, mm³
 * @param withoutArea facets whose height is rounding
 */
record FacetSums(double areaMm2, double volumeMm3, int withoutArea) {
  /** Height over longest edge below which a face has no area but rounding. */
  private static final double NO_AREA = 1e-12;

  /** Facets summed in one go: fixed, so that the digits don't depend on the number of threads. */
  private static final int BLOCK = 1 << 14;

  private static final class Part {
    private final Sum area = new Sum();
    private final Sum volume = new Sum();
    private int withoutArea;
  }

  /** Sums over all facets of a mesh in a box. */
  static FacetSums of(Mesh mesh, Bounds bounds) {
    double ox = bounds.minX() + bounds.sizeX() / 2;
    double oy = bounds.minY() + bounds.sizeY() / 2;
    double oz = bounds.minZ() + bounds.sizeZ() / 2;
    int faces = mesh.faceCount();
    int blocks = (faces + BLOCK - 1) / BLOCK;
    Part[] parts = new Part[blocks];
    IntStream range = IntStream.range(0, blocks);
    (blocks > 1 ? range.parallel() : range)
        .forEach(
            b -> {
              parts[b] = new Part();
              add(mesh, b * BLOCK, (int) Math.min(faces, (b + 1L) * BLOCK), ox, oy, oz, parts[b]);
            });
    Sum area = new Sum();
    Sum volume = new Sum();
    int withoutArea = 0;
    for (Part part : parts) {
      area.add(part.area);
      volume.add(part.volume);
      withoutArea += part.withoutArea;
    }
    return new FacetSums(area.value() / 2, volume.value() / 6, withoutArea);
  }

  private static void add(Mesh mesh, int from, int to, double ox, double oy, double oz, Part part) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    for (int f = from; f < to; f++) {
      int a = 3 * corner[3 * f];
      int b = 3 * corner[3 * f + 1];
      int c = 3 * corner[3 * f + 2];
      double ax = p[a];
      double ay = p[a + 1];
      double az = p[a + 2];
      double ux = p[b] - ax;
      double uy = p[b + 1] - ay;
      double uz = p[b + 2] - az;
      double vx = p[c] - ax;
      double vy = p[c + 1] - ay;
      double vz = p[c + 2] - az;
      double nx = uy * vz - uz * vy;
      double ny = uz * vx - ux * vz;
      double nz = ux * vy - uy * vx;
      double twice2 = nx * nx + ny * ny + nz * nz;
      double u2 = ux * ux + uy * uy + uz * uz;
      double v2 = vx * vx + vy * vy + vz * vz;
      double w2 = u2 + v2 - 2 * (ux * vx + uy * vy + uz * vz);
      double longest2 = Math.max(u2, Math.max(v2, w2));
      part.area.add(Math.sqrt(twice2));
      part.volume.add((ax - ox) * nx + (ay - oy) * ny + (az - oz) * nz);
      if (!(twice2 > NO_AREA * NO_AREA * longest2 * longest2)) {
        part.withoutArea++;
      }
    }
  }
}
