package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionWay;
import org.seamwright.units.UnitSystem;

/** Spells out what {@link SectionChoiceReader} reads. */
final class SectionChoiceWriter {
  private SectionChoiceWriter() {}

  static void write(SectionChoices choices, UnitSystem display, Map<String, Object> tree) {
    choices.way().ifPresent(way -> tree.put("way", way(way, display)));
    choices
        .symmetry()
        .ifPresent(
            symmetry -> {
              Map<String, Object> own = new LinkedHashMap<>();
              axis(symmetry.axis(), own);
              if (symmetry.count() > 0) {
                own.put("count", symmetry.count());
              }
              tree.put("symmetry", own);
            });
    tree.put("edits", choices.edits().stream().map(SectionChoiceWriter::edit).toList());
  }

  static Map<String, Object> way(SectionWay way, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (way instanceof SectionWay.Rings rings) {
      tree.put("kind", "rings");
      rings(rings, display, tree);
    } else if (way instanceof SectionWay.Sectors sectors) {
      tree.put("kind", "sectors");
      axis(sectors.axis(), tree);
      tree.put("count", sectors.count());
    } else if (way instanceof SectionWay.RingsAndSectors both) {
      tree.put("kind", "ringsAndSectors");
      rings(both.rings(), display, tree);
      tree.put("sectors", both.sectors());
    } else if (way instanceof SectionWay.Strips strips) {
      tree.put("kind", "strips");
      tree.put("direction", RepairWriter.vector(strips.direction()));
      count(strips.count(), tree);
    } else if (way instanceof SectionWay.NaturalFaces faces) {
      tree.put("kind", "naturalFaces");
      tree.put("angle", faces.angleDegrees());
    }
    return tree;
  }

  private static void rings(SectionWay.Rings rings, UnitSystem display, Map<String, Object> tree) {
    axis(rings.axis(), tree);
    tree.put("by", JobKeys.word(JobKeys.RINGS_BY, rings.by()));
    count(rings.count(), tree);
    if (!rings.atMm().isEmpty()) {
      tree.put(
          "at", rings.atMm().stream().map(mm -> AmountKind.COORDINATE.write(mm, display)).toList());
    }
  }

  private static void count(int count, Map<String, Object> tree) {
    if (count > 0) {
      tree.put("count", count);
    }
  }

  private static void axis(SectionAxis axis, Map<String, Object> tree) {
    axis.point().ifPresent(point -> tree.put("point", RepairWriter.vector(point)));
    tree.put("axis", axis.direction().<Object>map(RepairWriter::vector).orElse(JobKeys.FOUND));
    axis.zero().ifPresent(zero -> tree.put("zero", RepairWriter.vector(zero)));
  }

  static Map<String, Object> edit(SectionEdit edit) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("kind", word(edit));
    if (edit instanceof SectionEdit.Merge merge) {
      tree.put("points", path(List.of(merge.a(), merge.b())));
    } else if (edit instanceof SectionEdit.SplitAlong split) {
      tree.put("point", RepairWriter.vector(split.at()));
      tree.put("path", path(split.path()));
    } else if (edit instanceof SectionEdit.SplitEvenly split) {
      tree.put("point", RepairWriter.vector(split.at()));
      tree.put("parts", split.count());
    } else if (edit instanceof SectionEdit.MoveSeam move) {
      tree.put("between", path(List.of(move.a(), move.b())));
      tree.put("path", path(move.path()));
    } else if (edit instanceof SectionEdit.Pin pin) {
      tree.put("path", path(pin.path()));
    } else if (edit instanceof SectionEdit.Rename rename) {
      tree.put("point", RepairWriter.vector(rename.at()));
      tree.put("name", rename.name());
    } else if (edit instanceof SectionEdit.Renumber renumber) {
      tree.put("point", RepairWriter.vector(renumber.at()));
      tree.put("number", renumber.number());
    }
    return tree;
  }

  /** The word of an edit's kind. */
  static String word(SectionEdit edit) {
    if (edit instanceof SectionEdit.SplitAlong || edit instanceof SectionEdit.SplitEvenly) {
      return "split";
    }
    String name = edit.getClass().getSimpleName();
    return Character.toLowerCase(name.charAt(0)) + name.substring(1);
  }

  private static List<Object> path(List<Vector3D> points) {
    return points.stream().<Object>map(RepairWriter::vector).toList();
  }
}
