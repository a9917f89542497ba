package org.seamwright.testsupport;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.seamwright.mesh.Mesh;

/**
 * Meshes of known shape for tests. Vertices are shared, lie on the shape to a rounding, and faces
 * turn outwards. Lengths in mm; axes of revolution are z; shapes are centred at the origin unless
 * said.
 */
public final class Shapes {
  private Shapes() {}

  /** A sphere by parallels: {@code rings} bands of latitude, {@code sectors} of longitude. */
  public static Mesh sphere(double radius, int rings, int sectors) {
    return ellipsoid(radius, radius, radius, rings, sectors);
  }

  /** An ellipsoid with semi-axes a, b, c along x, y, z, by parallels in its parameter. */
  public static Mesh ellipsoid(double a, double b, double c, int rings, int sectors) {
    double[] r = new double[rings + 1];
    double[] z = new double[rings + 1];
    for (int i = 0; i <= rings; i++) {
      double polar = Math.PI * (rings - i) / rings;
      r[i] = i == 0 || i == rings ? 0 : Math.sin(polar);
      z[i] = Math.cos(polar);
    }
    Mesh unit = lathe(r, z, sectors);
    return transformed(unit, new double[] {a, 0, 0, 0, 0, b, 0, 0, 0, 0, c, 0});
  }

  /** A sphere from an icosahedron whose faces are quartered {@code level} times. */
  public static Mesh icosphere(double radius, int level) {
    double g = (1 + Math.sqrt(5)) / 2;
    double[] xyz = {
      -1, g, 0, 1, g, 0, -1, -g, 0, 1, -g, 0, 0, -1, g, 0, 1, g, 0, -1, -g, 0, 1, -g, g, 0, -1, g,
      0, 1, -g, 0, -1, -g, 0, 1
    };
    int[] corner = {
      0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1,
      8, 3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1
    };
    onSphere(xyz, radius);
    for (int i = 0; i < level; i++) {
      Builder next = new Builder();
      next.addAll(xyz, new int[0]);
      Map<Long, Integer> middles = new HashMap<>();
      for (int f = 0; f < corner.length; f += 3) {
        int[] m = new int[3];
        for (int k = 0; k < 3; k++) {
          m[k] = middle(next, middles, corner[f + k], corner[f + (k + 1) % 3]);
        }
        for (int k = 0; k < 3; k++) {
          next.face(corner[f + k], m[k], m[(k + 2) % 3]);
        }
        next.face(m[0], m[1], m[2]);
      }
      xyz = Arrays.copyOf(next.xyz, 3 * next.vertices);
      corner = Arrays.copyOf(next.corner, next.corners);
      onSphere(xyz, radius);
    }
    return Mesh.of(xyz, corner);
  }

  private static int middle(Builder mesh, Map<Long, Integer> middles, int a, int b) {
    return middles.computeIfAbsent(
        (long) Math.min(a, b) << 32 | Math.max(a, b),
        key ->
            mesh.vertex(
                (mesh.xyz[3 * a] + mesh.xyz[3 * b]) / 2,
                (mesh.xyz[3 * a + 1] + mesh.xyz[3 * b + 1]) / 2,
                (mesh.xyz[3 * a + 2] + mesh.xyz[3 * b + 2]) / 2));
  }

  private static void onSphere(double[] xyz, double radius) {
    for (int v = 0; v < xyz.length; v += 3) {
      double length =
          Math.sqrt(xyz[v] * xyz[v] + xyz[v + 1] * xyz[v + 1] + xyz[v + 2] * xyz[v + 2]);
      for (int k = 0; k < 3; k++) {
        xyz[v + k] *= radius / length;
      }
    }
  }

  /**
   * A torus about z.
   *
   * @param ringRadius from the axis to the middle of the tube
   * @param tubeRadius of the tube
   * @param around steps around the axis
   * @param aroundTube steps around the tube
   */
  public static Mesh torus(double ringRadius, double tubeRadius, int around, int aroundTube) {
    Builder mesh = new Builder();
    for (int i = 0; i < around; i++) {
      double u = 2 * Math.PI * i / around;
      for (int j = 0; j < aroundTube; j++) {
        double v = 2 * Math.PI * j / aroundTube;
        double r = ringRadius + tubeRadius * Math.cos(v);
        mesh.vertex(r * Math.cos(u), r * Math.sin(u), tubeRadius * Math.sin(v));
      }
    }
    for (int i = 0; i < around; i++) {
      int i1 = (i + 1) % around;
      for (int j = 0; j < aroundTube; j++) {
        int j1 = (j + 1) % aroundTube;
        mesh.quad(
            i * aroundTube + j, i1 * aroundTube + j, i1 * aroundTube + j1, i * aroundTube + j1);
      }
    }
    return mesh.build();
  }

  /** A cylinder of the given height from z = -height/2, closed by flat fans if capped. */
  public static Mesh cylinder(double radius, double height, int around, int along, boolean capped) {
    return coneFrustum(radius, radius, height, around, along, capped);
  }

  /**
   * A cone frustum from z = -height/2 to height/2, closed by flat fans if capped.
   *
   * @param lowerRadius at the lower end; 0 gives an apex
   * @param upperRadius at the upper end; 0 gives an apex
   */
  public static Mesh coneFrustum(
      double lowerRadius,
      double upperRadius,
      double height,
      int around,
      int along,
      boolean capped) {
    int extra = capped ? 1 : 0;
    int from = lowerRadius > 0 ? extra : 0;
    int to = upperRadius > 0 ? extra : 0;
    double[] r = new double[along + 1 + from + to];
    double[] z = new double[r.length];
    for (int i = 0; i <= along; i++) {
      r[from + i] = lowerRadius + (upperRadius - lowerRadius) * i / along;
      z[from + i] = -height / 2 + height * i / along;
    }
    if (from == 1) {
      z[0] = -height / 2;
    }
    if (to == 1) {
      z[z.length - 1] = height / 2;
    }
    return lathe(r, z, around);
  }

  /**
   * A capsule: a cylinder of the given height between two half spheres.
   *
   * @param along steps along the cylinder
   * @param capRings bands of each half sphere
   */
  public static Mesh capsule(double radius, double height, int around, int along, int capRings) {
    int n = 2 * capRings + along + 1;
    double[] r = new double[n];
    double[] z = new double[n];
    for (int i = 0; i <= capRings; i++) {
      double angle = Math.PI / 2 * i / capRings;
      r[i] = i == 0 ? 0 : radius * Math.sin(angle);
      z[i] = -height / 2 - radius * Math.cos(angle);
      r[n - 1 - i] = r[i];
      z[n - 1 - i] = -z[i];
    }
    for (int i = 0; i <= along; i++) {
      r[capRings + i] = radius;
      z[capRings + i] = -height / 2 + height * i / along;
    }
    return lathe(r, z, around);
  }

  /**
   * A surface of revolution about z: the profile (r, z) turned. Outwards is to the right of the way
   * along the profile in the (r, z) plane, so a profile going up is seen from outside.
   *
   * @param r distances from the axis; 0 only at the ends, where it gives a pole
   * @param z heights
   * @param around steps around the axis
   */
  public static Mesh lathe(double[] r, double[] z, int around) {
    Builder mesh = new Builder();
    int[] first = new int[r.length];
    for (int i = 0; i < r.length; i++) {
      first[i] = mesh.vertices;
      int copies = r[i] == 0 ? 1 : around;
      for (int j = 0; j < copies; j++) {
        double u = 2 * Math.PI * j / around;
        mesh.vertex(r[i] * Math.cos(u), r[i] * Math.sin(u), z[i]);
      }
    }
    for (int i = 0; i + 1 < r.length; i++) {
      for (int j = 0; j < around; j++) {
        int j1 = (j + 1) % around;
        if (r[i] == 0) {
          mesh.face(first[i], first[i + 1] + j1, first[i + 1] + j);
        } else if (r[i + 1] == 0) {
          mesh.face(first[i] + j, first[i] + j1, first[i + 1]);
        } else {
          mesh.quad(first[i] + j, first[i] + j1, first[i + 1] + j1, first[i + 1] + j);
        }
      }
    }
    return mesh.build();
  }

  /** A rectangle in z = 0 around the origin, facing +z, in nx by ny cells of two faces. */
  public static Mesh plane(double sizeX, double sizeY, int nx, int ny) {
    Builder mesh = new Builder();
    for (int j = 0; j <= ny; j++) {
      for (int i = 0; i <= nx; i++) {
        mesh.vertex(sizeX * i / nx - sizeX / 2, sizeY * j / ny - sizeY / 2, 0);
      }
    }
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        int a = j * (nx + 1) + i;
        mesh.quad(a, a + 1, a + nx + 2, a + nx + 1);
      }
    }
    return mesh.build();
  }

  /** A cube around the origin, each side in n by n cells of two faces. */
  public static Mesh cube(double size, int n) {
    return box(size, size, size, n);
  }

  /** A box around the origin, each side in n by n cells of two faces. */
  public static Mesh box(double sizeX, double sizeY, double sizeZ, int n) {
    Builder mesh = new Builder();
    Map<Long, Integer> known = new HashMap<>();
    double[] size = {sizeX, sizeY, sizeZ};
    for (int axis = 0; axis < 3; axis++) {
      for (int side = 0; side <= n; side += n) {
        int[][] at = new int[n + 1][n + 1];
        for (int i = 0; i <= n; i++) {
          for (int j = 0; j <= n; j++) {
            int[] step = new int[3];
            step[axis] = side;
            step[(axis + 1) % 3] = i;
            step[(axis + 2) % 3] = j;
            long key = ((long) step[0] * (n + 1) + step[1]) * (n + 1) + step[2];
            at[i][j] =
                known.computeIfAbsent(
                    key,
                    k ->
                        mesh.vertex(
                            size[0] * step[0] / n - size[0] / 2,
                            size[1] * step[1] / n - size[1] / 2,
                            size[2] * step[2] / n - size[2] / 2));
          }
        }
        for (int i = 0; i < n; i++) {
          for (int j = 0; j < n; j++) {
            if (side == 0) {
              mesh.quad(at[i][j], at[i][j + 1], at[i + 1][j + 1], at[i + 1][j]);
            } else {
              mesh.quad(at[i][j], at[i + 1][j], at[i + 1][j + 1], at[i][j + 1]);
            }
          }
        }
      }
    }
    return mesh.build();
  }

  /** A Möbius band of the given width about a circle; one edge is where the sides meet flipped. */
  public static Mesh mobius(double radius, double width, int around, int across) {
    Builder mesh = new Builder();
    for (int i = 0; i < around; i++) {
      double u = 2 * Math.PI * i / around;
      for (int j = 0; j <= across; j++) {
        double s = width * ((double) j / across - 0.5);
        double r = radius + s * Math.cos(u / 2);
        mesh.vertex(r * Math.cos(u), r * Math.sin(u), s * Math.sin(u / 2));
      }
    }
    int row = across + 1;
    for (int i = 0; i < around; i++) {
      for (int j = 0; j < across; j++) {
        boolean last = i == around - 1;
        int c = last ? across - (j + 1) : (i + 1) * row + j + 1;
        int d = last ? across - j : (i + 1) * row + j;
        mesh.quad(i * row + j, d, c, i * row + j + 1);
      }
    }
    return mesh.build();
  }

  /**
   * A Schwarz lantern: vertices on a cylinder, each ring turned by half a step, no caps.
   *
   * @param bands rings of triangles (m)
   * @param sectors vertices per ring (n); the mesh has 2mn faces
   */
  public static Mesh lantern(double radius, double height, int bands, int sectors) {
    Builder mesh = new Builder();
    for (int i = 0; i <= bands; i++) {
      for (int j = 0; j < sectors; j++) {
        double u = 2 * Math.PI * (j + (i % 2) * 0.5) / sectors;
        mesh.vertex(
            radius * Math.cos(u), radius * Math.sin(u), height * ((double) i / bands - 0.5));
      }
    }
    for (int i = 0; i < bands; i++) {
      for (int j = 0; j < sectors; j++) {
        int lo = i * sectors;
        int hi = lo + sectors;
        int next = (j + 1) % sectors;
        if (i % 2 == 0) {
          mesh.face(lo + j, lo + next, hi + j);
          mesh.face(lo + next, hi + next, hi + j);
        } else {
          mesh.face(lo + j, lo + next, hi + next);
          mesh.face(lo + j, hi + next, hi + j);
        }
      }
    }
    return mesh.build();
  }

  /** Two spheres of which the second stands free of the first: two closed parts. */
  public static Mesh twoSpheres(double radius, double distance, int rings, int sectors) {
    Mesh one = sphere(radius, rings, sectors);
    return join(one, moved(one, distance, 0, 0));
  }

  /** {@code blades} rectangles sharing one edge of {@code height} along z: a branching edge. */
  public static Mesh blades(int blades, double width, double height) {
    Builder mesh = new Builder();
    int foot = mesh.vertex(0, 0, 0);
    int head = mesh.vertex(0, 0, height);
    for (int i = 0; i < blades; i++) {
      double u = 2 * Math.PI * i / blades;
      int a = mesh.vertex(width * Math.cos(u), width * Math.sin(u), 0);
      int b = mesh.vertex(width * Math.cos(u), width * Math.sin(u), height);
      mesh.quad(foot, a, b, head);
    }
    return mesh.build();
  }

  /** The faces of all meshes in one, vertices of different meshes apart. */
  public static Mesh join(Mesh... meshes) {
    Builder joined = new Builder();
    for (Mesh mesh : meshes) {
      joined.addAll(mesh.xyz(), mesh.corner());
    }
    return joined.build();
  }

  /**
   * The mesh moved by a matrix; faces keep their corner order, so a mirroring turns them inside.
   *
   * @param matrix 3 rows of 4, row by row: x' = m0 x + m1 y + m2 z + m3, …
   */
  public static Mesh transformed(Mesh mesh, double[] matrix) {
    double[] p = mesh.xyz();
    double[] q = new double[p.length];
    for (int v = 0; v < p.length; v += 3) {
      for (int row = 0; row < 3; row++) {
        q[v + row] =
            matrix[4 * row] * p[v]
                + matrix[4 * row + 1] * p[v + 1]
                + matrix[4 * row + 2] * p[v + 2]
                + matrix[4 * row + 3];
      }
    }
    return Mesh.of(q, mesh.corner());
  }

  /** The mesh shifted. */
  public static Mesh moved(Mesh mesh, double dx, double dy, double dz) {
    return transformed(mesh, new double[] {1, 0, 0, dx, 0, 1, 0, dy, 0, 0, 1, dz});
  }

  /** The mesh turned about an axis through the origin (Rodrigues' formula). */
  public static Mesh rotated(Mesh mesh, double ax, double ay, double az, double radians) {
    double length = Math.sqrt(ax * ax + ay * ay + az * az);
    double x = ax / length;
    double y = ay / length;
    double z = az / length;
    double c = Math.cos(radians);
    double s = Math.sin(radians);
    double d = 1 - c;
    return transformed(
        mesh,
        new double[] {
          c + x * x * d,
          x * y * d - z * s,
          x * z * d + y * s,
          0,
          y * x * d + z * s,
          c + y * y * d,
          y * z * d - x * s,
          0,
          z * x * d - y * s,
          z * y * d + x * s,
          c + z * z * d,
          0
        });
  }

  /** The mesh with some faces turned over. */
  public static Mesh withFlipped(Mesh mesh, int... faces) {
    int[] corner = mesh.corner().clone();
    for (int f : faces) {
      int swap = corner[3 * f + 1];
      corner[3 * f + 1] = corner[3 * f + 2];
      corner[3 * f + 2] = swap;
    }
    return Mesh.of(mesh.xyz(), corner);
  }

  /** The mesh without some faces; vertices stay. */
  public static Mesh without(Mesh mesh, int... faces) {
    int[] corner = new int[mesh.corner().length];
    int n = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      int face = f;
      if (Arrays.stream(faces).noneMatch(g -> g == face)) {
        System.arraycopy(mesh.corner(), 3 * f, corner, n, 3);
        n += 3;
      }
    }
    return Mesh.of(mesh.xyz(), Arrays.copyOf(corner, n));
  }

  /** The mesh with some faces listed a second time. */
  public static Mesh withRepeated(Mesh mesh, int... faces) {
    int[] corner = Arrays.copyOf(mesh.corner(), mesh.corner().length + 3 * faces.length);
    for (int i = 0; i < faces.length; i++) {
      System.arraycopy(mesh.corner(), 3 * faces[i], corner, mesh.corner().length + 3 * i, 3);
    }
    return Mesh.of(mesh.xyz(), corner);
  }

  /** The mesh with faces in another order and each face's corners rotated, by a seed. */
  public static Mesh shuffled(Mesh mesh, long seed) {
    Random random = new Random(seed);
    int faces = mesh.faceCount();
    int[] order = new int[faces];
    for (int f = 0; f < faces; f++) {
      int g = random.nextInt(f + 1);
      order[f] = order[g];
      order[g] = f;
    }
    int[] corner = new int[3 * faces];
    for (int f = 0; f < faces; f++) {
      int turn = random.nextInt(3);
      for (int k = 0; k < 3; k++) {
        corner[3 * f + k] = mesh.corner()[3 * order[f] + (k + turn) % 3];
      }
    }
    return Mesh.of(mesh.xyz(), corner);
  }

  /** Independent triangles in a cube around the origin, by a seed: no vertex shared. */
  public static Mesh soup(int faces, double size, double edge, long seed) {
    Random random = new Random(seed);
    Builder mesh = new Builder();
    for (int f = 0; f < faces; f++) {
      double[] at = new double[3];
      for (int k = 0; k < 3; k++) {
        at[k] = size * (random.nextDouble() - 0.5);
      }
      int first = mesh.vertices;
      for (int k = 0; k < 3; k++) {
        mesh.vertex(
            at[0] + edge * (random.nextDouble() - 0.5),
            at[1] + edge * (random.nextDouble() - 0.5),
            at[2] + edge * (random.nextDouble() - 0.5));
      }
      mesh.face(first, first + 1, first + 2);
    }
    return mesh.build();
  }

  /** Collects vertices and faces. */
  public static final class Builder {
    private double[] xyz = new double[48];
    private int[] corner = new int[48];
    private int vertices;
    private int corners;

    /** Adds a vertex and returns its number. */
    public int vertex(double x, double y, double z) {
      if (3 * vertices + 3 > xyz.length) {
        xyz = Arrays.copyOf(xyz, 2 * xyz.length);
      }
      xyz[3 * vertices] = x;
      xyz[3 * vertices + 1] = y;
      xyz[3 * vertices + 2] = z;
      return vertices++;
    }

    /** Adds a face and returns its number. */
    public int face(int a, int b, int c) {
      if (corners + 3 > corner.length) {
        corner = Arrays.copyOf(corner, 2 * corner.length);
      }
      corner[corners++] = a;
      corner[corners++] = b;
      corner[corners++] = c;
      return corners / 3 - 1;
    }

    /** Adds the faces a b c and a c d. */
    public void quad(int a, int b, int c, int d) {
      face(a, b, c);
      face(a, c, d);
    }

    private void addAll(double[] points, int[] faces) {
      int first = vertices;
      for (int v = 0; v < points.length; v += 3) {
        vertex(points[v], points[v + 1], points[v + 2]);
      }
      for (int h = 0; h < faces.length; h += 3) {
        face(first + faces[h], first + faces[h + 1], first + faces[h + 2]);
      }
    }

    /** The mesh so far. */
    public Mesh build() {
      return Mesh.of(Arrays.copyOf(xyz, 3 * vertices), Arrays.copyOf(corner, corners));
    }
  }
}
