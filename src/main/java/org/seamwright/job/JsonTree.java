package org.seamwright.job;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads JSON (RFC 8259) into a tree that remembers lines, and refuses repeated keys, which JSON
 * itself lets pass.
 */
final class JsonTree {
  /** A job is four levels deep; what is far deeper is no job, and could exhaust the stack. */
  private static final int DEEPEST = 64;

  /** Where the parser's messages turn from the fault to its own settings. */
  private static final List<String> HINTS =
      List.of(" (start marker", " (not recognized", ": enable `", " (`StreamRead", ": maybe a (");

  private final String source;
  private final JsonParser parser;

  private JsonTree(String source, JsonParser parser) {
    this.source = source;
    this.parser = parser;
  }

  /**
   * Parses one value and makes sure that nothing follows it.
   *
   * @param bytes the file, in UTF-8 (or UTF-16 or UTF-32, told by its first bytes)
   * @param source the file's name, for messages
   */
  static JsonValue parse(byte[] bytes, String source) throws JobFileException {
    JsonFactory factory =
        JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
            .build();
    try (JsonParser parser = factory.createParser(bytes)) {
      if (parser.nextToken() == null) {
        throw new JobFileException(
            source, "", "The file is empty", "Make a job with the command \"new\".");
      }
      JsonTree tree = new JsonTree(source, parser);
      JsonValue root = tree.value("");
      if (parser.nextToken() != null) {
        throw new JobFileException(
            source,
            place("", line(parser.currentTokenLocation())),
            "Something follows the end of the job",
            "Delete what stands after the last closing brace.");
      }
      return root;
    } catch (StreamConstraintsException e) {
      throw new JobFileException(
          source,
          "",
          "Lists or objects are nested too deeply, or a number or text is too long, for a job",
          "Check that this is a job file.",
          e);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      throw new JobFileException(
          source,
          at == null ? "" : "line " + line(at) + ", column " + at.getColumnNr(),
          "This is not valid JSON: " + firstClause(e.getOriginalMessage()),
          "Mend the place named, or go back to the copy ending in .bak beside the file. JSON has no"
              + " comments and no comma after the last entry.",
          e);
    } catch (IOException e) {
      throw new JobFileException(
          source, "", "The text is not UTF-8", "Save the file as UTF-8 text.", e);
    }
  }

  /** How a place is written: path and line, whichever is known. */
  static String place(String path, int line) {
    if (line == JsonValue.NO_LINE) {
      return path;
    }
    return path.isEmpty() ? "line " + line : path + " (line " + line + ")";
  }

  private static int line(JsonLocation at) {
    return Math.max(1, at.getLineNr());
  }

  /** The parser's message without its hints on how a programmer could allow the fault. */
  private static String firstClause(String message) {
    String line = message.lines().findFirst().orElse("").strip();
    String shown = line;
    for (String hint : HINTS) {
      int at = shown.indexOf(hint);
      shown = at > 0 ? shown.substring(0, at) : shown;
    }
    return shown.endsWith(".") ? shown.substring(0, shown.length() - 1) : shown;
  }

  private JsonValue value(String path) throws IOException, JobFileException {
    int line = line(parser.currentTokenLocation());
    JsonToken token = parser.currentToken();
    return switch (token) {
      case START_OBJECT -> members(path, line);
      case START_ARRAY -> items(path, line);
      case VALUE_STRING -> new JsonValue.Text(line, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(path, line);
      default -> new JsonValue.Word(line, parser.getText());
    };
  }

  private JsonValue members(String path, int line) throws IOException, JobFileException {
    Map<String, JsonValue> values = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      int keyLine = line(parser.currentTokenLocation());
      String keyPath = path.isEmpty() ? key : path + "." + key;
      parser.nextToken();
      JsonValue before = values.putIfAbsent(key, value(keyPath));
      if (before != null) {
        throw new JobFileException(
            source,
            place(keyPath, keyLine),
            "The key stands here a second time; the first is in line " + before.line(),
            "Delete one of the two.");
      }
    }
    return new JsonValue.Members(line, values);
  }

  private JsonValue items(String path, int line) throws IOException, JobFileException {
    List<JsonValue> values = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      values.add(value(path + "[" + values.size() + "]"));
    }
    return new JsonValue.Items(line, values);
  }

  private JsonValue number(String path, int line) throws IOException, JobFileException {
    double value = Double.parseDouble(parser.getText());
    if (Double.isInfinite(value)) {
      throw new JobFileException(
          source,
          place(path, line),
          "The number " + parser.getText() + " is too large",
          "Write a smaller one.");
    }
    return new JsonValue.Figure(line, value);
  }
}
