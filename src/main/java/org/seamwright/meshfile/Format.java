package org.seamwright.meshfile;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/** The formats and how a file's content tells them apart. */
enum Format {
  STL_BINARY("STL binary"),
  STL_TEXT("STL text"),
  OBJ("OBJ"),
  PLY("PLY"),
  GLTF_BINARY("glTF binary"),
  GLTF("glTF"),
  THREE_MF("3MF");

  /** Words that open a line of an OBJ file and can't open a text STL. */
  private static final Set<String> OBJ_WORDS =
      Set.of("v", "vt", "vn", "vp", "f", "o", "g", "s", "l", "p", "mtllib", "usemtl");

  /** Bytes looked at to tell text from binary; a binary facet would show zeros long before. */
  private static final int SAMPLE = 4096;

  private static final String EXPORT = "Export the model as STL, OBJ, PLY, GLB or 3MF.";

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
    Format signed = bySignature(bytes);
    if (signed != null) {
      return signed;
    }
    TextCursor cursor = new TextCursor(bytes, textStart(bytes));
    boolean hasWord = cursor.nextWord();
    boolean text = isText(bytes);
    if (hasWord && cursor.is("solid") && (text || hasFacet(bytes))) {
      return STL_TEXT;
    }
    String name =
        refusal.file().toString().toLowerCase(Locale.ROOT).replaceFirst("[.](gz|gzip)$", "");
    if (text) {
      if (!hasWord) {
        throw refusal.noFaces();
      }
      if (cursor.byteAt(0) == '{') {
        return GLTF;
      }
      if (opensObj(bytes) || name.endsWith(".obj")) {
        return OBJ;
      }
      throw refusal.at(
          "line 1",
          "the text is neither STL (it does not begin with 'solid') nor OBJ, PLY or glTF",
          EXPORT);
    }
    String other = otherFormat(bytes);
    if (!other.isEmpty()) {
      throw refusal.at("", "the file is " + other, EXPORT);
    }
    if (name.endsWith(".obj")) {
      throw refusal.at("", "the file is named OBJ but is not text", Refusal.EXPORT_AGAIN);
    }
    throw BinaryStlReader.explain(bytes, refusal);
  }

  /**
   * What a file holds.
   *
   * @param weld its faces
   * @param notices what was assumed
   * @param unit the unit that it says its numbers are in
   */
  record Content(Weld weld, List<Notice> notices, Optional<FileUnit> unit) {}

  /** Reads and welds a file of this format, other than a whole binary STL. */
  Content read(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    Progress parsing = progress.between(0, 0.6);
    Progress welding = progress.between(0.6, 1);
    int start = textStart(bytes);
    return switch (this) {
      case STL_BINARY -> throw BinaryStlReader.explain(bytes, refusal);
      case STL_TEXT ->
          new Content(
              TextStlReader.read(bytes, start, refusal, progress), List.of(), Optional.empty());
      case OBJ -> weld(ObjReader.read(bytes, start, refusal, parsing), welding);
      case PLY -> weld(PlyReader.read(bytes, refusal, parsing), welding);
      case GLTF_BINARY -> weld(GltfReader.readBinary(bytes, refusal, parsing), welding);
      case GLTF -> weld(GltfReader.readText(bytes, start, refusal, parsing), welding);
      case THREE_MF -> weld(ThreeMfReader.read(bytes, refusal, parsing), welding);
    };
  }

  private static Content weld(RawFaces raw, Progress progress) {
    return new Content(Weld.of(raw, progress), raw.notices(), raw.unit());
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

  /** The format of a file that opens with a mark of its own, else null. */
  private static Format bySignature(byte[] bytes) {
    if (ZipArchive.is(bytes)) {
      return THREE_MF;
    }
    if (GltfReader.opensBinary(bytes)) {
      return GLTF_BINARY;
    }
    return PlyHeader.opens(bytes) ? PLY : null;
  }

  private static String otherFormat(byte[] bytes) {
    if (GzipFile.is(bytes)) {
      return "packed by gzip more than once";
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
