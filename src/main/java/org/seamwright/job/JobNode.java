package org.seamwright.job;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;

/**
 * A value of the job file together with its place, and the ways to read it. Whatever does not fit
 * is refused with the file, the path from the top, the line and a remedy.
 *
 * @param source the job file, for messages
 * @param path keys from the top, such as {@code marks[2].radius}; empty for the whole
 * @param value what stands there
 */
record JobNode(String source, String path, JsonValue value) {
  /** Typed lists: items end at a semicolon, or at a blank before a number and not after a comma. */
  private static final Pattern BETWEEN_ITEMS =
      Pattern.compile("\\s*;\\s*|(?<![,\\s])\\s+(?=[-+.\\d])");

  private static final Pattern BETWEEN_NUMBERS = Pattern.compile("\\s*,\\s*");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?");

  /** Reads one value. */
  @FunctionalInterface
  interface Reader<T> {
    T read(JobNode node) throws JobFileException;
  }

  /** An object whose keys have been checked. */
  record Keys(JobNode node, Map<String, JsonValue> values) {
    /** Reads a key that must be there. */
    <T> T get(String key, Reader<T> reader) throws JobFileException {
      JsonValue found = values.get(key);
      if (found == null) {
        throw node.refuse(
            (node.isTyped() ? "--" + key : "The key \"" + key + "\"") + " is missing",
            "Add it; docs/job-file.md says what it holds.");
      }
      return reader.read(at(key, found));
    }

    /** Reads a key that may be left out. */
    <T> T get(String key, T fallback, Reader<T> reader) throws JobFileException {
      JsonValue found = values.get(key);
      return found == null ? fallback : reader.read(at(key, found));
    }

    boolean has(String key) {
      return values.containsKey(key);
    }

    /** Refuses the object unless it has exactly one of two keys. */
    void exactlyOne(String a, String b, boolean noneIsFine) throws JobFileException {
      if (has(a) && has(b)) {
        throw node.refuse(
            "\"" + a + "\" and \"" + b + "\" exclude each other", "Delete one of the two.");
      }
      if (!has(a) && !has(b) && !noneIsFine) {
        throw node.refuse(
            "One of the keys \"" + a + "\" and \"" + b + "\" must be there",
            "Add one of them; docs/job-file.md says what they hold.");
      }
    }

    private JobNode at(String key, JsonValue found) {
      String top = node.isTyped() ? "--" + key : key;
      String path = node.path.isEmpty() ? top : node.path + "." + key;
      return new JobNode(node.source, path, found);
    }
  }

  /** Whether this comes from a command line and not from a file. */
  private boolean isTyped() {
    return value.line() == JsonValue.NO_LINE;
  }

  /** A refusal of this value. */
  JobFileException refuse(String problem, String remedy) {
    return new JobFileException(source, JsonTree.place(path, value.line()), problem, remedy);
  }

  /** An object that may have these keys and no others. */
  Keys keys(Collection<String> known) throws JobFileException {
    if (!(value instanceof JsonValue.Members members)) {
      throw wrongKind("an object, in braces");
    }
    for (Map.Entry<String, JsonValue> member : members.values().entrySet()) {
      if (!known.contains(member.getKey())) {
        Keys self = new Keys(this, members.values());
        String all = "Known here: " + String.join(", ", known) + ".";
        throw self.at(member.getKey(), member.getValue())
            .refuse(
                "There is no key \"" + member.getKey() + "\" here",
                Nearest.to(member.getKey(), known)
                    .map(n -> "Did you mean \"" + n + "\"? " + all)
                    .orElse(all));
      }
    }
    return new Keys(this, members.values());
  }

  /** A list, each item read the same way. */
  <T> List<T> list(Reader<T> reader) throws JobFileException {
    return list(reader, BETWEEN_ITEMS);
  }

  private <T> List<T> list(Reader<T> reader, Pattern between) throws JobFileException {
    List<JsonValue> items;
    if (value instanceof JsonValue.Typed typed) {
      items =
          between
              .splitAsStream(typed.value().strip())
              .<JsonValue>map(JsonValue.Typed::new)
              .toList();
    } else if (value instanceof JsonValue.Items listed) {
      items = listed.values();
    } else {
      throw wrongKind("a list, in square brackets");
    }
    List<T> read = new ArrayList<>();
    for (JsonValue item : items) {
      read.add(reader.read(new JobNode(source, path + "[" + read.size() + "]", item)));
    }
    return read;
  }

  /** Text. */
  String text() throws JobFileException {
    if (value instanceof JsonValue.Text text) {
      return text.value();
    }
    if (value instanceof JsonValue.Typed typed) {
      return typed.value();
    }
    throw wrongKind("text, in quotes");
  }

  /** Yes or no. */
  boolean yes() throws JobFileException {
    if (value instanceof JsonValue.Word word && !word.value().equals("null")) {
      return word.value().equals("true");
    }
    if (value instanceof JsonValue.Typed typed && typed.value().matches("true|false")) {
      return typed.value().equals("true");
    }
    throw wrongKind("true or false, without quotes");
  }

  /** One of a few words. */
  <T> T oneOf(Map<String, T> words) throws JobFileException {
    String word = text();
    T found = words.get(word);
    if (found == null) {
      String all = "Known here: " + String.join(", ", words.keySet()) + ".";
      throw refuse(
          "\"" + word + "\" is not one of the words allowed here",
          Nearest.to(word, words.keySet())
              .map(n -> "Did you mean \"" + n + "\"? " + all)
              .orElse(all));
    }
    return found;
  }

  /** A number without a unit. */
  double number(Range range) throws JobFileException {
    if (value instanceof JsonValue.Typed typed) {
      if (!NUMBER.matcher(typed.value().strip()).matches()) {
        throw wrongKind("a number");
      }
      return inRange(Double.parseDouble(typed.value().strip()), typed.value().strip(), range);
    }
    if (!(value instanceof JsonValue.Figure number)) {
      throw wrongKind("a number, without quotes");
    }
    return inRange(number.value(), PlainNumber.of(number.value()), range);
  }

  /** A whole number. */
  int whole(Range range) throws JobFileException {
    double number = number(range);
    if (number != Math.rint(number)) {
      throw refuse(PlainNumber.of(number) + " " + range.words(), "Write a whole number.");
    }
    return (int) number;
  }

  /** A number with its unit, in quotes. The range is that of the value in the program's unit. */
  double amount(AmountKind kind, Range range) throws JobFileException {
    if (value instanceof JsonValue.Figure number) {
      throw refuse(
          PlainNumber.of(number.value()) + " has no unit",
          "Write it in quotes with its unit, for example \"" + kind.example() + "\".");
    }
    if (!(value instanceof JsonValue.Text) && !(value instanceof JsonValue.Typed)) {
      throw wrongKind(kind.words() + " in quotes, for example \"" + kind.example() + "\"");
    }
    String text = text();
    double read;
    try {
      read = kind.read(text);
    } catch (InputException e) {
      JobFileException refusal = refuse(e.source() + ": " + e.problem(), e.remedy());
      refusal.initCause(e);
      throw refusal;
    }
    return inRange(read, "\"" + text + "\"", range);
  }

  /** A place: three coordinates, numbers in mm or lengths with a unit. */
  Vector3D point() throws JobFileException {
    return vector(
        n ->
            n.value instanceof JsonValue.Text || n.isTypedAmount()
                ? n.amount(AmountKind.COORDINATE, Range.ANY)
                : n.number(Range.ANY));
  }

  /** Typed, and more than a plain number: an amount, if anything. */
  private boolean isTypedAmount() {
    return value instanceof JsonValue.Typed typed
        && !NUMBER.matcher(typed.value().strip()).matches()
        && typed.value().chars().anyMatch(Character::isLetter);
  }

  /** A direction: three numbers, not all 0. Its length doesn't count. */
  Vector3D direction() throws JobFileException {
    Vector3D direction = vector(n -> n.number(Range.ANY));
    if (direction.norm() == 0) {
      throw refuse(
          "A direction cannot be all zero", "Write one that points somewhere, such as [0, 0, 1].");
    }
    return direction;
  }

  private Vector3D vector(Reader<Double> reader) throws JobFileException {
    List<Double> three = list(reader, BETWEEN_NUMBERS);
    if (three.size() != 3) {
      throw refuse(
          "Expected three numbers (x, y, z), found " + three.size(),
          isTyped()
              ? "Write them as x,y,z; points of a path are parted by blanks."
              : "Write x, y and z in square brackets.");
    }
    return Vector3D.of(three.get(0), three.get(1), three.get(2));
  }

  private double inRange(double read, String written, Range range) throws JobFileException {
    if (!range.holds(read)) {
      throw refuse(written + " is out of range", "The value " + range.words() + ".");
    }
    return read;
  }

  private JobFileException wrongKind(String expected) {
    return refuse("Expected " + expected + ", found " + value.kind(), "Write " + expected + ".");
  }
}
