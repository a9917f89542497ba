package org.seamwright.measure;

import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Lays cubic patches over a block of facets and sums how their areas differ from the facets'.
 *
 * <p>A facet between plain vertices that bends little is done by the second-order terms of the
 * patch's area: the tilt of its bulge over the facet, and the strip its edges gain by bulging
 * sideways. Its error is a few percent of the difference, and all others are integrated.
 */
final class FacetBlock {
  /**
   * Area that roughness adds, as a multiple of area times squared misfit of chord and normals, sums
   * over a facet's edges. Met between 0.5 and 0.8 for random heights on several meshes.
   */
  private static final double ROUGHNESS = 0.6;

  /** Misfit below this share of the (squared) bend is that of a smooth surface in coarse steps. */
  private static final double SMOOTH_MISFIT = 0.05;

  /** Squared misfit (radians) that is not worth fitting a normal for: a millionth of the area. */
  private static final double SMALL_MISFIT = 1e-6;

  /** Bends (1 - cosine) below this are rounding: the facet is flat and keeps its area. */
  private static final double FLAT = 1e-12;

  /** Squared sine of the angle between chord and tangent up to which second order will do. */
  private static final double GENTLE = 0.02;

  final Sum correction = new Sum();
  final Sum doubt = new Sum();
  final Sum roughness = new Sum();
  final Sum foldedArea = new Sum();
  final Sum foldedExcess = new Sum();
  int folded;
  boolean misfits;
  boolean doubtful;

  private final Mesh mesh;
  private final Topology topology;
  private final CornerNormals normals;
  private final byte[] marks;
  private final SharpEdges edges;
  private final EdgeTangents tangents;
  private final CurvedPatch patch = new CurvedPatch();
  private final double[] normal = new double[3];
  private final double[] here = new double[3];
  private final double[] there = new double[3];
  private final double[] point = new double[3];

  /** How far a facet's edges bulge at their middles. */
  private final double[] bulge = new double[3];

  /** How unequally they leave their ends: control points near start and end differ by twice it. */
  private final double[] skew = new double[3];

  private final double[] length2 = new double[3];

  private boolean fits = true;

  /**
   * Prepares a block.
   *
   * @param marks set to 1 at vertices whose normal does not fit the chords, one per vertex; empty
   *     if not wanted
   */
  FacetBlock(
      Mesh mesh,
      Topology topology,
      CornerNormals normals,
      EdgeTangents.Borders borders,
      double creaseDegrees,
      byte[] marks) {
    this.mesh = mesh;
    this.topology = topology;
    this.normals = normals;
    this.marks = marks;
    this.edges = normals.sharpEdges();
    this.tangents = new EdgeTangents(mesh, topology, edges, normals, borders, creaseDegrees);
  }

  /** Sums over the facets of a range. */
  void run(int from, int to) {
    int[] corner = mesh.corner();
    for (int f = from; f < to; f++) {
      int a = corner[3 * f];
      int b = corner[3 * f + 1];
      int c = corner[3 * f + 2];
      if (a == b || b == c || c == a) {
        // It has no area and no edges.
        continue;
      }
      if (!normals.isPlain(a)
          || !normals.isPlain(b)
          || !normals.isPlain(c)
          || !gentle(3 * a, 3 * b, 3 * c)) {
        integrate(f);
      }
    }
    doubtful |= edges.metDoubtful();
  }

  /** Adds a facet by second-order terms; false if it bends too far for them. */
  private boolean gentle(int a, int b, int c) {
    double[] p = mesh.xyz();
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double uz = p[b + 2] - p[a + 2];
    double vx = p[c] - p[b];
    double vy = p[c + 1] - p[b + 1];
    double vz = p[c + 2] - p[b + 2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    double sideways =
        edge(0, ux, uy, uz, a, b, nx, ny, nz)
            + edge(1, vx, vy, vz, b, c, nx, ny, nz)
            + edge(2, -ux - vx, -uy - vy, -uz - vz, c, a, nx, ny, nz);
    if (!(sideways < Double.POSITIVE_INFINITY) || !(twice > 0)) {
      return false;
    }
    double more = (tilt() / 4 + sideways) / twice;
    correction.add(more);
    doubt.add(Math.abs(more));
    if (!fits) {
      misfit(a / 3, b / 3, c / 3, twice / 2);
    }
    return true;
  }

  /**
   * Notes bulge, skew and length of an edge between plain vertices.
   *
   * @param k which
   * @param nx normal of the facet, twice its area long
   * @return what the facet gains sideways, times twice its area; not a number if the edge bends far
   */
  private double edge(
      int k, double x, double y, double z, int a, int b, double nx, double ny, double nz) {
    double[] n = normals.ofVertices();
    double l2 = x * x + y * y + z * z;
    double start = x * n[a] + y * n[a + 1] + z * n[a + 2];
    double end = x * n[b] + y * n[b + 1] + z * n[b + 2];
    double steepest = GENTLE * l2;
    if (!(start * start <= steepest && end * end <= steepest)) {
      return Double.NaN;
    }
    length2[k] = l2;
    if (start * start + end * end <= 2 * FLAT * l2) {
      bulge[k] = 0;
      skew[k] = 0;
      return 0;
    }
    double bend = end - start;
    double misfit = start + end;
    bulge[k] = bend / 8;
    skew[k] = misfit / -6;
    fits &= misfit * misfit <= SMOOTH_MISFIT * bend * bend;
    double sx = y * nz - z * ny;
    double sy = z * nx - x * nz;
    double sz = x * ny - y * nx;
    return (end * (n[b] * sx + n[b + 1] * sy + n[b + 2] * sz)
            - start * (n[a] * sx + n[a + 1] * sy + n[a + 2] * sz))
        / 12;
  }

  /**
   * Four times the facet's area times the integral of the squared slope of the cubic over it whose
   * edges have these bulges and skews (the cubic's middle as in {@link CurvedPatch}).
   */
  private double tilt() {
    double b0 = bulge[0];
    double b1 = bulge[1];
    double b2 = bulge[2];
    double e0 = length2[0];
    double e1 = length2[1];
    double e2 = length2[2];
    double t0 = b1 + b2 - b0;
    double t1 = b2 + b0 - b1;
    double t2 = b0 + b1 - b2;
    double even = t0 * t0 * e0 + t1 * t1 * e1 + t2 * t2 * e2;
    double a0 = skew[0];
    double a1 = skew[1];
    double a2 = skew[2];
    double mixed =
        a0 * ((b1 - b2) * e0 - b0 * (e1 - e2))
            + a1 * ((b2 - b0) * e1 - b1 * (e2 - e0))
            + a2 * ((b0 - b1) * e2 - b2 * (e0 - e1));
    double sum = a0 + a1 + a2;
    double squares = a0 * a0 + a1 * a1 + a2 * a2;
    double odd =
        (e0 + e1 + e2) * (sum * sum + 2 * squares)
            - 2 * (a0 * a0 * e0 + a1 * a1 * e1 + a2 * a2 * e2)
            - 4 * (a0 * a1 * e2 + a0 * a2 * e1 + a1 * a2 * e0);
    return even * (4.0 / 3) + mixed * (4.0 / 5) + odd / 10;
  }

  /** Notes how far the chords of the facet just looked at do not fit the normals. */
  private void misfit(int a, int b, int c, double facet) {
    fits = true;
    double m0 = 9 * skew[0] * skew[0] / length2[0];
    double m1 = 9 * skew[1] * skew[1] / length2[1];
    double m2 = 9 * skew[2] * skew[2] / length2[2];
    double bend =
        16
            * (bulge[0] * bulge[0] / length2[0]
                + bulge[1] * bulge[1] / length2[1]
                + bulge[2] * bulge[2] / length2[2]);
    roughness.add(ROUGHNESS * facet * Math.max(0, m0 + m1 + m2 - SMOOTH_MISFIT * bend));
    mark(a, b, m0);
    mark(b, c, m1);
    mark(c, a, m2);
  }

  private void integrate(int f) {
    Crease.normal(mesh, topology, f, normal);
    double facet = Faces.area(mesh, f);
    if (lay(f)) {
      double curved = patch.area(normal[0], normal[1], normal[2]);
      double more = Double.isNaN(curved) ? 0 : curved - facet;
      correction.add(more);
      doubt.add(Math.abs(more));
      roughness.add(ROUGHNESS * facet * misfit(f));
    }
    if (isParted(f) && Folds.isFolded(mesh, topology, edges, normal, f)) {
      folded++;
      foldedArea.add(facet);
      double cosine = Folds.cosine(mesh, topology, normals.cornersOfParted(), normal, f);
      foldedExcess.add(facet * (1 - Math.max(0, cosine)));
    }
  }

  private boolean isParted(int f) {
    int[] corner = mesh.corner();
    return !normals.isPlain(corner[3 * f])
        && !normals.isPlain(corner[3 * f + 1])
        && !normals.isPlain(corner[3 * f + 2]);
  }

  /** Lays a patch over a facet; false if it is flat with straight edges. */
  private boolean lay(int f) {
    double bent = 0;
    for (int k = 0; k < 3; k++) {
      int h = 3 * f + k;
      int v = mesh.corner()[h];
      patch.corner(k, mesh.x(v), mesh.y(v), mesh.z(v));
      bent = Math.max(bent, tangents.control(h, true, point));
      patch.edge(k, true, point[0], point[1], point[2]);
      bent = Math.max(bent, tangents.control(h, false, point));
      patch.edge(k, false, point[0], point[1], point[2]);
    }
    patch.middle();
    return bent > FLAT;
  }

  /**
   * How unequally the chords of a facet lean at both ends, squared, beyond what coarse steps of a
   * smooth surface make.
   */
  private double misfit(int f) {
    double[] p = mesh.xyz();
    double bend = 0;
    double misfit = 0;
    for (int h = 3 * f; h < 3 * f + 3; h++) {
      int next = Topology.next(h);
      int v = 3 * mesh.corner()[h];
      int w = 3 * mesh.corner()[next];
      normals.at(h, here);
      normals.at(next, there);
      double start = 0;
      double end = 0;
      double l2 = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = p[w + axis] - p[v + axis];
        l2 += d * d;
        start += d * here[axis];
        end += d * there[axis];
      }
      if (l2 > 0) {
        bend += (start - end) * (start - end) / (4 * l2);
        misfit += (start + end) * (start + end) / (4 * l2);
        mark(v / 3, w / 3, (start + end) * (start + end) / (4 * l2));
      }
    }
    return Math.max(0, misfit - SMOOTH_MISFIT * bend);
  }

  private void mark(int v, int w, double misfit) {
    if (marks.length > 0 && misfit > SMALL_MISFIT) {
      marks[v] = 1;
      marks[w] = 1;
      misfits = true;
    }
  }
}
