package org.seamwright.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitSystem;

/**
 * How one kind of mark is spelled in a job file: its word, its keys, how they are read and written.
 *
 * @param <M> the kind
 */
final class MarkKind<M extends Mark> {
  /** Name and treatment, read already; a kind without a treatment ignores it. */
  record Head(String name, Treatment treatment) {}

  /** Makes a mark of its keys. */
  @FunctionalInterface
  interface Maker<M> {
    M make(Head head, JobNode.Keys keys) throws JobFileException;
  }

  /** Key of a mark that is switched off. */
  static final String OFF = "off";

  private final Class<M> type;
  private final Maker<M> maker;
  private final boolean treats;

  /** Writers by key, in the order they are written; a null value leaves the key out. */
  private final Map<String, BiFunction<M, UnitSystem, Object>> writers = new LinkedHashMap<>();

  /** What a command line's help calls the value of a key. */
  private final Map<String, String> labels = new LinkedHashMap<>();

  /** What becomes of the place if nothing is said. */
  private Treatment usual = Treatment.BARE;

  private MarkKind(Class<M> type, boolean treats, Maker<M> maker) {
    this.type = type;
    this.treats = treats;
    this.maker = maker;
  }

  /** A kind that says what becomes of a place. */
  static <M extends Mark.Place> MarkKind<M> place(Class<M> type, Maker<M> maker) {
    return new MarkKind<>(type, true, maker);
  }

  /** A kind that works on the marks before it. */
  static <M extends Mark> MarkKind<M> other(Class<M> type, Maker<M> maker) {
    return new MarkKind<>(type, false, maker);
  }

  /** Says what becomes of the place if nothing is said. */
  MarkKind<M> usually(Treatment treatment) {
    usual = treatment;
    return this;
  }

  /** What becomes of the place if nothing is said. */
  Treatment usual() {
    return usual;
  }

  /** Adds a key that holds a number or text. */
  MarkKind<M> key(String key, Function<M, Object> value) {
    return with(key, "VALUE", (mark, display) -> value.apply(mark));
  }

  /** Adds a key that holds a point or direction. */
  MarkKind<M> vector(String key, Function<M, Vector3D> value) {
    return with(key, "X,Y,Z", (mark, display) -> vector(value.apply(mark)));
  }

  /** Adds a key that holds a vector where a mark has one. */
  MarkKind<M> maybeVector(String key, Function<M, Optional<Vector3D>> value) {
    return with(
        key, "X,Y,Z", (mark, display) -> value.apply(mark).map(MarkKind::vector).orElse(null));
  }

  /** Adds the key for an axis: its direction, or the word for the piece's own. */
  MarkKind<M> axis(Function<M, Optional<Mark.FoundAxis>> found, Function<M, Vector3D> value) {
    return with(
        "axis",
        "X,Y,Z|" + JobKeys.FOUND,
        (mark, display) ->
            found.apply(mark).isPresent() ? JobKeys.FOUND : vector(value.apply(mark)));
  }

  /** Adds a key that holds a list of points. */
  MarkKind<M> path(String key, Function<M, List<Vector3D>> value) {
    return with(
        key,
        "\"X,Y,Z X,Y,Z ...\"",
        (mark, display) -> value.apply(mark).stream().map(MarkKind::vector).toList());
  }

  /** Adds a key that holds a length above 0 in mm. */
  MarkKind<M> length(String key, ToDoubleFunction<M> value) {
    return with(
        key,
        "LENGTH",
        (mark, display) -> AmountKind.LENGTH.write(value.applyAsDouble(mark), display));
  }

  /** Adds a key for a coordinate in mm, left out where it has a value that means "no limit". */
  MarkKind<M> limit(String key, double none, ToDoubleFunction<M> value) {
    return with(
        key,
        "LENGTH",
        (mark, display) ->
            value.applyAsDouble(mark) == none
                ? null
                : AmountKind.COORDINATE.write(value.applyAsDouble(mark), display));
  }

  private MarkKind<M> with(String key, String label, BiFunction<M, UnitSystem, Object> writer) {
    writers.put(key, writer);
    labels.put(key, label);
    return this;
  }

  private static List<Double> vector(Vector3D v) {
    return List.of(v.getX(), v.getY(), v.getZ());
  }

  /** Whether a mark is of this kind. */
  boolean is(Mark mark) {
    return type.isInstance(switchedOn(mark));
  }

  private static Mark switchedOn(Mark mark) {
    return mark instanceof Mark.Off off ? off.mark() : mark;
  }

  /** The keys in the order they are written. */
  List<String> keys() {
    List<String> keys = new ArrayList<>(List.of("kind", "name"));
    if (treats) {
      keys.add("treatment");
    }
    keys.add(OFF);
    keys.addAll(writers.keySet());
    return List.copyOf(keys);
  }

  /** What help calls the value of a key: LENGTH, X,Y,Z and so on. */
  String label(String key) {
    return switch (key) {
      case "name" -> "NAME";
      case "treatment" -> "TREATMENT";
      case OFF -> "true|false";
      default -> labels.getOrDefault(key, "VALUE");
    };
  }

  /** Reads a mark of this kind, switched off or not. */
  Mark read(JobNode node) throws JobFileException {
    M mark = switchedOn(node);
    return node.keys(keys()).get(OFF, false, JobNode::yes) ? new Mark.Off(mark) : mark;
  }

  private M switchedOn(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(keys());
    Treatment treatment =
        treats ? keys.get("treatment", usual, n -> n.oneOf(JobKeys.TREATMENTS)) : usual;
    Head head = new Head(keys.get("name", "", JobNode::text), treatment);
    try {
      return maker.make(head, keys);
    } catch (IllegalArgumentException e) {
      // What single keys cannot show: an empty box, a sector that ends before it starts.
      JobFileException refusal =
          node.refuse(e.getMessage(), "Change the keys of this mark so that they fit together.");
      refusal.initCause(e);
      throw refusal;
    }
  }

  /** Writes a mark of this kind, but for its kind's word. */
  void write(Mark mark, UnitSystem display, Map<String, Object> tree) {
    M own = type.cast(switchedOn(mark));
    tree.put("name", own.name());
    if (own instanceof Mark.Place place) {
      tree.put("treatment", JobKeys.word(JobKeys.TREATMENTS, place.treatment()));
    }
    if (mark instanceof Mark.Off) {
      tree.put(OFF, true);
    }
    writers.forEach(
        (key, writer) -> {
          Object value = writer.apply(own, display);
          if (value != null) {
            tree.put(key, value);
          }
        });
  }
}
