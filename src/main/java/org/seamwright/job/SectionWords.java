package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionSymmetry;
import org.seamwright.section.SectionWay;
import org.seamwright.units.UnitSystem;

/**
 * Ways, symmetries and edits of sections as typed on a command line: the kinds and keys are those
 * of the job file, values are typed as for {@link MarkWords}.
 */
public final class SectionWords {
  private SectionWords() {}

  /** Kinds of ways, each with its other keys. */
  public static Map<String, List<String>> ways() {
    return JobKeys.WAYS;
  }

  /** Keys of a symmetry. */
  public static List<String> symmetryKeys() {
    return JobKeys.SYMMETRY;
  }

  /** The word of an edit's kind. */
  public static String kindOf(SectionEdit edit) {
    return SectionChoiceWriter.word(edit);
  }

  /** The word of a way's kind. */
  public static String kindOf(SectionWay way) {
    return (String) SectionChoiceWriter.way(way, UnitSystem.METRIC).get("kind");
  }

  /** A point as it may be typed, with all its digits. */
  public static String point(Vector3D point) {
    return PlainNumber.of(point.getX())
        + ","
        + PlainNumber.of(point.getY())
        + ","
        + PlainNumber.of(point.getZ());
  }

  /** A path as it may be typed. */
  public static String path(List<Vector3D> points) {
    return points.stream().map(SectionWords::point).collect(Collectors.joining("; "));
  }

  /**
   * Reads an edit.
   *
   * @param kind word of its kind
   * @param keys its other keys, as typed
   * @throws JobFileException if a key is missing or its value does not fit; the place is the option
   */
  public static SectionEdit edit(String kind, Map<String, String> keys) throws JobFileException {
    return SectionChoiceReader.edit(typed(kind, keys));
  }

  /** Reads a way, as {@link #edit} does an edit. */
  public static SectionWay way(String kind, Map<String, String> keys) throws JobFileException {
    return SectionChoiceReader.way(typed(kind, keys));
  }

  /** Reads a symmetry, as {@link #edit} does an edit. */
  public static SectionSymmetry symmetry(Map<String, String> keys) throws JobFileException {
    return SectionChoiceReader.symmetry(typed("", keys));
  }

  private static JobNode typed(String kind, Map<String, String> keys) {
    Map<String, JsonValue> values = new LinkedHashMap<>();
    if (!kind.isEmpty()) {
      values.put("kind", new JsonValue.Typed(kind));
    }
    keys.forEach((key, value) -> values.put(key, new JsonValue.Typed(value)));
    return new JobNode("", "", new JsonValue.Members(JsonValue.NO_LINE, values));
  }
}
