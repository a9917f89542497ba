package org.seamwright.share;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.basis.Progress;
import org.seamwright.job.JsonText;
import org.seamwright.job.PlannedJob;

/**
 * A planned piece as binary glTF 2.0 (Khronos Group, ISO/IEC 12113:2022), for any viewer: one mesh,
 * a primitive and a named material for each region. Metres, y up, as the format asks.
 */
public final class GlbFile {
  private static final int MAGIC = 0x46546C67;
  private static final int JSON = 0x4E4F534A;
  private static final int BIN = 0x004E4942;
  private static final int FLOAT = 5126;
  private static final int UNSIGNED_INT = 5125;
  private static final int ARRAY_BUFFER = 34962;
  private static final int ELEMENT_ARRAY_BUFFER = 34963;
  private static final double METRES_PER_MM = 1e-3;

  private final ShareModel model;
  private final Corners corners;
  private final List<Object> accessors = new ArrayList<>();
  private final List<Object> views = new ArrayList<>();
  private final List<Object> primitives = new ArrayList<>();
  private final List<Object> materials = new ArrayList<>();

  private GlbFile(ShareModel model) {
    this.model = model;
    this.corners = Corners.of(model.mesh(), model.region(), model.regions().size());
  }

  /**
   * The file's bytes.
   *
   * @param planned the job
   * @param progress told of the share done; may cancel
   */
  public static byte[] of(PlannedJob planned, Progress progress) {
    progress.at(0);
    ShareModel model = ShareModel.of(planned);
    progress.at(0.8);
    byte[] bytes = new GlbFile(model).bytes(planned.job().piece());
    progress.at(1);
    return bytes;
  }

  private byte[] bytes(String piece) {
    int places = corners.vertex().length;
    int index = corners.index().length;
    ByteBuffer binary = ByteBuffer.allocate(24 * places + 4 * index).order(ByteOrder.LITTLE_ENDIAN);
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double[] high = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    for (int i = 0; i < places; i++) {
      float[] p = place(corners.vertex()[i]);
      for (int axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], p[axis]);
        high[axis] = Math.max(high[axis], p[axis]);
        binary.putFloat(p[axis]);
      }
    }
    for (int i = 0; i < places; i++) {
      float[] n = corners.normal();
      unit(binary, n[3 * i], n[3 * i + 2], -n[3 * i + 1]);
    }
    for (int place : corners.index()) {
      binary.putInt(place);
    }
    view(0, 12 * places, ARRAY_BUFFER);
    view(12 * places, 12 * places, ARRAY_BUFFER);
    view(24 * places, 4 * index, ELEMENT_ARRAY_BUFFER);
    Map<String, Object> position = accessor(0, 0, FLOAT, places, "VEC3");
    position.put("min", List.of(low[0], low[1], low[2]));
    position.put("max", List.of(high[0], high[1], high[2]));
    accessors.add(position);
    accessors.add(accessor(1, 0, FLOAT, places, "VEC3"));
    for (int r = 0; r < model.regions().size(); r++) {
      region(r);
    }
    return file(json(piece, binary.capacity()), binary.array());
  }

  /** z up to y up: (x, z, −y), in metres. */
  private float[] place(int v) {
    double[] p = model.mesh().xyz();
    return new float[] {
      (float) (p[3 * v] * METRES_PER_MM),
      (float) (p[3 * v + 2] * METRES_PER_MM),
      (float) (-p[3 * v + 1] * METRES_PER_MM)
    };
  }

  /** The format asks for unit normals; a place without one gets any. */
  private static void unit(ByteBuffer binary, float x, float y, float z) {
    double length = Math.sqrt((double) x * x + (double) y * y + (double) z * z);
    binary.putFloat(length > 0 ? (float) (x / length) : 0);
    binary.putFloat(length > 0 ? (float) (y / length) : 1);
    binary.putFloat(length > 0 ? (float) (z / length) : 0);
  }

  private void region(int r) {
    int from = corners.begin()[r];
    int faces = corners.begin()[r + 1] - from;
    if (faces == 0) {
      return;
    }
    ShareModel.Region region = model.regions().get(r);
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("POSITION", 0);
    attributes.put("NORMAL", 1);
    Map<String, Object> primitive = new LinkedHashMap<>();
    primitive.put("attributes", attributes);
    primitive.put("indices", accessors.size());
    primitive.put("material", materials.size());
    primitives.add(primitive);
    accessors.add(accessor(2, 12 * from, UNSIGNED_INT, 3 * faces, "SCALAR"));
    Map<String, Object> look = new LinkedHashMap<>();
    look.put("baseColorFactor", colour(region.kind()));
    look.put("metallicFactor", region.kind() == ShareModel.Kind.OUTSIDE ? 0.0 : 1.0);
    look.put("roughnessFactor", region.kind() == ShareModel.Kind.OUTSIDE ? 0.9 : 0.35);
    Map<String, Object> extras = new LinkedHashMap<>();
    extras.put("areaMm2", region.areaMm2());
    Map<String, Object> material = new LinkedHashMap<>();
    material.put("name", region.name());
    material.put("pbrMetallicRoughness", look);
    material.put("doubleSided", true);
    material.put("extras", extras);
    materials.add(material);
  }

  /** Linear reflectances; gold's from S. Lagarde 2011 (from memory). */
  private static List<Double> colour(ShareModel.Kind kind) {
    return switch (kind) {
      case SECTION -> List.of(1.0, 0.78, 0.34, 1.0);
      case BARE -> List.of(0.53, 0.56, 0.61, 1.0);
      case OUTSIDE -> List.of(0.65, 0.67, 0.70, 1.0);
    };
  }

  private void view(int offset, int length, int target) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("buffer", 0);
    view.put("byteOffset", offset);
    view.put("byteLength", length);
    view.put("target", target);
    views.add(view);
  }

  private static Map<String, Object> accessor(
      int view, int offset, int type, int count, String kind) {
    Map<String, Object> accessor = new LinkedHashMap<>();
    accessor.put("bufferView", view);
    accessor.put("byteOffset", offset);
    accessor.put("componentType", type);
    accessor.put("count", count);
    accessor.put("type", kind);
    return accessor;
  }

  private byte[] json(String piece, int binaryLength) {
    Map<String, Object> asset = new LinkedHashMap<>();
    asset.put("version", "2.0");
    asset.put("generator", "Seamwright");
    Map<String, Object> mesh = new LinkedHashMap<>();
    mesh.put("name", piece);
    mesh.put("primitives", primitives);
    Map<String, Object> node = new LinkedHashMap<>();
    node.put("mesh", 0);
    node.put("name", piece);
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("asset", asset);
    tree.put("scene", 0);
    tree.put("scenes", List.of(Map.of("nodes", List.of(0))));
    tree.put("nodes", List.of(node));
    tree.put("meshes", List.of(mesh));
    tree.put("materials", materials);
    tree.put("accessors", accessors);
    tree.put("bufferViews", views);
    tree.put("buffers", List.of(Map.of("byteLength", binaryLength)));
    return JsonText.of(tree).strip().getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] file(byte[] json, byte[] binary) {
    int padded = (json.length + 3) / 4 * 4;
    ByteBuffer file =
        ByteBuffer.allocate(12 + 8 + padded + 8 + binary.length).order(ByteOrder.LITTLE_ENDIAN);
    file.putInt(MAGIC).putInt(2).putInt(file.capacity());
    file.putInt(padded).putInt(JSON).put(json);
    while (file.position() < 20 + padded) {
      file.put((byte) ' ');
    }
    file.putInt(binary.length).putInt(BIN).put(binary);
    return file.array();
  }
}
