package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

/** Edits of sections, mostly of four strips of 25 by 60 mm side by side along x. */
class EditsTest {
  private static final SectionSettings WIDE = new SectionSettings(1e5, 1, 2);
  private static final SectionWay STRIPS = new SectionWay.Strips(Vector3D.Unit.PLUS_X, 4);
  private static final double ROUNDING = 1e-6;

  private static final Vector3D FIRST = Vector3D.of(-37, 3, 0);
  private static final Vector3D SECOND = Vector3D.of(-12, 3, 0);
  private static final Vector3D THIRD = Vector3D.of(12, 3, 0);
  private static final Vector3D FOURTH = Vector3D.of(37, 3, 0);

  private static Mesh plate() {
    return Shapes.plane(100, 60, 20, 12);
  }

  private static SectionPlan plan(SectionSettings settings, SectionEdit... edits)
      throws SectionException {
    return plan(plate(), settings, STRIPS, edits);
  }

  private static SectionPlan plan(
      Mesh mesh, SectionSettings settings, SectionWay way, SectionEdit... edits)
      throws SectionException {
    SurfaceMap map = PlanChecks.allPlated(mesh);
    SectionChoices choices = SectionChoices.of(way).withEdits(List.of(edits));
    SectionPlan plan = Sectioning.split(map, settings, choices, Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    return plan;
  }

  private static SectionException refused(SectionEdit... edits) {
    SectionException refusal =
        catchThrowableOfType(SectionException.class, () -> plan(WIDE, edits));
    assertThat(refusal).isNotNull();
    assertThat(refusal.remedy()).endsWith(".");
    return refusal;
  }

  private static List<Vector3D> path(double... xy) {
    return DoubleStream.iterate(0, i -> i < xy.length, i -> i + 2)
        .mapToObj(i -> Vector3D.of(xy[(int) i], xy[(int) i + 1], 0))
        .toList();
  }

  private static void netsAre(SectionPlan plan, double... expected) {
    double[] nets = plan.sections().stream().mapToDouble(Section::netMm2).sorted().toArray();
    assertThat(nets).containsExactly(expected, within(ROUNDING));
  }

  private static Section at(SectionPlan plan, Vector3D point) {
    double least = Double.POSITIVE_INFINITY;
    int section = 0;
    for (int f = 0; f < plan.sectionOf().length; f++) {
      double[] c = new double[3];
      Faces.centroid(plan.mesh(), f, c);
      double far = point.distance(Vector3D.of(c));
      if (far < least) {
        least = far;
        section = plan.sectionOf()[f];
      }
    }
    return plan.sections().get(section - 1);
  }

  @Test
  void twoThatMeetAreMerged() throws SectionException {
    SectionPlan before = plan(WIDE);
    SectionPlan plan = plan(WIDE, new SectionEdit.Merge(SECOND, THIRD));

    netsAre(plan, 1500, 1500, 3000);
    assertThat(at(plan, SECOND)).isEqualTo(at(plan, THIRD));
    int earlier = Math.min(at(before, SECOND).id(), at(before, THIRD).id());
    assertThat(at(plan, SECOND).id()).as("place in the order").isEqualTo(earlier);
  }

  @Test
  void aLineFromEdgeToEdgeSplits() throws SectionException {
    SectionPlan plan = plan(WIDE, new SectionEdit.SplitAlong(FIRST, path(-50, -5, -25, -5)));

    netsAre(plan, 25 * 25, 25 * 35, 1500, 1500, 1500);
    assertThat(at(plan, FIRST).netMm2()).isCloseTo(25 * 35, within(ROUNDING));
    assertThat(at(plan, Vector3D.of(-37, -20, 0)).id()).isEqualTo(at(plan, FIRST).id() + 1);
  }

  @Test
  void aLineMayOvershootAndBend() throws SectionException {
    // Up from (-40, -30) to (-40, 0), then over the seam to the right.
    SectionPlan plan =
        plan(WIDE, new SectionEdit.SplitAlong(FIRST, path(-40, -30, -40, 0, -20, 0)));

    netsAre(plan, 15 * 30, 1500 - 15 * 30, 1500, 1500, 1500);
  }

  @Test
  void aLineThatEndsInsideRunsOnToTheEdge() throws SectionException {
    SectionPlan plan = plan(WIDE, new SectionEdit.SplitAlong(FIRST, path(-45, -5, -32, -5)));

    // Vertices lie at y = -5, so it runs straight on.
    netsAre(plan, 25 * 25, 25 * 35, 1500, 1500, 1500);
  }

  @ParameterizedTest
  @CsvSource({"2", "3", "5", "8"})
  void evenPartsHaveEqualAreas(int count) throws SectionException {
    SectionPlan plan = plan(WIDE, new SectionEdit.SplitEvenly(FIRST, count));

    assertThat(plan.sections()).hasSize(3 + count);
    assertThat(
            plan.sections().stream()
                .filter(s -> Math.abs(s.netMm2() - 1500.0 / count) < ROUNDING)
                .count())
        .isEqualTo(count);
  }

  @Test
  void aClosedRingIsSplitEvenlyInPiecesThatHangTogether() throws SectionException {
    Mesh mesh = Shapes.cylinder(10, 20, 60, 10, false);
    SectionWay rings =
        new SectionWay.Rings(
            SectionAxis.of(Vector3D.ZERO, Vector3D.Unit.PLUS_Z),
            SectionWay.By.HEIGHT,
            2,
            List.of());

    SectionPlan plan =
        plan(mesh, WIDE, rings, new SectionEdit.SplitEvenly(Vector3D.of(10, 0, 5), 5));

    double ring = PlanChecks.area(mesh) / 2;
    netsAre(plan, ring / 5, ring / 5, ring / 5, ring / 5, ring / 5, ring);
  }

  @Test
  void aSeamIsDrawnAnew() throws SectionException {
    SectionPlan plan = plan(WIDE, new SectionEdit.MoveSeam(FIRST, SECOND, path(-20, -30, -20, 30)));

    netsAre(plan, 20 * 60, 1500, 1500, 30 * 60);
    assertThat(at(plan, FIRST).netMm2()).isCloseTo(1800, within(ROUNDING));
  }

  @Test
  void aStretchOfASeamIsDragged() throws SectionException {
    List<Vector3D> bulge = path(-25, -10, -15, -10, -15, 10, -25, 10);
    SectionPlan plan = plan(WIDE, new SectionEdit.MoveSeam(FIRST, Vector3D.of(-5, 3, 0), bulge));

    netsAre(plan, 1500 - 200, 1500, 1500, 1500 + 200);
    // The other way round: the bulge is then as good as all of the second.
    SectionPlan other = plan(WIDE, new SectionEdit.MoveSeam(FIRST, Vector3D.of(-20, 3, 0), bulge));
    netsAre(other, 200, 1500, 1500, 2800);
  }

  @Test
  void aDraggedLineMayCrossTheSeam() throws SectionException {
    // Out to the right by 5 over 10 mm, then to the left by 5 over 10 mm.
    SectionPlan plan =
        plan(
            WIDE,
            new SectionEdit.MoveSeam(
                FIRST, SECOND, path(-25, -15, -20, -15, -20, -5, -30, -5, -30, 5, -25, 5)));

    netsAre(plan, 1500, 1500, 1500, 1500);
    assertThat(at(plan, Vector3D.of(-22, -10, 0))).isEqualTo(at(plan, FIRST));
    assertThat(at(plan, Vector3D.of(-28, 0, 0))).isEqualTo(at(plan, SECOND));
  }

  @Test
  void editsBuildOnOneAnother() throws SectionException {
    SectionPlan plan =
        plan(
            WIDE,
            new SectionEdit.Merge(FIRST, SECOND),
            new SectionEdit.SplitAlong(FIRST, path(-50, 0, 0, 0)),
            new SectionEdit.Merge(Vector3D.of(-20, -20, 0), THIRD));

    netsAre(plan, 1500, 1500, 3000);
  }

  @Test
  void sectionsAreNamedAndRenumbered() throws SectionException {
    SectionPlan plan =
        plan(
            WIDE,
            new SectionEdit.Rename(THIRD, "lip"),
            new SectionEdit.Renumber(FOURTH, 1),
            new SectionEdit.Renumber(THIRD, 4));

    assertThat(at(plan, FOURTH).id()).isEqualTo(1);
    assertThat(at(plan, THIRD).id()).isEqualTo(4);
    assertThat(at(plan, THIRD).name()).isEqualTo("lip");
    assertThat(plan.sections()).filteredOn(s -> !s.name().isEmpty()).hasSize(1);
    // Laps lie on the earlier: the fourth, worked first, laps onto nothing.
    assertThat(at(plan, FOURTH).flashLapMm2()).isZero();
    assertThat(at(plan, THIRD).flashLapMm2()).isCloseTo(2 * 60 * 2, within(0.5));
  }

  @Test
  void aLimitThatAnEditBreaksIsTold() throws SectionException {
    SectionPlan plan = plan(new SectionSettings(1800, 1, 2), new SectionEdit.Merge(SECOND, THIRD));

    assertThat(plan.notices()).hasSize(1);
    assertThat(plan.notices().get(0).code()).isEqualTo(SectionPlan.OVER_LIMIT);
    assertThat(plan.notices().get(0).text()).startsWith("Section " + at(plan, SECOND).id() + ":");
  }

  @Test
  void aPinnedLineIsASeamWhateverTheLimit() throws SectionException {
    for (double limit : new double[] {600, 1000, 4000}) {
      Mesh mesh = plate();
      SurfaceMap map = PlanChecks.allPlated(mesh);
      SectionSettings settings = new SectionSettings(limit, 1, 2);
      SectionPlan plan =
          Sectioning.split(
              map,
              settings,
              SectionChoices.NONE.withEdits(List.of(new SectionEdit.Pin(path(7, -30, 7, 30)))),
              Progress.NONE);
      PlanChecks.holds(map, settings, plan);
      int[] side = new int[plan.sections().size() + 1];
      double[] c = new double[3];
      for (int f = 0; f < plan.sectionOf().length; f++) {
        Faces.centroid(plan.mesh(), f, c);
        side[plan.sectionOf()[f]] |= c[0] < 7 ? 1 : 2;
      }
      for (int s = 1; s < side.length; s++) {
        assertThat(side[s]).as("sides of section %d at limit %s", s, limit).isLessThan(3);
      }
    }
  }

  @Test
  void pinningASeamWhereItIsChangesNothing() throws SectionException {
    netsAre(plan(WIDE, new SectionEdit.Pin(path(-25, -30, -25, 30))), 1500, 1500, 1500, 1500);
    netsAre(plan(WIDE, new SectionEdit.Pin(path(-25, -20, -25, 10))), 1500, 1500, 1500, 1500);
  }

  @Test
  void whatCannotBeDoneIsRefusedByNumber() {
    assertThat(refused(new SectionEdit.Merge(FIRST, THIRD)))
        .hasMessageContaining("section edit 1 (merge), sections.edits[0].points")
        .hasMessageContaining("do not meet");
    assertThat(
            refused(
                new SectionEdit.Rename(FIRST, "a"),
                new SectionEdit.Merge(FIRST, Vector3D.of(-30, -20, 0))))
        .hasMessageContaining("section edit 2 (merge)")
        .hasMessageContaining("both points lie in section");
    assertThat(refused(new SectionEdit.Rename(Vector3D.of(0, 0, 40), "a")))
        .hasMessageContaining("sections.edits[0].point: no section can be found")
        .hasMessageContaining("40.0 mm off the surface");
    assertThat(refused(new SectionEdit.SplitAlong(FOURTH, path(-50, 0, -25, 0))))
        .hasMessageContaining("does not part section");
    assertThat(refused(new SectionEdit.MoveSeam(FIRST, SECOND, path(20, -30, 20, 30))))
        .hasMessageContaining("sections.edits[0].path")
        .hasMessageContaining("parts neither");
    assertThat(refused(new SectionEdit.Renumber(FIRST, 5)))
        .hasMessageContaining("there are only 4 sections");
  }
}
