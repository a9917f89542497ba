package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.seamwright.region.Maps.ORIGIN;
import static org.seamwright.region.Maps.X;
import static org.seamwright.region.Maps.Y;
import static org.seamwright.region.Maps.Z;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Rings, outlines, facings, names, repeats and inverting, against closed formulas. */
class MoreMarksTest {
  private static final Treatment BARE = Treatment.BARE;
  private static final Treatment PLATE = Treatment.PLATE;
  private static final double INF = Double.POSITIVE_INFINITY;

  private static Mark.Ring ring(double from, double to, double inner, double outer) {
    return new Mark.Ring("ring", BARE, ORIGIN, Z, from, to, inner, outer);
  }

  private static Mark.Outline outline(Vector3D inside, Vector3D... corners) {
    return new Mark.Outline("outline", BARE, List.of(corners), inside);
  }

  @ParameterizedTest(name = "{0} × {0} cells")
  @CsvSource({"1", "2", "7", "60"})
  void annulusOnAFlatSideHoweverCoarse(int cells) throws MarkException {
    // Area of an annulus: pi (R^2 - r^2), Euclid.
    double exact = Math.PI * (30 * 30 - 12 * 12);
    Mesh plane = Shapes.plane(100, 80, cells, cells);
    assertThat(Maps.bare(plane, ring(-INF, INF, 12, 30))).isCloseTo(exact, within(3e-4 * exact));
  }

  @Test
  void ringOnASphereIsAZone() throws MarkException {
    // Archimedes, On the Sphere and Cylinder: a zone has the area 2 pi R h. Here between the
    // radii 6 and 8 about the axis, above the equator: h = 8 - 6.
    Mesh sphere = Shapes.icosphere(10, 6);
    double exact = 2 * Math.PI * 10 * (8 - 6);
    assertThat(Maps.bare(sphere, ring(0, INF, 6, 8))).isCloseTo(exact, within(1e-3 * exact));
  }

  @Test
  void ringOnATorusByPappus() throws MarkException {
    // Pappus: the outer half of a torus has the area 2 pi r (pi R + 2 r).
    Mesh torus = Shapes.torus(30, 8, 400, 120);
    double exact = 2 * Math.PI * 8 * (Math.PI * 30 + 2 * 8);
    assertThat(Maps.bare(torus, ring(-INF, INF, 30, INF))).isCloseTo(exact, within(1e-3 * exact));
  }

  @Test
  void ringByHeightOnAPrismIsExact() throws MarkException {
    Mesh prism = Shapes.cylinder(5, 10, 40, 3, false);
    double perMm = 40 * 2 * 5 * Math.sin(Math.PI / 40);
    assertThat(Maps.bare(prism, ring(-1, 2.5, 0, INF))).isCloseTo(3.5 * perMm, within(1e-9));
  }

  @ParameterizedTest(name = "{0} × {0} cells")
  @CsvSource({"1", "5", "40"})
  void outlineOnAPlaneHasThePolygonsArea(int cells) throws MarkException {
    Mesh plane = Shapes.plane(100, 80, cells, cells);
    // An L of 40 by 40 less 25 by 20.
    Mark l =
        outline(
            Vector3D.of(-18, 5, 0),
            Vector3D.of(-20, -20, 0),
            Vector3D.of(20, -20, 0),
            Vector3D.of(20, 0, 0),
            Vector3D.of(-5, 0, 0),
            Vector3D.of(-5, 20, 0),
            Vector3D.of(-20, 20, 0));
    // Corners are moved onto edges up to a thousandth of a side away.
    assertThat(Maps.bare(plane, l)).isCloseTo(1100, within(1100 * 2e-3));
    Mark rest = new Mark.Outline("", BARE, ((Mark.Outline) l).path(), Vector3D.of(40, 30, 0));
    assertThat(Maps.bare(plane, rest)).isCloseTo(8000 - 1100, within(1100 * 2e-3));
  }

  @Test
  void outlineRoundACornerOfACube() throws MarkException {
    // Three points 6 from a corner along its edges: on each of three sides a triangle 6 x 6 / 2.
    Mesh cube = Shapes.cube(20, 3);
    Mark around =
        outline(
            Vector3D.of(10, 10, 10),
            Vector3D.of(4, 10, 10),
            Vector3D.of(10, 4, 10),
            Vector3D.of(10, 10, 4));
    assertThat(Maps.bare(cube, around)).isCloseTo(54, within(54 * 2e-3));
  }

  @Test
  void outlineOfAnOctantOfASphere() throws MarkException {
    // Three right angles on a sphere: area pi R^2 / 2 (Girard). Shortest ways over facets of
    // length e stray sideways by a share of e, since that costs them next to no length.
    Mesh sphere = Shapes.icosphere(10, 5);
    Mark octant = outline(Vector3D.of(6, 6, 6), X.multiply(10), Y.multiply(10), Z.multiply(10));
    double exact = Math.PI * 100 / 2;
    assertThat(Maps.bare(sphere, octant)).isCloseTo(exact, within(1e-2 * exact));
  }

  @Test
  void outlineThatPartsNothingIsRefused() {
    // A loop round the tube of a torus leaves it in one piece.
    Mesh torus = Shapes.torus(30, 8, 60, 24);
    Mark loop =
        outline(
            Vector3D.of(30, 5, 8),
            Vector3D.of(38, 0, 0),
            Vector3D.of(26, 0, 7),
            Vector3D.of(26, 0, -7));
    assertThatThrownBy(() -> Maps.of(torus, loop))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("does not part the surface");
    Mesh two = Shapes.twoSpheres(5, 20, 12, 16);
    Mark across = outline(X, Vector3D.of(5, 0, 0), Vector3D.of(0, 5, 0), Vector3D.of(20, 5, 0));
    assertThatThrownBy(() -> Maps.of(two, across))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("no surface between its ends");
  }

  @ParameterizedTest(name = "{0} × {0} cells")
  @CsvSource({"1", "30"})
  void outlineThatCrossesItselfIsRefused(int cells) {
    Mark bow =
        outline(
            Vector3D.of(0, 15, 0),
            Vector3D.of(-20, -20, 0),
            Vector3D.of(20, 20, 0),
            Vector3D.of(-20, 20, 0),
            Vector3D.of(20, -20, 0));
    assertThatThrownBy(() -> Maps.of(Shapes.plane(100, 80, cells, cells), bow))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("cross or touch");
  }

  @Test
  void facingTakesTheFacesThatLookThere() throws MarkException {
    Mesh box = Shapes.box(10, 20, 30, 2);
    Mark up = new Mark.Facing("", BARE, Z.multiply(7), 30);
    assertThat(Maps.bare(box, up)).isCloseTo(200, within(1e-9));
    assertThat(Maps.bare(box, new Mark.Facing("", BARE, Z, 90))).isCloseTo(2000, within(1e-9));
    assertThat(Maps.bare(box, new Mark.Facing("", BARE, Z, 180))).isCloseTo(2200, within(1e-9));
    // The cap of a sphere within 60 degrees of the pole: 2 pi R^2 (1 - cos 60).
    double exact = Math.PI * 100;
    assertThat(Maps.bare(Shapes.icosphere(10, 6), new Mark.Facing("", BARE, Z, 60)))
        .isCloseTo(exact, within(0.01 * exact));
  }

  @Test
  void namedTakesGroupsMaterialsAndWholeNames() throws MarkException {
    Mesh plane = Shapes.plane(10, 10, 1, 2);
    Labels labels = new Labels(List.of("", "bowl / brass", "foot / brass"), new int[] {0, 1, 1, 2});
    assertThat(bare(plane, labels, "brass")).isCloseTo(75, within(1e-9));
    assertThat(bare(plane, labels, "bowl")).isCloseTo(50, within(1e-9));
    assertThat(bare(plane, labels, "foot / brass")).isCloseTo(25, within(1e-9));
    assertThatThrownBy(() -> bare(plane, labels, "steel"))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("'steel'")
        .hasMessageContaining("It has: bowl / brass, foot / brass.");
  }

  private static double bare(Mesh mesh, Labels labels, String name) throws MarkException {
    Mark mark = new Mark.Named("", BARE, name);
    return Marks.evaluate(mesh, labels, Treatment.PLATE, List.of(mark), Progress.NONE)
        .areaMm2(BARE);
  }

  @Test
  void mirrorAndTurnRepeatWhatCameBefore() throws MarkException {
    Mesh plane = Shapes.plane(100, 100, 9, 9);
    Mark box = Maps.box(10, 5, -1, 30, 15, 1);
    Mark sector = Maps.sector(10, 30);
    assertThat(Maps.bare(plane, box, new Mark.Mirror("", ORIGIN, X))).isCloseTo(400, within(1e-9));
    assertThat(Maps.bare(plane, box, new Mark.Mirror("", ORIGIN, X.add(Y))))
        .isCloseTo(400, within(1e-9));
    assertThat(Maps.bare(plane, box, new Mark.Turn("", ORIGIN, Z, 5)))
        .isCloseTo(1000, within(1e-9));
    // A mirrored sector is a sector on the other side, and the sum of both on a disc.
    Mark disc = new Mark.Ring("", Treatment.PLATE, ORIGIN, Z, -INF, INF, 40, INF);
    double exact = Math.PI * 1600 * 40 / 360;
    SurfaceMap map = Maps.of(plane, sector, new Mark.Mirror("", ORIGIN, Y), disc);
    Maps.requireSound(plane, map);
    assertThat(map.areaMm2(BARE)).isCloseTo(exact, within(3e-4 * exact));
    // Repeats of repeats: four quarters of a box that overlaps none of its images.
    SurfaceMap four =
        Maps.of(plane, box, new Mark.Mirror("", ORIGIN, X), new Mark.Mirror("", ORIGIN, Y));
    assertThat(four.areaMm2(BARE)).isCloseTo(800, within(1e-9));
    assertThat(four.effects()).hasSize(3);
    assertThat(four.effects().get(2).coveredMm2()).isCloseTo(400, within(1e-9));
  }

  @Test
  void tooManyRepeatsAreRefused() {
    Mark many = new Mark.Turn("", ORIGIN, Z, 360);
    assertThatThrownBy(() -> Maps.of(Shapes.plane(1, 1, 1, 1), Maps.above(0), many, many))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("marks[2]");
  }

  @Test
  void invertLeavesOutOfScopeAlone() throws MarkException {
    Mesh box = Shapes.box(10, 20, 30, 2);
    Mark out = new Mark.Facing("", Treatment.OUT_OF_SCOPE, Z.negate(), 10);
    SurfaceMap map = Maps.of(box, Maps.above(0), out, new Mark.Invert(""));
    assertThat(map.areaMm2(Treatment.PLATE)).isCloseTo(200 + 900, within(1e-9));
    assertThat(map.areaMm2(BARE)).isCloseTo(900, within(1e-9));
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(200, within(1e-9));
    assertThat(map.effects().get(2).changedMm2()).isCloseTo(2000, within(1e-9));
  }

  private static Mark grow(Treatment what, double by, Treatment... into) {
    return new Mark.Grow("", what, by, Arrays.stream(into).findFirst());
  }

  @ParameterizedTest(name = "{0} × {0} cells")
  @CsvSource({"1", "6", "50"})
  void aRectangleGrowsRoundItsCorners(int cells) throws MarkException {
    // Steiner's formula: area a b + 2 (a + b) d + pi d^2.
    Mesh plane = Shapes.plane(100, 80, cells, cells);
    double exact = 20 * 10 + 2 * 30 * 6 + Math.PI * 36;
    Mark box = Maps.box(-5, -5, -1, 15, 5, 1);
    assertThat(Maps.bare(plane, box, grow(BARE, 6))).isCloseTo(exact, within(5e-4 * exact));
    // Growing what is round it shrinks it to a smaller rectangle; where two sides of the line meet
    // their corner is cut off inside one small face.
    assertThat(Maps.bare(plane, box, grow(Treatment.PLATE, 3)))
        .isCloseTo(14 * 4, within(14 * 4 * 5e-4));
  }

  @ParameterizedTest(name = "{0} grown by {1} on {2} × {2} cells")
  @CsvSource({"2, 15, 1", "2, 15, 100", "10, 5, 10", "10, 5, 100"})
  void aDiscGrowsIntoADisc(double radius, double by, int cells) throws MarkException {
    // pi (r + d)^2. Its edge is cut into hundreds of short ones, from which ways fan out.
    double exact = Math.PI * (radius + by) * (radius + by);
    Mesh plane = Shapes.plane(100, 100, cells, cells);
    Mark disc = new Mark.Near("", BARE, List.of(ORIGIN), radius);
    assertThat(Maps.bare(plane, disc, grow(BARE, by))).isCloseTo(exact, within(1e-3 * exact));
  }

  @Test
  void growingStopsAtWhatItMayNotGrowInto() throws MarkException {
    Mesh plane = Shapes.plane(100, 80, 8, 8);
    Mark left = new Mark.HalfSpace("", BARE, Vector3D.of(-20, 0, 0), X.negate());
    Mark out = new Mark.HalfSpace("", Treatment.OUT_OF_SCOPE, Vector3D.of(-17, 0, 0), X);
    SurfaceMap map = Maps.of(plane, left, out, grow(BARE, 10, Treatment.PLATE));
    assertThat(map.areaMm2(BARE)).isCloseTo(33 * 80, within(1e-6));
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(67 * 80, within(1e-6));
    assertThat(Maps.bare(plane, left, out, grow(BARE, 10))).isCloseTo(40 * 80, within(1e-6));
  }

  @Test
  void aCapOfASphereGrowsAlongTheSurface() throws MarkException {
    // Cap down to 30 degrees grown by 15 degrees of arc: 2 pi R^2 (1 - cos 45).
    Mesh sphere = Shapes.icosphere(10, 6);
    double exact = 2 * Math.PI * 100 * (1 - Math.cos(Math.PI / 4));
    Mark cap = Maps.above(10 * Math.cos(Math.PI / 6));
    assertThat(Maps.bare(sphere, cap, grow(BARE, 10 * Math.PI / 12)))
        .isCloseTo(exact, within(2e-3 * exact));
  }

  @ParameterizedTest(name = "{0} × {0} cells")
  @CsvSource({"2", "9", "40"})
  void smoothingRoundsCornersFillsNotchesAndDropsSpecks(int cells) throws MarkException {
    Mesh plane = Shapes.plane(100, 100, cells, cells);
    Mark smooth = new Mark.Smooth("", BARE, 5);
    Mark square = Maps.box(-20, -20, -1, 20, 20, 1);
    // Opening by a disc of radius r rounds four right corners: (4 - pi) r^2 less.
    double rounded = 1600 - (4 - Math.PI) * 25;
    assertThat(Maps.bare(plane, square, smooth)).isCloseTo(rounded, within(1.5));
    // A slot 4 wide is filled up to the arc that rests on its mouth; a speck 6 wide goes.
    Mark slot = new Mark.InBox("", PLATE, Vector3D.of(-2, 0, -1), Vector3D.of(2, 30, 1));
    Mark speck = Maps.box(36, 36, -1, 42, 42, 1);
    double segment = 25 * Math.asin(0.4) - 2 * Math.sqrt(21);
    SurfaceMap map = Maps.of(plane, square, slot, speck, smooth);
    Maps.requireSound(plane, map);
    assertThat(map.areaMm2(BARE)).isCloseTo(rounded - segment, within(2.5));
    assertThat(map.effects().get(3).changedMm2()).isCloseTo(80 + 36 + 21.5, within(3.0));
    // Smoothing what is smooth changes nothing but the rounding at its edge.
    assertThat(Maps.bare(plane, square, smooth, smooth)).isCloseTo(rounded, within(3.0));
  }

  @Test
  void whatSmoothingTakesAwayGoesToItsNeighbours() throws MarkException {
    Mesh plane = Shapes.plane(100, 100, 9, 9);
    Mark right = new Mark.HalfSpace("", Treatment.OUT_OF_SCOPE, Vector3D.of(10, 0, 0), X);
    Mark speck = Maps.box(30, 30, -1, 33, 33, 1);
    SurfaceMap map = Maps.of(plane, right, speck, new Mark.Smooth("", BARE, 4));
    Maps.requireSound(plane, map);
    assertThat(map.areaMm2(BARE)).isZero();
    assertThat(map.areaMm2(Treatment.OUT_OF_SCOPE)).isCloseTo(4000, within(1e-6));
  }

  @Test
  void aMarkSwitchedOffDoesNothingAndIsNotRepeated() throws MarkException {
    Mesh plane = Shapes.plane(100, 80, 5, 5);
    Mark box = Maps.box(10, 10, -1, 20, 30, 1); // 10 by 20
    Mark other = Maps.box(10, -30, -1, 15, -10, 1); // 5 by 20
    Mark off = new Mark.Off(box);
    assertThat(off.name()).isEqualTo(box.name());
    assertThat(Maps.bare(plane, off)).isZero();
    SurfaceMap map = Maps.of(plane, off, other, new Mark.Mirror("", ORIGIN, X));
    Maps.requireSound(plane, map);
    // The other one and its image; nothing of the one switched off.
    assertThat(map.areaMm2(BARE)).isCloseTo(200, within(1e-9));
    assertThat(map.effects().get(0)).isEqualTo(new SurfaceMap.Effect(0, 0));
    // Its place in the list counts when it is switched on again.
    assertThat(Maps.bare(plane, box, other, new Mark.Mirror("", ORIGIN, X)))
        .isCloseTo(600, within(1e-9));
    // What repeats or inverts can be switched off, too.
    assertThat(Maps.bare(plane, box, new Mark.Off(new Mark.Mirror("", ORIGIN, X))))
        .isCloseTo(200, within(1e-9));
    assertThat(Maps.bare(plane, box, new Mark.Off(new Mark.Invert(""))))
        .isCloseTo(200, within(1e-9));
    assertThatThrownBy(() -> new Mark.Off(off)).isInstanceOf(IllegalArgumentException.class);
  }

  /** Where the faces beside a region are far larger than what it grows by. */
  @ParameterizedTest(name = "{0} cells, square of {1}, by {2}")
  @CsvSource({"1, 60, 5", "1, 56, 2", "1, 66, 5", "2, 40, 2", "3, 20, 2", "3, 20, 4"})
  void squareGrownAndSmoothedOnLargeFaces(int cells, double side, double r) throws MarkException {
    Mesh plane = Shapes.plane(200, 200, cells, cells);
    double half = side / 2;
    Mark square = Maps.box(-half, -half, -1, half, half, 1);
    // Steiner's formula for a convex body and a disc.
    double grown = side * side + 4 * side * r + Math.PI * r * r;
    assertThat(Maps.bare(plane, square, grow(BARE, r))).isCloseTo(grown, within(1e-3 * grown));
    // Opening by a disc rounds the corners.
    double rounded = side * side - (4 - Math.PI) * r * r;
    Mark smooth = new Mark.Smooth("", BARE, r);
    assertThat(Maps.bare(plane, square, smooth)).isCloseTo(rounded, within(2e-3 * rounded));
  }
}
