package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.testsupport.Shapes;

class SurfaceDistanceTest {
  private static final double FAR = Double.POSITIVE_INFINITY;

  /** Share by which distances in a plane may be off: rays are kept in single precision. */
  private static final double PLANE = 1e-4;

  @Test
  void fromAPointInAPlaneIsThePlainDistance() {
    for (Mesh mesh : Grids.ofEachKind(10000, false, (u, v) -> new double[] {u - 0.5, v - 0.5, 0})) {
      double[] d = distance(mesh, Sources.point(at(mesh, 0.013, -0.0217, 0)));
      assertWithin(mesh, d, v -> Math.hypot(mesh.x(v) - 0.013, mesh.y(v) + 0.0217), 0, 3e-4);
    }
  }

  @Test
  void fromAPolylineInAPlaneIsThePlainDistance() {
    double[][] bends = {{-0.2013, -0.10071}, {0.15023, -0.03011}, {0.10037, 0.21019}};
    for (Mesh mesh : Grids.ofEachKind(10000, false, (u, v) -> new double[] {u - 0.5, v - 0.5, 0})) {
      double[] d = distance(mesh, Grids.polyline(mesh, bends));
      assertWithin(mesh, d, v -> Grids.distance(mesh, v, bends), 5, 1e-2);
    }
  }

  @Test
  void fromEdgesInAPlaneIsThePlainDistance() {
    Mesh mesh = Shapes.plane(10, 10, 50, 50);
    double[] d = distance(mesh, Sources.edges(Grids.edges(mesh, v -> onSegment(mesh, v, 2))));
    assertWithin(
        mesh, d, v -> Math.hypot(Math.max(0, Math.abs(mesh.x(v)) - 2), mesh.y(v)), 0, PLANE);
  }

  @Test
  void fromAPointOnACylinderIsThatOfTheUnrolledSide() {
    double height = 2 * Math.PI;
    Grids.Map map =
        (u, v) ->
            new double[] {Math.cos(2 * Math.PI * u), Math.sin(2 * Math.PI * u), height * (v - 0.5)};
    for (Mesh mesh : Grids.ofEvenKinds(20000, true, map)) {
      SurfacePoint q = at(mesh, Math.cos(0.3), Math.sin(0.3), 0.21);
      double angle = Math.atan2(q.at(mesh, 1), q.at(mesh, 0));
      double[] d = distance(mesh, Sources.point(q));
      assertWithin(
          mesh,
          d,
          v -> {
            double turn = Math.abs(Math.atan2(mesh.y(v), mesh.x(v)) - angle);
            return Math.hypot(Math.min(turn, 2 * Math.PI - turn), mesh.z(v) - q.at(mesh, 2));
          },
          5,
          5e-3);
    }
  }

  @Test
  void fromAPointOnASphereIsTheGreatCircle() {
    for (Mesh mesh : List.of(Shapes.icosphere(10, 5), Shapes.sphere(10, 100, 100))) {
      SurfacePoint q = at(mesh, 3, 4, 8.6);
      double[] d = distance(mesh, Sources.point(q));
      double[] p = {q.at(mesh, 0), q.at(mesh, 1), q.at(mesh, 2)};
      double length = Math.sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]);
      assertWithin(
          mesh,
          d,
          v -> {
            double dot = (p[0] * mesh.x(v) + p[1] * mesh.y(v) + p[2] * mesh.z(v)) / length / 10;
            return 10 * Math.acos(Math.max(-1, Math.min(1, dot)));
          },
          5,
          5e-3);
    }
  }

  @Test
  void fromAParallelOfASphereIsAlongMeridians() {
    Mesh mesh = Shapes.sphere(10, 100, 100);
    double height = mesh.z(mesh.corner()[6 * 100 * 30]);
    int[] ring = Grids.edges(mesh, v -> Math.abs(mesh.z(v) - height) < 1e-9);
    double[] d = distance(mesh, Sources.edges(ring));
    double polar = Math.acos(height / 10);
    assertWithin(mesh, d, v -> 10 * Math.abs(Math.acos(mesh.z(v) / 10) - polar), 5, 2e-3);
  }

  @Test
  void namedGeodesics() {
    // Exact by unrolling: opposite corners of the unit cube sqrt(5); opposite points of the rim of
    // a
    // cone of radius 3 and height 4, 10 sin 54°, and points 90° apart, 10 sin 27°.
    Mesh cube = Shapes.cube(1, 10);
    double[] d = distance(cube, Sources.vertices(vertex(cube, -0.5, -0.5, -0.5)));
    assertThat(d[vertex(cube, 0.5, 0.5, 0.5)]).isCloseTo(Math.sqrt(5), within(5e-3));
    Mesh cone = Shapes.coneFrustum(3, 0, 4, 240, 40, false);
    d = distance(cone, Sources.vertices(vertex(cone, 3, 0, -2)));
    assertThat(d[vertex(cone, -3, 0, -2)]).isCloseTo(8.0901699437, within(8e-3));
    assertThat(d[vertex(cone, 0, 3, -2)]).isCloseTo(4.5399049974, within(4e-3));
  }

  @Test
  void goesRoundWhatMayNotBeCrossed() {
    // A wall of forbidden faces between x = -1 and x = 0 from y = -5 up to y = 1: the way from
    // (-3, -2) bends at its two upper corners (-1, 1) and (0, 1).
    Mesh mesh = Shapes.plane(10, 10, 50, 50);
    double[] c = new double[3];
    IntPredicate free =
        f -> {
          Faces.centroid(mesh, f, c);
          return !(c[0] > -1 && c[0] < 0 && c[1] < 1);
        };
    double[] d =
        SurfaceDistance.from(
            mesh,
            Topology.of(mesh),
            VertexFans.of(mesh),
            Sources.point(at(mesh, -3, -2, 0)),
            FAR,
            free,
            Progress.NONE);
    double first = Math.hypot(2, 3) + 1;
    for (int v = 0; v < d.length; v++) {
      double x = mesh.x(v);
      double y = mesh.y(v);
      if (x >= 0 && y <= 1) {
        assertThat(d[v]).isCloseTo(first + Math.hypot(x, y - 1), within(0.01 * d[v]));
      } else if (x <= -1) {
        assertThat(d[v]).isCloseTo(Math.hypot(x + 3, y + 2), within(1e-4 * d[v] + 1e-9));
      }
    }
  }

  @Test
  void turnedFacesChangeNothing() {
    Mesh mesh = Shapes.icosphere(3, 4);
    int[] some = new Random(5).ints(700, 0, mesh.faceCount()).distinct().toArray();
    // Faces of 3° err by a thousandth; which of two fronts comes first may differ by that.
    double[] straight = distance(mesh, Sources.vertices(17));
    double[] turned = distance(Shapes.withFlipped(mesh, some), Sources.vertices(17));
    for (int v = 0; v < straight.length; v++) {
      assertThat(turned[v]).isCloseTo(straight[v], within(3e-3 * straight[v]));
    }
  }

  @Test
  void crossesBranchingEdgesIntoEveryFace() {
    // From the middle of one blade's outer edge: each other blade unfolds flat behind the first.
    Mesh coarse = Shapes.blades(5, 2, 3);
    Mesh mesh = Refinement.edges(coarse, 0.2, f -> true).mesh();
    double[] d = distance(mesh, Sources.point(at(mesh, 2, 0, 1.5)));
    for (int v = 0; v < d.length; v++) {
      double r = Math.hypot(mesh.x(v), mesh.y(v));
      boolean sameBlade = mesh.y(v) == 0 && mesh.x(v) > 0;
      double exact = Math.hypot(sameBlade ? 2 - r : 2 + r, mesh.z(v) - 1.5);
      assertThat(d[v]).isCloseTo(exact, within(1e-3 * exact + 1e-9));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void growsNoFasterThanTheWayOnAnySoup(long seed) {
    Random random = new Random(seed);
    for (Mesh mesh : CutChecks.soups()) {
      double[] d = distance(mesh, anySource(mesh, random));
      double worst = 0;
      for (int h = 0; h < mesh.corner().length; h++) {
        int a = mesh.corner()[h];
        int b = mesh.corner()[Topology.next(h)];
        if (Double.isInfinite(d[a]) || Double.isInfinite(d[b])) {
          assertThat(d[a]).isEqualTo(d[b]);
        } else {
          double over = Math.abs(d[a] - d[b]) - Faces.length(mesh, a, b);
          worst = Math.max(worst, over / Math.max(d[a], d[b]));
        }
      }
      // Next to nothing on even faces; on needles of 100:1 the error of the distance itself.
      assertThat(worst).as("%d faces", mesh.faceCount()).isLessThan(0.02);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2})
  void sameMeshSameDigits(long seed) {
    for (Mesh mesh : CutChecks.soups()) {
      Sources sources = anySource(mesh, new Random(seed));
      assertThat(distance(mesh, sources)).isEqualTo(distance(mesh, sources));
    }
  }

  @Test
  void stopsWhereAsked() {
    Mesh mesh = Shapes.plane(10, 10, 40, 40);
    Topology topology = Topology.of(mesh);
    VertexFans fans = VertexFans.of(mesh);
    Sources source = Sources.vertices(0);
    double[] all = distance(mesh, source);
    double[] d = SurfaceDistance.from(mesh, topology, fans, source, 3, Progress.NONE);
    for (int v = 0; v < d.length; v++) {
      assertThat(d[v]).isEqualTo(all[v] <= 3 ? all[v] : FAR);
    }
  }

  @Test
  void keepsTheFarCornersOfFacesToCut() {
    Mesh mesh = Shapes.plane(10, 10, 40, 40);
    double[] d =
        SurfaceDistance.toCutAt(
            mesh,
            Topology.of(mesh),
            VertexFans.of(mesh),
            Sources.vertices(0),
            3,
            f -> true,
            Progress.NONE);
    for (int f = 0; f < mesh.faceCount(); f++) {
      double least = FAR;
      double most = 0;
      for (int k = 0; k < 3; k++) {
        least = Math.min(least, d[mesh.corner()[3 * f + k]]);
        most = Math.max(most, d[mesh.corner()[3 * f + k]]);
      }
      assertThat(least <= 3 && Double.isInfinite(most)).isFalse();
    }
  }

  @Test
  void tellsProgressAndStopsWhenCancelled() {
    Mesh mesh = Shapes.plane(10, 10, 40, 40);
    Progress cancel =
        fraction -> {
          throw new CancellationException();
        };
    assertThatThrownBy(
            () ->
                SurfaceDistance.from(
                    mesh, Topology.of(mesh), VertexFans.of(mesh), Sources.vertices(0), 3, cancel))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void pathWithAGapIsAProgrammingError() {
    Mesh mesh = Shapes.plane(10, 10, 4, 4);
    Sources gap = Sources.path(List.of(at(mesh, -4, -4, 0), at(mesh, 4, 4, 0)));
    assertThatThrownBy(() -> distance(mesh, gap))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no common face");
  }

  private static boolean onSegment(Mesh mesh, int v, double half) {
    return Math.abs(mesh.y(v)) < 1e-9 && Math.abs(mesh.x(v)) < half + 1e-9;
  }

  private static Sources anySource(Mesh mesh, Random random) {
    int f = random.nextInt(mesh.faceCount());
    SurfacePoint inside = new SurfacePoint(f, 0.2, 0.5, 0.3);
    return switch (random.nextInt(4)) {
      case 0 -> Sources.point(inside);
      case 1 -> Sources.vertices(mesh.corner()[3 * f]);
      case 2 -> Sources.edges(3 * f + random.nextInt(3));
      default -> Sources.path(List.of(inside, new SurfacePoint(f, 0, 0.5, 0.5)));
    };
  }

  private static int vertex(Mesh mesh, double x, double y, double z) {
    for (int v = 0; v < mesh.vertexCount(); v++) {
      if (Math.abs(mesh.x(v) - x) + Math.abs(mesh.y(v) - y) + Math.abs(mesh.z(v) - z) < 1e-9) {
        return v;
      }
    }
    throw new IllegalArgumentException("No vertex there");
  }

  private static SurfacePoint at(Mesh mesh, double x, double y, double z) {
    return FaceTree.of(mesh).nearest(x, y, z).orElseThrow();
  }

  private static double[] distance(Mesh mesh, Sources sources) {
    return SurfaceDistance.from(
        mesh, Topology.of(mesh), VertexFans.of(mesh), sources, FAR, Progress.NONE);
  }

  /** Checks the largest relative error beyond some mean edge lengths. */
  private static void assertWithin(
      Mesh mesh, double[] d, IntToDoubleFunction exact, double edges, double share) {
    double edge = Grids.meanEdge(mesh);
    double worst = 0;
    for (int v = 0; v < d.length; v++) {
      double e = exact.applyAsDouble(v);
      if (e > edges * edge && e > 0) {
        worst = Math.max(worst, Math.abs(d[v] - e) / e);
      }
    }
    assertThat(worst).as("%d faces", mesh.faceCount()).isLessThan(share);
  }
}
