package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/**
 * Reads PLY, text or binary of either byte order: the points of {@code vertex}, the polygons of
 * {@code face} and the strips of {@code tristrips}; other elements and properties are passed over.
 * Any type may stand for any value. Polygons are split as those of OBJ are.
 *
 * <p>Counts are never trusted: nothing is allocated before the values that fill it are read. O(n)
 * time and memory, but for polygons: see {@link PolygonSplitter}.
 *
 * <p>Source: G. Turk, "The PLY polygon file format", 1994; the strips follow the Stanford 3D
 * scanning repository (corners in one list, -1 between strips).
 */
final class PlyReader {
  private static final int STRIDE = 1 << 12;
  private static final String[] CORNERS = {"vertex_indices", "vertex_index"};

  private final PlyHeader header;
  private final PlyValues values;
  private final Refusal refusal;
  private final Progress progress;
  private final int length;
  private final Growing.Doubles points = new Growing.Doubles();
  private final Growing.Ints corner = new Growing.Ints();
  private final PolygonSplitter splitter = new PolygonSplitter(corner);
  private final List<Notice> notices = new ArrayList<>();

  /** Polygons that came before the points: length, then corners. */
  private final Growing.Ints early = new Growing.Ints();

  private boolean pointsKnown;
  private long highest = -1;
  private String highestPlace = "";
  private long withoutArea;

  private PlyReader(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    this.header = PlyHeader.of(bytes, refusal);
    this.values = PlyValues.of(bytes, header, refusal);
    this.refusal = refusal;
    this.progress = progress;
    this.length = bytes.length;
  }

  /** Reads a file that {@link PlyHeader#opens} holds for. */
  static RawFaces read(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    return new PlyReader(bytes, refusal, progress).elements();
  }

  private RawFaces elements() throws MeshFileException {
    requireSurface();
    for (PlyHeader.Element element : header.elements()) {
      values.begin("", 0);
      values.requireRoom(element);
      switch (element.name()) {
        case "vertex" -> vertices(element);
        case "face" -> faces(element);
        case "tristrips" -> strips(element);
        default -> others(element);
      }
    }
    if (highest >= points.size() / 3) {
      throw refusal.at(
          highestPlace,
          String.format(
              Locale.ROOT,
              "the face names vertex %d, but there are %,d, counted from 0",
              highest,
              points.size() / 3),
          Refusal.EXPORT_AGAIN);
    }
    splitEarly();
    tell();
    if (corner.size() == 0) {
      throw refusal.noFaces();
    }
    return new RawFaces(
        new RawFaces.Points.Wide(points.toArray()),
        corner.toArray(),
        new int[0],
        List.of(""),
        notices);
  }

  private void requireSurface() throws MeshFileException {
    boolean vertices = false;
    boolean faces = false;
    for (PlyHeader.Element element : header.elements()) {
      vertices |= element.name().equals("vertex") && element.count() > 0;
      faces |= element.name().equals("face") && element.count() > 0;
      faces |= element.name().equals("tristrips") && element.count() > 0;
    }
    if (vertices && !faces) {
      throw refusal.at(
          "",
          "the file holds a cloud of points without faces",
          "Make a surface of it in the scanning program and export that.");
    }
    if (!vertices) {
      throw refusal.noFaces();
    }
  }

  private void vertices(PlyHeader.Element element) throws MeshFileException {
    List<PlyHeader.Property> properties = element.properties();
    int[] axisOf = new int[properties.size()];
    java.util.Arrays.fill(axisOf, -1);
    for (int axis = 0; axis < 3; axis++) {
      String name = "xyz".substring(axis, axis + 1);
      int at = element.indexOf(name);
      if (at < 0 || properties.get(at).list()) {
        throw refusal.at(
            "", "the vertices have no coordinate " + name, "Export the model again as STL or PLY.");
      }
      axisOf[at] = axis;
    }
    double[] place = new double[3];
    for (long v = 0; v < element.count(); v++) {
      values.begin("vertex", v);
      for (int i = 0; i < axisOf.length; i++) {
        if (axisOf[i] < 0) {
          skip(properties.get(i));
        } else {
          place[axisOf[i]] = coordinate(properties.get(i).type());
        }
      }
      for (double value : place) {
        points.add(value);
      }
      tell(v);
    }
    pointsKnown = true;
    if (element.indexOf("red", "diffuse_red", "r") >= 0) {
      notices.add(PolygonNotices.colours(element.count(), "vertices"));
    }
  }

  private double coordinate(PlyHeader.Type type) throws MeshFileException {
    double value = values.value(type);
    if (!(Math.abs(value) <= Float.MAX_VALUE)) {
      throw Double.isFinite(value)
          ? refusal.tooLarge(values.place(), Double.toString(value))
          : refusal.notFinite(values.place(), Double.toString(value));
    }
    return value;
  }

  private void faces(PlyHeader.Element element) throws MeshFileException {
    int corners = cornerList(element);
    Growing.Ints polygon = new Growing.Ints();
    for (long f = 0; f < element.count(); f++) {
      values.begin("face", f);
      for (int i = 0; i < element.properties().size(); i++) {
        PlyHeader.Property property = element.properties().get(i);
        if (i == corners) {
          polygon.clear();
          polygon(property, polygon);
        } else {
          skip(property);
        }
      }
      tell(f);
    }
    if (element.indexOf("red", "diffuse_red", "r") >= 0) {
      notices.add(PolygonNotices.colours(element.count(), "faces"));
    }
  }

  private int cornerList(PlyHeader.Element element) throws MeshFileException {
    int corners = element.indexOf(CORNERS);
    if (element.count() > 0 && (corners < 0 || !element.properties().get(corners).list())) {
      throw refusal.at(
          "",
          "the element " + element.name() + " has no list vertex_indices",
          "Export the model again as STL or PLY.");
    }
    return corners;
  }

  private void polygon(PlyHeader.Property list, Growing.Ints polygon) throws MeshFileException {
    long count = values.length(list);
    splitter.requireSplittable((int) Math.min(count, Integer.MAX_VALUE), values::place, refusal);
    for (long i = 0; i < count; i++) {
      polygon.add(index(values.whole(list.type())));
    }
    if (count < 3) {
      withoutArea++;
    } else if (pointsKnown && highest < points.size() / 3) {
      splitter.split(points, polygon, 0, polygon.size());
    } else {
      early.add(polygon.size());
      for (int i = 0; i < polygon.size(); i++) {
        early.add(polygon.get(i));
      }
    }
  }

  private int index(long index) throws MeshFileException {
    if (index < 0 || index > Integer.MAX_VALUE) {
      throw refusal.at(
          values.place(),
          "the face names vertex " + index + ", which can't be",
          Refusal.EXPORT_AGAIN);
    }
    if (index > highest) {
      highest = index;
      if (!pointsKnown || index >= points.size() / 3) {
        highestPlace = values.element();
      }
    }
    return (int) index;
  }

  private void splitEarly() {
    for (int at = 0; at < early.size(); at += early.get(at) + 1) {
      splitter.split(points, early, at + 1, early.get(at));
      progress.at(1);
    }
  }

  private void strips(PlyHeader.Element element) throws MeshFileException {
    int corners = cornerList(element);
    for (long s = 0; s < element.count(); s++) {
      values.begin("tristrips", s);
      for (int i = 0; i < element.properties().size(); i++) {
        PlyHeader.Property property = element.properties().get(i);
        if (i == corners) {
          strip(property);
        } else {
          skip(property);
        }
      }
    }
  }

  /** Triangles of one list; those with equal corners only join strips. */
  private void strip(PlyHeader.Property list) throws MeshFileException {
    long count = values.length(list);
    int before = -1;
    int last = -1;
    int run = 0;
    for (long i = 0; i < count; i++) {
      long value = values.whole(list.type());
      if (value == -1 || (value == (1L << 32) - 1 && list.type() == PlyHeader.Type.UINT32)) {
        run = 0;
        continue;
      }
      int index = index(value);
      if (++run >= 3 && index != last && index != before && last != before) {
        boolean odd = (run & 1) == 0;
        corner.add(odd ? last : before);
        corner.add(odd ? before : last);
        corner.add(index);
      }
      before = last;
      last = index;
      tell(i);
    }
  }

  private void others(PlyHeader.Element element) throws MeshFileException {
    if (element.properties().isEmpty()) {
      return;
    }
    for (long i = 0; i < element.count(); i++) {
      values.begin(element.name(), i);
      for (PlyHeader.Property property : element.properties()) {
        skip(property);
      }
      tell(i);
    }
    if (element.name().equals("edge")) {
      withoutArea += element.count();
    }
  }

  private void skip(PlyHeader.Property property) throws MeshFileException {
    values.skip(property.type(), property.list() ? values.length(property) : 1);
  }

  private void tell(long done) {
    if ((done & (STRIDE - 1)) == 0) {
      progress.at((double) values.position() / length);
    }
  }

  private void tell() {
    notices.addAll(PolygonNotices.of(splitter));
    if (withoutArea > 0) {
      notices.add(PolygonNotices.withoutArea(withoutArea));
    }
    values.begin("", 0);
    long left = values.left();
    if (left > 0) {
      notices.add(
          new Notice(
              "bytes-after-end",
              left,
              String.format(
                  Locale.ROOT,
                  "%,d bytes follow the last value that the header announces and were not read; if"
                      + " they hold faces, area is missing.",
                  left)));
    }
  }
}
