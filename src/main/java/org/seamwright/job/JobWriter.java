package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.seamwright.section.OrderPins;
import org.seamwright.units.UnitSystem;

/**
 * Spells a job out as a tree of keys: every key written, in a fixed order, so that a difference
 * between two files is a difference between two jobs.
 */
final class JobWriter {
  private final UnitSystem display;

  private JobWriter(UnitSystem display) {
    this.display = display;
  }

  static Map<String, Object> tree(Job job) {
    JobWriter writer = new JobWriter(job.display());
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put(JobKeys.VERSION, Job.VERSION);
    tree.put("piece", job.piece());
    tree.put("note", job.note());
    tree.put("display", JobKeys.word(JobKeys.DISPLAYS, job.display()));
    tree.put("mesh", writer.mesh(job.mesh()));
    tree.put(
        "cleaning", job.cleaning().stream().map(r -> RepairWriter.tree(r, job.display())).toList());
    tree.put("ground", JobKeys.word(JobKeys.TREATMENTS, job.ground()));
    tree.put("marks", job.marks().stream().map(m -> MarkKinds.write(m, job.display())).toList());
    tree.put("sections", writer.sections(job.sections()));
    tree.put("plating", PlatingWriter.tree(job.plating(), job.display()));
    tree.put("masking", MaskingJson.tree(job.masking(), job.display()));
    job.quote().ifPresent(rates -> tree.put("quote", QuoteJson.tree(rates)));
    return tree;
  }

  private Map<String, Object> mesh(Job.MeshSource mesh) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("file", mesh.file());
    if (!mesh.sha256().isEmpty()) {
      tree.put("sha256", mesh.sha256());
    }
    mesh.surface().ifPresent(surface -> tree.put("surface", surface(surface)));
    if (mesh.scale() instanceof Job.Scale.Unit unit) {
      tree.put("unit", unit.unit());
    } else if (mesh.scale() instanceof Job.Scale.KnownLength known) {
      Map<String, Object> length = new LinkedHashMap<>();
      length.put("length", length(known.lengthMm()));
      length.put("along", JobKeys.word(JobKeys.ALONGS, known.along()));
      tree.put("knownLength", length);
    } else {
      tree.put("unit", JobKeys.OF_FILE);
    }
    return tree;
  }

  /** The places in one text, so that they take one line. */
  private Map<String, Object> surface(SurfaceRecord surface) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("area", AmountKind.AREA.write(surface.areaMm2(), display));
    tree.put(
        "samples",
        surface.samples().stream()
            .map(
                p ->
                    PlainNumber.of(p.getX())
                        + ","
                        + PlainNumber.of(p.getY())
                        + ","
                        + PlainNumber.of(p.getZ()))
            .collect(Collectors.joining(" ")));
    return tree;
  }

  private Map<String, Object> sections(Job.SectionRules rules) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (rules.limit() instanceof Job.Limit.Area area) {
      tree.put("limit", AmountKind.AREA.write(area.mm2(), display));
    }
    tree.put("wetWindow", AmountKind.TIME.write(rules.limit().windowSeconds(), display));
    tree.put("activationLap", length(rules.activationLapMm()));
    tree.put("flashLap", length(rules.flashLapMm()));
    tree.put("order", order(rules.order()));
    tree.put("seams", seams(rules.seams()));
    SectionChoiceWriter.write(rules.choices(), display, tree);
    return tree;
  }

  private static Map<String, Object> seams(Job.SeamRules rules) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("crease", rules.weights().crease());
    tree.put("valley", rules.weights().valley());
    tree.put("hidden", rules.weights().hidden());
    tree.put("show", rules.weights().show());
    tree.put("showFaces", rules.showFaces());
    tree.put("rings", rules.rings());
    return tree;
  }

  private static Map<String, Object> order(OrderPins pins) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("first", pins.first().stream().map(RepairWriter::vector).toList());
    tree.put("last", pins.last().stream().map(RepairWriter::vector).toList());
    tree.put("before", pins.before().stream().map(JobWriter::before).toList());
    return tree;
  }

  private static Map<String, Object> before(OrderPins.Before pair) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("section", RepairWriter.vector(pair.section()));
    tree.put("before", RepairWriter.vector(pair.before()));
    return tree;
  }

  private String length(double mm) {
    return AmountKind.LENGTH.write(mm, display);
  }
}
