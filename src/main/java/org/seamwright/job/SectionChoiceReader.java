package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionSymmetry;
import org.seamwright.section.SectionWay;

/** Reads what a job asks of its sections beyond limit, laps and order: way, symmetry and edits. */
final class SectionChoiceReader {
  private SectionChoiceReader() {}

  /** Reads the keys {@code way}, {@code symmetry} and {@code edits} of {@code sections}. */
  static SectionChoices read(JobNode.Keys keys) throws JobFileException {
    Optional<SectionWay> way = keys.get("way", Optional.empty(), n -> Optional.of(way(n)));
    return new SectionChoices(
        way,
        keys.get(
            "symmetry",
            Optional.empty(),
            n -> {
              if (way.isPresent()) {
                throw n.refuse(
                    "A symmetry goes with the automatic way only",
                    "Delete \"way\" or \"symmetry\"; sectors repeat by themselves.");
              }
              return Optional.of(symmetry(n));
            }),
        keys.get("edits", List.of(), n -> n.list(SectionChoiceReader::edit)));
  }

  /** Reads one of several kinds, each with keys of its own. */
  private static String kind(JobNode node, Map<String, List<String>> kinds)
      throws JobFileException {
    Set<String> known = new LinkedHashSet<>();
    kinds.values().forEach(known::addAll);
    Map<String, String> words = new LinkedHashMap<>();
    kinds.keySet().forEach(word -> words.put(word, word));
    return node.keys(known).get("kind", n -> n.oneOf(words));
  }

  @FunctionalInterface
  private interface Maker<T> {
    T make() throws JobFileException;
  }

  /** What single keys cannot show is refused at the whole. */
  private static <T> T made(JobNode node, Maker<T> maker) throws JobFileException {
    try {
      return maker.make();
    } catch (IllegalArgumentException e) {
      JobFileException refusal =
          node.refuse(e.getMessage(), "Change the keys here so that they fit together.");
      refusal.initCause(e);
      throw refusal;
    }
  }

  static SectionWay way(JobNode node) throws JobFileException {
    String kind = kind(node, JobKeys.WAYS);
    JobNode.Keys keys = node.keys(JobKeys.WAYS.get(kind));
    return made(
        node,
        () ->
            switch (kind) {
              case "rings" -> rings(keys);
              case "sectors" ->
                  new SectionWay.Sectors(axis(keys), keys.get("count", n -> n.whole(Range.COPIES)));
              case "ringsAndSectors" ->
                  new SectionWay.RingsAndSectors(
                      rings(keys), keys.get("sectors", n -> n.whole(Range.COPIES)));
              case "strips" ->
                  new SectionWay.Strips(keys.get("direction", JobNode::direction), count(keys));
              default ->
                  new SectionWay.NaturalFaces(keys.get("angle", n -> n.number(Range.CREASE)));
            });
  }

  private static SectionWay.Rings rings(JobNode.Keys keys) throws JobFileException {
    if (keys.has("count")) {
      keys.exactlyOne("count", "at", true);
    }
    return new SectionWay.Rings(
        axis(keys),
        keys.get("by", SectionWay.By.HEIGHT, n -> n.oneOf(JobKeys.RINGS_BY)),
        count(keys),
        keys.get("at", List.of(), n -> n.list(i -> i.amount(AmountKind.COORDINATE, Range.ANY))));
  }

  private static int count(JobNode.Keys keys) throws JobFileException {
    return keys.get("count", 0, n -> n.whole(Range.STRIPS));
  }

  private static SectionAxis axis(JobNode.Keys keys) throws JobFileException {
    Optional<Vector3D> zero = keys.get("zero", Optional.empty(), n -> Optional.of(n.direction()));
    Optional<Vector3D> point = keys.get("point", Optional.empty(), n -> Optional.of(n.point()));
    Optional<Vector3D> direction = keys.get("axis", Optional.empty(), AxisKeys::axis);
    return new SectionAxis(point, direction, zero);
  }

  static SectionSymmetry symmetry(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.SYMMETRY);
    return new SectionSymmetry(axis(keys), keys.get("count", 0, n -> n.whole(Range.COPIES)));
  }

  static SectionEdit edit(JobNode node) throws JobFileException {
    String kind = kind(node, JobKeys.SECTION_EDITS);
    JobNode.Keys keys = node.keys(JobKeys.SECTION_EDITS.get(kind));
    return made(
        node,
        () ->
            switch (kind) {
              case "merge" -> {
                List<Vector3D> two = two(keys, "points");
                yield new SectionEdit.Merge(two.get(0), two.get(1));
              }
              case "split" -> {
                keys.exactlyOne("path", "parts", false);
                Vector3D at = keys.get("point", JobNode::point);
                yield keys.has("path")
                    ? new SectionEdit.SplitAlong(at, path(keys))
                    : new SectionEdit.SplitEvenly(at, keys.get("parts", n -> n.whole(Range.PARTS)));
              }
              case "moveSeam" -> {
                List<Vector3D> two = two(keys, "between");
                yield new SectionEdit.MoveSeam(two.get(0), two.get(1), path(keys));
              }
              case "pin" -> new SectionEdit.Pin(path(keys));
              case "rename" ->
                  new SectionEdit.Rename(
                      keys.get("point", JobNode::point), keys.get("name", JobNode::text));
              default ->
                  new SectionEdit.Renumber(
                      keys.get("point", JobNode::point),
                      keys.get("number", n -> n.whole(Range.COUNT)));
            });
  }

  private static List<Vector3D> path(JobNode.Keys keys) throws JobFileException {
    return keys.get("path", n -> n.list(JobNode::point));
  }

  private static List<Vector3D> two(JobNode.Keys keys, String key) throws JobFileException {
    return keys.get(
        key,
        n -> {
          List<Vector3D> points = n.list(JobNode::point);
          if (points.size() != 2) {
            throw n.refuse(
                "Expected two points, found " + points.size(), "Give one in each section.");
          }
          return points;
        });
  }
}
