package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;

/** Reads one entry of {@code marks}. */
final class MarkReader {
  private MarkReader() {}

  static Mark read(JobNode node) throws JobFileException {
    String kind = kind(node);
    JobNode.Keys keys = node.keys(JobKeys.MARKS.get(kind));
    String name = keys.get("name", "", JobNode::text);
    Treatment treatment = keys.get("treatment", Treatment.BARE, n -> n.oneOf(JobKeys.TREATMENTS));
    try {
      return switch (kind) {
        case "halfSpace" ->
            new Mark.HalfSpace(
                name,
                treatment,
                keys.get("point", JobNode::point),
                keys.get("normal", JobNode::direction));
        case "near" ->
            new Mark.Near(
                name,
                treatment,
                keys.get("path", MarkReader::path),
                keys.get("radius", n -> n.amount(AmountKind.LENGTH, Range.ABOVE_ZERO)));
        case "creaseFill" ->
            new Mark.CreaseFill(
                name,
                treatment,
                keys.get("point", JobNode::point),
                keys.get("angle", n -> n.number(Range.CREASE)));
        case "part" -> new Mark.WholePart(name, treatment, keys.get("point", JobNode::point));
        case "sector" ->
            new Mark.Sector(
                name,
                treatment,
                keys.get("point", JobNode::point),
                keys.get("axis", JobNode::direction),
                keys.get("zero", JobNode::direction),
                keys.get("from", n -> n.number(Range.ANY)),
                keys.get("to", n -> n.number(Range.ANY)));
        case "box" ->
            new Mark.InBox(
                name, treatment, keys.get("low", JobNode::point), keys.get("high", JobNode::point));
        default -> throw new IllegalStateException("No reader for mark kind " + kind);
      };
    } catch (IllegalArgumentException e) {
      // What single keys cannot show: an empty box, a sector that ends before it starts.
      JobFileException refusal =
          node.refuse(e.getMessage(), "Change the keys of this mark so that they fit together.");
      refusal.initCause(e);
      throw refusal;
    }
  }

  /** The kind comes first, since it says which other keys there may be. */
  private static String kind(JobNode node) throws JobFileException {
    Set<String> all = new LinkedHashSet<>();
    JobKeys.MARKS.values().forEach(all::addAll);
    Map<String, String> kinds = new LinkedHashMap<>();
    JobKeys.MARKS.keySet().forEach(k -> kinds.put(k, k));
    return node.keys(all).get("kind", n -> n.oneOf(kinds));
  }

  private static List<Vector3D> path(JobNode node) throws JobFileException {
    List<Vector3D> path = node.list(JobNode::point);
    if (path.isEmpty()) {
      throw node.refuse("The path has no point", "Give at least one point, [[x, y, z]].");
    }
    return path;
  }
}
