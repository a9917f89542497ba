package org.seamwright.meshfile;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/** The formats and how a file's content tells them apart. */
enum Format {
  STL_BINARY("STL binary"),
  STL_TEXT("STL text"),
  OBJ("OBJ");

  /** Words that open a line of an OBJ file and can't open a text STL. */
  private static final Set<String> OBJ_WORDS =
      Set.of("v", "vt", "vn", "vp", "f", "o", "g", "s", "l", "p", "mtllib", "usemtl");

  /** Bytes looked at to tell text from binary; a binary facet would show zeros long before. */
  private static final int SAMPLE = 4096;

  private final String title;

  Format(String title) {
    this.title = title;
  }

  /** Name for users. */
  String title() {
    return title;
  }

  /** Tells the format of what is no whole binary STL, or refuses what is none. */
  static Format of(byte[] bytes, Refusal refusal) throws MeshFileException {
    TextCursor cursor = new TextCursor(bytes, textStart(bytes));
    boolean hasWord = cursor.nextWord();
    boolean text = isText(bytes);
    if (hasWord && cursor.is("solid") && (text || hasFacet(bytes))) {
      return STL_TEXT;
    }
    String name = refusal.file().toString().toLowerCase(Locale.ROOT);
    if (text) {
      if (!hasWord) {
        throw refusal.noFaces();
      }
      if (opensObj(bytes) || name.endsWith(".obj")) {
        return OBJ;
      }
      throw refusal.at(
          "line 1",
          "the text is neither STL (it does not begin with 'solid') nor OBJ",
          "Export the model as STL or OBJ.");
    }
    String other = otherFormat(bytes);
    if (!other.isEmpty()) {
      throw refusal.at("", "the file is " + other, "Export the model as STL or OBJ.");
    }
    if (name.endsWith(".obj")) {
      throw refusal.at("", "the file is named OBJ but is not text", Refusal.EXPORT_AGAIN);
    }
    throw BinaryStlReader.explain(bytes, refusal);
  }

  /**
   * Reads and welds a file of this format, other than a whole binary STL.
   *
   * @param notices takes what was assumed
   */
  Weld read(byte[] bytes, List<Notice> notices, Refusal refusal, Progress progress)
      throws MeshFileException {
    return switch (this) {
      case STL_BINARY -> throw BinaryStlReader.explain(bytes, refusal);
      case STL_TEXT -> TextStlReader.read(bytes, textStart(bytes), refusal, progress);
      case OBJ ->
          weld(
              ObjReader.read(bytes, textStart(bytes), refusal, progress.between(0, 0.6)),
              notices,
              progress.between(0.6, 1));
    };
  }

  private static Weld weld(RawFaces raw, List<Notice> notices, Progress progress) {
    notices.addAll(raw.notices());
    return Weld.of(raw, progress);
  }

  /** Where text begins: after a byte order mark of UTF-8, if there is one. */
  private static int textStart(byte[] bytes) {
    return startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
  }

  private static boolean isText(byte[] bytes) {
    for (int i = 0; i < Math.min(bytes.length, SAMPLE); i++) {
      if (bytes[i] >= 0 && bytes[i] < ' ' && !TextCursor.isSpace(bytes[i])) {
        return false;
      }
    }
    return true;
  }

  /** Whether the word "facet" opens the second or third line, as in a damaged text STL. */
  private static boolean hasFacet(byte[] bytes) {
    TextCursor cursor = new TextCursor(bytes, textStart(bytes));
    return cursor.nextLine()
        && cursor.position() < SAMPLE
        && cursor.nextWord()
        && cursor.is("facet");
  }

  private static boolean opensObj(byte[] bytes) {
    TextCursor cursor = new TextCursor(bytes, textStart(bytes));
    do {
      if (cursor.nextWordOnLine()) {
        return cursor.length() <= 6 && OBJ_WORDS.contains(cursor.word());
      }
    } while (cursor.nextLine());
    return false;
  }

  private static String otherFormat(byte[] bytes) {
    if (startsWith(bytes, 'P', 'K', 3, 4)) {
      return "a zip archive (3MF is one)";
    }
    if (startsWith(bytes, 0x1F, 0x8B)) {
      return "compressed with gzip";
    }
    if (startsWith(bytes, 'g', 'l', 'T', 'F')) {
      return "glTF";
    }
    if (startsWith(bytes, 'p', 'l', 'y')) {
      return "PLY";
    }
    if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
      return "text in UTF-16";
    }
    return "";
  }

  private static boolean startsWith(byte[] bytes, int... wanted) {
    if (bytes.length < wanted.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if ((bytes[i] & 0xFF) != wanted[i]) {
        return false;
      }
    }
    return true;
  }
}
