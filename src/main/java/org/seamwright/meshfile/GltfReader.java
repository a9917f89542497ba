package org.seamwright.meshfile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.Count;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;

/**
 * Reads glTF 2.0, as GLB or as JSON with its numbers embedded in base64: the triangles, strips and
 * fans of all meshes in the default scene, each node's transform applied. Names of nodes and
 * materials become labels; the unit is the metre. Skins and morph targets are told and left out;
 * compressed meshes and numbers in other files are refused.
 *
 * <p>O(n) time and memory in what the scene shows; copies are bounded by {@link Growth}.
 *
 * <p>Source: The Khronos 3D Formats Working Group, "glTF 2.0 Specification", version 2.0.1, 2021
 * (ISO/IEC 12113:2022), sections 3.4 to 3.7 and 4.4.
 */
final class GltfReader {
  private static final FileUnit METRE =
      new FileUnit("m", 1000, "glTF is in metres by its standard");
  private static final int HEADER = 12;
  private static final int JSON_CHUNK = 0x4E4F534A;
  private static final int BINARY_CHUNK = 0x004E4942;

  /** Extensions that may be required since they change neither shape nor size, or are read. */
  private static final List<String> HARMLESS =
      List.of(
          "KHR_materials_",
          "KHR_texture_",
          "EXT_texture_",
          "KHR_lights_",
          "KHR_xmp",
          "KHR_mesh_quantization");

  private final Progress progress;
  private final FaceSink sink;
  private final GltfJson root;
  private final GltfBuffers buffers;
  private final List<Notice> notices = new ArrayList<>();
  private double done;
  private long skinned;
  private long morphed;
  private long withoutArea;
  private long coloured;

  /** A node to be visited and what its parent does to it. */
  private record Visit(int node, Affine parent) {}

  private GltfReader(
      GltfJson root, ByteBuffer binary, long bytes, Refusal refusal, Progress progress)
      throws MeshFileException {
    this.progress = progress;
    this.root = root;
    Growth growth = Growth.copying(bytes, refusal);
    this.sink = new FaceSink(refusal, growth);
    this.buffers = new GltfBuffers(root, binary, growth);
  }

  /** Whether the bytes open a GLB. */
  static boolean opensBinary(byte[] bytes) {
    return bytes.length > 4
        && bytes[0] == 'g'
        && bytes[1] == 'l'
        && bytes[2] == 'T'
        && bytes[3] == 'F';
  }

  /** Reads a GLB. */
  static RawFaces readBinary(byte[] bytes, Refusal refusal, Progress progress)
      throws MeshFileException {
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    if (bytes.length < HEADER + 8) {
      throw cutOff(refusal, bytes.length);
    }
    if (in.getInt(4) != 2) {
      throw refusal.at(
          "byte 4",
          "this is glTF " + Integer.toUnsignedString(in.getInt(4)) + "; only 2 is known",
          "Export the model as glTF 2.0.");
    }
    long end = Integer.toUnsignedLong(in.getInt(8));
    if (end > bytes.length) {
      throw cutOff(refusal, bytes.length);
    }
    long jsonLength = Integer.toUnsignedLong(in.getInt(HEADER));
    if (in.getInt(HEADER + 4) != JSON_CHUNK || HEADER + 8 + jsonLength > end) {
      throw refusal.at(
          "byte " + HEADER, "the GLB does not begin with its JSON", Refusal.EXPORT_AGAIN);
    }
    GltfJson root = GltfJson.parse(bytes, HEADER + 8, (int) jsonLength, refusal);
    ByteBuffer binary = null;
    long at = HEADER + 8 + jsonLength;
    if (at + 8 <= end && in.getInt((int) at + 4) == BINARY_CHUNK) {
      long length = Integer.toUnsignedLong(in.getInt((int) at));
      if (at + 8 + length > end) {
        throw cutOff(refusal, bytes.length);
      }
      binary = in.duplicate().position((int) at + 8).limit((int) (at + 8 + length)).slice();
    }
    GltfReader reader = new GltfReader(root, binary, bytes.length, refusal, progress);
    if (end < bytes.length) {
      reader.notices.add(
          new Notice(
              "bytes-after-end",
              bytes.length - end,
              Count.of(
                      bytes.length - end,
                      "byte after the end of the GLB was",
                      "bytes after the end of the GLB were")
                  + " not read. If there are faces in them, area is missing."));
    }
    return reader.scene();
  }

  /** Reads glTF as JSON text that begins at a byte. */
  static RawFaces readText(byte[] bytes, int from, Refusal refusal, Progress progress)
      throws MeshFileException {
    GltfJson root = GltfJson.parse(bytes, from, bytes.length - from, refusal);
    return new GltfReader(root, null, bytes.length, refusal, progress).scene();
  }

  private static MeshFileException cutOff(Refusal refusal, int at) {
    return refusal.at(
        "byte " + at,
        "the GLB is cut off: its header announces more than the file has",
        "Copy or download the file again, or export it again.");
  }

  private RawFaces scene() throws MeshFileException {
    requireKnown();
    int nodes = root.count("nodes");
    boolean[] seen = new boolean[nodes];
    Deque<Visit> pending = new ArrayDeque<>();
    if (root.count("scenes") > 0) {
      GltfJson scene = root.get("scenes").at(root.index("scene", 0));
      if (scene.has("nodes")) {
        push(scene.get("nodes"), Affine.IDENTITY, seen, pending);
      }
    } else {
      pushRoots(nodes, seen, pending);
    }
    int visited = 0;
    while (!pending.isEmpty()) {
      Visit visit = pending.pop();
      GltfJson node = root.get("nodes").at(visit.node());
      Affine at = visit.parent().after(GltfNodes.transform(node));
      if (node.has("children")) {
        push(node.get("children"), at, seen, pending);
      }
      if (node.has("mesh")) {
        mesh(node, at);
      }
      done = (double) ++visited / nodes;
      progress.at(done);
    }
    if (nodes == 0) {
      withoutNodes();
    }
    tellOthers(seen);
    return sink.faces(notices, METRE);
  }

  private void requireKnown() throws MeshFileException {
    GltfJson asset = root.get("asset");
    String version = asset.get("version").text();
    String least = asset.has("minVersion") ? asset.get("minVersion").text() : "2.0";
    if (!version.startsWith("2.") || !least.equals("2.0")) {
      throw asset.refuse(
          "this is glTF " + Refusal.shorten(version) + "; only 2.0 is known",
          "Export the model as glTF 2.0.");
    }
    for (int i = 0; i < root.count("extensionsRequired"); i++) {
      GltfJson name = root.get("extensionsRequired").at(i);
      if (HARMLESS.stream().noneMatch(name.text()::startsWith)) {
        throw name.refuse(
            "the file can't be read without the extension " + Refusal.shorten(name.text()),
            name.text().contains("draco") || name.text().contains("meshopt")
                ? "Export the model again without compression."
                : "Export the model again without it, or as STL or PLY.");
      }
    }
  }

  private void push(GltfJson list, Affine parent, boolean[] seen, Deque<Visit> pending)
      throws MeshFileException {
    for (int i = list.size() - 1; i >= 0; i--) {
      int node = list.at(i).index();
      if (node >= seen.length) {
        throw list.at(i)
            .refuse(
                "the file names node " + node + ", but has " + seen.length, Refusal.EXPORT_AGAIN);
      }
      if (seen[node]) {
        throw list.at(i)
            .refuse("node " + node + " hangs in more than one place", Refusal.EXPORT_AGAIN);
      }
      seen[node] = true;
      pending.push(new Visit(node, parent));
    }
  }

  /** Without a scene, every node that is no child stands for itself. */
  private void pushRoots(int nodes, boolean[] seen, Deque<Visit> pending) throws MeshFileException {
    boolean[] child = new boolean[nodes];
    for (int n = 0; n < nodes; n++) {
      GltfJson node = root.get("nodes").at(n);
      for (int i = 0; i < node.count("children"); i++) {
        int index = node.get("children").at(i).index();
        if (index < nodes) {
          child[index] = true;
        }
      }
    }
    for (int n = nodes - 1; n >= 0; n--) {
      if (!child[n]) {
        seen[n] = true;
        pending.push(new Visit(n, Affine.IDENTITY));
      }
    }
  }

  /** A file without nodes is a store of meshes: each is taken as it is. */
  private void withoutNodes() throws MeshFileException {
    for (int m = 0; m < root.count("meshes"); m++) {
      primitives(root.get("meshes").at(m), "", Affine.IDENTITY);
    }
  }

  private void mesh(GltfJson node, Affine at) throws MeshFileException {
    if (node.has("extensions") && node.get("extensions").has("EXT_mesh_gpu_instancing")) {
      throw node.refuse(
          "the node shows copies by the extension EXT_mesh_gpu_instancing, which is not read",
          "Export the model again with real copies, or as STL or PLY.");
    }
    boolean skin = node.has("skin");
    skinned += skin ? 1 : 0;
    GltfJson mesh = root.get("meshes").at(node.get("mesh").index());
    // Section 3.7.3.3: the node's own transform does not move a skinned mesh, its joints do.
    primitives(mesh, node.text("name"), skin ? Affine.IDENTITY : at);
  }

  private void primitives(GltfJson mesh, String nodeName, Affine at) throws MeshFileException {
    GltfJson list = mesh.get("primitives");
    String name = nodeName.isBlank() ? mesh.text("name") : nodeName;
    Map<Integer, Integer> placed = new HashMap<>();
    for (int i = 0; i < list.size(); i++) {
      GltfJson primitive = list.at(i);
      sink.reserve(1, 1, primitive.path());
      String material =
          primitive.has("material")
              ? root.get("materials").at(primitive.get("material").index()).text("name")
              : "";
      int mode = primitive.index("mode", GltfTriangles.TRIANGLES);
      if (mode < GltfTriangles.TRIANGLES) {
        withoutArea++;
      } else {
        primitive(primitive, mode, at, placed, sink.name(primitive.path(), name, material));
      }
    }
  }

  private void primitive(
      GltfJson primitive, int mode, Affine at, Map<Integer, Integer> placed, int name)
      throws MeshFileException {
    GltfJson attributes = primitive.get("attributes");
    morphed += primitive.count("targets") > 0 ? 1 : 0;
    coloured += attributes.has("COLOR_0") ? 1 : 0;
    if (!attributes.has("POSITION")) {
      throw primitive.refuse(
          primitive.has("extensions")
              ? "its points can't be read without the extension "
                  + Refusal.shorten(String.join(", ", primitive.get("extensions").keys()))
              : "it has no points",
          "Export the model again without compression.");
    }
    GltfJson reference = attributes.get("POSITION");
    GltfBuffers.Accessor points = buffers.accessor(reference, 3);
    GltfBuffers.Accessor corners =
        primitive.has("indices") ? buffers.accessor(primitive.get("indices"), 1) : null;
    Integer base = placed.get(reference.index());
    if (base == null) {
      base = sink.points();
      sink.reserve(points.count(), 0, primitive.path());
      for (int v = 0; v < points.count(); v++) {
        sink.point(
            at, points.value(v, 0), points.value(v, 1), points.value(v, 2), reference.path(), v);
      }
      placed.put(reference.index(), base);
    }
    int count = corners == null ? points.count() : corners.count();
    sink.reserve(0, mode == GltfTriangles.TRIANGLES ? count / 3 : count, primitive.path());
    new GltfTriangles(primitive, corners, points.count(), base, at.mirrors(), name)
        .into(sink, mode, count, within -> progress.at(done));
  }

  private void tellOthers(boolean[] seen) throws MeshFileException {
    long outside = 0;
    for (int n = 0; n < seen.length; n++) {
      outside += !seen[n] && root.get("nodes").at(n).has("mesh") ? 1 : 0;
    }
    notice(
        outside,
        "nodes-outside-scene",
        "is not in the scene that the file shows by default and was left out.",
        "are not in the scene that the file shows by default and were left out.");
    notice(
        skinned,
        "skins-ignored",
        "is moved by a skeleton, which was left out: check its size and place.",
        "are moved by a skeleton, which was left out: check their size and place.");
    notice(
        morphed,
        "morphs-ignored",
        "can change its shape (morph targets); the shape without them was taken.",
        "can change their shape (morph targets); the shape without them was taken.");
    if (coloured > 0) {
      notices.add(PolygonNotices.colours(coloured, "body", "bodies"));
    }
    if (withoutArea > 0) {
      notices.add(PolygonNotices.withoutArea(withoutArea));
    }
  }

  /** Tells of bodies: what is said of one, and of several. */
  private void notice(long count, String code, String one, String several) {
    if (count > 0) {
      notices.add(new Notice(code, count, Count.of(count, "body " + one, "bodies " + several)));
    }
  }
}
