package org.seamwright.meshfile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;

/**
 * The numbers of a glTF file: its buffers (the binary chunk, or base64 in data URIs), the views of
 * them and the accessors that say what the bytes mean. Every offset is checked against what is
 * there.
 */
final class GltfBuffers {
  private static final String EMBED = "Export the model as GLB, which is one file.";
  private static final String DATA = "data:";
  private static final String BASE64 = ";base64,";

  private final GltfJson root;
  private final ByteBuffer binary;
  private final ByteBuffer[] buffers;
  private final Growth growth;

  /**
   * @param binary the chunk that follows the JSON in a GLB; null if there is none
   */
  GltfBuffers(GltfJson root, ByteBuffer binary, Growth growth) throws MeshFileException {
    this.root = root;
    this.binary = binary;
    this.buffers = new ByteBuffer[root.count("buffers")];
    this.growth = growth;
  }

  private ByteBuffer buffer(int index) throws MeshFileException {
    GltfJson json = root.get("buffers").at(index);
    if (buffers[index] == null) {
      ByteBuffer bytes = json.has("uri") ? decoded(json.get("uri")) : binary;
      if (bytes == null || (!json.has("uri") && index > 0)) {
        throw json.refuse("the buffer has no data", EMBED);
      }
      buffers[index] = bytes;
    }
    int length = json.get("byteLength").index();
    if (length > buffers[index].limit()) {
      throw json.refuse(
          "the glTF is cut off: the buffer should have "
              + length
              + " bytes but has "
              + buffers[index].limit(),
          "Copy or download the file again, or export it again.");
    }
    return buffers[index];
  }

  private ByteBuffer decoded(GltfJson uri) throws MeshFileException {
    String text = uri.text();
    if (!text.regionMatches(true, 0, DATA, 0, DATA.length())) {
      throw uri.refuse(
          "the model's numbers are in another file, '" + Refusal.shorten(text) + "'", EMBED);
    }
    int at = text.indexOf(',');
    if (at < 0 || !text.substring(0, at + 1).endsWith(BASE64)) {
      throw uri.refuse("the embedded data is not base64", EMBED);
    }
    try {
      byte[] ascii = text.substring(at + 1).getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
      return ByteBuffer.wrap(Base64.getDecoder().decode(ascii));
    } catch (IllegalArgumentException e) {
      throw uri.refuse("the embedded data is not base64", Refusal.EXPORT_AGAIN);
    }
  }

  /** Bytes of a view from an offset on, in little-endian order. */
  private ByteBuffer view(GltfJson view, int offset, long length) throws MeshFileException {
    ByteBuffer whole = buffer(view.get("buffer").index());
    long from = view.index("byteOffset", 0);
    long size = view.get("byteLength").index();
    if (offset + length > size || from + size > whole.limit()) {
      throw view.refuse(
          "the view is too short: bytes " + (offset + length) + " are needed beyond its beginning",
          Refusal.EXPORT_AGAIN);
    }
    return whole
        .duplicate()
        .position((int) from + offset)
        .limit((int) (from + offset + length))
        .slice()
        .order(ByteOrder.LITTLE_ENDIAN);
  }

  /** An accessor, ready to be read. */
  Accessor accessor(GltfJson reference, int width) throws MeshFileException {
    GltfJson json = root.get("accessors").at(reference.index());
    String wanted = width == 1 ? "SCALAR" : "VEC3";
    if (!json.get("type").text().equals(wanted)) {
      throw json.refuse("its type should be " + wanted, Refusal.EXPORT_AGAIN);
    }
    int type = json.get("componentType").index();
    int count = json.get("count").index();
    boolean normalized = json.has("normalized") && json.get("normalized").truth();
    Accessor accessor =
        json.has("bufferView")
            ? plain(json, type, count, width, normalized)
            : zeros(json, count, width);
    return json.has("sparse")
        ? sparse(json.get("sparse"), accessor, type, width, normalized)
        : accessor;
  }

  private Accessor plain(GltfJson json, int type, int count, int width, boolean normalized)
      throws MeshFileException {
    GltfJson view = root.get("bufferViews").at(json.get("bufferView").index());
    int item = bytes(json, type) * width;
    int stride = view.index("byteStride", item);
    if (stride < item) {
      throw view.refuse("its byteStride is shorter than an item", Refusal.EXPORT_AGAIN);
    }
    long length = count == 0 ? 0 : (long) stride * (count - 1) + item;
    ByteBuffer bytes = view(view, json.index("byteOffset", 0), length);
    return new Accessor(bytes, type, count, stride, normalized, null);
  }

  private Accessor zeros(GltfJson json, int count, int width) throws MeshFileException {
    if (!json.has("sparse")) {
      throw json.refuse("the accessor has no data", "Export the model without compression.");
    }
    growth.take(8L * width * count, json.path(), "the file's numbers", Refusal.EXPORT_AGAIN);
    return new Accessor(null, 0, count, 0, false, new double[width * count]);
  }

  /** The items of another accessor, some of them replaced. */
  private Accessor sparse(GltfJson json, Accessor base, int type, int width, boolean normalized)
      throws MeshFileException {
    int replaced = json.get("count").index();
    GltfJson indices = json.get("indices");
    GltfJson values = json.get("values");
    Accessor at = plain(indices, indices.get("componentType").index(), replaced, 1, false);
    Accessor with = plain(values, type, replaced, width, normalized);
    double[] all = base.all(width);
    for (int i = 0; i < replaced; i++) {
      long item = (long) at.value(i, 0);
      if (item < 0 || item >= base.count()) {
        throw indices.refuse(
            "a sparse accessor replaces item " + item + " of " + base.count(),
            Refusal.EXPORT_AGAIN);
      }
      for (int k = 0; k < width; k++) {
        all[(int) item * width + k] = with.value(i, k);
      }
    }
    return new Accessor(null, 0, base.count(), 0, false, all);
  }

  private static int bytes(GltfJson json, int type) throws MeshFileException {
    return switch (type) {
      case Accessor.BYTE, Accessor.UNSIGNED_BYTE -> 1;
      case Accessor.SHORT, Accessor.UNSIGNED_SHORT -> 2;
      case Accessor.UNSIGNED_INT, Accessor.FLOAT -> 4;
      default -> throw json.refuse("componentType " + type + " is unknown", Refusal.EXPORT_AGAIN);
    };
  }

  /**
   * Items of one or three numbers.
   *
   * @param bytes where they are; null if {@code values} holds them
   * @param type OpenGL's number of the type
   * @param stride bytes from item to item
   * @param normalized whether whole numbers stand for 0 … 1 or -1 … 1
   */
  record Accessor(
      ByteBuffer bytes, int type, int count, int stride, boolean normalized, double[] values) {
    static final int BYTE = 5120;
    static final int UNSIGNED_BYTE = 5121;
    static final int SHORT = 5122;
    static final int UNSIGNED_SHORT = 5123;
    static final int UNSIGNED_INT = 5125;
    static final int FLOAT = 5126;

    /** A number of an item; whole numbers follow section 3.11 of the standard if normalized. */
    double value(int item, int k) {
      if (values != null) {
        return values[item * (values.length / count) + k];
      }
      int at = item * stride;
      return switch (type) {
        case BYTE -> {
          byte raw = bytes.get(at + k);
          yield normalized ? Math.max(raw / 127.0, -1) : raw;
        }
        case UNSIGNED_BYTE -> {
          int raw = Byte.toUnsignedInt(bytes.get(at + k));
          yield normalized ? raw / 255.0 : raw;
        }
        case SHORT -> {
          short raw = bytes.getShort(at + 2 * k);
          yield normalized ? Math.max(raw / 32767.0, -1) : raw;
        }
        case UNSIGNED_SHORT -> {
          int raw = Short.toUnsignedInt(bytes.getShort(at + 2 * k));
          yield normalized ? raw / 65535.0 : raw;
        }
        case UNSIGNED_INT -> Integer.toUnsignedLong(bytes.getInt(at + 4 * k));
        default -> bytes.getFloat(at + 4 * k);
      };
    }

    private double[] all(int width) {
      if (values != null) {
        return values;
      }
      double[] all = new double[width * count];
      for (int i = 0; i < all.length; i++) {
        all[i] = value(i / width, i % width);
      }
      return all;
    }
  }
}
