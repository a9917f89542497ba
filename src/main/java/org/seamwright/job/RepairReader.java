package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mend.Repair;

/** Reads one entry of {@code cleaning}. */
final class RepairReader {
  private RepairReader() {}

  static Repair read(JobNode node) throws JobFileException {
    String kind = kind(node);
    JobNode.Keys keys = node.keys(JobKeys.REPAIRS.get(kind));
    return switch (kind) {
      case "keepParts" -> new Repair.KeepParts(keys.get("points", RepairReader::points));
      case "keepLargest" -> new Repair.KeepLargest(keys.get("count", n -> n.whole(Range.COUNT)));
      case "keepAbove" -> new Repair.KeepAbove(keys.get("share", n -> n.number(Range.SHARE)));
      case "cutTable" ->
          new Repair.CutTable(
              keys.get("point", Optional.empty(), n -> Optional.of(n.point())),
              keys.get(
                  "clearance",
                  OptionalDouble.empty(),
                  n -> OptionalDouble.of(n.amount(AmountKind.LENGTH, Range.ZERO_UP))));
      case "cutBelow" ->
          new Repair.CutBelow(
              keys.get("point", JobNode::point), keys.get("normal", JobNode::direction));
      case "dropFaulty" -> new Repair.DropFaulty();
      case "turnOutward" -> new Repair.TurnOutward();
      case "fillHoles" ->
          new Repair.FillHoles(
              keys.get("around", n -> n.amount(AmountKind.LENGTH, Range.ABOVE_ZERO)));
      case "dropInner" -> new Repair.DropInner();
      case "dropHidden" -> new Repair.DropHidden();
      case "weld" -> new Repair.Weld(tolerance(keys));
      case "splitEdges" -> new Repair.SplitEdges(tolerance(keys));
      default -> throw new IllegalStateException("No reader for cleaning step " + kind);
    };
  }

  private static OptionalDouble tolerance(JobNode.Keys keys) throws JobFileException {
    return keys.get(
        "tolerance",
        OptionalDouble.empty(),
        n -> OptionalDouble.of(n.amount(AmountKind.LENGTH, Range.ABOVE_ZERO)));
  }

  /** The kind comes first, since it says which other keys there may be. */
  private static String kind(JobNode node) throws JobFileException {
    Set<String> all = new LinkedHashSet<>();
    JobKeys.REPAIRS.values().forEach(all::addAll);
    Map<String, String> kinds = new LinkedHashMap<>();
    JobKeys.REPAIRS.keySet().forEach(k -> kinds.put(k, k));
    return node.keys(all).get("kind", n -> n.oneOf(kinds));
  }

  private static List<Vector3D> points(JobNode node) throws JobFileException {
    List<Vector3D> points = node.list(JobNode::point);
    if (points.isEmpty()) {
      throw node.refuse("There is no point", "Give one near each part to keep, [[x, y, z]].");
    }
    return points;
  }
}
