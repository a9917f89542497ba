package org.seamwright.meshfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.Count;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/**
 * Reads 3MF: the meshes of all objects that are built, with the transforms of build items and
 * components, and objects in other parts (production extension). Names of objects become labels;
 * the unit is the file's. Supports are left out and told; unknown extensions that the file requires
 * are refused.
 *
 * <p>O(n) time and memory in what is built; copies and unpacking are bounded by {@link Growth}.
 *
 * <p>Source: 3MF Consortium, "3D Manufacturing Format Core Specification", version 1.3, 2021, and
 * "Production Extension", version 1.1; ISO/IEC 29500-2 (OPC) for the package.
 */
final class ThreeMfReader {
  private static final String RELATIONS = "_rels/.rels";
  private static final String USUAL_MODEL = "3D/3dmodel.model";
  private static final String MODEL_TYPE =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

  /** Components may hang under components so often; the standard sets no limit. */
  private static final int DEEPEST = 100;

  private final ZipArchive archive;
  private final Refusal refusal;
  private final Progress progress;
  private final FaceSink sink;
  private final Map<String, ThreeMfPart> parts = new HashMap<>();
  private String root = "";
  private long supports;

  private ThreeMfReader(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    this.archive = ZipArchive.of(bytes, refusal);
    this.refusal = refusal;
    this.progress = progress;
    this.sink = new FaceSink(refusal, Growth.copying(bytes.length, refusal));
  }

  /** Reads a zip archive, which must hold a 3MF model. */
  static RawFaces read(byte[] bytes, Refusal refusal, Progress progress) throws MeshFileException {
    return new ThreeMfReader(bytes, refusal, progress).model();
  }

  private RawFaces model() throws MeshFileException {
    root = rootName();
    ThreeMfPart model = part(root);
    for (ThreeMfPart.Placed item : model.items) {
      place(root, item, Affine.IDENTITY, "", 0);
    }
    List<Notice> notices = new ArrayList<>();
    if (supports > 0) {
      notices.add(
          new Notice(
              "supports-left-out",
              supports,
              Count.of(
                  supports,
                  "object only supports the piece while it is printed and was left out.",
                  "objects only support the piece while it is printed and were left out.")));
    }
    long passedOver = parts.values().stream().mapToLong(p -> p.passedOver).sum();
    if (passedOver > 0) {
      notices.add(
          new Notice(
              "extensions-ignored",
              passedOver,
              Count.of(passedOver, "element of an extension", "elements of extensions")
                  + " (such as "
                  + Refusal.shorten(parts.get(root).firstPassedOver)
                  + ") "
                  + (passedOver == 1 ? "was" : "were")
                  + " passed over. If the shape is changed there, area is missing."));
    }
    return sink.faces(notices, model.unit);
  }

  private String rootName() throws MeshFileException {
    if (archive.has(RELATIONS)) {
      try (XmlPart xml = XmlPart.open(archive, RELATIONS, refusal)) {
        XmlPart.Event event = xml.next();
        while (event != XmlPart.Event.FINISHED) {
          if (event == XmlPart.Event.BEGIN
              && xml.element().equals("Relationship")
              && MODEL_TYPE.equals(xml.attribute("Type"))) {
            return xml.required("Target");
          }
          event = xml.next();
        }
      }
    }
    if (archive.has(USUAL_MODEL)) {
      return USUAL_MODEL;
    }
    throw refusal.at(
        "",
        "the file is a zip archive without a 3MF model",
        "Unpack it and name the mesh file that is in it.");
  }

  private ThreeMfPart part(String name) throws MeshFileException {
    ThreeMfPart part = parts.get(name);
    if (part == null) {
      if (!archive.has(name)) {
        throw refusal.at(
            Refusal.shorten(name), "this part of the 3MF is missing", Refusal.EXPORT_AGAIN);
      }
      part = ThreeMfPart.read(archive, name, refusal, progress);
      if (!name.equals(root) && part.unit.mmPerUnit() != parts.get(root).unit.mmPerUnit()) {
        throw refusal.at(
            Refusal.shorten(name), "its unit is not that of the whole", Refusal.EXPORT_AGAIN);
      }
      parts.put(name, part);
    }
    return part;
  }

  private void place(
      String holder, ThreeMfPart.Placed placed, Affine parent, String name, int depth)
      throws MeshFileException {
    String partName = placed.part().isEmpty() ? holder : placed.part();
    String where = Refusal.shorten(partName) + ", object " + placed.object();
    ThreeMfPart.Body body = part(partName).bodies.get(placed.object());
    if (body == null) {
      throw refusal.at(where, "there is no such object", Refusal.EXPORT_AGAIN);
    }
    sink.reserve(1, 1, where);
    if (body.support()) {
      supports++;
      return;
    }
    if (depth > DEEPEST) {
      throw refusal.at(
          where, "objects consist of each other, or too many in a row", Refusal.EXPORT_AGAIN);
    }
    Affine at = parent.after(placed.at());
    mesh(body, at, sink.name(where, name, body.name()), where);
    for (ThreeMfPart.Placed component : body.components()) {
      place(partName, component, at, name.isEmpty() ? body.name() : name, depth + 1);
    }
  }

  private void mesh(ThreeMfPart.Body body, Affine at, int label, String where)
      throws MeshFileException {
    double[] xyz = body.xyz();
    int[] corner = body.corner();
    sink.reserve(xyz.length / 3, corner.length / 3, where);
    int base = sink.points();
    for (int v = 0; v < xyz.length / 3; v++) {
      sink.point(at, xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2], where, v);
    }
    boolean turned = at.mirrors();
    for (int h = 0; h < corner.length; h += 3) {
      sink.triangle(base + corner[h], base + corner[h + 1], base + corner[h + 2], turned, label);
    }
    progress.at(0.9);
  }
}
