package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A value of a JSON file, with the line it starts in. */
sealed interface JsonValue {
  /** The line of what does not come from a file. */
  int NO_LINE = 0;

  /** Line in the file, from 1; {@link #NO_LINE} outside a file. */
  int line();

  /** What a person calls this kind of value. */
  String kind();

  /** An object; its members in the order of the file. */
  record Members(int line, Map<String, JsonValue> values) implements JsonValue {
    /** Keeps the order. */
    public Members {
      values = new LinkedHashMap<>(values);
    }

    @Override
    public String kind() {
      return "an object";
    }
  }

  /** A list. */
  record Items(int line, List<JsonValue> values) implements JsonValue {
    /** Copies the list. */
    public Items {
      values = List.copyOf(values);
    }

    @Override
    public String kind() {
      return "a list";
    }
  }

  /** A string. */
  record Text(int line, String value) implements JsonValue {
    @Override
    public String kind() {
      return "text";
    }
  }

  /**
   * Text typed on a command line, where nothing tells a number from text or a list: what it is
   * follows from what is read from it.
   */
  record Typed(String value) implements JsonValue {
    @Override
    public int line() {
      return NO_LINE;
    }

    @Override
    public String kind() {
      return "\"" + value + "\"";
    }
  }

  /** A finite number. */
  record Figure(int line, double value) implements JsonValue {
    @Override
    public String kind() {
      return "a number";
    }
  }

  /** {@code true}, {@code false} or {@code null}; nothing in the format is the last. */
  record Word(int line, String value) implements JsonValue {
    @Override
    public String kind() {
      return value;
    }
  }
}
