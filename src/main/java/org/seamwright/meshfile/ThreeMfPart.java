package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamwright.basis.Progress;

/** One model part of a 3MF file: its objects by number and, in the root part, what is built. */
final class ThreeMfPart {
  private static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
  private static final String PRODUCTION =
      "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";

  /** Extensions that may be required: they change neither shape nor size, or are read. */
  private static final Set<String> KNOWN =
      Set.of(
          CORE,
          PRODUCTION,
          "http://schemas.microsoft.com/3dmanufacturing/material/2015/02",
          "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07");

  private static final Map<String, FileUnit> UNITS =
      Map.of(
          "micron", unit("um", 0.001, "micron"),
          "millimeter", unit("mm", 1, "millimeter"),
          "centimeter", unit("cm", 10, "centimeter"),
          "meter", unit("m", 1000, "meter"),
          "inch", unit("in", 25.4, "inch"),
          "foot", unit("ft", 304.8, "foot"));

  private static final int STRIDE = 1 << 12;

  private final XmlPart xml;
  private final Progress progress;
  private final Growing.Doubles points = new Growing.Doubles();
  private final Growing.Ints corners = new Growing.Ints();
  private long elements;

  /** Objects by number. */
  final Map<Integer, Body> bodies = new HashMap<>();

  /** What is built. */
  final List<Placed> items = new ArrayList<>();

  FileUnit unit = UNITS.get("millimeter");

  /** Elements of extensions within objects that were passed over, and the first of them. */
  long passedOver;

  String firstPassedOver = "";

  /**
   * An object.
   *
   * @param name empty if it has none
   * @param support whether it only helps printing
   * @param xyz points of its mesh, 3 numbers each
   * @param corner triangles of its mesh
   * @param components other objects that it consists of
   */
  record Body(String name, boolean support, double[] xyz, int[] corner, List<Placed> components) {}

  /**
   * An object put in a place.
   *
   * @param part path of the part that holds it; empty for the same part
   */
  record Placed(String part, int object, Affine at) {}

  private ThreeMfPart(XmlPart xml, Progress progress) {
    this.xml = xml;
    this.progress = progress;
  }

  private static FileUnit unit(String symbol, double mm, String name) {
    return new FileUnit(symbol, mm, "the 3MF file says " + name);
  }

  /** Reads a part. */
  static ThreeMfPart read(ZipArchive archive, String name, Refusal refusal, Progress progress)
      throws MeshFileException {
    try (XmlPart xml = XmlPart.open(archive, name, refusal)) {
      ThreeMfPart part = new ThreeMfPart(xml, progress);
      part.model();
      return part;
    }
  }

  private boolean core(String element) {
    return xml.element().equals(element) && xml.namespace().equals(CORE);
  }

  private void model() throws MeshFileException {
    if (xml.next() != XmlPart.Event.BEGIN || !core("model")) {
      throw xml.refuse("the part is not a 3MF model", Refusal.EXPORT_AGAIN);
    }
    String said = xml.attribute("unit");
    if (said != null) {
      unit = UNITS.get(said.strip());
      if (unit == null) {
        throw xml.refuse(
            "the unit \"" + Refusal.shorten(said) + "\" is unknown", Refusal.EXPORT_AGAIN);
      }
    } else {
      unit = new FileUnit("mm", 1, "3MF is in millimetres where it says nothing");
    }
    requireKnown();
    int depth = 1;
    while (depth > 0) {
      switch (xml.next()) {
        case BEGIN -> {
          if (core("object")) {
            object();
          } else if (core("item")) {
            items.add(placed());
            depth++;
          } else {
            depth++;
          }
        }
        case END -> depth--;
        case FINISHED -> depth = 0;
      }
      tell();
    }
    while (xml.next() != XmlPart.Event.FINISHED) {
      tell();
    }
  }

  private void requireKnown() throws MeshFileException {
    String prefixes = xml.attribute("requiredextensions");
    if (prefixes == null) {
      return;
    }
    for (String prefix : prefixes.strip().split("\\s+")) {
      String uri = prefix.isEmpty() ? CORE : xml.namespaceOf(prefix);
      if (!KNOWN.contains(uri)) {
        throw xml.refuse(
            "the file can't be read without the extension "
                + Refusal.shorten(uri.isEmpty() ? prefix : uri, 120),
            "Export the piece without it, or as STL or PLY.");
      }
    }
  }

  private Placed placed() throws MeshFileException {
    String path = xml.attribute(PRODUCTION, "path");
    return new Placed(path == null ? "" : path.strip(), xml.index("objectid"), transform());
  }

  /** Twelve numbers, by which a row vector is multiplied: section 3.3 of the standard. */
  private Affine transform() throws MeshFileException {
    String text = xml.attribute("transform");
    if (text == null) {
      return Affine.IDENTITY;
    }
    String[] words = text.strip().split("\\s+", 13);
    if (words.length != 12) {
      throw xml.refuse("a transform needs 12 numbers", Refusal.EXPORT_AGAIN);
    }
    double[] m = new double[12];
    for (int i = 0; i < 12; i++) {
      double value = Decimals.parse(words[i]);
      if (!(Math.abs(value) <= Float.MAX_VALUE)) {
        throw xml.refuse(
            "'" + Refusal.shorten(words[i]) + "' in a transform is no finite number",
            Refusal.EXPORT_AGAIN);
      }
      m[i < 9 ? 3 * (i % 3) + i / 3 : i] = value;
    }
    return new Affine(m);
  }

  private void object() throws MeshFileException {
    int id = xml.index("id");
    String place = xml.place();
    String name = xml.attribute("name");
    String type = xml.attribute("type");
    boolean support = "support".equals(type) || "solidsupport".equals(type);
    List<Placed> components = List.of();
    points.clear();
    corners.clear();
    int depth = 1;
    while (depth > 0) {
      XmlPart.Event event = xml.next();
      if (event != XmlPart.Event.BEGIN) {
        depth = event == XmlPart.Event.END ? depth - 1 : 0;
        continue;
      }
      depth++;
      if (core("vertex")) {
        points.add(xml.number("x"));
        points.add(xml.number("y"));
        points.add(xml.number("z"));
      } else if (core("triangle")) {
        triangle();
      } else if (core("component")) {
        components = components.isEmpty() ? new ArrayList<>(2) : components;
        components.add(placed());
      } else if (!xml.namespace().equals(CORE) && passedOver++ == 0) {
        firstPassedOver = xml.element();
      }
      tell();
    }
    Body body =
        new Body(name == null ? "" : name, support, points.copy(), corners.copy(), components);
    if (bodies.put(id, body) != null) {
      throw xml.refuse("object " + id + " comes twice, again at " + place, Refusal.EXPORT_AGAIN);
    }
  }

  private void triangle() throws MeshFileException {
    for (int k = 1; k <= 3; k++) {
      int v = xml.index("v" + k);
      if (v >= points.size() / 3) {
        throw xml.refuse(
            "the triangle names vertex " + v + ", but its object has " + points.size() / 3,
            Refusal.EXPORT_AGAIN);
      }
      corners.add(v);
    }
  }

  private void tell() {
    if ((++elements & (STRIDE - 1)) == 0) {
      progress.at(0);
    }
  }
}
