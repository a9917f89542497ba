package org.seamwright.window;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.seamwright.basis.Notice;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;
import org.seamwright.mask.MaskPlan;
import org.seamwright.mask.MaskSettings;
import org.seamwright.measure.Survey;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.plating.Band;
import org.seamwright.plating.Deposit;
import org.seamwright.plating.PlatingPlan;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.Recipe;
import org.seamwright.plating.Step;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;
import org.seamwright.section.SectionPlan;
import org.seamwright.testsupport.Shapes;
import org.seamwright.units.UnitSystem;

/**
 * A planned ring made by hand, far from its file's origin: sections are sectors of the outer and
 * the inner half of the tube, one sector is bare and one is out of scope. Amounts are invented.
 */
final class PlannedFixture {
  static final double RING_RADIUS = 60;
  static final double TUBE_RADIUS = 20;
  static final double[] MIDDLE = {400, -250, 90};

  /** Sectors around the ring; the last but one stays bare, the last is out of scope. */
  static final int SECTORS = 8;

  static final double LIMIT_MM2 = 4000;

  private PlannedFixture() {}

  /** A ring of {@code 2 · around · aroundTube} faces. */
  static PlannedJob ring(int around, int aroundTube) {
    Mesh mesh =
        Shapes.moved(
            Shapes.torus(RING_RADIUS, TUBE_RADIUS, around, aroundTube),
            MIDDLE[0],
            MIDDLE[1],
            MIDDLE[2]);
    int faces = mesh.faceCount();
    int[] same = new int[faces];
    Arrays.setAll(same, f -> f);
    int[] sectionOf = new int[faces];
    byte[] treatment = new byte[faces];
    byte[] times = new byte[faces];
    for (int f = 0; f < faces; f++) {
      int step = f / 2 / aroundTube;
      int sector = step * SECTORS / around;
      if (sector == SECTORS - 2) {
        treatment[f] = Treatment.BARE.code();
      } else if (sector == SECTORS - 1) {
        treatment[f] = Treatment.OUT_OF_SCOPE.code();
      } else {
        int quarter = f / 2 % aroundTube * 4 / aroundTube;
        sectionOf[f] = 2 * sector + (quarter == 0 || quarter == 3 ? 1 : 2);
        boolean last = (step + 1 + around / 64) * SECTORS / around != sector;
        times[f] = (byte) (last && sector < SECTORS - 3 ? 2 : 1);
      }
    }
    SurfaceMap map = new SurfaceMap(mesh, same, treatment, List.of(), List.of());
    return planned(mesh, map, same, sectionOf, times, 2 * (SECTORS - 2));
  }

  private static PlannedJob planned(
      Mesh mesh, SurfaceMap map, int[] same, int[] sectionOf, byte[] times, int sections) {
    double[] net = new double[sections + 1];
    double[] lap = new double[sections + 3];
    for (int f = 0; f < sectionOf.length; f++) {
      net[sectionOf[f]] += Faces.area(mesh, f);
      if (times[f] > 1) {
        lap[sectionOf[f] + 2] += Faces.area(mesh, f);
      }
    }
    List<Section> list = new ArrayList<>();
    List<Seam> seams = new ArrayList<>();
    for (int id = 1; id <= sections; id++) {
      list.add(new Section(id, net[id], lap[id] / 2, lap[id]));
      if (id % 2 == 0) {
        seams.add(new Seam(id - 1, id, 30, 0, 0));
      }
      if (id > 2) {
        seams.add(new Seam(id - 2, id, 60, lap[id] / 2, lap[id]));
      }
    }
    SectionPlan plan =
        new SectionPlan(mesh, same, sectionOf, times, times, list, seams, 0, 0, 0, List.of());
    return new PlannedJob(
        job(),
        Path.of("ring.json"),
        mesh,
        1,
        survey(mesh),
        map,
        LIMIT_MM2,
        Optional.empty(),
        plan,
        new MaskPlan(List.of(), java.util.Optional.empty(), List.of()),
        settings(),
        amounts(list),
        List.of(
            new Notice("test-notice", 1, "A notice of the test piece: its amounts are invented.")));
  }

  private static Job job() {
    return new Job(
        "Test ring",
        "",
        new Job.MeshSource("ring.stl", "", new Job.Scale.Unit("mm")),
        Treatment.PLATE,
        List.of(),
        new Job.SectionRules(new Job.Limit.Area(LIMIT_MM2), 1, 2),
        new Job.PlatingRules("test", "test", 0.1, 0.5, 0.3, 10, 0.5, 20, 0.7),
        new MaskSettings(10, 5, 30000, 20, 0.5, 50, 2, 0.1),
        UnitSystem.METRIC);
  }

  private static Survey survey(Mesh mesh) {
    return new Survey(
        mesh.faceCount(),
        mesh.vertexCount(),
        0,
        new Survey.SmoothArea(0, 0, 0),
        0,
        mesh.bounds(),
        1,
        0,
        0,
        0,
        0,
        0,
        true,
        List.of());
  }

  private static PlatingSettings settings() {
    Step flash = new Step("Flash", "", Step.Kind.FLASH, 0, 1, 0, "invented");
    return new PlatingSettings(
        new Recipe("test", "test", List.of(flash), List.of()),
        new Deposit("test", "test", 19.3, 197, 1, "invented"),
        0.1,
        0.4,
        0.3,
        10,
        0.5,
        20,
        0.7);
  }

  /** One milligram and two seconds for each square centimetre worked. */
  private static PlatingPlan amounts(List<Section> sections) {
    List<PlatingPlan.SectionAmounts> list = new ArrayList<>();
    double net = 0;
    double worked = 0;
    for (Section section : sections) {
      double cm2 = section.workedMm2() / 100;
      list.add(
          new PlatingPlan.SectionAmounts(
              section.id(), 0, 0, 0, cm2 / 1000, cm2, 0, 2 * cm2, List.of(2 * cm2)));
      net += section.netMm2();
      worked += section.workedMm2();
    }
    return new PlatingPlan(
        list,
        new PlatingPlan.Totals(net, worked, worked / 1e5, worked / 100, 0, worked / 50),
        new PlatingPlan.Bands(
            new Band(worked / 1e5, worked / 1e5),
            new Band(worked / 100, worked / 100),
            new Band(worked / 50, worked / 50)),
        List.of());
  }
}
