package org.seamwright.job;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.util.List;
import java.util.Map;

/**
 * Writes JSON for people and for line-by-line comparison: keys in the order given, a value on one
 * line where it fits, else one member a line; numbers in plain shortest form. The same tree gives
 * the same text anywhere.
 *
 * <p>A tree is made of {@code Map<String, ?>} in insertion order, {@code List<?>}, {@code String},
 * {@code Double}, {@code Integer}, {@code Long} and {@code Boolean}.
 */
public final class JsonText {
  /** Longest line that a list or object is kept on. */
  private static final int WIDTH = 100;

  private JsonText() {}

  /** The tree as text with a final line break. */
  public static String of(Object tree) {
    StringBuilder out = new StringBuilder();
    write(tree, 0, 0, out);
    return out.append('\n').toString();
  }

  private static void write(Object value, int indent, int column, StringBuilder out) {
    if (!(value instanceof Map<?, ?>) && !(value instanceof List<?>)) {
      scalar(value, out);
      return;
    }
    int start = out.length();
    // The outermost object is always opened out, so that a short job still reads as a list of keys.
    if (indent > 0 && flat(value, out, start + WIDTH - column)) {
      return;
    }
    out.setLength(start);
    boolean list = value instanceof List<?>;
    out.append(list ? '[' : '{');
    String separator = "\n";
    if (value instanceof List<?> items) {
      for (Object item : items) {
        out.append(separator).append(" ".repeat(indent + 2));
        write(item, indent + 2, indent + 2, out);
        separator = ",\n";
      }
    } else {
      for (Map.Entry<?, ?> member : ((Map<?, ?>) value).entrySet()) {
        out.append(separator).append(" ".repeat(indent + 2));
        int from = out.length();
        scalar(member.getKey(), out);
        out.append(": ");
        write(member.getValue(), indent + 2, indent + 2 + out.length() - from, out);
        separator = ",\n";
      }
    }
    out.append('\n').append(" ".repeat(indent)).append(list ? ']' : '}');
  }

  /** Writes on one line; false as soon as the text passes {@code end}. */
  private static boolean flat(Object value, StringBuilder out, int end) {
    if (value instanceof List<?> items) {
      String separator = "[";
      for (Object item : items) {
        out.append(separator);
        if (!flat(item, out, end)) {
          return false;
        }
        separator = ", ";
      }
      out.append(items.isEmpty() ? "[]" : "]");
    } else if (value instanceof Map<?, ?> members) {
      String separator = "{";
      for (Map.Entry<?, ?> member : members.entrySet()) {
        out.append(separator);
        scalar(member.getKey(), out);
        out.append(": ");
        if (!flat(member.getValue(), out, end)) {
          return false;
        }
        separator = ", ";
      }
      out.append(members.isEmpty() ? "{}" : "}");
    } else {
      scalar(value, out);
    }
    return out.length() <= end;
  }

  private static void scalar(Object value, StringBuilder out) {
    if (value instanceof String text) {
      out.append('"').append(JsonStringEncoder.getInstance().quoteAsString(text)).append('"');
    } else if (value instanceof Double number) {
      out.append(PlainNumber.of(number));
    } else if (value instanceof Integer || value instanceof Long || value instanceof Boolean) {
      out.append(value);
    } else {
      throw new IllegalArgumentException("Not a JSON value: " + value);
    }
  }
}
