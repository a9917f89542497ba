package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamwright.region.Maps.area;
import static org.seamwright.region.Maps.bare;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Fills up to creases and whole parts. */
class FloodMarksTest {
  private static final Vector3D TOP = Vector3D.of(1, 2, 5);

  private static Mark fill(Vector3D point, double degrees) {
    return new Mark.CreaseFill("fill", Treatment.BARE, point, degrees);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 45, 89, 90})
  void oneSideOfACube(double degrees) throws MarkException {
    assertThat(bare(Shapes.cube(10, 4), fill(TOP, degrees))).isCloseTo(100, within(1e-11));
  }

  @Test
  void allOfACubeWhenItsEdgesAreNoCreases() throws MarkException {
    assertThat(bare(Shapes.cube(10, 4), fill(TOP, 91))).isCloseTo(600, within(1e-10));
  }

  @Test
  void wallOfACylinderButNotItsLids() throws MarkException {
    // Steps of 360/60 = 6 degrees around, 90 at the rims. Prism: 60 * 2 r sin(pi/60) * h.
    Mesh can = Shapes.cylinder(5, 12, 60, 3, true);
    double wall = 60 * 2 * 5 * Math.sin(Math.PI / 60) * 12;
    assertThat(bare(can, fill(Vector3D.of(5, 0, 0), 30))).isCloseTo(wall, within(1e-10));
    assertThat(bare(can, fill(Vector3D.of(5, 0, 0), 5.9))).isCloseTo(wall / 60, within(1e-10));
  }

  @Test
  void cutsBeforeTheFillDoNotChangeIt() throws MarkException {
    Mark slab = Maps.box(-1, -9, -9, 1, 9, 9);
    Mark plane =
        new Mark.HalfSpace("", Treatment.OUT_OF_SCOPE, Vector3D.of(3, 0, 0), Vector3D.of(1, 2, 0));
    Mesh cube = Shapes.cube(10, 3);
    SurfaceMap map = Maps.of(cube, slab, plane, fill(TOP, 30));
    Maps.requireSound(cube, map);
    assertThat(map.effects().get(2).coveredMm2()).isCloseTo(100, within(1e-10));
    // The fill comes last, so all of the top is bare; of the slab the five other sides.
    double slabElsewhere = map.areaMm2(Treatment.BARE) - 100;
    assertThat(slabElsewhere).isPositive();
  }

  @Test
  void turnedFacesAreNoCreases() throws MarkException {
    Mesh mixed = Shapes.withFlipped(Shapes.cube(10, 4), 0, 3, 17, 40, 41, 90, 150);
    for (double[] side : new double[][] {{0, 0, 5}, {0, 0, -5}, {5, 0, 0}, {0, -5, 0}}) {
      Vector3D point = Vector3D.of(side[0] + 0.1, side[1] + 0.2, side[2] + 0.1);
      assertThat(bare(mixed, fill(point, 60))).isCloseTo(100, within(1e-11));
    }
  }

  @Test
  void aMobiusBandIsFilledRound() throws MarkException {
    Mesh band = Shapes.mobius(20, 6, 120, 4);
    assertThat(bare(band, fill(Vector3D.of(20, 0, 0), 60))).isCloseTo(area(band), within(1e-9));
  }

  @Test
  void atABranchTheFillGoesStraightOn() throws MarkException {
    // Four blades at right angles: the one opposite continues the first, the others do not.
    Mesh cross = Shapes.blades(4, 3, 10);
    assertThat(bare(cross, fill(Vector3D.of(1.5, 0, 5), 45))).isCloseTo(60, within(1e-11));
  }

  @Test
  void facesWithoutAreaAreNoWall() throws MarkException {
    // A strip of two squares whose shared side runs through a needle without area.
    Shapes.Builder strip = new Shapes.Builder();
    int a = strip.vertex(0, 0, 0);
    int b = strip.vertex(1, 0, 0);
    int m = strip.vertex(1, 0.5, 0);
    int c = strip.vertex(1, 1, 0);
    int d = strip.vertex(2, 0, 0);
    int e = strip.vertex(1, 0, -1);
    strip.face(a, b, c);
    strip.face(c, b, m);
    strip.face(m, b, d);
    strip.face(c, m, d);
    strip.face(b, a, e);
    Mesh mesh = strip.build();
    assertThat(Maps.of(mesh, fill(Vector3D.of(0.6, 0.2, 0), 45)).areaMm2(Treatment.BARE))
        .isCloseTo(1, within(1e-12));
  }

  @Test
  void wholePartIsTheNearerSphere() throws MarkException {
    Mesh two = Shapes.twoSpheres(5, 30, 20, 30);
    Mark near = new Mark.WholePart("", Treatment.OUT_OF_SCOPE, Vector3D.of(24, 1, 0));
    SurfaceMap map = Maps.of(two, Maps.above(2), near);
    Maps.requireSound(two, map);
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(area(two) / 2, within(1e-9));
    for (int f = 0; f < map.mesh().faceCount(); f++) {
      boolean second = map.mesh().x(map.mesh().corner()[3 * f]) > 15;
      assertThat(map.of(f) == Treatment.OUT_OF_SCOPE).isEqualTo(second);
    }
  }

  /** A roof along y whose ridge is worn flat in its middle third, 0.5 mm to a cell. */
  private static Mesh wornRoof() {
    Mesh plane = Shapes.plane(6, 24, 12, 48);
    double[] xyz = plane.xyz().clone();
    for (int v = 0; v < plane.vertexCount(); v++) {
      double worn = Math.max(0, Math.min(1, (Math.abs(xyz[3 * v + 1]) - 2) / 6));
      xyz[3 * v + 2] = -Math.abs(xyz[3 * v]) * Math.tan(Math.PI / 6) * worn;
    }
    return Mesh.of(xyz, plane.corner());
  }

  @Test
  void gapsInACreaseAreClosedUpToALength() throws MarkException {
    // The two sides meet at 60 degrees, less where worn: 40 and more where the slope is above
    // tan 20 / tan 30 of the full one, so from |y| = 2 + 0.63 * 6 on. The gap is 11.6 mm and a
    // cell.
    Mesh roof = wornRoof();
    Vector3D left = Vector3D.of(-2, 9, -1);
    double whole = area(roof);
    assertThat(bare(roof, fill(left, 40))).isCloseTo(whole, within(1e-9 * whole));
    Mark closed = new Mark.CreaseFill("", Treatment.BARE, left, 40, 13);
    assertThat(bare(roof, closed)).isCloseTo(whole / 2, within(0.005 * whole));
    Mark tooShort = new Mark.CreaseFill("", Treatment.BARE, left, 40, 10);
    assertThat(bare(roof, tooShort)).isCloseTo(whole, within(1e-9 * whole));
  }
}
