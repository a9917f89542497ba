package org.seamwright.paper;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.job.Job;
import org.seamwright.job.JobDefaults;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Steep;
import org.seamwright.mask.MaskEdge;
import org.seamwright.mask.MaskPlan;
import org.seamwright.measure.Survey;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.plating.Deposits;
import org.seamwright.plating.PlatingArithmetic;
import org.seamwright.plating.PlatingDefaults;
import org.seamwright.plating.PlatingSettings;
import org.seamwright.plating.Quote;
import org.seamwright.plating.QuoteRates;
import org.seamwright.plating.Recipes;
import org.seamwright.plating.SectionArea;
import org.seamwright.plating.Spread;
import org.seamwright.plating.Tool;
import org.seamwright.plating.WetLimit;
import org.seamwright.plating.WetLimits;
import org.seamwright.region.Mark;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;
import org.seamwright.section.Seam;
import org.seamwright.section.Section;
import org.seamwright.section.SectionPlan;
import org.seamwright.testsupport.Shapes;
import org.seamwright.units.UnitSystem;

/**
 * Planned jobs put together by hand: a goblet whose cup is split into slices about its axis, each
 * in an upper and a lower half. Areas are those of the faces; all else is only plausible.
 */
final class TestJobs {
  /** Invented prices in the currency code that ISO 4217 keeps for tests. */
  static final QuoteRates RATES =
      new QuoteRates("XTS", 60, 1.5, 110, 0.4, 50, 15, 0.25, 0.1, 120, 0.19, 30, true);

  private static final double FOOT_MM = 14;
  private static final double LIMIT_MM2 = 8000;

  private TestJobs() {}

  /** A goblet in so many slices. */
  static PlannedJob goblet(String piece, int slices, UnitSystem units) throws Exception {
    Mesh mesh = mesh();
    int faces = mesh.faceCount();
    byte[] treatment = new byte[faces];
    int[] section = new int[faces];
    byte[] activations = new byte[faces];
    byte[] flashes = new byte[faces];
    double[] c = new double[3];
    for (int f = 0; f < faces; f++) {
      Faces.centroid(mesh, f, c);
      boolean plate = c[2] > FOOT_MM;
      treatment[f] = (plate ? Treatment.PLATE : Treatment.BARE).code();
      if (plate) {
        double turn = (Math.atan2(c[1], c[0]) / (2 * Math.PI) + 1) % 1 * slices;
        int slice = Math.min(slices - 1, (int) turn);
        boolean upper = c[2] > 85;
        section[f] = 2 * slice + (upper ? 1 : 2);
        boolean nearSeam = turn - slice > 0.85;
        boolean verge = turn - slice > 0.93;
        activations[f] = (byte) (verge ? 2 : 1);
        flashes[f] = (byte) (nearSeam ? 2 : 1);
      }
    }
    SurfaceMap map = new SurfaceMap(mesh, identity(faces), treatment, List.of(), List.of());
    SectionPlan plan = plan(mesh, section, activations, flashes, 2 * slices);
    Job job = job(piece, units);
    PlatingSettings settings =
        new PlatingSettings(
            Recipes.byId("brass"),
            Deposits.byId(PlatingDefaults.DEPOSIT),
            PlatingDefaults.FLASH_UM,
            PlatingDefaults.THICKNESS_UM - PlatingDefaults.FLASH_UM,
            new Spread(0.2, 0.33, 0.6),
            PlatingDefaults.SOLUTION_G_PER_L,
            PlatingDefaults.USABLE_SHARE,
            new Spread(20, 25, 45),
            PlatingDefaults.EFFICIENCY,
            new Tool(
                OptionalDouble.of(0.5),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty()));
    WetLimit wet = WetLimits.of(settings, PlatingDefaults.WET_WINDOW_SECONDS);
    List<SectionArea> areas = new ArrayList<>();
    for (Section s : plan.sections()) {
      areas.add(new SectionArea(s.id(), s.netMm2(), s.activationLapMm2(), s.flashLapMm2()));
    }
    List<Notice> notices = new ArrayList<>();
    notices.add(
        new Notice("unit-assumed", 1, "The file names no unit; its numbers are taken as mm."));
    notices.add(
        new Notice("open-edges", 12, "The model is open along 12 edges; its volume means little."));
    notices.addAll(plan.notices());
    return new PlannedJob(
        job,
        Path.of("goblet.json"),
        mesh,
        1,
        survey(mesh),
        map,
        LIMIT_MM2,
        Optional.of(wet),
        plan,
        masks(),
        settings,
        PlatingArithmetic.plan(areas, settings),
        Optional.of(new Steep(2000, Map.of(1, 0.25))),
        Optional.of(Quote.of(areas, settings, new Quote.Masking(400, 3), RATES)),
        List.of(),
        0,
        notices);
  }

  private static Mesh mesh() {
    int n = 72;
    double[] r = new double[n];
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      double u = i / (double) (n - 1);
      if (u < 0.12) {
        r[i] = 40 * u / 0.12;
      } else if (u < 0.16) {
        r[i] = 40 - (u - 0.12) * 50;
        z[i] = (u - 0.12) / 0.04 * 8;
      } else if (u < 0.72) {
        double v = (u - 0.16) / 0.56;
        double s = v < 0.35 ? 0 : (v - 0.35) / 0.65;
        r[i] = 7 + 31 * Math.exp(-v * v * 45) + 38 * Math.sqrt(1 - (1 - s) * (1 - s));
        z[i] = 8 + v * 122;
      } else {
        double v = (u - 0.72) / 0.28;
        r[i] = 43 * Math.sqrt(Math.max(0, 1 - v * v));
        z[i] = 130 - v * 75;
      }
    }
    r[0] = 0;
    r[n - 1] = 0;
    return Shapes.join(
        Shapes.lathe(r, z, 96),
        Shapes.moved(
            Shapes.rotated(Shapes.torus(16, 3.5, 64, 24), 1, 0, 0, Math.PI / 2), 58, 0, 104));
  }

  private static int[] identity(int n) {
    int[] all = new int[n];
    for (int i = 0; i < n; i++) {
      all[i] = i;
    }
    return all;
  }

  private static SectionPlan plan(
      Mesh mesh, int[] section, byte[] activations, byte[] flashes, int count) {
    double[] net = new double[count + 1];
    double[] flashLap = new double[count + 1];
    double[] activationLap = new double[count + 1];
    double twice = 0;
    for (int f = 0; f < section.length; f++) {
      double area = Faces.area(mesh, f);
      net[section[f]] += area;
      if (section[f] > 0) {
        int later = section[f] + 2;
        if (later <= count) {
          flashLap[later] += flashes[f] > 1 ? area : 0;
          activationLap[later] += activations[f] > 1 ? area : 0;
        }
        twice += activations[f] > 1 ? area : 0;
      }
    }
    List<Section> sections = new ArrayList<>();
    List<Seam> seams = new ArrayList<>();
    List<Notice> notices = new ArrayList<>();
    double plated = 0;
    for (int id = 1; id <= count; id++) {
      String name = id == 2 ? "Foot and stem" : "";
      sections.add(new Section(id, net[id], activationLap[id], flashLap[id], name));
      plated += net[id];
      if (id > 2) {
        seams.add(new Seam(id - 2, id, 60, activationLap[id], flashLap[id]));
      }
      if (id % 2 == 0) {
        seams.add(new Seam(id - 1, id, 40, 0, 0));
      }
      if (sections.get(id - 1).workedMm2() > LIMIT_MM2) {
        notices.add(
            new Notice(SectionPlan.OVER_LIMIT, 1, "Section " + id + " is larger than the limit."));
      }
    }
    return new SectionPlan(
        mesh,
        identity(section.length),
        section,
        activations,
        flashes,
        sections,
        seams,
        plated - twice,
        twice,
        0,
        notices);
  }

  private static Job job(String piece, UnitSystem units) {
    return new Job(
            piece,
            "Invented sample for a test. The underside of the foot stays bare.",
            new Job.MeshSource("goblet.stl", "", new Job.Scale.Unit("mm")),
            Treatment.PLATE,
            List.of(
                new Mark.HalfSpace(
                    "Foot and underside",
                    Treatment.BARE,
                    Vector3D.of(0, 0, FOOT_MM),
                    Vector3D.of(0, 0, -1))),
            JobDefaults.sections(),
            JobDefaults.plating("brass"),
            JobDefaults.masking(),
            units)
        .withQuote(Optional.of(RATES));
  }

  private static Survey survey(Mesh mesh) {
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += Faces.area(mesh, f);
    }
    return new Survey(
        mesh.faceCount(),
        mesh.vertexCount(),
        area,
        new Survey.SmoothArea(area * 1.0004, area * 1.0002, area * 1.0007),
        0,
        mesh.bounds(),
        2,
        12,
        0,
        0,
        0,
        0,
        false,
        List.of());
  }

  private static MaskPlan masks() {
    int n = 60;
    double[] ring = new double[3 * n];
    // The profile of the foot at that height.
    double v = (FOOT_MM - 8) / 122;
    double r = 7 + 31 * Math.exp(-v * v * 45);
    for (int i = 0; i < n; i++) {
      ring[3 * i] = r * Math.cos(2 * Math.PI * i / n);
      ring[3 * i + 1] = r * Math.sin(2 * Math.PI * i / n);
      ring[3 * i + 2] = FOOT_MM;
    }
    double edge = 2 * Math.PI * r;
    return new MaskPlan(
        List.of(
            new MaskPlan.Mask(
                1,
                List.of(new MaskEdge(ring, true, edge)),
                edge,
                List.of(new MaskPlan.TapeStrip(12.7, edge + 5)),
                edge * 12.7,
                5200,
                0.95,
                12_000,
                new double[] {r, 0, FOOT_MM})),
        Optional.empty(),
        List.of(
            new Notice(
                "tape-on-a-curve", 1, "M1 bends tightly: narrow tape first, wide tape over it.")));
  }
}
