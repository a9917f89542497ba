package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mask.MaskSettings;
import org.seamwright.region.Mark;
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
    tree.put("ground", JobKeys.word(JobKeys.TREATMENTS, job.ground()));
    tree.put("marks", job.marks().stream().map(writer::mark).toList());
    tree.put("sections", writer.sections(job.sections()));
    tree.put("plating", writer.plating(job.plating()));
    tree.put("masking", writer.masking(job.masking()));
    return tree;
  }

  private Map<String, Object> mesh(Job.MeshSource mesh) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("file", mesh.file());
    if (!mesh.sha256().isEmpty()) {
      tree.put("sha256", mesh.sha256());
    }
    if (mesh.scale() instanceof Job.Scale.Unit unit) {
      tree.put("unit", unit.unit());
    } else if (mesh.scale() instanceof Job.Scale.KnownLength known) {
      Map<String, Object> length = new LinkedHashMap<>();
      length.put("length", length(known.lengthMm()));
      length.put("along", JobKeys.word(JobKeys.ALONGS, known.along()));
      tree.put("knownLength", length);
    }
    return tree;
  }

  private Map<String, Object> mark(Mark mark) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("kind", kind(mark));
    tree.put("name", mark.name());
    tree.put("treatment", JobKeys.word(JobKeys.TREATMENTS, mark.treatment()));
    if (mark instanceof Mark.HalfSpace half) {
      tree.put("point", vector(half.point()));
      tree.put("normal", vector(half.normal()));
    } else if (mark instanceof Mark.Near near) {
      tree.put("radius", length(near.radiusMm()));
      tree.put("path", near.path().stream().map(JobWriter::vector).toList());
    } else if (mark instanceof Mark.CreaseFill fill) {
      tree.put("point", vector(fill.point()));
      tree.put("angle", fill.angleDegrees());
    } else if (mark instanceof Mark.WholePart part) {
      tree.put("point", vector(part.point()));
    } else if (mark instanceof Mark.Sector sector) {
      tree.put("point", vector(sector.point()));
      tree.put("axis", vector(sector.axis()));
      tree.put("zero", vector(sector.zero()));
      tree.put("from", sector.fromDegrees());
      tree.put("to", sector.toDegrees());
    } else if (mark instanceof Mark.InBox box) {
      tree.put("low", vector(box.low()));
      tree.put("high", vector(box.high()));
    }
    return tree;
  }

  private static String kind(Mark mark) {
    if (mark instanceof Mark.HalfSpace) {
      return "halfSpace";
    } else if (mark instanceof Mark.Near) {
      return "near";
    } else if (mark instanceof Mark.CreaseFill) {
      return "creaseFill";
    } else if (mark instanceof Mark.WholePart) {
      return "part";
    } else if (mark instanceof Mark.Sector) {
      return "sector";
    } else if (mark instanceof Mark.InBox) {
      return "box";
    }
    throw new IllegalStateException("No spelling for " + mark);
  }

  private Map<String, Object> sections(Job.SectionRules rules) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (rules.limit() instanceof Job.Limit.Area area) {
      tree.put("limit", AmountKind.AREA.write(area.mm2(), display));
    } else if (rules.limit() instanceof Job.Limit.Wet wet) {
      tree.put("wetWindow", AmountKind.TIME.write(wet.windowSeconds(), display));
    }
    tree.put("activationLap", length(rules.activationLapMm()));
    tree.put("flashLap", length(rules.flashLapMm()));
    return tree;
  }

  private Map<String, Object> plating(Job.PlatingRules rules) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("recipe", rules.recipe());
    tree.put("deposit", rules.deposit());
    tree.put("flash", AmountKind.THICKNESS.write(rules.flashUm(), display));
    tree.put("thickness", AmountKind.THICKNESS.write(rules.thicknessUm(), display));
    tree.put("loss", rules.lossShare());
    tree.put("solution", AmountKind.CONCENTRATION.write(rules.solutionGPerL(), display));
    tree.put("usable", rules.usableShare());
    tree.put("secondsPerCm2PerUm", rules.secondsPerCm2PerUm());
    tree.put("efficiency", rules.efficiency());
    return tree;
  }

  private Map<String, Object> masking(MaskSettings masking) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("tapeWidth", length(masking.tapeWidthMm()));
    tree.put("tapeOverlap", length(masking.tapeOverlapMm()));
    tree.put("tapeRoll", length(masking.tapeRollMm()));
    tree.put("splash", length(masking.splashMm()));
    tree.put("lacquerSolids", masking.lacquerSolids());
    tree.put("lacquerDry", AmountKind.THICKNESS.write(masking.lacquerDryUm(), display));
    tree.put("lacquerCoats", masking.lacquerCoats());
    tree.put("lacquerLoss", masking.lacquerLoss());
    return tree;
  }

  private String length(double mm) {
    return AmountKind.LENGTH.write(mm, display);
  }

  private static List<Double> vector(Vector3D v) {
    return List.of(v.getX(), v.getY(), v.getZ());
  }
}
