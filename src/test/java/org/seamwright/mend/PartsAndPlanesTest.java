package org.seamwright.mend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Choosing parts and cutting below planes. */
class PartsAndPlanesTest {
  private static final Repair TABLE = new Repair.CutTable(Optional.empty(), OptionalDouble.empty());

  /** Cubes of side 3, 1 and 2 in a row: areas 54, 6 and 24. */
  private static Mesh threeCubes() {
    return Shapes.join(
        Shapes.cube(3, 2),
        Shapes.moved(Shapes.cube(1, 1), 10, 0, 0),
        Shapes.moved(Shapes.cube(2, 1), 20, 0, 0));
  }

  @Test
  void keepsThePartsNearPoints() {
    Mended mended =
        MendChecks.mend(
            threeCubes(),
            new Repair.KeepParts(List.of(Vector3D.of(11, 3, 0), Vector3D.of(22, 0, 0))));
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(30, within(1e-12));
    assertThat(mended.done().get(0).lostMm2()).isCloseTo(54, within(1e-12));
    assertThat(mended.done().get(0).count()).isEqualTo(1);
  }

  @Test
  void keepsTheLargest() {
    Mended mended = MendChecks.mend(threeCubes(), new Repair.KeepLargest(2));
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(78, within(1e-12));
    assertThat(mended.mesh().vertexCount()).as("no vertex of the dropped part").isEqualTo(34);
  }

  @Test
  void keepsPartsAboveAShare() {
    assertThat(MendChecks.area(MendChecks.mend(threeCubes(), new Repair.KeepAbove(0.2)).mesh()))
        .isCloseTo(78, within(1e-12));
    assertThat(MendChecks.area(MendChecks.mend(threeCubes(), new Repair.KeepAbove(0.5)).mesh()))
        .isCloseTo(54, within(1e-12));
  }

  @Test
  void cutsExactlyBelowAPlane() {
    Mesh sphere = Shapes.icosphere(10, 3);
    Mended mended =
        MendChecks.mend(
            Shapes.cube(2, 1), new Repair.CutBelow(Vector3D.of(0, 0, 0.5), Vector3D.of(0, 0, 3)));
    // Top 4, four walls 2 × 0.5.
    assertThat(MendChecks.area(mended.mesh())).isCloseTo(8, within(1e-12));
    Mended tilted =
        MendChecks.mend(sphere, new Repair.CutBelow(Vector3D.ZERO, Vector3D.of(1, 2, 3)));
    assertThat(MendChecks.area(tilted.mesh()))
        .as("a plane through the centre of a point-symmetric mesh halves it")
        .isCloseTo(MendChecks.area(sphere) / 2, within(1e-9));
  }

  @Test
  void aStepThatLeavesNothingIsRefused() {
    assertThatThrownBy(
            () ->
                Mender.mend(
                    Shapes.cube(2, 1),
                    List.of(
                        new Repair.DropFaulty(),
                        new Repair.CutBelow(Vector3D.of(0, 0, 5), Vector3D.of(0, 0, 1))),
                    Progress.NONE))
        .isInstanceOf(MendException.class)
        .hasMessageContaining("cutBelow")
        .hasMessageContaining("cleaning[1]");
  }

  /** Half a sphere of radius 20 standing on a rough square of side 100, tilted in space. */
  static Mesh domeOnTable(long seed, double noise) {
    Random random = new Random(seed);
    int n = 60;
    Mesh table = Shapes.plane(100, 100, n, n);
    double[] xyz = table.xyz().clone();
    for (int v = 0; v < table.vertexCount(); v++) {
      double r2 = xyz[3 * v] * xyz[3 * v] + xyz[3 * v + 1] * xyz[3 * v + 1];
      xyz[3 * v + 2] = r2 < 400 ? Math.sqrt(400 - r2) : noise * random.nextGaussian();
    }
    return Shapes.moved(
        Shapes.rotated(Mesh.of(xyz, table.corner()), 1, 0.5, 0.2, 0.4), 300, -50, 20);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void findsATiltedRoughTable(long seed) {
    double noise = 0.1;
    TablePlane plane =
        TablePlane.find(domeOnTable(seed, noise), Optional.empty(), Progress.NONE).orElseThrow();
    Mesh up = Shapes.rotated(Mesh.of(new double[] {0, 0, 1}, new int[0]), 1, 0.5, 0.2, 0.4);
    Vector3D normal = Vector3D.of(up.x(0), up.y(0), up.z(0));
    // A plane fitted to some 3,000 heights over 100 mm is off by noise ÷ √3000 in height, and by
    // that over 29 mm (the spread of a side of 100) in slope; five times that is allowed.
    double off = 5 * noise / Math.sqrt(3000);
    assertThat(plane.normal().distance(normal)).isLessThan(2 * off / 29);
    assertThat(plane.offsetMm())
        .isCloseTo(normal.dot(Vector3D.of(300, -50, 20)), within(off + 2 * off / 29 * 300));
    // Between corners heights are weighted means of three: the squares of a random place's
    // barycentric weights add up to 1/2 on average.
    assertThat(plane.roughnessMm())
        .isCloseTo(noise / Math.sqrt(2), within(0.1 * noise / Math.sqrt(2)));
  }

  @Test
  void whatIsLeftAboveATableIsThePiece() {
    Mended mended = MendChecks.mend(domeOnTable(1, 0.05), TABLE, new Repair.KeepLargest(1));
    assertThat(MendChecks.area(mended.mesh()))
        .as("2 π r² on a coarse grid, its steep foot included")
        .isBetween(0.9 * 2 * Math.PI * 400, 1.05 * 2 * Math.PI * 400);
  }

  @ParameterizedTest
  @ValueSource(strings = {"sphere", "cube", "torus", "bowl"})
  void whereThereIsNoTableNoneIsFound(String shape) {
    Mesh mesh =
        switch (shape) {
          case "sphere" -> Shapes.icosphere(10, 4);
          // Its underside is flat and has nothing below, but faces away from the piece.
          case "cube" -> Shapes.cube(10, 8);
          case "torus" -> Shapes.torus(10, 3, 60, 30);
          default ->
              Shapes.withFlipped(
                  Shapes.lathe(
                      new double[] {0, 3, 6, 8, 9.5, 10}, new double[] {0, .5, 2, 4, 7, 10}, 40));
        };
    assertThat(TablePlane.find(mesh, Optional.empty(), Progress.NONE)).isEmpty();
    assertThatThrownBy(() -> Mender.mend(mesh, List.of(TABLE), Progress.NONE))
        .isInstanceOf(MendException.class)
        .hasMessageContaining("No table");
  }

  @Test
  void aPointOnAStandFindsItsTop() {
    // A ball on a block: the block's top has its sides and underside below it.
    Mesh mesh =
        Shapes.join(
            Shapes.moved(Shapes.icosphere(10, 3), 0, 0, 9),
            Shapes.moved(Shapes.cube(40, 6), 0, 0, -20));
    Repair step = new Repair.CutTable(Optional.of(Vector3D.of(15, 15, 0)), OptionalDouble.of(0.5));
    Mended mended = MendChecks.mend(mesh, step);
    // What is left of the ball has height 19 - 0.5; its bottom is at -1.
    assertThat(MendChecks.area(mended.mesh()))
        .isCloseTo(2 * Math.PI * 10 * 18.5, within(0.01 * 2 * Math.PI * 10 * 18.5));
  }
}
