package org.seamwright.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.testsupport.Shapes;

/** The tree against going over all faces with other formulas, at several scales. */
class FaceTreeTest {
  private static final int QUERIES = 300;

  private static Mesh mesh(double scale, long seed) {
    Mesh shapes =
        Shapes.join(
            Shapes.torus(1, 0.3, 30, 16),
            Shapes.moved(Shapes.cube(0.5, 3), 1, 1, 0.2),
            Shapes.soup(200, 2, 0.2, seed));
    return shapes.scaledBy(scale);
  }

  private static double[] corner(Mesh mesh, int f, int k) {
    int v = mesh.corner()[3 * f + k];
    return new double[] {mesh.x(v), mesh.y(v), mesh.z(v)};
  }

  private static double[] minus(double[] a, double[] b) {
    return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  /** Distance to a face: to its plane if the foot lies inside, else to the nearest of its sides. */
  private static double distance(Mesh mesh, int f, double[] q) {
    double best = Double.POSITIVE_INFINITY;
    double[][] p = {corner(mesh, f, 0), corner(mesh, f, 1), corner(mesh, f, 2)};
    double[] n = cross(minus(p[1], p[0]), minus(p[2], p[0]));
    boolean inside = dot(n, n) > 0;
    for (int k = 0; k < 3; k++) {
      double[] side = minus(p[(k + 1) % 3], p[k]);
      double[] to = minus(q, p[k]);
      double t = dot(side, side) > 0 ? dot(to, side) / dot(side, side) : 0;
      t = Math.max(0, Math.min(1, t));
      double[] off = {to[0] - t * side[0], to[1] - t * side[1], to[2] - t * side[2]};
      best = Math.min(best, Math.sqrt(dot(off, off)));
      inside &= dot(cross(side, to), n) >= 0;
    }
    return inside ? Math.min(best, Math.abs(dot(minus(q, p[0]), n)) / Math.sqrt(dot(n, n))) : best;
  }

  @ParameterizedTest
  @CsvSource({"0.01, 1", "1, 2", "100, 3", "10000, 4"})
  void nearestPointIsTheNearestOfAllFaces(double scale, long seed) {
    Mesh mesh = mesh(scale, seed);
    FaceTree tree = FaceTree.of(mesh);
    Random random = new Random(seed);
    for (int i = 0; i < QUERIES; i++) {
      double reach = i % 10 == 0 ? 50 : 3;
      double[] q = random.doubles(3, -reach * scale, reach * scale).toArray();
      double best = Double.POSITIVE_INFINITY;
      for (int f = 0; f < mesh.faceCount(); f++) {
        best = Math.min(best, distance(mesh, f, q));
      }
      SurfacePoint found = tree.nearest(q[0], q[1], q[2]).orElseThrow();
      double[] at = {found.at(mesh, 0), found.at(mesh, 1), found.at(mesh, 2)};
      String query = "seed " + seed + ", query " + i;
      double gap = Math.sqrt(dot(minus(at, q), minus(at, q)));
      assertThat(gap).as(query).isCloseTo(best, within(1e-9 * scale));
      assertThat(Math.min(found.w0(), Math.min(found.w1(), found.w2())))
          .as(query)
          .isGreaterThanOrEqualTo(-1e-12);
      assertThat(found.w0() + found.w1() + found.w2()).as(query).isCloseTo(1, within(1e-12));
    }
  }

  /** Where a ray meets a face's plane, if its foot lies inside; by signed areas in space. */
  private static double hit(Mesh mesh, int f, double[] o, double[] d) {
    double[][] p = {corner(mesh, f, 0), corner(mesh, f, 1), corner(mesh, f, 2)};
    double[] n = cross(minus(p[1], p[0]), minus(p[2], p[0]));
    double along = dot(n, d);
    double t = dot(n, minus(p[0], o)) / along;
    if (along == 0 || !(t >= 0)) {
      return Double.POSITIVE_INFINITY;
    }
    double[] at = {o[0] + t * d[0], o[1] + t * d[1], o[2] + t * d[2]};
    for (int k = 0; k < 3; k++) {
      if (dot(cross(minus(p[(k + 1) % 3], p[k]), minus(at, p[k])), n) < 0) {
        return Double.POSITIVE_INFINITY;
      }
    }
    return t;
  }

  @ParameterizedTest
  @CsvSource({"0.01, 11", "1, 12", "100, 13", "10000, 14"})
  void firstHitIsTheFirstOfAllFaces(double scale, long seed) {
    Mesh mesh = mesh(scale, seed);
    FaceTree tree = FaceTree.of(mesh);
    Random random = new Random(seed);
    int hits = 0;
    for (int i = 0; i < QUERIES; i++) {
      double[] o = random.doubles(3, -2 * scale, 2 * scale).toArray();
      double[] d = random.doubles(3, -1, 1).toArray();
      double best = Double.POSITIVE_INFINITY;
      for (int f = 0; f < mesh.faceCount(); f++) {
        best = Math.min(best, hit(mesh, f, o, d));
      }
      Optional<FaceTree.Hit> found = tree.firstHit(o[0], o[1], o[2], d[0], d[1], d[2]);
      String query = "seed " + seed + ", query " + i;
      assertThat(found.isPresent()).as(query).isEqualTo(best < Double.POSITIVE_INFINITY);
      if (found.isPresent()) {
        hits++;
        assertThat(found.get().distance()).as(query).isCloseTo(best, within(1e-9 * scale));
        for (int axis = 0; axis < 3; axis++) {
          assertThat(found.get().point().at(mesh, axis))
              .as(query)
              .isCloseTo(o[axis] + best * d[axis], within(1e-9 * scale));
        }
      }
    }
    assertThat(hits).isGreaterThan(QUERIES / 10);
  }

  @Test
  void raysAlongAxesMeetFacesThatLieInTheSidesOfTheirBoxes() {
    Mesh cube = Shapes.cube(2, 4);
    FaceTree tree = FaceTree.of(cube);
    for (int axis = 0; axis < 3; axis++) {
      for (double x : new double[] {-0.9, -0.25, 0, 0.1, 0.75}) {
        for (double y : new double[] {-0.6, 0, 0.5, 0.99}) {
          double[] o = new double[3];
          double[] d = new double[3];
          o[axis] = -5;
          o[(axis + 1) % 3] = x;
          o[(axis + 2) % 3] = y;
          d[axis] = 2;
          assertThat(tree.firstHit(o[0], o[1], o[2], d[0], d[1], d[2]).orElseThrow().distance())
              .isCloseTo(2, within(1e-14));
        }
      }
    }
    assertThat(tree.firstHit(-5, 1.01, 0, 1, 0, 0)).isEmpty();
    assertThat(tree.firstHit(-5, 0, 0, -1, 0, 0)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.01, 31", "1, 32", "10000, 33"})
  void noRayGetsOutOfAClosedPieceBetweenItsFaces(double scale, long seed) {
    Mesh mesh = Shapes.rotated(Shapes.icosphere(scale, 3), 1, 2, 3, 0.3);
    FaceTree tree = FaceTree.of(mesh);
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      double[] o = random.doubles(3, -0.5 * scale, 0.5 * scale).toArray();
      int h = random.nextInt(mesh.corner().length);
      double[] a = corner(mesh, h / 3, h % 3);
      double[] b = corner(mesh, h / 3, (h + 1) % 3);
      double t = i % 3 == 0 ? 0 : random.nextDouble();
      double[] d = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        d[axis] = a[axis] + t * (b[axis] - a[axis]) - o[axis];
      }
      assertThat(tree.firstHit(o[0], o[1], o[2], d[0], d[1], d[2]))
          .as("seed %d, ray %d", seed, i)
          .isPresent();
    }
  }

  @ParameterizedTest
  @CsvSource({"0.01, 21", "1, 22", "10000, 23"})
  void boxFindsTheFacesWhoseBoxesMeetIt(double scale, long seed) {
    Mesh mesh = mesh(scale, seed);
    FaceTree tree = FaceTree.of(mesh);
    Random random = new Random(seed);
    for (int i = 0; i < 100; i++) {
      double[] lo = random.doubles(3, -2 * scale, 2 * scale).toArray();
      double[] size = random.doubles(3, 0, scale).toArray();
      Bounds box =
          new Bounds(lo[0], lo[1], lo[2], lo[0] + size[0], lo[1] + size[1], lo[2] + size[2]);
      TreeSet<Integer> wanted = new TreeSet<>();
      for (int f = 0; f < mesh.faceCount(); f++) {
        boolean meets = true;
        for (int axis = 0; axis < 3; axis++) {
          double a = corner(mesh, f, 0)[axis];
          double b = corner(mesh, f, 1)[axis];
          double c = corner(mesh, f, 2)[axis];
          meets &= Math.max(a, Math.max(b, c)) >= lo[axis];
          meets &= Math.min(a, Math.min(b, c)) <= lo[axis] + size[axis];
        }
        if (meets) {
          wanted.add(f);
        }
      }
      TreeSet<Integer> found = new TreeSet<>();
      tree.inBox(box, f -> assertThat(found.add(f)).as("face %d once", f).isTrue());
      assertThat(found).as("seed %d, query %d", seed, i).isEqualTo(wanted);
    }
  }

  @Test
  void facesWithoutAreaAreSegmentsAndPoints() {
    // A face in line from (0,0,0) to (3,0,0) and one shrunk to a point.
    Mesh mesh =
        Mesh.of(
            new double[] {0, 0, 0, 1, 0, 0, 3, 0, 0, 9, 9, 9},
            new int[] {0, 1, 2, 2, 0, 1, 1, 2, 0, 3, 3, 3});
    FaceTree tree = FaceTree.of(mesh);
    for (double x = -1; x <= 4; x += 0.25) {
      SurfacePoint point = tree.nearest(x, 2, 0).orElseThrow();
      assertThat(point.at(mesh, 0)).isCloseTo(Math.max(0, Math.min(3, x)), within(1e-12));
      assertThat(point.at(mesh, 1)).isZero();
    }
    assertThat(tree.nearest(8, 9, 9).orElseThrow().at(mesh, 2)).isEqualTo(9);
    assertThat(tree.firstHit(1, 1, 0, 0, -1, 0)).isEmpty();
  }

  @Test
  void manyFacesAtOnePlaceAndNoneAtAll() {
    int[] corner = new int[3 * 1000];
    for (int h = 0; h < corner.length; h++) {
      corner[h] = h % 3;
    }
    Mesh stack = Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, corner);
    FaceTree tree = FaceTree.of(stack);
    assertThat(tree.nearest(0.2, 0.2, 5).orElseThrow().at(stack, 0)).isCloseTo(0.2, within(1e-15));
    FaceTree none = FaceTree.of(Mesh.of(new double[0], new int[0]));
    assertThat(none.nearest(0, 0, 0)).isEmpty();
    assertThat(none.firstHit(0, 0, 0, 1, 0, 0)).isEmpty();
  }
}
