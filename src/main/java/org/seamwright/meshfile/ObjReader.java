package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/**
 * Reads the polygons of an OBJ file: {@code v} and {@code f}, with {@code o}, {@code g} and {@code
 * usemtl} as labels. Texture, normals, colours and weights are skipped, lines and points told as a
 * notice; free-form surfaces are refused, since their area would be missing.
 */
final class ObjReader {
  private static final int STRIDE = 1 << 12;

  /** Splitting takes time in the square of the corners; real polygons stay far below. */
  private static final int MOST_CORNERS = 10_000;

  private final TextCursor cursor;
  private final int length;
  private final Refusal refusal;
  private final Growing.Doubles points = new Growing.Doubles();
  private final Growing.Ints corner = new Growing.Ints();
  private final Growing.Ints label = new Growing.Ints();
  private final PolygonSplitter splitter = new PolygonSplitter(corner);
  private final Map<String, Integer> names = new LinkedHashMap<>();
  private final List<Later> later = new ArrayList<>();
  private String object = "";
  private String group = "";
  private String material = "";
  private int currentLabel;
  private int highest;
  private int highestLine;
  private long withoutArea;
  private long unread;
  private int unreadLine;

  /** A polygon that names points which come after it. */
  private record Later(Growing.Ints polygon, int label) {}

  private ObjReader(byte[] bytes, int from, Refusal refusal) {
    this.cursor = new TextCursor(bytes, from);
    this.length = bytes.length;
    this.refusal = refusal;
    names.put("", 0);
  }

  /** Reads a text that begins at a byte. */
  static RawFaces read(byte[] bytes, int from, Refusal refusal, Progress progress)
      throws MeshFileException {
    return new ObjReader(bytes, from, refusal).lines(progress);
  }

  private RawFaces lines(Progress progress) throws MeshFileException {
    int line = 0;
    do {
      if (cursor.nextWordOnLine()) {
        statement();
      }
      if ((++line & (STRIDE - 1)) == 0) {
        progress.at((double) cursor.position() / length);
      }
    } while (cursor.nextLine());
    if (highest > pointCount()) {
      throw outOfRange("line " + highestLine, highest);
    }
    for (Later face : later) {
      split(face.polygon(), face.label());
      progress.at(1);
    }
    List<String> list = new ArrayList<>(names.keySet());
    return new RawFaces(
        new RawFaces.Points.Wide(points.toArray()),
        corner.toArray(),
        list.size() > 1 ? label.toArray() : new int[0],
        list,
        notices());
  }

  private int pointCount() {
    return points.size() / 3;
  }

  private void statement() throws MeshFileException {
    if (cursor.length() == 1) {
      switch (cursor.byteAt(0)) {
        case 'v' -> point();
        case 'f' -> face();
        case 'o' -> {
          object = cursor.restOfLine();
          relabel();
        }
        case 'g' -> {
          group = cursor.restOfLine();
          relabel();
        }
        case 's' -> {}
        case 'l', 'p' -> withoutArea++;
        default -> unread();
      }
      return;
    }
    switch (cursor.length() > 12 ? "" : cursor.word()) {
      case "vt", "vn", "vp", "mtllib", "usemap", "maplib", "lod", "bevel", "mg" -> {}
      case "c_interp", "d_interp", "shadow_obj", "trace_obj", "ctech", "stech" -> {}
      case "usemtl" -> {
        material = cursor.restOfLine();
        relabel();
      }
      case "curv", "curv2" -> withoutArea++;
      case "surf" ->
          throw refusal.at(
              place(),
              "the file holds a free-form surface",
              "Convert surfaces to triangles (a mesh) and export again.");
      case "fo" -> face();
      default -> unread();
    }
  }

  private void unread() {
    if (unread++ == 0) {
      unreadLine = cursor.line();
    }
  }

  private void relabel() {
    StringBuilder name = new StringBuilder();
    for (String part : new String[] {object, group, material}) {
      if (!part.isEmpty()) {
        name.append(name.isEmpty() ? "" : " / ").append(part);
      }
    }
    currentLabel = names.computeIfAbsent(name.toString(), key -> names.size());
  }

  private void point() throws MeshFileException {
    for (int axis = 0; axis < 3; axis++) {
      if (!cursor.nextWordOnLine()) {
        throw refusal.at(
            place(),
            "the vertex has " + axis + " of 3 coordinates",
            "Mend the line or export the model again.");
      }
      double value = cursor.number();
      if (!(Math.abs(value) <= Float.MAX_VALUE)) {
        throw refusal.number(place(), cursor.word());
      }
      points.add(value);
    }
  }

  private void face() throws MeshFileException {
    Growing.Ints polygon = new Growing.Ints();
    boolean known = true;
    while (cursor.nextWordOnLine()) {
      int index = index();
      if (index > pointCount()) {
        known = false;
        if (index > highest) {
          highest = index;
          highestLine = cursor.line();
        }
      }
      polygon.add(index - 1);
    }
    if (polygon.size() < 3) {
      throw refusal.at(
          place(),
          "the face has " + polygon.size() + " corners; it needs at least 3",
          "Mend the line or export the model again.");
    }
    if (polygon.size() > MOST_CORNERS) {
      throw refusal.at(
          place(),
          "the face has " + polygon.size() + " corners; at most " + MOST_CORNERS + " can be split",
          "Export the model again as triangles.");
    }
    if (known) {
      split(polygon, currentLabel);
    } else {
      later.add(new Later(polygon, currentLabel));
    }
  }

  private void split(Growing.Ints polygon, int name) {
    int triangles = splitter.split(points, polygon, 0, polygon.size());
    for (int i = 0; i < triangles; i++) {
      label.add(name);
    }
  }

  /** The point number, from 1, of a corner written as {@code v}, {@code v/t}, {@code v//n} … */
  private int index() throws MeshFileException {
    int i = 0;
    boolean back = cursor.byteAt(0) == '-';
    if (back || cursor.byteAt(0) == '+') {
      i++;
    }
    long value = 0;
    int digits = 0;
    for (; isDigit(cursor.byteAt(i)); i++) {
      value = Math.min(Integer.MAX_VALUE, 10 * value + (cursor.byteAt(i) - '0'));
      digits++;
    }
    if (digits == 0 || !restIsReferences(i)) {
      throw refusal.at(
          place(),
          "'" + Refusal.shorten(cursor.word()) + "' is not a corner of a face",
          "Mend the line or export the model again.");
    }
    long index = back ? pointCount() + 1 - value : value;
    if (value == 0) {
      throw refusal.at(
          place(),
          "the face names vertex 0, but vertices are counted from 1",
          "Mend the line or export the model again.");
    }
    if (index < 1) {
      throw outOfRange(place(), -value);
    }
    return (int) index;
  }

  /** Whether only texture and normal references follow: up to two, each after a slash. */
  private boolean restIsReferences(int from) {
    int i = from;
    for (int slashes = 0; slashes < 2 && i < cursor.length(); slashes++) {
      if (cursor.byteAt(i) != '/') {
        return false;
      }
      i++;
      if (cursor.byteAt(i) == '-') {
        i++;
      }
      while (isDigit(cursor.byteAt(i))) {
        i++;
      }
    }
    return i == cursor.length();
  }

  private static boolean isDigit(byte b) {
    return b >= '0' && b <= '9';
  }

  private MeshFileException outOfRange(String place, long index) {
    return refusal.at(
        place,
        String.format(
            Locale.ROOT, "the face names vertex %d, but there are %,d", index, pointCount()),
        "The file may be cut off. Copy it or export it again.");
  }

  private String place() {
    return "line " + cursor.line();
  }

  private List<Notice> notices() {
    List<Notice> notices = new ArrayList<>();
    if (splitter.notFlat() > 0) {
      notices.add(
          new Notice(
              "polygons-not-flat",
              splitter.notFlat(),
              String.format(
                  Locale.ROOT,
                  "%,d polygons are not flat (corners up to %.3g file units off their mean plane);"
                      + " split into triangles they are %.2g%% larger than flat ones, other"
                      + " programs may split them otherwise.",
                  splitter.notFlat(),
                  splitter.deviation(),
                  100 * splitter.excess())));
    }
    if (splitter.tangled() > 0) {
      notices.add(
          new Notice(
              "polygons-crossing-themselves",
              splitter.tangled(),
              String.format(
                  Locale.ROOT,
                  "%,d polygons cross themselves or double back; their area is uncertain.",
                  splitter.tangled())));
    }
    if (withoutArea > 0) {
      notices.add(
          new Notice(
              "lines-and-points-skipped",
              withoutArea,
              String.format(
                  Locale.ROOT,
                  "%,d lines, curves or points have no area and were left out.",
                  withoutArea)));
    }
    if (unread > 0) {
      notices.add(
          new Notice(
              "lines-not-understood",
              unread,
              String.format(
                  Locale.ROOT,
                  "%,d lines begin with an unknown word and were skipped, the first is line %d; if"
                      + " they hold faces, area is missing.",
                  unread,
                  unreadLine)));
    }
    return notices;
  }
}
