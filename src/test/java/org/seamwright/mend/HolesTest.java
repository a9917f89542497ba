package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Closing holes. */
class HolesTest {
  private static Mesh holed(Mesh mesh, Vector3D at, double radius) {
    double[] c = new double[3];
    int[] gone =
        IntStream.range(0, mesh.faceCount())
            .filter(
                f -> {
                  Faces.centroid(mesh, f, c);
                  return Vector3D.of(c).distance(at) < radius;
                })
            .toArray();
    return Shapes.without(mesh, gone);
  }

  @Test
  void aHoleInAFlatSideIsClosedFlat() {
    Mesh cube = Shapes.cube(10, 10);
    Mesh holed = holed(cube, Vector3D.of(1, 0.5, 5), 3);
    Mended mended = MendChecks.mend(holed, new Repair.FillHoles(40));
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
    // A fill that bends nowhere lies in the side, so it has the side's area and no more.
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(600, within(1e-9));
    assertThat(mended.done().get(0).gainedMm2())
        .isCloseTo(600 - MendChecks.area(holed), within(1e-9));
    assertThat(IntStream.range(0, mended.mesh().faceCount()).filter(mended::filled).count())
        .isEqualTo(mended.mesh().faceCount() - holed.faceCount());
  }

  @Test
  void aHoleAcrossAnEdgeOfACubeIsClosedAlongTheEdge() {
    Mesh cube = Shapes.cube(10, 10);
    Mesh holed = holed(cube, Vector3D.of(5, 0.3, 5), 2);
    Mended mended = MendChecks.mend(holed, new Repair.FillHoles(40));
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
    // The largest bend allowed is the edge's own right angle, which closes it exactly; a chord
    // across would lose area.
    assertThat(MendChecks.volume(mended.mesh())).isBetween(985.0, 1000.0 + 1e-9);
  }

  @Test
  void holesInASphereAreClosedToNearlyItsVolume() {
    Mesh sphere = Shapes.icosphere(10, 4);
    Mesh holed = holed(holed(sphere, Vector3D.of(0, 0, 10), 2), Vector3D.of(7, 7, 0), 3);
    Mended mended = MendChecks.mend(holed, new Repair.FillHoles(100));
    assertThat(mended.done().get(0).count()).isEqualTo(2);
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
    // A flat fill of radius ρ misses a cap of area π ρ⁴ / (4 r²), here below 1 mm².
    assertThat(MendChecks.area(mended.mesh()))
        .isBetween(MendChecks.area(sphere) - 1, MendChecks.area(sphere) + 0.1);
  }

  @Test
  void onlyHolesUpToTheGivenSizeAreClosed() {
    Mesh holed =
        holed(holed(Shapes.icosphere(10, 4), Vector3D.of(0, 0, 10), 1), Vector3D.of(10, 0, 0), 4);
    Mended mended = MendChecks.mend(holed, new Repair.FillHoles(12));
    assertThat(mended.done().get(0).count()).isEqualTo(1);
    assertThat(HoleLoops.of(mended.mesh(), org.seamwright.mesh.Topology.of(mended.mesh())))
        .hasSize(1);
  }

  @Test
  void aLongLoopIsClosedByEars() {
    // An open cylinder of 1,000 steps with a bottom: one loop of 1,000 edges.
    int n = 1000;
    Mesh pot = Shapes.lathe(new double[] {0, 10, 10}, new double[] {0, 0, 15}, n);
    Mended mended = MendChecks.mend(pot, new Repair.FillHoles(70));
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
    // A regular polygon: n r² sin(2 π / n) / 2.
    assertThat(mended.done().get(0).gainedMm2())
        .isCloseTo(n * 50 * Math.sin(2 * Math.PI / n), within(1e-9));
  }

  @Test
  void aConcaveLoopIsClosedByEarsWithoutOverlap() {
    // A star-shaped opening of 600 edges on top of a pot whose wall follows it.
    int n = 600;
    Shapes.Builder builder = new Shapes.Builder();
    double inside = 0;
    double[] px = new double[n];
    double[] py = new double[n];
    for (int i = 0; i < n; i++) {
      double u = 2 * Math.PI * i / n;
      double r = 10 + 4 * Math.cos(9 * u);
      px[i] = r * Math.cos(u);
      py[i] = r * Math.sin(u);
      builder.vertex(px[i], py[i], 0);
      builder.vertex(px[i], py[i], 30);
    }
    int foot = builder.vertex(0, 0, 0);
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      inside += (px[i] * py[j] - px[j] * py[i]) / 2;
      builder.quad(2 * i, 2 * j, 2 * j + 1, 2 * i + 1);
      builder.face(2 * j, 2 * i, foot);
    }
    Mended mended = MendChecks.mend(builder.build(), new Repair.FillHoles(1000));
    assertThat(mended.done().get(0).gainedMm2()).isCloseTo(inside, within(1e-9));
    assertThat(MendChecks.closed(mended.mesh())).isTrue();
  }

  @Test
  void sheetsGetNoSecondSide() {
    Mesh sheet = Shapes.plane(10, 10, 10, 10);
    Mesh holed = holed(sheet, Vector3D.of(1, 1, 0), 1.5);
    Mended mended = MendChecks.mend(holed, new Repair.FillHoles(1000));
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(100, within(1e-9));
    assertThat(MendChecks.openEdges(mended.mesh())).isEqualTo(40);
    Mesh triangle = Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});
    assertThat(MendChecks.mend(triangle, new Repair.FillHoles(10)).mesh().faceCount()).isEqualTo(1);
  }

  @Test
  void gapsWithoutAreaAreNoHoles() {
    Mesh strip = Shapes.moved(Shapes.plane(1, 5, 1, 5), 0.5, 0, 0);
    Mesh square = Shapes.moved(Shapes.plane(5, 5, 1, 1), -2.5, 0, 0);
    Mesh welded =
        MendChecks.mend(
                Shapes.join(strip, square), new Repair.Weld(java.util.OptionalDouble.empty()))
            .mesh();
    Mended mended = MendChecks.mend(welded, new Repair.FillHoles(1000));
    assertThat(mended.done().get(0).gainedMm2()).isZero();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anyHolesInAnyShapeAreClosedOrTold(long seed) {
    Random random = new Random(seed);
    Mesh mesh = Shapes.shuffled(Shapes.torus(10, 4, 40, 24), seed);
    int[] gone = random.ints(60, 0, mesh.faceCount()).distinct().toArray();
    Mesh holed = Shapes.withFlipped(Shapes.without(mesh, gone), 3, 4, 5);
    Mended once = MendChecks.mend(holed, new Repair.FillHoles(50));
    assertThat(MendChecks.openEdges(once.mesh())).isZero();
    Mended twice = MendChecks.mend(once.mesh(), new Repair.FillHoles(50));
    assertThat(twice.mesh().corner()).isEqualTo(once.mesh().corner());
  }
}
