package org.seamwright.job;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitSystem;

/**
 * Marks as typed on a command line: the kinds and keys are those of the job file, so that a kind
 * known there is known here.
 *
 * <p>Values are plain text. A point is {@code x,y,z}; the points of a path are parted by blanks or
 * semicolons; lengths carry their unit. A value that starts with a bracket or brace is read as it
 * would be in a job file.
 */
public final class MarkWords {
  /**
   * A kind of mark.
   *
   * @param word how it is spelled
   * @param does what it marks, a sentence
   * @param keys its keys but for the kind, each with what help calls its value
   * @param usual treatment if none is said; empty if the kind has none
   * @param example keys and values as they might be typed in a shell
   */
  public record Kind(
      String word, String does, Map<String, String> keys, String usual, String example) {}

  private MarkWords() {}

  /** All kinds, in the order of help. */
  public static List<Kind> kinds() {
    return MarkKinds.byWord().entrySet().stream()
        .map(
            entry -> {
              Map<String, String> keys = new LinkedHashMap<>();
              entry.getValue().keys().stream()
                  .filter(key -> !key.equals("kind"))
                  .forEach(key -> keys.put(key, entry.getValue().label(key)));
              MarkExamples.Example example = MarkExamples.of(entry.getKey());
              String usual = keys.containsKey("treatment") ? word(entry.getValue().usual()) : "";
              return new Kind(entry.getKey(), example.does(), keys, usual, example.options());
            })
        .toList();
  }

  /** The word of a mark's kind. */
  public static String kindOf(Mark mark) {
    return MarkKinds.word(mark);
  }

  /** The word of a treatment. */
  public static String word(Treatment treatment) {
    return JobKeys.word(JobKeys.TREATMENTS, treatment);
  }

  /**
   * The treatment that a word stands for.
   *
   * @throws JobFileException if there is none
   */
  public static Treatment treatment(String word) throws JobFileException {
    return new JobNode("", "", new JsonValue.Typed(word)).oneOf(JobKeys.TREATMENTS);
  }

  /**
   * Reads a mark.
   *
   * @param kind word of a kind
   * @param keys its other keys, as typed
   * @throws JobFileException if a key is missing, unknown, or its value does not fit; the place is
   *     the option
   */
  public static Mark read(String kind, Map<String, String> keys) throws JobFileException {
    Map<String, JsonValue> values = new LinkedHashMap<>();
    values.put("kind", new JsonValue.Typed(kind));
    return read(values, keys);
  }

  /**
   * The mark with some keys replaced.
   *
   * @param keys the keys to replace, as typed
   * @throws JobFileException as for {@link #read}
   */
  public static Mark changed(Mark mark, Map<String, String> keys) throws JobFileException {
    // Writing and reading back is exact, so that what is not named stays as it is.
    String text = JsonText.of(MarkKinds.write(mark, UnitSystem.METRIC));
    JsonValue.Members before = (JsonValue.Members) parse(text);
    Mark after = read(before.values(), keys);
    if (after instanceof Mark.Inside inside && keys.containsKey("file")) {
      // What was remembered of the file before says nothing of this one.
      String sha256 = keys.containsKey("sha256") ? inside.body().sha256() : "";
      return new Mark.Inside(inside.name(), inside.treatment(), inside.body().withSha256(sha256));
    }
    return after;
  }

  private static Mark read(Map<String, JsonValue> before, Map<String, String> keys)
      throws JobFileException {
    Map<String, JsonValue> values = new LinkedHashMap<>(before);
    for (Map.Entry<String, String> key : keys.entrySet()) {
      values.put(key.getKey(), value(key.getKey(), key.getValue()));
    }
    JsonValue typed = new JsonValue.Members(JsonValue.NO_LINE, values);
    return MarkKinds.read(new JobNode("", "", typed));
  }

  private static JsonValue value(String key, String text) throws JobFileException {
    if (!text.startsWith("[") && !text.startsWith("{")) {
      return new JsonValue.Typed(text);
    }
    try {
      return parse(text);
    } catch (JobFileException e) {
      throw new JobFileException("", "--" + key, e.problem(), "Mend the brackets.", e);
    }
  }

  private static JsonValue parse(String text) throws JobFileException {
    return JsonTree.parse(text.getBytes(StandardCharsets.UTF_8), "");
  }
}
