package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

/** Ways of making sections, against closed formulas of solids (any handbook of mathematics). */
class WaysTest {
  private static final SectionAxis Z = SectionAxis.of(Vector3D.ZERO, Vector3D.Unit.PLUS_Z);

  /** Every test here has a limit far off unless it says otherwise. */
  private static final SectionSettings WIDE = new SectionSettings(1e6, 1, 2);

  private static SectionSettings limit(double mm2) {
    return new SectionSettings(mm2, 1, 2);
  }

  private static SectionWay.Rings rings(int count) {
    return new SectionWay.Rings(Z, SectionWay.By.HEIGHT, count, List.of());
  }

  private static SectionWay.Rings ringsAt(SectionWay.By by, Double... at) {
    return new SectionWay.Rings(Z, by, 0, List.of(at));
  }

  private static SectionPlan plan(Mesh mesh, SectionSettings settings, SectionWay way)
      throws SectionException {
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionPlan plan = Sectioning.split(map, settings, SectionChoices.of(way), Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    return plan;
  }

  private static double[] nets(SectionPlan plan) {
    return plan.sections().stream().mapToDouble(Section::netMm2).sorted().toArray();
  }

  private static void areEqual(SectionPlan plan, int count, double each, double relative) {
    assertThat(plan.sections()).hasSize(count);
    for (double net : nets(plan)) {
      assertThat(net).isCloseTo(each, within(relative * each));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 4, 7})
  void ringsOfACylinderAreEqualBands(int count) throws SectionException {
    // A prism of 48 sides: its mantle is 48 rectangles, 2 r sin(π/48) wide.
    double mantle = 48 * 2 * 10 * Math.sin(Math.PI / 48) * 40;
    Mesh mesh = Shapes.cylinder(10, 40, 48, 9, false);

    areEqual(plan(mesh, WIDE, rings(count)), count, mantle / count, 1e-9);
  }

  @Test
  void ringsOfASphereAreZones() throws SectionException {
    // Zone of a sphere: 2πrh.
    Mesh mesh = Shapes.icosphere(20, 5);

    SectionPlan equal = plan(mesh, WIDE, rings(5));
    areEqual(equal, 5, PlanChecks.area(mesh) / 5, 1e-9);
    SectionPlan given = plan(mesh, WIDE, ringsAt(SectionWay.By.HEIGHT, -14.0, 3.0));
    assertThat(nets(given))
        .containsExactly(
            new double[] {2 * Math.PI * 20 * 6, 2 * Math.PI * 20 * 17, 2 * Math.PI * 20 * 17},
            within(4.0));
  }

  @Test
  void ringsOfAConeAreFrusta() throws SectionException {
    // Frustum: π (r₁ + r₂) s. From r = 20 at z = -15 to r = 8 at z = 15, parted at z = 5: r = 12.
    Mesh mesh = Shapes.coneFrustum(20, 8, 30, 720, 6, false);
    double slant = Math.hypot(12, 30);

    SectionPlan plan = plan(mesh, WIDE, ringsAt(SectionWay.By.HEIGHT, 5.0));

    double upper = Math.PI * (12 + 8) * slant / 3;
    double lower = Math.PI * (20 + 12) * slant * 2 / 3;
    assertThat(nets(plan)).containsExactly(new double[] {upper, lower}, within(2e-5 * lower));
  }

  @Test
  void ringsByRadiusOfATorusAreItsInnerAndOuterHalf() throws SectionException {
    // Outer half 2πr (πR + 2r), inner half 2πr (πR − 2r), by Pappus.
    Mesh mesh = Shapes.torus(30, 8, 360, 180);

    SectionPlan plan = plan(mesh, WIDE, ringsAt(SectionWay.By.RADIUS, 30.0));

    double inner = 2 * Math.PI * 8 * (Math.PI * 30 - 16);
    double outer = 2 * Math.PI * 8 * (Math.PI * 30 + 16);
    assertThat(nets(plan)).containsExactly(new double[] {inner, outer}, within(3e-4 * outer));
    SectionPlan even =
        plan(mesh, WIDE, new SectionWay.Rings(Z, SectionWay.By.RADIUS, 2, List.of()));
    areEqual(even, 2, PlanChecks.area(mesh) / 2, 1e-4);
  }

  @Test
  void ringsByRadiusOfAFlatPlateOfTwoTrianglesAreRound() throws SectionException {
    Mesh mesh = Shapes.plane(100, 100, 1, 1);

    SectionPlan plan =
        plan(mesh, new SectionSettings(1e6, 0, 0), ringsAt(SectionWay.By.RADIUS, 20.0, 40.0));

    assertThat(nets(plan))
        .containsExactly(
            new double[] {Math.PI * 400, Math.PI * 1200, 10000 - Math.PI * 1600}, within(2.0));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 5, 12})
  void sectorsOfASphereAreLunes(int count) throws SectionException {
    Mesh mesh = Shapes.sphere(20, 40, 120);
    areEqual(
        plan(mesh, WIDE, new SectionWay.Sectors(Z, count)),
        count,
        PlanChecks.area(mesh) / count,
        1e-9);
  }

  @Test
  void sectorsCutWhereTheyAreAskedTo() throws SectionException {
    // The first sector begins at y: of four, none is cut through along x = y.
    Mesh mesh = Shapes.cylinder(10, 40, 64, 4, false);
    SectionPlan plan = plan(mesh, WIDE, new SectionWay.Sectors(Z.from(Vector3D.of(1, 1, 7)), 4));

    for (Seam seam : plan.seams()) {
      assertThat(seam.lengthMm()).isCloseTo(40, within(1e-9));
    }
    areEqual(plan, 4, PlanChecks.area(mesh) / 4, 1e-9);
  }

  @Test
  void ringsAndSectorsOfACylinder() throws SectionException {
    Mesh mesh = Shapes.cylinder(10, 40, 60, 4, false);
    areEqual(
        plan(mesh, WIDE, new SectionWay.RingsAndSectors(rings(3), 5)),
        15,
        PlanChecks.area(mesh) / 15,
        1e-9);
  }

  @Test
  void stripsOfAPlateAreRectangles() throws SectionException {
    Mesh mesh = Shapes.plane(90, 40, 7, 3);

    SectionPlan plan = plan(mesh, WIDE, new SectionWay.Strips(Vector3D.of(2, 0, 0), 6));

    areEqual(plan, 6, 600, 1e-9);
    for (Seam seam : plan.seams()) {
      assertThat(seam.lengthMm()).isCloseTo(40, within(1e-9));
    }
  }

  @Test
  void naturalFacesOfABoxAreItsSix() throws SectionException {
    SectionPlan plan =
        plan(Shapes.box(30, 20, 10, 4), limit(2000), new SectionWay.NaturalFaces(40));

    assertThat(nets(plan))
        .containsExactly(new double[] {200, 200, 300, 300, 600, 600}, within(1e-9));
  }

  @Test
  void smallFacesGoWithANeighbour() throws SectionException {
    // The rim of this sheet is 100 by 2: below a twentieth of the limit.
    SectionPlan plan =
        plan(Shapes.box(100, 100, 2, 6), limit(20_000), new SectionWay.NaturalFaces(40));

    assertThat(plan.sections()).hasSize(2);
    assertThat(DoubleStream.of(nets(plan)).sum()).isCloseTo(20_800, within(1e-6));
  }

  @Test
  void whatIsOverTheLimitIsDividedFurther() throws SectionException {
    Mesh mesh = Shapes.cylinder(10, 60, 60, 30, false);
    SectionSettings settings = new SectionSettings(500, 1, 2);

    SectionPlan plan = plan(mesh, settings, rings(3));

    assertThat(plan.notices()).isEmpty();
    // A third is 1256 mm²: three sections at the least.
    assertThat(plan.sections()).hasSizeBetween(9, 15);
    double third = 20;
    for (int f = 0; f < plan.sectionOf().length; f++) {
      int of = plan.sectionOf()[f];
      int ring = ring(plan, f, third);
      assertThat(ringOf(plan, of, third)).as("section %d", of).isEqualTo(ring);
    }
  }

  @Test
  void lapsOnNeighboursCountWhenAWayKeepsTheLimit() throws SectionException {
    // Each ring has 1256 mm² and 126 mm² of lap: the limit lies between.
    Mesh mesh = Shapes.cylinder(10, 60, 60, 30, false);
    SectionPlan plan = plan(mesh, new SectionSettings(1300, 1, 2), rings(3));

    assertThat(plan.notices()).isEmpty();
    assertThat(plan.sections().size()).isGreaterThan(3);
  }

  @Test
  void asManyRingsAsTheLimitNeeds() throws SectionException {
    SectionPlan plan = plan(Shapes.plane(90, 40, 9, 4), new SectionSettings(1000, 0, 0), rows());
    areEqual(plan, 4, 900, 1e-9);
  }

  private static SectionWay rows() {
    return new SectionWay.Strips(Vector3D.Unit.PLUS_X, 0);
  }

  @Test
  void theAxisIsFound() throws SectionException {
    Mesh mesh =
        Shapes.moved(
            Shapes.rotated(Shapes.coneFrustum(20, 8, 30, 72, 6, false), 0, 1, 0, 0.6), 5, 6, 7);
    SectionPlan plan =
        plan(
            mesh,
            WIDE,
            new SectionWay.Rings(SectionAxis.FOUND, SectionWay.By.HEIGHT, 0, List.of(20.0)));

    // From the lowest place: 20 of 30 mm up, where the radius is 12; 72 sides.
    double side = 2 * Math.sin(Math.PI / 72);
    double slant = Math.hypot(12 * Math.cos(Math.PI / 72), 30);
    double upper = 72 * side * (12 + 8) / 2 * slant / 3;
    assertThat(nets(plan)[0]).isCloseTo(upper, within(1e-3 * upper));
    assertThat(plan.notices().get(0).code()).isEqualTo(SectionPlan.AXIS_FOUND);
  }

  @Test
  void aPieceWithoutAnAxisIsRefused() {
    assertThatThrownBy(
            () ->
                plan(
                    Shapes.plane(10, 10, 2, 2), WIDE, new SectionWay.Sectors(SectionAxis.FOUND, 3)))
        .isInstanceOf(SectionException.class)
        .hasMessageContaining("sections.way.axis")
        .hasMessageContaining("shows no");
    assertThatThrownBy(
            () ->
                plan(
                    Shapes.plane(10, 10, 2, 2),
                    WIDE,
                    new SectionWay.Sectors(Z.from(Vector3D.of(0, 0, 2)), 3)))
        .hasMessageContaining("sections.way.zero");
  }

  private static int ring(SectionPlan plan, int face, double third) {
    double z = 0;
    for (int k = 0; k < 3; k++) {
      z += plan.mesh().z(plan.mesh().corner()[3 * face + k]) / 3;
    }
    return (int) Math.floor((z + 30) / third);
  }

  private static int ringOf(SectionPlan plan, int section, double third) {
    int first =
        Arrays.stream(faces(plan))
            .filter(f -> plan.sectionOf()[f] == section)
            .findFirst()
            .orElse(0);
    return ring(plan, first, third);
  }

  private static int[] faces(SectionPlan plan) {
    int[] faces = new int[plan.sectionOf().length];
    Arrays.setAll(faces, f -> f);
    return faces;
  }
}
