package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.seamwright.basis.Progress;

/**
 * One run of an OBJ file's lines. It is gone over twice: for its points, then, when all points are
 * known, for its faces.
 */
final class ObjRun {
  private static final int STRIDE = 1 << 12;

  /** Characters of a name that are kept: a long one would come again with every other part. */
  private static final int LONGEST_NAME = 100;

  private final byte[] bytes;
  private final int from;
  private final int to;
  private final Growth growth;
  private final Refusal refusal;
  private TextCursor cursor;
  private double[] points = new double[64];
  private int pointCount;

  /** One entry per point of the run: number in its palette; empty while no point has a colour. */
  private byte[] colours = new byte[0];

  private final Palette palette = new Palette();

  /**
   * One entry per point of the file: number in the file's palette; empty if faces get no colour.
   */
  private byte[] allColours = new byte[0];

  /** All points of the file, and how many of them come before the current line. */
  private double[] allPoints;

  private int pointsBefore;
  private final Growing.Ints corner = new Growing.Ints();
  private final Growing.Ints label = new Growing.Ints();
  private final Growing.Ints colour = new Growing.Ints();
  private final Growing.Ints polygon = new Growing.Ints();
  private final PolygonSplitter splitter = new PolygonSplitter(corner);
  private final Map<Name, Integer> names = new LinkedHashMap<>();
  private Name name = new Name(null, null, null);
  private int currentLabel;
  private long withoutArea;
  private long unread;
  private int unreadLine;

  /**
   * Names in force; a part is null while the run has not set it, so that it is that of the run
   * before.
   */
  record Name(String object, String group, String material) {
    /** The parts of this name, and where there are none those of the one before. */
    Name after(Name before) {
      return new Name(
          Objects.requireNonNullElse(object, before.object),
          Objects.requireNonNullElse(group, before.group),
          Objects.requireNonNullElse(material, before.material));
    }

    /** As one text, such as {@code bowl / rim / brass}. */
    String text() {
      StringBuilder text = new StringBuilder();
      for (String part : new String[] {object, group, material}) {
        if (part != null && !part.isEmpty()) {
          text.append(text.isEmpty() ? "" : " / ")
              .append(part, 0, Math.min(LONGEST_NAME, part.length()));
        }
      }
      return text.toString();
    }
  }

  ObjRun(byte[] bytes, int from, int to, Growth growth, Refusal refusal) {
    this.bytes = bytes;
    this.from = from;
    this.to = to;
    this.growth = growth;
    this.refusal = refusal;
    names.put(name, 0);
  }

  /** Whether a run may begin at a line: not within one that a backslash continues. */
  static boolean mayBegin(byte[] bytes, int at) {
    int end = at - 1;
    while (end > 0 && (bytes[end] == '\n' || bytes[end] == '\r')) {
      end--;
    }
    return bytes[end] != '\\';
  }

  /** Reads the points of the run. */
  void readPoints(Progress progress) throws MeshFileException {
    cursor = new TextCursor(bytes, from, to);
    int line = 0;
    do {
      if (cursor.nextWordOnLine() && cursor.length() == 1 && cursor.byteAt(0) == 'v') {
        point();
      }
      tell(++line, progress);
    } while (cursor.nextLine());
  }

  private void tell(int line, Progress progress) {
    if ((line & (STRIDE - 1)) == 0) {
      progress.at((double) (cursor.position() - from) / (to - from));
    }
  }

  private void point() throws MeshFileException {
    if (3 * pointCount + 3 > points.length) {
      points = Arrays.copyOf(points, Growing.longer(points.length));
    }
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
      points[3 * pointCount + axis] = value;
    }
    if (cursor.nextWordOnLine()) {
      takeColour();
    }
    pointCount++;
  }

  /** Takes what follows the coordinates for a colour if it is three numbers, or four. */
  private void takeColour() {
    double[] channel = new double[4];
    int count = 0;
    do {
      if (count == channel.length) {
        return;
      }
      channel[count++] = cursor.number();
    } while (cursor.nextWordOnLine());
    if (count < 3 || !Double.isFinite(channel[0] + channel[1] + channel[2])) {
      return;
    }
    if (pointCount >= colours.length) {
      colours = Arrays.copyOf(colours, Math.max(points.length / 3, pointCount + 1));
    }
    colours[pointCount] = (byte) palette.number(channel[0], channel[1], channel[2]);
  }

  /** Number of points found. */
  int pointCount() {
    return pointCount;
  }

  /** Moves the points to their place among all. */
  void handPoints(double[] all, int before) {
    System.arraycopy(points, 0, all, 3 * before, 3 * pointCount);
    points = new double[0];
    allPoints = all;
    pointsBefore = before;
  }

  /** Colours of the run's points. */
  Palette palette() {
    return palette;
  }

  /**
   * Puts the numbers of the points' colours to their place among all.
   *
   * @param number in the file's palette, for each in the run's
   */
  void handColours(byte[] all, int before, int[] number) {
    for (int i = 0; i < Math.min(pointCount, colours.length); i++) {
      all[before + i] = (byte) number[colours[i]];
    }
    allColours = all;
  }

  /** Reads the faces of the run, all points being known. */
  void readFaces(Progress progress) throws MeshFileException {
    cursor = new TextCursor(bytes, from, to);
    int line = 0;
    do {
      if (cursor.nextWordOnLine()) {
        statement();
      }
      tell(++line, progress);
    } while (cursor.nextLine());
  }

  private void statement() throws MeshFileException {
    if (cursor.length() == 1) {
      switch (cursor.byteAt(0)) {
        case 'v' -> pointsBefore++;
        case 'f' -> face();
        case 'o' -> relabel(new Name(cursor.restOfLine(), name.group(), name.material()));
        case 'g' -> relabel(new Name(name.object(), cursor.restOfLine(), name.material()));
        case 's' -> {}
        case 'l', 'p' -> withoutArea++;
        default -> leaveOut();
      }
      return;
    }
    switch (cursor.length() > 12 ? "" : cursor.word()) {
      case "vt", "vn", "vp", "mtllib", "usemap", "maplib", "lod", "bevel", "mg" -> {}
      case "c_interp", "d_interp", "shadow_obj", "trace_obj", "ctech", "stech" -> {}
      case "usemtl" -> relabel(new Name(name.object(), name.group(), cursor.restOfLine()));
      case "curv", "curv2" -> withoutArea++;
      case "surf" ->
          throw refusal.at(
              place(),
              "the file holds a free-form surface",
              "Convert surfaces to triangles (a mesh) and export again.");
      case "fo" -> face();
      default -> leaveOut();
    }
  }

  private void leaveOut() {
    if (unread++ == 0) {
      unreadLine = cursor.line();
    }
  }

  private void relabel(Name other) {
    name = other;
    currentLabel = names.computeIfAbsent(name, key -> names.size());
  }

  private void face() throws MeshFileException {
    polygon.clear();
    while (true) {
      int plain = cursor.nextCount();
      if (plain > 0 && plain <= allPoints.length / 3) {
        polygon.add(plain - 1);
      } else if (plain > 0 || cursor.nextWordOnLine()) {
        polygon.add(index() - 1);
      } else {
        break;
      }
    }
    if (polygon.size() < 3) {
      throw refusal.at(
          place(),
          "the face has " + polygon.size() + " corners; it needs at least 3",
          "Mend the line or export the model again.");
    }
    splitter.requireSplittable(polygon.size(), this::place, refusal);
    growth.requireHeld(allPoints.length / 3, label.size(), "");
    int triangles = splitter.split(allPoints, polygon, 0, polygon.size());
    for (int i = 0; i < triangles; i++) {
      label.add(currentLabel);
    }
    for (int h = corner.size() - 3 * triangles;
        h < corner.size() && allColours.length > 0;
        h += 3) {
      colour.add(
          Palette.ofFace(
              allColours[corner.get(h)],
              allColours[corner.get(h + 1)],
              allColours[corner.get(h + 2)]));
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
    long index = back ? pointsBefore + 1 - value : value;
    if (value == 0) {
      throw refusal.at(
          place(),
          "the face names vertex 0, but vertices are counted from 1",
          "Mend the line or export the model again.");
    }
    if (index < 1) {
      throw outOfRange(-value, pointsBefore);
    }
    if (index > allPoints.length / 3) {
      throw outOfRange(index, allPoints.length / 3);
    }
    return (int) index;
  }

  /** Whether only texture and normal references follow: up to two, each after a slash. */
  private boolean restIsReferences(int after) {
    int i = after;
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

  private MeshFileException outOfRange(long index, int points) {
    return refusal.at(
        place(),
        String.format(Locale.ROOT, "the face names vertex %d, but there are %,d", index, points),
        "The file may be cut off. Copy it or export it again.");
  }

  private String place() {
    return "line " + cursor.line();
  }

  /** Corners of the triangles: numbers of points, from 0. */
  Growing.Ints corner() {
    return corner;
  }

  /** One entry per triangle into {@link #names}. */
  Growing.Ints label() {
    return label;
  }

  /** One entry per triangle into the file's palette; empty if faces get no colour. */
  Growing.Ints colour() {
    return colour;
  }

  /** Names in the order in which they came. */
  List<Name> names() {
    return new ArrayList<>(names.keySet());
  }

  /** Names in force at the end. */
  Name lastName() {
    return name;
  }

  /** Splits this run's polygons, and knows what was odd about them. */
  PolygonSplitter splitter() {
    return splitter;
  }

  /** Lines, curves and points left out. */
  long withoutArea() {
    return withoutArea;
  }

  /** Lines that begin with an unknown word. */
  long unread() {
    return unread;
  }

  /** Line of the first of them. */
  int unreadLine() {
    return unreadLine;
  }
}
