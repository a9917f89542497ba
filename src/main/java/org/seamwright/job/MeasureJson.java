package org.seamwright.job;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.measure.Revolution;
import org.seamwright.measure.Survey;
import org.seamwright.measure.TurnSymmetry;
import org.seamwright.mend.Mended;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.units.LengthUnit;

/** The figures of a piece as JSON, for scripts. Areas in mm² and in², never without the unit. */
public final class MeasureJson {
  /** 25.4² (NIST SP 811), written out since the product of two doubles is off by a rounding. */
  private static final double MM2_PER_IN2 = 645.16;

  private MeasureJson() {}

  /**
   * The figures as JSON text.
   *
   * @param file name of the mesh file, as it is to be shown
   * @param scale how its unit was told
   * @param piece the piece measured
   */
  public static String text(String file, Job.Scale scale, Piece piece) {
    return text(file, scale, piece, false);
  }

  /**
   * The same, with the axis of the piece if it is looked for and found.
   *
   * @param lookForAxis takes a second on a large mesh
   */
  public static String text(String file, Job.Scale scale, Piece piece, boolean lookForAxis) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("file", file);
    tree.put("format", piece.document().format());
    tree.put("unit", unit(scale, piece.mmPerUnit()));
    tree.put("mmPerUnit", piece.mmPerUnit());
    tree.put("cleaning", cleaning(piece.cleaned().done()));
    tree.putAll(survey(piece.survey()));
    if (lookForAxis) {
      axis(piece.mesh()).ifPresent(axis -> tree.put("axis", axis));
    }
    tree.put("notices", notices(piece.notices()));
    return JsonText.of(tree);
  }

  /**
   * What a file without a unit could be, as JSON text: sizes in each likely unit, no area.
   *
   * @param file name of the mesh file, as it is to be shown
   * @param format as people call it
   * @param candidates the likeliest first
   */
  public static String withoutUnit(
      String file, String format, List<LikelyUnits.Candidate> candidates) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("file", file);
    tree.put("format", format);
    tree.put("unit", "unknown");
    tree.put(
        "sizes",
        candidates.stream()
            .map(
                candidate -> {
                  Map<String, Object> size = new LinkedHashMap<>();
                  size.put("unit", candidate.unit().symbol());
                  size.put("mmPerUnit", candidate.unit().mmPer());
                  size.put("sizeMm", sizeMm(candidate.sizeMm()));
                  size.put("fitsBench", candidate.fitsBench());
                  return size;
                })
            .toList());
    return JsonText.of(tree);
  }

  private static List<Double> sizeMm(Bounds bounds) {
    return List.of(bounds.sizeX(), bounds.sizeY(), bounds.sizeZ());
  }

  /** Unit as told or as the file says: a unit's symbol, or "known length". */
  static String unit(Job.Scale scale, double mmPerUnit) {
    if (scale instanceof Job.Scale.Unit unit) {
      return unit.unit();
    }
    return scale instanceof Job.Scale.OfFile
        ? Arrays.stream(LengthUnit.values())
            .filter(unit -> unit.mmPer() == mmPerUnit)
            .map(LengthUnit::symbol)
            .findFirst()
            .orElse("file")
        : "known length";
  }

  static Map<String, Object> survey(Survey survey) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("triangles", survey.triangles());
    tree.put("vertices", survey.vertices());
    tree.put("areaMm2", survey.areaMm2());
    tree.put("areaIn2", survey.areaMm2() / MM2_PER_IN2);
    tree.put("smoothAreaMm2", survey.smooth().areaMm2());
    tree.put("smoothLowMm2", survey.smooth().lowMm2());
    tree.put("smoothHighMm2", survey.smooth().highMm2());
    tree.put("roughnessMm2", survey.smooth().roughnessMm2());
    tree.put("noiseMm2", survey.smooth().noiseMm2());
    tree.put("tipMm", survey.smooth().tipMm());
    tree.put("volumeMm3", survey.volumeMm3());
    tree.put("sizeMm", sizeMm(survey.bounds()));
    tree.put("parts", survey.parts());
    tree.put("openEdges", survey.openEdges());
    tree.put("branchingEdges", survey.branchingEdges());
    tree.put("flippedEdges", survey.flippedEdges());
    tree.put("duplicateTriangles", survey.duplicateTriangles());
    tree.put("degenerateTriangles", survey.degenerateTriangles());
    tree.put("closed", survey.closed());
    return tree;
  }

  static List<Map<String, Object>> cleaning(List<Mended.Done> steps) {
    return steps.stream()
        .map(
            done -> {
              Map<String, Object> tree = new LinkedHashMap<>();
              tree.put("kind", done.kind());
              tree.put("count", done.count());
              tree.put("beforeMm2", done.beforeMm2());
              tree.put("lostMm2", done.lostMm2());
              tree.put("gainedMm2", done.gainedMm2());
              tree.put("afterMm2", done.afterMm2());
              return tree;
            })
        .toList();
  }

  private static Optional<Map<String, Object>> axis(Mesh meshMm) {
    Revolution axis = Revolution.of(meshMm);
    if (!axis.isSure()) {
      return Optional.empty();
    }
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("pointMm", numbers(axis.point()));
    tree.put("direction", numbers(axis.direction()));
    tree.put("confidence", axis.confidence());
    TurnSymmetry.about(axis, meshMm)
        .ifPresent(
            repeats -> {
              tree.put("repeats", repeats.count());
              tree.put("repeatsConfidence", repeats.confidence());
            });
    return Optional.of(tree);
  }

  private static List<Double> numbers(Vector3D v) {
    return List.of(v.getX(), v.getY(), v.getZ());
  }

  static List<Map<String, Object>> notices(List<Notice> notices) {
    return notices.stream()
        .map(
            notice -> {
              Map<String, Object> tree = new LinkedHashMap<>();
              tree.put("code", notice.code());
              tree.put("count", notice.count());
              tree.put("text", notice.text());
              return tree;
            })
        .toList();
  }
}
