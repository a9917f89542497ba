package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A value of a JSON file, with the line it starts in. */
sealed interface JsonValue {
  /** Line in the file, from 1. */
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

  /** A finite number. */
  record Figure(int line, double value) implements JsonValue {
    @Override
    public String kind() {
      return "a number";
    }
  }

  /** {@code true}, {@code false} or {@code null}: nothing in the format is one of them. */
  record Word(int line, String value) implements JsonValue {
    @Override
    public String kind() {
      return value;
    }
  }
}
