package org.seamwright.geodesic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.testsupport.Shapes;

class GeodesicPathTest {
  @Test
  void oppositeCornersOfTheUnitCube() {
    // Unfolding two sides gives a 1 by 2 rectangle: sqrt(5).
    for (int n : new int[] {1, 3, 10}) {
      Mesh cube = Shapes.cube(1, n);
      List<SurfacePoint> way = way(cube, -0.5, -0.5, -0.5, 0.5, 0.5, 0.5);
      assertThat(GeodesicPath.lengthMm(cube, way)).isCloseTo(Math.sqrt(5), within(1e-4));
    }
  }

  @Test
  void quarterTurnAndTwoUpOnACylinder() {
    // Unrolled: sqrt((pi/2)² + 2²) = 2.5431085506 for radius 1.
    Mesh cylinder = Shapes.cylinder(1, 4, 240, 40, false);
    List<SurfacePoint> way = way(cylinder, 1, 0, -1, 0, 1, 1);
    assertThat(GeodesicPath.lengthMm(cylinder, way)).isCloseTo(2.5431085506, within(1e-3));
  }

  @Test
  void overTheSideOfACone() {
    // Radius 3, height 4, slant 5: the side unrolls to a sector of 216°; opposite points of the rim
    // are 108° apart in it, 10 sin 54° = 8.0901699437; along the rim it is 9.42.
    Mesh cone = Shapes.coneFrustum(3, 0, 4, 240, 40, false);
    List<SurfacePoint> way = way(cone, 3, 0, -2, -3, 0, -2);
    assertThat(GeodesicPath.lengthMm(cone, way)).isCloseTo(8.0901699437, within(4e-3));
  }

  @Test
  void quarterOfASphere() {
    Mesh sphere = Shapes.sphere(10, 100, 200);
    List<SurfacePoint> way = way(sphere, 10, 0, 0, 0, 6, 8);
    assertThat(GeodesicPath.lengthMm(sphere, way)).isCloseTo(15.7079632679, within(5e-3));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void betweenAnyPointsOfAnySoup(long seed) {
    Random random = new Random(seed);
    for (Mesh mesh : CutChecks.soups()) {
      Topology topology = Topology.of(mesh);
      VertexFans fans = VertexFans.of(mesh);
      for (int i = 0; i < 6; i++) {
        SurfacePoint from = somewhere(mesh, random);
        SurfacePoint to = somewhere(mesh, random);
        double[] d =
            SurfaceDistance.from(
                mesh, topology, fans, Sources.point(to), Double.POSITIVE_INFINITY, Progress.NONE);
        GeodesicPath.between(mesh, topology, fans, from, to, Progress.NONE)
            .ifPresentOrElse(
                way -> {
                  assertThat(way.get(0)).isEqualTo(from);
                  assertThat(way.get(way.size() - 1)).isEqualTo(to);
                  for (int k = 1; k < way.size(); k++) {
                    assertThat(SurfaceRim.commonFace(mesh, fans, way.get(k - 1), way.get(k)))
                        .isNotNegative();
                  }
                  if (!isFolded(mesh)) {
                    assertLengthFits(mesh, d, from, way);
                  }
                },
                () -> assertThat(d[mesh.corner()[3 * from.face()]]).isInfinite());
      }
    }
  }

  /** A lantern's shortest ways run between its vertices, where no distance is known. */
  private static boolean isFolded(Mesh mesh) {
    return mesh.faceCount() == 800;
  }

  /** No longer than by way of the nearest corner, with the error of distances on coarse faces. */
  private static void assertLengthFits(
      Mesh mesh, double[] d, SurfacePoint from, List<SurfacePoint> way) {
    double over = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner()[3 * from.face() + k];
      SurfacePoint corner = PathTrace.vertex(from.face(), k);
      over = Math.min(over, d[v] + GeodesicPath.distance(mesh, from, corner));
    }
    double length = GeodesicPath.lengthMm(mesh, way);
    assertThat(length).as("%d faces", mesh.faceCount()).isLessThanOrEqualTo(1.05 * over);
  }

  @Test
  void noWayBetweenParts() {
    Mesh two = Shapes.twoSpheres(1, 5, 8, 8);
    assertThat(
            GeodesicPath.between(
                two,
                Topology.of(two),
                VertexFans.of(two),
                new SurfacePoint(0, 1, 0, 0),
                new SurfacePoint(two.faceCount() - 1, 1, 0, 0),
                Progress.NONE))
        .isEmpty();
  }

  private static SurfacePoint somewhere(Mesh mesh, Random random) {
    double a = random.nextDouble();
    double b = random.nextDouble() * (1 - a);
    int face = random.nextInt(mesh.faceCount());
    return switch (random.nextInt(3)) {
      case 0 -> new SurfacePoint(face, 1, 0, 0);
      case 1 -> new SurfacePoint(face, 0, a, 1 - a);
      default -> new SurfacePoint(face, 1 - a - b, a, b);
    };
  }

  private static List<SurfacePoint> way(
      Mesh mesh, double x, double y, double z, double u, double v, double w) {
    FaceTree tree = FaceTree.of(mesh);
    return GeodesicPath.between(
            mesh,
            Topology.of(mesh),
            VertexFans.of(mesh),
            tree.nearest(x, y, z).orElseThrow(),
            tree.nearest(u, v, w).orElseThrow(),
            Progress.NONE)
        .orElseThrow();
  }
}
