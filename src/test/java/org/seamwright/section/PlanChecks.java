package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/** What every section plan has to be true to, checked from its mesh alone. */
final class PlanChecks {
  /** Sums of a few hundred thousand roundings, relative. */
  private static final double ROUNDING = 1e-9;

  private PlanChecks() {}

  static SurfaceMap allPlated(Mesh mesh) {
    return map(mesh, new byte[mesh.faceCount()]);
  }

  static SurfaceMap map(Mesh mesh, byte[] treatment) {
    int[] parent = new int[mesh.faceCount()];
    Arrays.setAll(parent, f -> f);
    return new SurfaceMap(mesh, parent, treatment, List.of(), List.of());
  }

  static double area(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }

  static void holds(SurfaceMap map, SectionSettings settings, SectionPlan plan) {
    areasAddUp(map, plan);
    everySectionIsOnePiece(plan);
    limitIsKeptOrTold(settings, plan);
    lapsAddUp(plan);
    seamsAreWhereSectionsMeet(plan);
  }

  private static void areasAddUp(SurfaceMap map, SectionPlan plan) {
    double plated = map.areaMm2(Treatment.PLATE);
    double[] net = new double[plan.sections().size() + 1];
    double[] times = new double[4];
    for (int f = 0; f < plan.sectionOf().length; f++) {
      double area = Faces.area(plan.mesh(), f);
      boolean isPlated = map.of(plan.parentFace()[f]) == Treatment.PLATE;
      assertThat(plan.sectionOf()[f] > 0 || area == 0).isEqualTo(isPlated || area == 0);
      assertThat(plan.activations()[f] > 0).isEqualTo(plan.sectionOf()[f] > 0);
      assertThat(plan.flashes()[f] > 0).isEqualTo(plan.sectionOf()[f] > 0);
      net[plan.sectionOf()[f]] += area;
      times[Math.min(3, plan.activations()[f])] += area;
    }
    for (Section section : plan.sections()) {
      assertThat(section.netMm2()).isPositive();
      assertThat(section.netMm2()).isCloseTo(net[section.id()], within(ROUNDING * plated));
    }
    double sum = plan.sections().stream().mapToDouble(Section::netMm2).sum();
    assertThat(sum).isCloseTo(plated, within(ROUNDING * plated));
    assertThat(plan.onceMm2() + plan.twiceMm2() + plan.moreMm2())
        .isCloseTo(plated, within(ROUNDING * plated));
    assertThat(plan.onceMm2()).isCloseTo(times[1], within(ROUNDING * plated));
    assertThat(plan.twiceMm2()).isCloseTo(times[2], within(ROUNDING * plated));
    assertThat(plan.moreMm2()).isCloseTo(times[3], within(ROUNDING * plated));
  }

  private static void everySectionIsOnePiece(SectionPlan plan) {
    for (int i = 0; i < plan.sections().size(); i++) {
      assertThat(plan.sections().get(i).id()).isEqualTo(i + 1);
    }
    int[] label = Arrays.stream(plan.sectionOf()).map(s -> s - 1).toArray();
    Topology topology = Topology.of(plan.mesh());
    Pieces pieces = Pieces.of(plan.mesh(), EdgeRings.of(plan.mesh(), topology), label);
    assertThat(pieces.count()).isEqualTo(plan.sections().size());
  }

  private static void limitIsKeptOrTold(SectionSettings settings, SectionPlan plan) {
    long over = plan.sections().stream().filter(s -> s.workedMm2() > settings.limitMm2()).count();
    assertThat(plan.notices().stream().filter(n -> n.code().equals(SectionPlan.OVER_LIMIT)))
        .hasSize((int) over);
  }

  /** Laps of sections, of seams and of faces are three ways to add up the same area. */
  private static void lapsAddUp(SectionPlan plan) {
    double plated = plan.onceMm2() + plan.twiceMm2() + plan.moreMm2();
    double activation = 0;
    double flash = 0;
    for (int f = 0; f < plan.sectionOf().length; f++) {
      double area = Faces.area(plan.mesh(), f);
      activation += area * Math.max(0, plan.activations()[f] - 1);
      flash += area * Math.max(0, plan.flashes()[f] - 1);
    }
    assertThat(plan.sections().stream().mapToDouble(Section::activationLapMm2).sum())
        .isCloseTo(activation, within(ROUNDING * plated));
    assertThat(plan.sections().stream().mapToDouble(Section::flashLapMm2).sum())
        .isCloseTo(flash, within(ROUNDING * plated));
    assertThat(plan.seams().stream().mapToDouble(Seam::activationLapMm2).sum())
        .isCloseTo(activation, within(ROUNDING * plated));
    assertThat(plan.seams().stream().mapToDouble(Seam::flashLapMm2).sum())
        .isCloseTo(flash, within(ROUNDING * plated));
  }

  private static void seamsAreWhereSectionsMeet(SectionPlan plan) {
    int before = 0;
    for (Seam seam : plan.seams()) {
      assertThat(seam.earlier()).isLessThan(seam.later());
      assertThat(seam.lengthMm()).isPositive();
      int key = seam.earlier() * (plan.sections().size() + 1) + seam.later();
      assertThat(key).isGreaterThan(before);
      before = key;
    }
  }
}
