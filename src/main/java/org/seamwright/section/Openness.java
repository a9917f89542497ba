package org.seamwright.section;

import org.seamwright.basis.Parallel;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * How much of its surroundings a place sees: the share of rays from it that leave the piece, spread
 * over the half space in front of it as light from a dull sky falls (by cosine). 1 on any convex
 * piece, a half in the corner of two walls, near 0 inside of a deep hole.
 *
 * <p>Cost: {@value #RAYS} rays per place. Error: about one ray in {@value #RAYS}. Directions are
 * fixed, so the same piece gives the same answer.
 */
final class Openness {
  private static final int RAYS = 16;

  /** Golden angle: turns by it spread points evenly (H. Vogel, 1979). */
  private static final double TURN = Math.PI * (3 - Math.sqrt(5));

  /** Rays start this share of the spacing of places above the surface, clear of its own faces. */
  private static final double LIFT = 0.01;

  /** Places per task: a few milliseconds' work. */
  private static final int BLOCK = 256;

  private Openness() {}

  /**
   * Looks around from vertices of a domain.
   *
   * @param piece what may be in the way
   * @param domain whose vertices
   * @param vertex which ones
   * @param spacingMm how far apart they are
   * @return one entry per entry of {@code vertex}, from 0 to 1
   */
  static double[] of(Mesh piece, Domain domain, int[] vertex, double spacingMm) {
    double[] normal = normals(domain.surface().mesh());
    double[] p = domain.surface().mesh().xyz();
    FaceTree tree = FaceTree.of(piece);
    double[] open = new double[vertex.length];
    int blocks = (vertex.length + BLOCK - 1) / BLOCK;
    Parallel.each(
        blocks,
        block -> {
          for (int i = BLOCK * block; i < Math.min(vertex.length, BLOCK * (block + 1)); i++) {
            open[i] = look(tree, p, normal, vertex[i], LIFT * spacingMm);
          }
        });
    return open;
  }

  private static double look(FaceTree tree, double[] p, double[] normal, int v, double liftMm) {
    double nx = normal[3 * v];
    double ny = normal[3 * v + 1];
    double nz = normal[3 * v + 2];
    double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (!(length > 0)) {
      return 1;
    }
    nx /= length;
    ny /= length;
    nz /= length;
    // Any two directions square to the normal will do (T. Duff and others, 2017).
    double sign = Math.copySign(1, nz);
    double a = -1 / (sign + nz);
    double b = nx * ny * a;
    int free = 0;
    for (int i = 0; i < RAYS; i++) {
      double radius = Math.sqrt((i + 0.5) / RAYS);
      double up = Math.sqrt(1 - radius * radius);
      double s = radius * Math.cos(TURN * i);
      double t = radius * Math.sin(TURN * i);
      double dx = s * (1 + sign * nx * nx * a) + t * b + up * nx;
      double dy = s * sign * b + t * (sign + ny * ny * a) + up * ny;
      double dz = -s * sign * nx - t * ny + up * nz;
      boolean hit =
          tree.firstHit(
                  p[3 * v] + liftMm * nx,
                  p[3 * v + 1] + liftMm * ny,
                  p[3 * v + 2] + liftMm * nz,
                  dx,
                  dy,
                  dz)
              .isPresent();
      free += hit ? 0 : 1;
    }
    return (double) free / RAYS;
  }

  /** Area vectors of the faces around each vertex, added up. */
  private static double[] normals(Mesh mesh) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    double[] sum = new double[p.length];
    double[] area = new double[3];
    for (int f = 0; f < mesh.faceCount(); f++) {
      int a = corner[3 * f];
      int b = corner[3 * f + 1];
      int c = corner[3 * f + 2];
      Faces.areaVector(p, a, b, c, area);
      for (int axis = 0; axis < 3; axis++) {
        sum[3 * a + axis] += area[axis];
        sum[3 * b + axis] += area[axis];
        sum[3 * c + axis] += area[axis];
      }
    }
    return sum;
  }
}
