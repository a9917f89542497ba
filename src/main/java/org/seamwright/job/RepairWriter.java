package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mend.Repair;
import org.seamwright.units.UnitSystem;

/** Spells out one entry of {@code cleaning}. */
final class RepairWriter {
  private final Map<String, Object> tree = new LinkedHashMap<>();
  private final UnitSystem display;

  private RepairWriter(UnitSystem display) {
    this.display = display;
  }

  static Map<String, Object> tree(Repair repair, UnitSystem display) {
    RepairWriter writer = new RepairWriter(display);
    writer.tree.put("kind", repair.kind());
    writer.keys(repair);
    return writer.tree;
  }

  private void keys(Repair repair) {
    if (repair instanceof Repair.KeepParts parts) {
      tree.put("points", parts.points().stream().map(RepairWriter::vector).toList());
    } else if (repair instanceof Repair.KeepLargest largest) {
      tree.put("count", largest.count());
    } else if (repair instanceof Repair.KeepAbove above) {
      tree.put("share", above.share());
    } else if (repair instanceof Repair.CutTable table) {
      table.point().ifPresent(p -> tree.put("point", vector(p)));
      length("clearance", table.clearanceMm());
    } else if (repair instanceof Repair.CutBelow below) {
      tree.put("point", vector(below.point()));
      tree.put("normal", vector(below.normal()));
    } else if (repair instanceof Repair.FillHoles fill) {
      length("around", OptionalDouble.of(fill.aroundMm()));
    } else if (repair instanceof Repair.Weld weld) {
      length("tolerance", weld.toleranceMm());
    } else if (repair instanceof Repair.SplitEdges split) {
      length("tolerance", split.toleranceMm());
    }
  }

  private void length(String key, OptionalDouble mm) {
    mm.ifPresent(value -> tree.put(key, AmountKind.LENGTH.write(value, display)));
  }

  static List<Double> vector(Vector3D v) {
    return List.of(v.getX(), v.getY(), v.getZ());
  }
}
