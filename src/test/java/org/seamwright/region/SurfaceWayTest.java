package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Shortest ways against closed forms. */
class SurfaceWayTest {
  private static EditableSurface surface(Mesh mesh) {
    return new EditableSurface(mesh, EdgeRings.of(mesh, Topology.of(mesh)).toArray(), (byte) 0);
  }

  private static Patch whole(EditableSurface surface) {
    int[] all = new int[surface.faceCount()];
    Arrays.setAll(all, f -> f);
    return new Patch.Maker(surface).of(all);
  }

  private static double length(Mesh mesh, double[] from, double[] to) {
    Patch patch = whole(surface(mesh));
    return SurfaceWay.between(patch, vertex(patch, from), vertex(patch, to))
        .orElseThrow()
        .lengthMm();
  }

  private static int vertex(Patch patch, double[] at) {
    Mesh mesh = patch.mesh();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double dx = mesh.x(v) - at[0];
      double dy = mesh.y(v) - at[1];
      double dz = mesh.z(v) - at[2];
      if (dx * dx + dy * dy + dz * dz < 1e-18) {
        return v;
      }
    }
    throw new AssertionError("No vertex at " + Arrays.toString(at));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void straightInAConvexPlaneHoweverItIsCut(int seed) {
    Random random = new Random(seed);
    EditableSurface cut =
        surface(Shapes.plane(10, 10, 1 + random.nextInt(40), 1 + random.nextInt(40)));
    for (int k = 0; k < 2000; k++) {
      int f = random.nextInt(cut.faceCount());
      if (random.nextBoolean()) {
        cut.splitEdge(3 * f + random.nextInt(3), 0.1 + 0.8 * random.nextDouble());
      } else {
        double u = random.nextDouble() / 2;
        double v = random.nextDouble() / 2;
        cut.splitFace(f, 1 - u - v, u, v);
      }
    }
    Patch patch = whole(cut);
    for (int i = 0; i < 25; i++) {
      int a = random.nextInt(patch.vertices().length);
      int b = random.nextInt(patch.vertices().length);
      if (a != b) {
        SurfaceWay way = SurfaceWay.between(patch, a, b).orElseThrow();
        double exact = Faces.length(patch.mesh(), a, b);
        assertThat(way.lengthMm()).isCloseTo(exact, within(1e-7 * exact));
      }
    }
  }

  @Test
  void oppositeCornersOfACube() {
    // Unit cube unfolded: sqrt(5).
    double[] from = {-0.5, -0.5, -0.5};
    double[] to = {0.5, 0.5, 0.5};
    assertThat(length(Shapes.cube(1, 1), from, to)).isCloseTo(Math.sqrt(5), within(1e-12));
    assertThat(length(Shapes.cube(1, 4), from, to)).isCloseTo(Math.sqrt(5), within(1e-12));
  }

  @Test
  void helixOnACylinder() {
    // Unit radius, a quarter turn and 2 up: sqrt((pi/2)² + 4) = 2.5431085506, less by the facets.
    double way =
        length(
            Shapes.cylinder(1, 2, 400, 1, false), new double[] {1, 0, -1}, new double[] {0, 1, 1});
    assertThat(way).isCloseTo(2.5431085506, within(1e-4));
  }

  @Test
  void acrossAConeBetweenOppositePointsOfItsRim() {
    // r 3, h 4: the wall unrolls to a sector of 216 degrees; the chord over half is 8.0901699437.
    double way =
        length(
            Shapes.coneFrustum(3, 0, 4, 600, 1, false),
            new double[] {3, 0, -2},
            new double[] {-3, 0, -2});
    assertThat(way).isCloseTo(8.0901699437, within(1e-3));
  }

  @Test
  void noWayBetweenParts() {
    Patch patch = whole(surface(Shapes.twoSpheres(1, 5, 4, 6)));
    assertThat(SurfaceWay.between(patch, 0, patch.vertices().length - 1)).isEmpty();
  }
}
