package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamwright.region.Maps.ORIGIN;
import static org.seamwright.region.Maps.X;
import static org.seamwright.region.Maps.Z;
import static org.seamwright.region.Maps.above;
import static org.seamwright.region.Maps.area;
import static org.seamwright.region.Maps.bare;
import static org.seamwright.region.Maps.below;
import static org.seamwright.region.Maps.box;
import static org.seamwright.region.Maps.sector;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;
import org.seamwright.testsupport.Shapes;

/** Half spaces, sectors and boxes against the closed forms of solids. */
class PlaneMarksTest {
  /** Facets of a sphere of n sectors fall short of it by about 2/3 (π/n)² each way. */
  private static Offset<Double> facets(double exact, int n) {
    return within(2 * exact * Math.PI * Math.PI / n / n);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.73, 0, 0.31, 0.5, 0.999})
  void halfSpaceOfSphereIsACap(double height) throws MarkException {
    // Spherical cap 2 pi r h.
    double exact = 2 * Math.PI * 10 * (10 - 10 * height);
    // Beside the facets' area, their sagitta r (1 - cos(pi/n)) is missing from the height.
    double sagitta = 10 * (1 - Math.cos(Math.PI / 200));
    assertThat(bare(Shapes.sphere(10, 200, 400), above(10 * height)))
        .isCloseTo(exact, within(facets(exact, 200).value + 2 * Math.PI * 10 * sagitta));
  }

  @Test
  void halfSpaceAcrossTheGridOfASphereIsACapToo() throws MarkException {
    Mark tilted =
        new Mark.HalfSpace("", Treatment.BARE, Vector3D.of(1, 2, 2), Vector3D.of(1, 2, 2));
    double exact = 2 * Math.PI * 10 * (10 - 3);
    assertThat(bare(Shapes.sphere(10, 200, 400), tilted)).isCloseTo(exact, facets(exact, 200));
  }

  @Test
  void twoHalfSpacesLeaveAZone() throws MarkException {
    // Spherical zone 2 pi r h, whatever its height on the sphere.
    double exact = 2 * Math.PI * 10 * 4;
    Mesh sphere = Shapes.sphere(10, 200, 400);
    double zone =
        bare(
            sphere, above(1.5), new Mark.HalfSpace("", Treatment.PLATE, Vector3D.of(0, 0, 5.5), Z));
    assertThat(zone).isCloseTo(exact, facets(exact, 200));
  }

  @Test
  void bandOfAPrismIsPerimeterTimesHeight() throws MarkException {
    // The model is a prism over a regular 48-gon, so the area is exact: 48 * 2 r sin(pi/48) * h.
    double exact = 48 * 2 * 7 * Math.sin(Math.PI / 48) * 3.3;
    Mesh prism = Shapes.cylinder(7, 20, 48, 5, false);
    double band =
        bare(
            prism, above(-2.1), new Mark.HalfSpace("", Treatment.PLATE, Vector3D.of(0, 0, 1.2), Z));
    assertThat(band).isCloseTo(exact, within(1e-10 * exact));
  }

  @Test
  void bandOfAPyramidFollowsTheSquareOfItsHeight() throws MarkException {
    // Similar pyramids: area over a height grows as its square. 60 flat sides, so exact.
    Mesh cone = Shapes.coneFrustum(8, 0, 12, 60, 7, false);
    double part = bare(cone, below(2, Treatment.BARE));
    assertThat(part).isCloseTo(area(cone) * (1 - Math.pow(4.0 / 12, 2)), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0,90", "17,107", "-200,-110", "300,390", "10,190", "33,303", "5,275", "0,180"})
  void sectorsOfATorusByItsSymmetry(double from, double to) throws MarkException {
    // 72 equal slices turn into each other by 5 degrees, so spans of 90, 180 and 270 are exact.
    Mesh torus = Shapes.torus(20, 6, 72, 30);
    double exact = area(torus) * (to - from) / 360;
    assertThat(bare(torus, sector(from, to))).isCloseTo(exact, within(1e-9 * exact));
  }

  @ParameterizedTest
  @CsvSource({"0,1", "12.3,47", "100,359.5", "-20,200"})
  void sectorsOfATorusByPappus(double from, double to) throws MarkException {
    // Torus 4 pi^2 R r, by angle.
    double exact = 4 * Math.PI * Math.PI * 20 * 6 * (to - from) / 360;
    assertThat(bare(Shapes.torus(20, 6, 400, 200), sector(from, to)))
        .isCloseTo(exact, facets(exact, 200));
  }

  @ParameterizedTest
  @CsvSource({"0,45", "30,75", "20,250", "0,180", "-10,300.5"})
  void sectorsOfACoarseSquareByTrigonometry(double from, double to) throws MarkException {
    // Two triangles with the axis through their shared edge: the slices are polygons.
    Mesh square = Shapes.plane(2, 2, 1, 1);
    assertThat(bare(square, sector(from, to)))
        .isCloseTo(sliceOfSquare(to) - sliceOfSquare(from), within(1e-12));
  }

  @Test
  void sectorWithItsAxisThroughTheMiddleOfAFace() throws MarkException {
    Mesh moved = Shapes.moved(Shapes.plane(20, 20, 1, 1), 4, -3, 0);
    double quarter = bare(moved, sector(0, 90));
    assertThat(quarter).isCloseTo(14 * 7, within(1e-11));
    assertThat(bare(moved, sector(90, 360))).isCloseTo(400 - 98, within(1e-10));
  }

  @Test
  void sectorLeavesTheOtherHalfUncut() throws MarkException {
    Mesh torus = Shapes.torus(20, 6, 72, 30);
    SurfaceMap map = Maps.of(torus, sector(12, 48));
    for (int f = 0; f < map.mesh().faceCount(); f++) {
      SurfacePoint middle = new SurfacePoint(f, 1 / 3.0, 1 / 3.0, 1 / 3.0);
      if (middle.at(map.mesh(), 0) < 0) {
        assertThat(f).as("face beyond the axis is as read").isEqualTo(map.parentFace()[f]);
      }
    }
    // Each half plane crosses one row of faces: 30 quads of two.
    assertThat(map.mesh().faceCount()).isLessThanOrEqualTo(torus.faceCount() + 2 * 2 * 60);
  }

  /** Area of the square [-1,1]² between the x axis and a ray at an angle, grown turn by turn. */
  private static double sliceOfSquare(double degrees) {
    double eighths = Math.floor(degrees / 45);
    double rest = Math.toRadians(degrees - 45 * eighths);
    boolean even = Math.floorMod((long) eighths, 2) == 0;
    double part = even ? Math.tan(rest) / 2 : 0.5 - Math.tan(Math.PI / 4 - rest) / 2;
    return eighths / 2 + part;
  }

  @Test
  void boxOnAPlaneIsItsRectangle() throws MarkException {
    Mesh plane = Shapes.plane(100, 60, 1, 1);
    assertThat(bare(plane, box(-20, -10, -1, 33, 12.5, 1))).isCloseTo(53 * 22.5, within(1e-10));
  }

  @Test
  void boxWithASideInThePlaneCoversIt() throws MarkException {
    Mesh plane = Shapes.plane(100, 60, 1, 1);
    assertThat(bare(plane, box(-20, -10, 0, 33, 12.5, 4))).isCloseTo(53 * 22.5, within(1e-10));
    assertThat(bare(plane, box(-20, -10, 1, 33, 12.5, 4))).isZero();
  }

  @Test
  void boxOverTheCornerOfACube() throws MarkException {
    // Three rectangles at the corner (5,5,5): 2x3, 3x4, 2x4.
    assertThat(bare(Shapes.cube(10, 1), box(3, 2, 1, 9, 9, 9))).isCloseTo(26, within(1e-11));
  }

  @Test
  void boxAsLargeAsTheCubeCoversAll() throws MarkException {
    Mesh cube = Shapes.cube(10, 2);
    SurfaceMap map = Maps.of(cube, box(-5, -5, -5, 5, 5, 5));
    assertThat(map.areaMm2(Treatment.BARE)).isCloseTo(600, within(1e-10));
    assertThat(map.mesh().faceCount()).as("nothing to cut").isEqualTo(cube.faceCount());
  }

  @Test
  void boxCutsOnlyFacesThatReachItAndTheirNeighbours() throws MarkException {
    // Cells of 2 mm: those that reach the box end at 6, their neighbours at 8.
    Mesh plane = Shapes.plane(100, 100, 50, 50);
    SurfaceMap map = Maps.of(plane, box(-5, -5, -1, 5, 5, 1));
    for (int f = 0; f < map.mesh().faceCount(); f++) {
      for (int k = 0; k < 3; k++) {
        int v = map.mesh().corner()[3 * f + k];
        if (Math.max(Math.abs(map.mesh().x(v)), Math.abs(map.mesh().y(v))) > 8.01) {
          assertThat(f).isEqualTo(map.parentFace()[f]);
        }
      }
    }
    assertThat(map.mesh().faceCount() - plane.faceCount()).isBetween(1, 200);
  }

  @Test
  void singlePrecisionPlanesAreFound() throws MarkException {
    // 0.1 inch in single precision is 2.5400000378… mm; the user says 2.54.
    double read = (float) 0.1 * 25.4;
    Mesh lid = Shapes.moved(Shapes.cube(10, 1), 0, 0, read - 5);
    assertThat(bare(lid, above(2.54))).isCloseTo(100, within(1e-9));
    Mesh lower = Shapes.moved(Shapes.cube(10, 1), 0, 0, 2 * 2.54 - read - 5);
    assertThat(bare(lower, above(2.54))).isCloseTo(100, within(1e-9));
  }

  @Test
  void sectorOfSphereIsALune() throws MarkException {
    // Spherical lune 2 r^2 theta; the axis runs through the poles, where faces meet in a point.
    double exact = 2 * 100 * Math.toRadians(123);
    Mark lune = new Mark.Sector("", Treatment.BARE, ORIGIN, Z, X, 11.5, 134.5);
    assertThat(bare(Shapes.sphere(10, 100, 200), lune)).isCloseTo(exact, facets(exact, 100));
    Mark tilted =
        new Mark.Sector(
            "", Treatment.BARE, ORIGIN, Vector3D.of(1, -2, 3), Vector3D.of(3, 1, 1), 11.5, 134.5);
    assertThat(bare(Shapes.sphere(10, 100, 200), tilted)).isCloseTo(exact, facets(exact, 100));
  }
}
