package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

/** A session of edits gives the figures of evaluating from nothing. */
class SectionSessionTest {
  private static final SectionAxis Z = SectionAxis.of(Vector3D.ZERO, Vector3D.Unit.PLUS_Z);

  /** Net areas and lengths, relative: roundings. */
  private static final double RELATIVE = 1e-9;

  /**
   * Laps, relative. Distances marched from other sets of seams, over other sets of faces, differ by
   * their own error, which is five times this ({@link Laps}).
   */
  private static final double LAPS = 1e-3;

  private static SectionFigures fromNothing(
      SurfaceMap map, SectionSettings settings, SectionChoices choices) throws SectionException {
    SectionPlan plan = Sectioning.split(map, settings, choices, Progress.NONE);
    return new SectionFigures(
        plan.sections(),
        plan.seams(),
        plan.onceMm2(),
        plan.twiceMm2(),
        plan.moreMm2(),
        plan.notices());
  }

  private static void same(SectionFigures session, SectionFigures whole, double plated) {
    double off = RELATIVE * plated;
    assertThat(session.sections()).hasSameSizeAs(whole.sections());
    for (int i = 0; i < whole.sections().size(); i++) {
      Section a = session.sections().get(i);
      Section b = whole.sections().get(i);
      assertThat(a.id()).isEqualTo(b.id());
      assertThat(a.name()).isEqualTo(b.name());
      assertThat(a.netMm2()).isCloseTo(b.netMm2(), within(off));
      assertThat(a.activationLapMm2()).isCloseTo(b.activationLapMm2(), lap(b.activationLapMm2()));
      assertThat(a.flashLapMm2()).isCloseTo(b.flashLapMm2(), lap(b.flashLapMm2()));
    }
    assertThat(session.seams()).hasSameSizeAs(whole.seams());
    for (int i = 0; i < whole.seams().size(); i++) {
      Seam a = session.seams().get(i);
      Seam b = whole.seams().get(i);
      assertThat(List.of(a.earlier(), a.later())).isEqualTo(List.of(b.earlier(), b.later()));
      assertThat(a.lengthMm()).isCloseTo(b.lengthMm(), within(off));
      assertThat(a.flashLapMm2()).isCloseTo(b.flashLapMm2(), lap(b.flashLapMm2()));
    }
    assertThat(session.onceMm2()).isCloseTo(whole.onceMm2(), lap(whole.twiceMm2()));
    assertThat(session.twiceMm2()).isCloseTo(whole.twiceMm2(), lap(whole.twiceMm2()));
    assertThat(session.moreMm2()).isCloseTo(whole.moreMm2(), lap(whole.twiceMm2() / 10));
    assertThat(session.notices()).hasSameSizeAs(whole.notices());
  }

  private static Offset<Double> lap(double areaMm2) {
    return within(LAPS * areaMm2 + 1e-6);
  }

  private static void follows(
      Mesh mesh, SectionSettings settings, SectionChoices start, List<SectionEdit> edits)
      throws SectionException {
    SurfaceMap map = PlanChecks.allPlated(mesh);
    double plated = PlanChecks.area(mesh);
    SectionSession session = SectionSession.of(map, settings, start, Progress.NONE);
    List<SectionFigures> seen = new ArrayList<>(List.of(session.figures()));
    same(session.figures(), fromNothing(map, settings, start), plated);
    for (int i = 0; i < edits.size(); i++) {
      seen.add(session.edit(edits.get(i)));
      same(
          session.figures(),
          fromNothing(map, settings, start.withEdits(edits.subList(0, i + 1))),
          plated);
    }
    SectionPlan plan = session.plan(Progress.NONE);
    PlanChecks.holds(map, settings, plan);
    assertThat(plan.sections()).hasSameSizeAs(session.figures().sections());
    assertThat(session.mesh().faceCount()).isEqualTo(session.sectionOf().length);
    assertThat(Arrays.stream(session.sectionOf()).max().orElse(0))
        .isEqualTo(plan.sections().size());
    for (int i = edits.size() - 1; i >= 0; i--) {
      same(session.undo(), seen.get(i), plated);
    }
    assertThat(session.edits()).isEmpty();
  }

  @Test
  void editsOfStripsGiveTheFiguresOfAWholePlan() throws SectionException {
    SectionWay strips = new SectionWay.Strips(Vector3D.Unit.PLUS_X, 5);
    Vector3D first = Vector3D.of(-45, 3, 0);
    Vector3D second = Vector3D.of(-20, 3, 0);
    follows(
        Shapes.plane(100, 60, 40, 24),
        new SectionSettings(1500, 1.5, 3),
        SectionChoices.of(strips),
        List.of(
            new SectionEdit.MoveSeam(
                first,
                second,
                List.of(Vector3D.of(-30, -12, 0), Vector3D.of(-26, 0, 0), Vector3D.of(-30, 14, 0))),
            new SectionEdit.Rename(first, "edge"),
            new SectionEdit.SplitEvenly(second, 3),
            new SectionEdit.Renumber(first, 4),
            new SectionEdit.Merge(Vector3D.of(0, 3, 0), Vector3D.of(20, 3, 0)),
            new SectionEdit.Renumber(Vector3D.of(0, 3, 0), 1),
            new SectionEdit.Pin(List.of(Vector3D.of(35, -30, 0), Vector3D.of(35, 30, 0))),
            new SectionEdit.Rename(second, "middle")));
  }

  @Test
  void editsOnASphereGiveTheFiguresOfAWholePlan() throws SectionException {
    SectionWay way =
        new SectionWay.RingsAndSectors(
            new SectionWay.Rings(Z, SectionWay.By.HEIGHT, 3, List.of()), 4);
    follows(
        Shapes.icosphere(30, 4),
        new SectionSettings(1200, 1, 2.5),
        SectionChoices.of(way),
        List.of(
            new SectionEdit.MoveSeam(
                Vector3D.of(20, 20, 0),
                Vector3D.of(-20, 20, 0),
                List.of(Vector3D.of(0, 29, -6), Vector3D.of(4, 29.7, 0), Vector3D.of(0, 29, 6))),
            new SectionEdit.Merge(Vector3D.of(20, -20, 0), Vector3D.of(-20, -20, 0))));
  }

  @Test
  void aRefusedEditLeavesTheSessionAsItWas() throws SectionException {
    SectionSession session =
        SectionSession.of(
            PlanChecks.allPlated(Shapes.plane(100, 60, 20, 12)),
            new SectionSettings(1e5, 1, 2),
            SectionChoices.of(new SectionWay.Strips(Vector3D.Unit.PLUS_X, 4)),
            Progress.NONE);
    SectionFigures before = session.figures();

    assertThatThrownBy(
            () ->
                session.edit(new SectionEdit.Merge(Vector3D.of(-40, 0, 0), Vector3D.of(40, 0, 0))))
        .isInstanceOf(SectionException.class);

    assertThat(session.figures()).isEqualTo(before);
    assertThat(session.edits()).isEmpty();
  }
}
