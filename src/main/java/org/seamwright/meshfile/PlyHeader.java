package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The header of a PLY file: which elements follow, how many of each, and the types of their
 * properties.
 *
 * @param encoding how the values are written
 * @param elements in the order of the file
 * @param end byte at which the values begin
 * @param lines lines of the header
 */
record PlyHeader(Encoding encoding, List<Element> elements, int end, int lines) {
  /** Ways to write values. */
  enum Encoding {
    ASCII,
    LITTLE,
    BIG
  }

  /** Types of values: their width in bytes and their two spellings. */
  enum Type {
    INT8(1, "char", "int8"),
    UINT8(1, "uchar", "uint8"),
    INT16(2, "short", "int16"),
    UINT16(2, "ushort", "uint16"),
    INT32(4, "int", "int32"),
    UINT32(4, "uint", "uint32"),
    FLOAT32(4, "float", "float32"),
    FLOAT64(8, "double", "float64");

    private final int bytes;
    private final String name;
    private final String sized;

    Type(int bytes, String name, String sized) {
      this.bytes = bytes;
      this.name = name;
      this.sized = sized;
    }

    int bytes() {
      return bytes;
    }

    boolean whole() {
      return this != FLOAT32 && this != FLOAT64;
    }

    private static Type of(String word) {
      for (Type type : values()) {
        if (type.name.equals(word) || type.sized.equals(word)) {
          return type;
        }
      }
      return null;
    }
  }

  /**
   * One property.
   *
   * @param list whether each value is a list
   * @param count type of a list's length
   * @param type type of the value or of the list's items
   */
  record Property(String name, boolean list, Type count, Type type) {
    /** Fewest bytes that it takes. */
    int leastBytes() {
      return list ? count.bytes() : type.bytes();
    }
  }

  /**
   * One kind of element.
   *
   * @param count how many are announced; not to be trusted
   */
  record Element(String name, long count, List<Property> properties) {
    /** Place of a property by one of its names, or -1. */
    int indexOf(String... names) {
      for (int i = 0; i < properties.size(); i++) {
        for (String wanted : names) {
          if (properties.get(i).name().equals(wanted)) {
            return i;
          }
        }
      }
      return -1;
    }

    /** Fewest bytes that one takes. */
    long leastBytes() {
      return properties.stream().mapToLong(Property::leastBytes).sum();
    }

    boolean hasLists() {
      return properties.stream().anyMatch(Property::list);
    }
  }

  /** Whether the bytes open a PLY file. */
  static boolean opens(byte[] bytes) {
    return bytes.length > 4
        && bytes[0] == 'p'
        && bytes[1] == 'l'
        && bytes[2] == 'y'
        && TextCursor.isSpace(bytes[3]);
  }

  /** Reads the header. */
  static PlyHeader of(byte[] bytes, Refusal refusal) throws MeshFileException {
    return new Lines(bytes, refusal).header();
  }

  /** Walks over the header's lines. */
  private static final class Lines {
    private static final String MEND = "Mend the header or export the model again.";

    private final byte[] bytes;
    private final Refusal refusal;
    private final List<Element> elements = new ArrayList<>();
    private Encoding encoding;
    private int at;
    private int line;
    private boolean returns;

    Lines(byte[] bytes, Refusal refusal) {
      this.bytes = bytes;
      this.refusal = refusal;
    }

    PlyHeader header() throws MeshFileException {
      next();
      // A lone carriage return ends every line, or none: behind "end_header" a line feed may
      // already be the first value.
      returns = at < bytes.length && bytes[at - 1] == '\r';
      while (true) {
        String text = next();
        String[] words = text.strip().split("[ \t]+", 6);
        switch (words[0]) {
          case "format" -> format(words, text);
          case "element" -> element(words, text);
          case "property" -> property(words, text);
          case "comment", "obj_info", "" -> {}
          case "end_header" -> {
            if (encoding == null) {
              throw refusal.at(place(), "the header names no format", MEND);
            }
            return new PlyHeader(encoding, List.copyOf(elements), at, line);
          }
          default -> throw wrong(text);
        }
      }
    }

    private String next() throws MeshFileException {
      int from = at;
      while (at < bytes.length && bytes[at] != '\n' && bytes[at] != '\r') {
        at++;
      }
      if (at == bytes.length) {
        throw refusal.at(
            "byte " + at,
            "the PLY is cut off: its header has no end",
            "Copy or download the file again, or export it again.");
      }
      line++;
      String text =
          new String(bytes, from, at - from, java.nio.charset.StandardCharsets.ISO_8859_1);
      boolean pair = bytes[at] == '\r' && at + 1 < bytes.length && bytes[at + 1] == '\n';
      at += pair && !returns ? 2 : 1;
      return text;
    }

    private void format(String[] words, String text) throws MeshFileException {
      encoding =
          switch (words.length < 2 ? "" : words[1]) {
            case "ascii" -> Encoding.ASCII;
            case "binary_little_endian" -> Encoding.LITTLE;
            case "binary_big_endian" -> Encoding.BIG;
            default -> throw wrong(text);
          };
      if (words.length < 3 || !words[2].equals("1.0")) {
        throw refusal.at(
            place(), "only version 1.0 of PLY is known", "Export the model as STL or PLY 1.0.");
      }
    }

    private void element(String[] words, String text) throws MeshFileException {
      if (words.length != 3 || !words[2].matches("[0-9]{1,18}")) {
        throw wrong(text);
      }
      String name = words[1];
      if (elements.stream().anyMatch(e -> e.name().equals(name))) {
        throw refusal.at(place(), "the element " + Refusal.shorten(name) + " comes twice", MEND);
      }
      elements.add(new Element(name, Long.parseLong(words[2]), new ArrayList<>()));
    }

    private void property(String[] words, String text) throws MeshFileException {
      boolean list = words.length == 5 && words[1].equals("list");
      if (elements.isEmpty() || (!list && words.length != 3)) {
        throw wrong(text);
      }
      Type count = Type.of(list ? words[2] : "uchar");
      Type type = Type.of(words[list ? 3 : 1]);
      if (count == null || type == null) {
        throw wrong(text);
      }
      elements
          .get(elements.size() - 1)
          .properties()
          .add(new Property(words[list ? 4 : 2].toLowerCase(Locale.ROOT), list, count, type));
    }

    private MeshFileException wrong(String text) {
      return refusal.at(
          place(), "'" + Refusal.shorten(text.strip()) + "' is no line of a PLY header", MEND);
    }

    private String place() {
      return "line " + line;
    }
  }
}
