package org.seamwright.mesh;

/** Geometry of single faces: area, normal, centroid, angles, edge lengths. Lengths in mm. */
public final class Faces {
  private Faces() {}

  /** Area of a face, mm²: half the length of the cross product of two edges. */
  public static double area(Mesh mesh, int face) {
    int[] corner = mesh.corner();
    return area(mesh.xyz(), corner[3 * face], corner[3 * face + 1], corner[3 * face + 2]);
  }

  /** Area of the triangle over three vertices of a coordinate array, mm². */
  public static double area(double[] p, int a, int b, int c) {
    double ux = p[3 * b] - p[3 * a];
    double uy = p[3 * b + 1] - p[3 * a + 1];
    double uz = p[3 * b + 2] - p[3 * a + 2];
    double vx = p[3 * c] - p[3 * a];
    double vy = p[3 * c + 1] - p[3 * a + 1];
    double vz = p[3 * c + 2] - p[3 * a + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    return Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
  }

  /**
   * Unit normal of a face by its corner order.
   *
   * @param into receives x, y, z; all zero for a face without area
   */
  public static void normal(Mesh mesh, int face, double[] into) {
    int[] corner = mesh.corner();
    areaVector(mesh.xyz(), corner[3 * face], corner[3 * face + 1], corner[3 * face + 2], into);
    double length = Math.sqrt(into[0] * into[0] + into[1] * into[1] + into[2] * into[2]);
    double scale = length > 0 ? 1 / length : 0;
    for (int axis = 0; axis < 3; axis++) {
      into[axis] *= scale;
    }
  }

  /**
   * Area vector of a triangle: along its normal by corner order, twice its area long.
   *
   * @param p coordinates, 3 per vertex
   * @param into receives x, y, z
   */
  public static void areaVector(double[] p, int a, int b, int c, double[] into) {
    double ux = p[3 * b] - p[3 * a];
    double uy = p[3 * b + 1] - p[3 * a + 1];
    double uz = p[3 * b + 2] - p[3 * a + 2];
    double vx = p[3 * c] - p[3 * a];
    double vy = p[3 * c + 1] - p[3 * a + 1];
    double vz = p[3 * c + 2] - p[3 * a + 2];
    into[0] = uy * vz - uz * vy;
    into[1] = uz * vx - ux * vz;
    into[2] = ux * vy - uy * vx;
  }

  /**
   * Centroid of a face, mm.
   *
   * @param into receives x, y, z
   */
  public static void centroid(Mesh mesh, int face, double[] into) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    for (int axis = 0; axis < 3; axis++) {
      into[axis] =
          (p[3 * corner[3 * face] + axis]
                  + p[3 * corner[3 * face + 1] + axis]
                  + p[3 * corner[3 * face + 2] + axis])
              / 3;
    }
  }

  /** Squared distance of a place from the nearest point of a face, mm². */
  public static double squaredDistance(Mesh mesh, int face, double x, double y, double z) {
    int[] corner = mesh.corner();
    Closest closest = new Closest();
    closest.find(mesh.xyz(), corner[3 * face], corner[3 * face + 1], corner[3 * face + 2], x, y, z);
    return closest.squared;
  }

  /** Distance between two vertices, mm. */
  public static double length(Mesh mesh, int a, int b) {
    double dx = mesh.x(a) - mesh.x(b);
    double dy = mesh.y(a) - mesh.y(b);
    double dz = mesh.z(a) - mesh.z(b);
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }
}
