package org.seamwright.sample;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.JobDefaults;
import org.seamwright.job.JobFile;
import org.seamwright.job.Planner;
import org.seamwright.job.SafeFiles;
import org.seamwright.mend.Repair;
import org.seamwright.meshfile.ObjWriter;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitSystem;

/**
 * Writes the sample pieces and a job for each: {@code MakeModels DIR}. The same bytes every time.
 *
 * <p>The scenario is invented: the trophies of a regatta in a harbour town that does not exist, and
 * a wheel for a parade car of the same town.
 */
public final class MakeModels {
  private static final double IN2_MM2 = 25.4 * 25.4;
  private static final String SCENARIO =
      "Invented sample: no real piece, person, shop or firm is meant. ";

  private MakeModels() {}

  /**
   * Writes all models and jobs.
   *
   * @param args the directory
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      throw new IllegalArgumentException("One argument is needed: the directory to write to");
    }
    Path dir = Path.of(args[0]);
    Files.createDirectories(dir);
    StlWriter.writeBinary(CupMaker.cup(), dir.resolve("cup.stl"), "Regatta cup, mm");
    StlWriter.writeBinary(RimMaker.rim(), dir.resolve("rim.stl"), "Show rim, mm");
    StlWriter.writeBinary(ScanMaker.scan(), dir.resolve("cup-scan.stl"), "Scan, no unit");
    PlaqueMaker.Plaque plaque = PlaqueMaker.plaque();
    ObjWriter.write(plaque.mesh(), plaque.labels(), dir.resolve("plaque.obj"));
    write(cupJob(), dir.resolve("cup.json"));
    write(rimJob(), dir.resolve("rim.json"));
    write(scanJob(), dir.resolve("cup-scan.json"));
    write(plaqueJob(), dir.resolve("plaque.json"));
  }

  /**
   * Writes a job with its mesh recorded, without keeping the earlier version beside it, as saving
   * an edited job does.
   */
  private static void write(Job job, Path file) throws IOException {
    try {
      Job recorded = Planner.piece(job, file, Progress.NONE).recordedIn(job);
      SafeFiles.replace(file, JobFile.text(recorded).getBytes(StandardCharsets.UTF_8));
    } catch (InputException e) {
      throw new IllegalStateException("A model just written is refused", e);
    }
  }

  private static Job cupJob() {
    return new Job(
        "Regatta cup",
        SCENARIO
            + "A brass cup: gold outside, the bowl's inside and the underside of the foot stay bare, "
            + "and so does a round shield for engraving.",
        new Job.MeshSource("cup.stl", "", new Job.Scale.Unit("mm")),
        Treatment.PLATE,
        List.of(
            new Mark.CreaseFill("Inside of the bowl", Treatment.BARE, Vector3D.of(0, 0, 92.5), 40),
            new Mark.CreaseFill("Underside of the foot", Treatment.BARE, Vector3D.ZERO, 40),
            new Mark.Near(
                "Shield for engraving", Treatment.BARE, List.of(Vector3D.of(0, -63, 190)), 18)),
        new Job.SectionRules(new Job.Limit.Area(24 * IN2_MM2), 2, 5),
        JobDefaults.plating("brass"),
        JobDefaults.masking(),
        UnitSystem.METRIC);
  }

  private static Job scanJob() {
    double turn = Math.toRadians(37);
    Vector3D base = Vector3D.of(412, -187, 733);
    Vector3D inBowl =
        base.add(
            Vector3D.of(
                -20 * Math.cos(turn) + 10 * Math.sin(turn),
                -20 * Math.sin(turn) - 10 * Math.cos(turn),
                97));
    return new Job(
        "Regatta cup, scanned",
        SCENARIO
            + "The cup as a phone scanned it: rough, with two holes, grown together with the table, "
            + "in no stated unit. Its height, 232 mm, was taken with a ruler.",
        new Job.MeshSource("cup-scan.stl", "", new Job.Scale.KnownLength(232, Job.Along.Z)),
        List.of(
            new Repair.CutTable(Optional.empty(), OptionalDouble.empty()),
            new Repair.KeepLargest(1),
            new Repair.FillHoles(120)),
        Treatment.PLATE,
        List.of(new Mark.CreaseFill("Inside of the bowl", Treatment.BARE, inBowl, 50)),
        new Job.SectionRules(new Job.Limit.Area(24 * IN2_MM2), 2, 5),
        JobDefaults.plating("brass"),
        JobDefaults.masking(),
        UnitSystem.METRIC);
  }

  private static Job rimJob() {
    return new Job(
        "Show rim",
        SCENARIO
            + "A wheel rim for a parade car: gold on the show side, the spokes and the hub. The tyre "
            + "side, the back of the barrel, the bore and the bolt holes stay bare.",
        new Job.MeshSource("rim.stl", "", new Job.Scale.Unit("mm")),
        Treatment.PLATE,
        List.of(
            // Below the flange's rounding, which is drawn in steps of 15° and gets gold.
            new Mark.CreaseFill(
                "Tyre side, front flange", Treatment.BARE, Vector3D.of(209, 0, 86.3), 10),
            fillAt("Tyre side, front bead seat", 201.5, 0, 52),
            fillAt("Tyre side, front wall of the well", 190, 0, 7.5),
            fillAt("Tyre side, well", 180, 0, -25),
            fillAt("Bore", 33, 0, 35),
            new Mark.HalfSpace(
                "Back of the barrel", Treatment.BARE, Vector3D.of(0, 0, 5), Vector3D.of(0, 0, -1)),
            boltHole(0),
            boltHole(1),
            boltHole(2),
            boltHole(3),
            boltHole(4)),
        new Job.SectionRules(new Job.Limit.Area(20 * IN2_MM2), 2, 6),
        JobDefaults.plating("nickel-plated"),
        JobDefaults.masking(),
        UnitSystem.INCH);
  }

  private static Mark fillAt(String name, double x, double y, double z) {
    return new Mark.CreaseFill(name, Treatment.BARE, Vector3D.of(x, y, z), 25);
  }

  private static Mark boltHole(int i) {
    double angle = 2 * Math.PI * (i + 0.5) / RimMaker.BOLTS;
    double radius = 50;
    return new Mark.CreaseFill(
        "Bolt hole " + (i + 1),
        Treatment.BARE,
        Vector3D.of((radius - 6) * Math.cos(angle), (radius - 6) * Math.sin(angle), 35),
        50);
  }

  private static Job plaqueJob() {
    return new Job(
        "Regatta plaque",
        SCENARIO
            + "A brass name plate with raised frame and lettering: gold on the face and the upper "
            + "half of the edge; the back and the lower half of the edge stay bare.",
        new Job.MeshSource("plaque.obj", "", new Job.Scale.Unit("mm")),
        Treatment.PLATE,
        List.of(
            new Mark.HalfSpace(
                "Back and lower edge",
                Treatment.BARE,
                Vector3D.of(0, 0, 3),
                Vector3D.of(0, 0, -1))),
        new Job.SectionRules(new Job.Limit.Area(12 * IN2_MM2), 1.5, 4),
        JobDefaults.plating("brass"),
        JobDefaults.masking(),
        UnitSystem.INCH);
  }
}
