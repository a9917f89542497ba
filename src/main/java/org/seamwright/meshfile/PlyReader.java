package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Count;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/**
 * Reads PLY, text or binary of either byte order: the points of {@code vertex}, the polygons of
 * {@code face} and the strips of {@code tristrips}; other elements and properties are passed over.
 * Any type may stand for any value. Polygons are split as those of OBJ are; colours of faces, or
 * else of vertices, become labels as far as {@link Palette} says.
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

  /** Names of the channels of a colour; whole numbers count to 255, others to 1. */
  private static final String[][] CHANNELS = {
    {"red", "diffuse_red", "r"}, {"green", "diffuse_green", "g"}, {"blue", "diffuse_blue", "b"}
  };

  private static final double FULL = 255;

  private final PlyHeader header;
  private final PlyValues values;
  private final Refusal refusal;
  private final Progress progress;
  private final int length;
  private final Growth growth;
  private final Growing.Doubles points = new Growing.Doubles();
  private final Growing.Ints corner = new Growing.Ints();
  private final PolygonSplitter splitter = new PolygonSplitter(corner);
  private final List<Notice> notices = new ArrayList<>();

  private final Palette vertexPalette = new Palette();
  private final Palette facePalette = new Palette();

  /** One entry per point into the palette of vertices; empty if they have no colours. */
  private final Growing.Ints vertexColour = new Growing.Ints();

  /** One entry per triangle into the palette of faces; empty if they have no colours. */
  private final Growing.Ints faceColour = new Growing.Ints();

  /** Channels of the element that is being read. */
  private final double[] channel = new double[3];

  /** Polygons that came before the points: length, colour, then corners. */
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
    this.growth = Growth.holding(bytes.length, refusal);
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
    requireEnd();
    splitEarly();
    tell();
    if (corner.size() == 0) {
      throw refusal.noFaces();
    }
    colourUpTo(facePalette.names() ? corner.size() / 3 : 0, Palette.NONE);
    Palette palette = facePalette.names() ? facePalette : vertexPalette;
    int[] label = facePalette.names() ? faceColour.toArray() : byVertices();
    return new RawFaces(
        new RawFaces.Points.Wide(points.toArray()),
        corner.toArray(),
        label,
        label.length > 0 ? palette.allNames() : List.of(""),
        notices);
  }

  private int[] byVertices() {
    if (!vertexPalette.names()) {
      return new int[0];
    }
    int[] label = new int[corner.size() / 3];
    for (int f = 0; f < label.length; f++) {
      label[f] =
          Palette.ofFace(
              vertexColour.get(corner.get(3 * f)),
              vertexColour.get(corner.get(3 * f + 1)),
              vertexColour.get(corner.get(3 * f + 2)));
    }
    return label;
  }

  /** Which channel each property of an element holds, or -1; all -1 unless all three are there. */
  private static int[] channelsOf(PlyHeader.Element element) {
    int[] channelOf = new int[element.properties().size()];
    java.util.Arrays.fill(channelOf, -1);
    int found = 0;
    for (int c = 0; c < CHANNELS.length; c++) {
      int at = element.indexOf(CHANNELS[c]);
      if (at >= 0 && !element.properties().get(at).list()) {
        channelOf[at] = c;
        found++;
      }
    }
    if (found < CHANNELS.length) {
      java.util.Arrays.fill(channelOf, -1);
    }
    return channelOf;
  }

  private static boolean isColoured(int[] channelOf) {
    for (int c : channelOf) {
      if (c >= 0) {
        return true;
      }
    }
    return false;
  }

  private void channel(PlyHeader.Type type, int c) throws MeshFileException {
    double value = values.value(type);
    channel[c] = type.whole() ? value / FULL : Double.isFinite(value) ? value : 0;
  }

  /** Values behind the last one announced may be faces: a count that is too small hides them. */
  private void requireEnd() throws MeshFileException {
    values.begin("", 0);
    String place = values.place();
    long left = values.left();
    if (left > 0) {
      throw refusal.at(
          place,
          "the PLY goes on after the last value that its header announces, by "
              + Count.of(left, "byte"),
          "Faces may be missing: a count in the header is too small. Mend it, or export the model"
              + " again.");
    }
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
    growth.requireHeld(element.count(), 0, "");
    int[] channelOf = channelsOf(element);
    boolean coloured = isColoured(channelOf);
    double[] place = new double[3];
    for (long v = 0; v < element.count(); v++) {
      values.begin("vertex", v);
      for (int i = 0; i < axisOf.length; i++) {
        if (axisOf[i] >= 0) {
          place[axisOf[i]] = coordinate(properties.get(i).type());
        } else if (channelOf[i] >= 0) {
          channel(properties.get(i).type(), channelOf[i]);
        } else {
          skip(properties.get(i));
        }
      }
      if (coloured) {
        vertexColour.add(vertexPalette.number(channel[0], channel[1], channel[2]));
      }
      for (double value : place) {
        points.add(value);
      }
      tell(v);
    }
    pointsKnown = true;
    if (!coloured && element.indexOf(CHANNELS[0]) >= 0) {
      notices.add(PolygonNotices.colours(element.count(), "vertex", "vertices"));
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
    int[] channelOf = channelsOf(element);
    boolean coloured = isColoured(channelOf);
    Growing.Ints polygon = new Growing.Ints();
    for (long f = 0; f < element.count(); f++) {
      values.begin("face", f);
      for (int i = 0; i < element.properties().size(); i++) {
        PlyHeader.Property property = element.properties().get(i);
        if (i == corners) {
          polygon.clear();
          polygon(property, polygon);
        } else if (channelOf[i] >= 0) {
          channel(property.type(), channelOf[i]);
        } else {
          skip(property);
        }
      }
      int colour = coloured ? facePalette.number(channel[0], channel[1], channel[2]) : Palette.NONE;
      take(polygon, colour);
      tell(f);
    }
    if (!coloured && element.indexOf(CHANNELS[0]) >= 0) {
      notices.add(PolygonNotices.colours(element.count(), "face", "faces"));
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
  }

  private void take(Growing.Ints polygon, int colour) throws MeshFileException {
    if (polygon.size() < 3) {
      withoutArea++;
    } else if (pointsKnown && highest < points.size() / 3) {
      split(polygon, 0, polygon.size(), colour);
    } else {
      early.add(polygon.size());
      early.add(colour);
      for (int i = 0; i < polygon.size(); i++) {
        early.add(polygon.get(i));
      }
    }
  }

  private void split(Growing.Ints polygon, int from, int count, int colour)
      throws MeshFileException {
    int before = corner.size() / 3;
    growth.requireHeld(points.size() / 3, before, "");
    splitter.split(points, polygon, from, count);
    if (facePalette.names()) {
      colourUpTo(before, Palette.NONE);
      colourUpTo(corner.size() / 3, colour);
    }
  }

  /** Gives the triangles up to a number that have no colour yet one. */
  private void colourUpTo(int triangle, int colour) {
    while (faceColour.size() < triangle) {
      faceColour.add(colour);
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

  private void splitEarly() throws MeshFileException {
    for (int at = 0; at < early.size(); at += early.get(at) + 2) {
      split(early, at + 2, early.get(at), early.get(at + 1));
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
    notices.addAll(vertexPalette.notices("vertex", "vertices"));
    notices.addAll(facePalette.notices("face", "faces"));
    notices.addAll(PolygonNotices.of(splitter));
    if (withoutArea > 0) {
      notices.add(PolygonNotices.withoutArea(withoutArea));
    }
  }
}
