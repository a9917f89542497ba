package org.seamwright.measure;

import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * How sharply a surface turns at an edge: the angle between the normals of its two faces, in
 * degrees. 0 where they lie in one plane, 90 at the edge of a cube, 180 where one lies on the
 * other.
 *
 * <p>Faces turned against each other are compared as if one were turned over. A needle (a face
 * almost without area, as T-junctions leave) has no normal worth the name and takes that of the
 * face across its longest edge.
 */
public final class Crease {
  /** Angle given to edges with one face or more than two: they stop whatever a crease stops. */
  public static final double BORDER_DEGREES = 180;

  /**
   * A face is a needle if its height is below this share of its longest edge: in single precision
   * the direction of its normal is then within a few degrees of chance.
   */
  static final double NEEDLE = 1e-6;

  private Crease() {}

  /**
   * Angle across the edge of one half-edge, degrees from 0 to 180; {@link #BORDER_DEGREES} where
   * the edge has not exactly two faces.
   */
  public static double degrees(Mesh mesh, Topology topology, int h) {
    int twin = topology.twin(h);
    if (twin < 0) {
      return BORDER_DEGREES;
    }
    double[] a = new double[3];
    double[] b = new double[3];
    normal(mesh, topology, h / 3, a);
    normal(mesh, topology, twin / 3, b);
    int[] corner = mesh.corner();
    double sign = corner[h] == corner[twin] ? -1 : 1;
    return Math.toDegrees(angle(a[0], a[1], a[2], sign * b[0], sign * b[1], sign * b[2]));
  }

  /**
   * Angles across all edges.
   *
   * @return one entry per half-edge, as {@link #degrees(Mesh, Topology, int)} gives it
   */
  public static double[] degrees(Mesh mesh, Topology topology) {
    return degrees(mesh, topology, normals(mesh, topology));
  }

  /** The same from the faces' unit normals. */
  static double[] degrees(Mesh mesh, Topology topology, double[] normal) {
    int[] corner = mesh.corner();
    double[] degrees = new double[corner.length];
    for (int h = 0; h < corner.length; h++) {
      int twin = topology.twin(h);
      if (twin < 0) {
        degrees[h] = BORDER_DEGREES;
      } else if (twin > h) {
        int a = 3 * (h / 3);
        int b = 3 * (twin / 3);
        double sign = corner[h] == corner[twin] ? -1 : 1;
        degrees[h] =
            Math.toDegrees(
                angle(
                    normal[a],
                    normal[a + 1],
                    normal[a + 2],
                    sign * normal[b],
                    sign * normal[b + 1],
                    sign * normal[b + 2]));
        degrees[twin] = degrees[h];
      }
    }
    return degrees;
  }

  /** Unit normals of all faces, three numbers each, those of needles borrowed. */
  static double[] normals(Mesh mesh, Topology topology) {
    double[] normals = new double[3 * mesh.faceCount()];
    double[] normal = new double[3];
    for (int f = 0; f < mesh.faceCount(); f++) {
      normal(mesh, topology, f, normal);
      System.arraycopy(normal, 0, normals, 3 * f, 3);
    }
    return normals;
  }

  /** Unit normal of a face, borrowed if it is a needle. */
  static void normal(Mesh mesh, Topology topology, int face, double[] into) {
    double[] p = mesh.xyz();
    int[] corner = mesh.corner();
    int a = 3 * corner[3 * face];
    int b = 3 * corner[3 * face + 1];
    int c = 3 * corner[3 * face + 2];
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double vz = p[c + 2] - p[a + 2];
    double x = uy * vz - uz * vy;
    double y = uz * vx - ux * vz;
    double z = ux * vy - uy * vx;
    double twice2 = x * x + y * y + z * z;
    double sum2 = ux * ux + uy * uy + uz * uz + vx * vx + vy * vy + vz * vz;
    // The longest edge's square is at most twice the sum of the others'.
    if (twice2 > 4 * NEEDLE * NEEDLE * sum2 * sum2) {
      double scale = 1 / Math.sqrt(twice2);
      into[0] = x * scale;
      into[1] = y * scale;
      into[2] = z * scale;
    } else {
      perhapsBorrowed(mesh, topology, face, into);
    }
  }

  private static void perhapsBorrowed(Mesh mesh, Topology topology, int face, double[] into) {
    int longest = longestEdge(mesh, face);
    Faces.normal(mesh, face, into);
    if (!isNeedle(mesh, face, longest)) {
      return;
    }
    int twin = topology.twin(longest);
    if (twin >= 0 && !isNeedle(mesh, twin / 3, longestEdge(mesh, twin / 3))) {
      Faces.normal(mesh, twin / 3, into);
      if (mesh.corner()[longest] == mesh.corner()[twin]) {
        for (int axis = 0; axis < 3; axis++) {
          into[axis] = -into[axis];
        }
      }
    }
  }

  private static int longestEdge(Mesh mesh, int face) {
    int longest = 3 * face;
    for (int h = 3 * face + 1; h < 3 * face + 3; h++) {
      if (length(mesh, h) > length(mesh, longest)) {
        longest = h;
      }
    }
    return longest;
  }

  private static double length(Mesh mesh, int h) {
    return Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
  }

  private static boolean isNeedle(Mesh mesh, int face, int longest) {
    double base = length(mesh, longest);
    return !(2 * Faces.area(mesh, face) > NEEDLE * base * base);
  }

  /** Angle between two vectors, radians; 0 if one of them is zero. Exact near 0 and near π. */
  static double angle(double ax, double ay, double az, double bx, double by, double bz) {
    double x = ay * bz - az * by;
    double y = az * bx - ax * bz;
    double z = ax * by - ay * bx;
    return Math.atan2(Math.sqrt(x * x + y * y + z * z), ax * bx + ay * by + az * bz);
  }
}
