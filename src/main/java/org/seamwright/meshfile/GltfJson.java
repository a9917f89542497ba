package org.seamwright.meshfile;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A value of a JSON text (RFC 8259) with its path, for refusals: {@code meshes[2].primitives[0]}.
 * Asking for what is not there or is of another kind is refused; unknown keys are ignored, as the
 * glTF standard demands.
 *
 * <p>Objects and lists are plain arrays, so that a text of many small objects takes little more
 * memory than its own size.
 */
final class GltfJson {
  /** A scene is about six levels deep; what is far deeper could exhaust the stack. */
  private static final int DEEPEST = 200;

  private static final Object[] NOTHING = {};

  private final Refusal refusal;
  private final String path;

  /** Null, {@link Members}, {@code Object[]}, String, Double or Boolean. */
  private final Object value;

  /** Keys and values by turns. */
  private record Members(Object[] pairs) {
    Object get(String key) {
      for (int i = 0; i < pairs.length; i += 2) {
        if (pairs[i].equals(key)) {
          return pairs[i + 1];
        }
      }
      return null;
    }
  }

  private static final Members EMPTY = new Members(NOTHING);

  private GltfJson(Refusal refusal, String path, Object value) {
    this.refusal = refusal;
    this.path = path;
    this.value = value;
  }

  /** Parses the text in {@code bytes[from … from + length - 1]}. */
  static GltfJson parse(byte[] bytes, int from, int length, Refusal refusal)
      throws MeshFileException {
    StreamReadConstraints limits =
        StreamReadConstraints.builder()
            .maxNestingDepth(DEEPEST)
            .maxStringLength(Integer.MAX_VALUE)
            .build();
    JsonFactory factory = JsonFactory.builder().streamReadConstraints(limits).build();
    try (JsonParser parser = factory.createParser(bytes, from, length)) {
      parser.nextToken();
      Object root = value(parser);
      if (parser.nextToken() != null) {
        throw invalid(refusal, parser.currentTokenLocation(), "something follows its end", null);
      }
      return new GltfJson(refusal, "", root).object();
    } catch (StreamConstraintsException e) {
      throw invalid(refusal, e.getLocation(), "it is nested too deeply or a number too long", e);
    } catch (JsonProcessingException e) {
      String message = e.getOriginalMessage().lines().findFirst().orElse("").strip();
      int hint = message.indexOf(" (");
      String said = Refusal.shorten(hint > 0 ? message.substring(0, hint) : message);
      throw invalid(refusal, e.getLocation(), said.isEmpty() ? "cut off" : said, e);
    } catch (IOException e) {
      throw invalid(refusal, null, "its text is not UTF-8", e);
    }
  }

  private static MeshFileException invalid(
      Refusal refusal, JsonLocation at, String said, Throwable cause) {
    String place = at == null ? "" : "line " + at.getLineNr() + ", column " + at.getColumnNr();
    String problem = "the JSON of the glTF is not valid: " + said;
    return new MeshFileException(
        refusal.file(), place, problem, "Copy the file again, or export it again.", cause);
  }

  private static Object value(JsonParser parser) throws IOException {
    JsonToken token = parser.currentToken();
    if (token == null) {
      return null;
    }
    return switch (token) {
      case START_OBJECT -> members(parser);
      case START_ARRAY -> items(parser);
      case VALUE_STRING -> parser.getText();
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> Double.valueOf(parser.getText());
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      default -> null;
    };
  }

  private static Object members(JsonParser parser) throws IOException {
    List<Object> pairs = null;
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      pairs = pairs == null ? new ArrayList<>(4) : pairs;
      pairs.add(parser.currentName());
      parser.nextToken();
      pairs.add(value(parser));
    }
    return pairs == null ? EMPTY : new Members(pairs.toArray());
  }

  private static Object items(JsonParser parser) throws IOException {
    List<Object> items = null;
    while (parser.nextToken() != JsonToken.END_ARRAY && parser.currentToken() != null) {
      items = items == null ? new ArrayList<>(4) : items;
      items.add(value(parser));
    }
    return items == null ? NOTHING : items.toArray();
  }

  String path() {
    return path;
  }

  /** Whether an object has a key, with a value that is not null. */
  boolean has(String key) throws MeshFileException {
    return members().get(key) != null;
  }

  private Members members() throws MeshFileException {
    if (value instanceof Members members) {
      return members;
    }
    throw wrong("an object");
  }

  private GltfJson object() throws MeshFileException {
    members();
    return this;
  }

  /** The value of a key, which must be there. */
  GltfJson get(String key) throws MeshFileException {
    Object found = members().get(key);
    if (found == null) {
      throw refusal.at(path, "the key \"" + key + "\" is missing", Refusal.EXPORT_AGAIN);
    }
    return new GltfJson(refusal, path.isEmpty() ? key : path + "." + key, found);
  }

  /** The keys of an object, in order. */
  List<String> keys() throws MeshFileException {
    List<String> keys = new ArrayList<>();
    Object[] pairs = members().pairs();
    for (int i = 0; i < pairs.length; i += 2) {
      keys.add((String) pairs[i]);
    }
    return keys;
  }

  /** Number of items of the list at a key; 0 if the key is not there. */
  int count(String key) throws MeshFileException {
    return has(key) ? get(key).size() : 0;
  }

  /** Number of items of this list. */
  int size() throws MeshFileException {
    return items().length;
  }

  private Object[] items() throws MeshFileException {
    if (value instanceof Object[] items) {
      return items;
    }
    throw wrong("a list");
  }

  /** An item of this list, which must have so many. */
  GltfJson at(int index) throws MeshFileException {
    Object[] items = items();
    if (index >= items.length) {
      throw refusal.at(
          path,
          "the file names item " + index + " of this list, but it has " + items.length,
          Refusal.EXPORT_AGAIN);
    }
    return new GltfJson(refusal, path + "[" + index + "]", items[index]);
  }

  String text() throws MeshFileException {
    if (value instanceof String text) {
      return text;
    }
    throw wrong("text");
  }

  /** The text of a key; empty if it is not there. */
  String text(String key) throws MeshFileException {
    return has(key) ? get(key).text() : "";
  }

  boolean truth() throws MeshFileException {
    if (value instanceof Boolean truth) {
      return truth;
    }
    throw wrong("true or false");
  }

  double number() throws MeshFileException {
    if (value instanceof Double number && Double.isFinite(number)) {
      return number;
    }
    throw wrong("a number");
  }

  /** A whole number from 0 up. */
  int index() throws MeshFileException {
    double number = number();
    if (number != Math.rint(number) || number < 0 || number > Integer.MAX_VALUE) {
      throw wrong("a whole number from 0 up");
    }
    return (int) number;
  }

  /** The whole number of a key, or another if it is not there. */
  int index(String key, int otherwise) throws MeshFileException {
    return has(key) ? get(key).index() : otherwise;
  }

  /** A list of exactly so many numbers. */
  double[] numbers(int count) throws MeshFileException {
    if (size() != count) {
      throw wrong("a list of " + count + " numbers");
    }
    double[] numbers = new double[count];
    for (int i = 0; i < count; i++) {
      numbers[i] = at(i).number();
    }
    return numbers;
  }

  /** A refusal of what this value says. */
  MeshFileException refuse(String problem, String remedy) {
    return refusal.at(path, problem, remedy);
  }

  private MeshFileException wrong(String wanted) {
    return refusal.at(
        path.isEmpty() ? "the JSON" : path, "this should be " + wanted, Refusal.EXPORT_AGAIN);
  }
}
