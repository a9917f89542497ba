package org.seamwright.job;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Mark;
import org.seamwright.units.UnitSystem;

/** Every kind of mark there is in a job file, by its word. */
final class MarkKinds {
  private static final Map<String, MarkKind<?>> ALL = all();

  private MarkKinds() {}

  private static Map<String, MarkKind<?>> all() {
    Map<String, MarkKind<?>> all = new LinkedHashMap<>();
    places(all);
    fills(all);
    BodyMarkKinds.add(all);
    others(all);
    return Collections.unmodifiableMap(all);
  }

  private static void places(Map<String, MarkKind<?>> all) {
    all.put(
        "halfSpace",
        MarkKind.place(
                Mark.HalfSpace.class,
                (head, keys) ->
                    new Mark.HalfSpace(
                        head.name(),
                        head.treatment(),
                        keys.get("point", JobNode::point),
                        keys.get("normal", JobNode::direction)))
            .vector("point", Mark.HalfSpace::point)
            .vector("normal", Mark.HalfSpace::normal));
    all.put(
        "near",
        MarkKind.place(
                Mark.Near.class,
                (head, keys) ->
                    new Mark.Near(
                        head.name(),
                        head.treatment(),
                        keys.get("path", MarkKinds::path),
                        keys.get("radius", MarkKinds::length)))
            .length("radius", Mark.Near::radiusMm)
            .path("path", Mark.Near::path));
    all.put(
        "sector",
        MarkKind.place(
                Mark.Sector.class,
                (head, keys) -> {
                  AxisKeys about = AxisKeys.readWithZero(keys);
                  return new Mark.Sector(
                      head.name(),
                      head.treatment(),
                      about.point(),
                      about.axis(),
                      about.zero(),
                      keys.get("from", n -> n.number(Range.ANY)),
                      keys.get("to", n -> n.number(Range.ANY)),
                      about.found());
                })
            .maybeVector("point", m -> AxisKeys.ownPoint(m.found(), m.point()))
            .axis(Mark.Sector::found, Mark.Sector::axis)
            .maybeVector("zero", m -> AxisKeys.ownZero(m.found(), m.zero()))
            .key("from", Mark.Sector::fromDegrees)
            .key("to", Mark.Sector::toDegrees));
    all.put(
        "ring",
        MarkKind.place(
                Mark.Ring.class,
                (head, keys) -> {
                  AxisKeys about = AxisKeys.read(keys);
                  return new Mark.Ring(
                      head.name(),
                      head.treatment(),
                      about.point(),
                      about.axis(),
                      keys.get("low", Double.NEGATIVE_INFINITY, MarkKinds::coordinate),
                      keys.get("high", Double.POSITIVE_INFINITY, MarkKinds::coordinate),
                      keys.get("inner", 0.0, MarkKinds::length),
                      keys.get("outer", Double.POSITIVE_INFINITY, MarkKinds::length),
                      about.found());
                })
            .maybeVector("point", m -> AxisKeys.ownPoint(m.found(), m.point()))
            .axis(Mark.Ring::found, Mark.Ring::axis)
            .limit("low", Double.NEGATIVE_INFINITY, Mark.Ring::fromMm)
            .limit("high", Double.POSITIVE_INFINITY, Mark.Ring::toMm)
            .limit("inner", 0, Mark.Ring::innerMm)
            .limit("outer", Double.POSITIVE_INFINITY, Mark.Ring::outerMm));
    all.put(
        "box",
        MarkKind.place(
                Mark.InBox.class,
                (head, keys) ->
                    new Mark.InBox(
                        head.name(),
                        head.treatment(),
                        keys.get("low", JobNode::point),
                        keys.get("high", JobNode::point)))
            .vector("low", Mark.InBox::low)
            .vector("high", Mark.InBox::high));
  }

  private static void fills(Map<String, MarkKind<?>> all) {
    all.put(
        "outline",
        MarkKind.place(
                Mark.Outline.class,
                (head, keys) ->
                    new Mark.Outline(
                        head.name(),
                        head.treatment(),
                        keys.get("path", MarkKinds::path),
                        keys.get("inside", JobNode::point)))
            .vector("inside", Mark.Outline::inside)
            .path("path", Mark.Outline::path));
    all.put(
        "creaseFill",
        MarkKind.place(
                Mark.CreaseFill.class,
                (head, keys) ->
                    new Mark.CreaseFill(
                        head.name(),
                        head.treatment(),
                        keys.get("point", JobNode::point),
                        keys.get("angle", MarkKinds::angle),
                        keys.get("closeGaps", 0.0, MarkKinds::length)))
            .vector("point", Mark.CreaseFill::point)
            .key("angle", Mark.CreaseFill::angleDegrees)
            .limit("closeGaps", 0, Mark.CreaseFill::gapsMm));
    all.put(
        "part",
        MarkKind.place(
                Mark.WholePart.class,
                (head, keys) ->
                    new Mark.WholePart(
                        head.name(), head.treatment(), keys.get("point", JobNode::point)))
            .vector("point", Mark.WholePart::point));
    all.put(
        "facing",
        MarkKind.place(
                Mark.Facing.class,
                (head, keys) ->
                    new Mark.Facing(
                        head.name(),
                        head.treatment(),
                        keys.get("direction", JobNode::direction),
                        keys.get("angle", MarkKinds::angle)))
            .vector("direction", Mark.Facing::direction)
            .key("angle", Mark.Facing::angleDegrees));
    all.put(
        "named",
        MarkKind.place(
                Mark.Named.class,
                (head, keys) ->
                    new Mark.Named(head.name(), head.treatment(), keys.get("label", JobNode::text)))
            .key("label", Mark.Named::label));
  }

  private static void others(Map<String, MarkKind<?>> all) {
    all.put(
        "grow",
        MarkKind.place(
                Mark.Grow.class,
                (head, keys) ->
                    new Mark.Grow(
                        head.name(),
                        head.treatment(),
                        keys.get("by", MarkKinds::length),
                        keys.get(
                            "into",
                            Optional.empty(),
                            n -> Optional.of(n.oneOf(JobKeys.TREATMENTS)))))
            .length("by", Mark.Grow::byMm)
            .key("into", m -> m.into().map(t -> JobKeys.word(JobKeys.TREATMENTS, t)).orElse(null)));
    all.put(
        "smooth",
        MarkKind.place(
                Mark.Smooth.class,
                (head, keys) ->
                    new Mark.Smooth(
                        head.name(), head.treatment(), keys.get("radius", MarkKinds::length)))
            .length("radius", Mark.Smooth::radiusMm));
    all.put(
        "mirror",
        MarkKind.other(
                Mark.Mirror.class,
                (head, keys) ->
                    new Mark.Mirror(
                        head.name(),
                        keys.get("point", JobNode::point),
                        keys.get("normal", JobNode::direction)))
            .vector("point", Mark.Mirror::point)
            .vector("normal", Mark.Mirror::normal));
    all.put(
        "turn",
        MarkKind.other(
                Mark.Turn.class,
                (head, keys) -> {
                  AxisKeys about = AxisKeys.read(keys);
                  return new Mark.Turn(
                      head.name(),
                      about.point(),
                      about.axis(),
                      keys.get("count", n -> n.whole(Range.COPIES)),
                      about.found());
                })
            .maybeVector("point", m -> AxisKeys.ownPoint(m.found(), m.point()))
            .axis(Mark.Turn::found, Mark.Turn::axis)
            .key("count", Mark.Turn::count));
    all.put(
        "invert", MarkKind.other(Mark.Invert.class, (head, keys) -> new Mark.Invert(head.name())));
  }

  /** A length above 0, mm. */
  static double length(JobNode node) throws JobFileException {
    return node.amount(AmountKind.LENGTH, Range.ABOVE_ZERO);
  }

  private static double coordinate(JobNode node) throws JobFileException {
    return node.amount(AmountKind.COORDINATE, Range.ANY);
  }

  private static double angle(JobNode node) throws JobFileException {
    return node.number(Range.CREASE);
  }

  private static List<Vector3D> path(JobNode node) throws JobFileException {
    List<Vector3D> path = node.list(JobNode::point);
    if (path.isEmpty()) {
      throw node.refuse("The path has no point", "Give at least one point, [[x, y, z]].");
    }
    return path;
  }

  /** Keys of each kind, in the order they are written. */
  static Map<String, List<String>> keys() {
    Map<String, List<String>> keys = new LinkedHashMap<>();
    ALL.forEach((word, kind) -> keys.put(word, kind.keys()));
    return keys;
  }

  /** All kinds by their words. */
  static Map<String, MarkKind<?>> byWord() {
    return ALL;
  }

  /** The word of a mark's kind. */
  static String word(Mark mark) {
    return ALL.entrySet().stream()
        .filter(kind -> kind.getValue().is(mark))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("No spelling for " + mark));
  }

  /** Reads one entry of {@code marks}. */
  static Mark read(JobNode node) throws JobFileException {
    // The kind comes first, since it says which other keys there may be.
    Set<String> known = new LinkedHashSet<>();
    keys().values().forEach(known::addAll);
    Map<String, String> words = new LinkedHashMap<>();
    ALL.keySet().forEach(word -> words.put(word, word));
    String word = node.keys(known).get("kind", n -> n.oneOf(words));
    return ALL.get(word).read(node);
  }

  /** Writes a mark. */
  static Map<String, Object> write(Mark mark, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    String word = word(mark);
    tree.put("kind", word);
    ALL.get(word).write(mark, display, tree);
    return tree;
  }
}
