package org.seamwright.meshfile;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.seamwright.mesh.Mesh;

/** PLY, glTF, 3MF and gzip files for tests, written from the standards' words. */
final class SceneBytes {
  static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

  private SceneBytes() {}

  /**
   * PLY with double coordinates; encoding "ascii", "binary_little_endian" or "binary_big_endian".
   */
  static byte[] ply(Mesh mesh, String encoding) {
    String header =
        """
        ply
        format %s 1.0
        comment made for a test
        element vertex %d
        property double x
        property double y
        property double z
        element face %d
        property list uchar int vertex_indices
        end_header
        """;
    byte[] head = Bytes.text(header.formatted(encoding, mesh.vertexCount(), mesh.faceCount()));
    if (encoding.equals("ascii")) {
      StringBuilder out = new StringBuilder();
      for (int v = 0; v < mesh.vertexCount(); v++) {
        out.append(mesh.x(v)).append(' ').append(mesh.y(v)).append(' ').append(mesh.z(v));
        out.append('\n');
      }
      for (int h = 0; h < mesh.corner().length; h++) {
        out.append(h % 3 == 0 ? "3 " : " ").append(mesh.corner()[h]);
        out.append(h % 3 == 2 ? "\n" : "");
      }
      return Bytes.join(head, Bytes.text(out.toString()));
    }
    ByteBuffer out =
        ByteBuffer.allocate(24 * mesh.vertexCount() + 13 * mesh.faceCount())
            .order(encoding.contains("little") ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    for (double value : mesh.xyz()) {
      out.putDouble(value);
    }
    for (int h = 0; h < mesh.corner().length; h++) {
      if (h % 3 == 0) {
        out.put((byte) 3);
      }
      out.putInt(mesh.corner()[h]);
    }
    return Bytes.join(head, out.array());
  }

  /** Points as floats, then corners as unsigned ints: what the JSON of {@link #gltf} describes. */
  static byte[] numbers(Mesh mesh) {
    ByteBuffer out =
        ByteBuffer.allocate(12 * mesh.vertexCount() + 4 * mesh.corner().length)
            .order(ByteOrder.LITTLE_ENDIAN);
    for (double value : mesh.xyz()) {
      out.putFloat((float) value);
    }
    for (int corner : mesh.corner()) {
      out.putInt(corner);
    }
    return out.array();
  }

  /** JSON of one mesh whose node has more members, such as {@code ,"scale":[1,1,2]}. */
  static String gltf(Mesh mesh, String uri, String nodeMembers) {
    int points = 12 * mesh.vertexCount();
    int corners = 4 * mesh.corner().length;
    return """
    {"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],
     "nodes":[{"name":"body","mesh":0%s}],"materials":[{"name":"brass"}],
     "meshes":[{"primitives":[{"attributes":{"POSITION":0},"indices":1,"material":0}]}],
     "accessors":[{"bufferView":0,"componentType":5126,"count":%d,"type":"VEC3"},
      {"bufferView":1,"componentType":5125,"count":%d,"type":"SCALAR"}],
     "bufferViews":[{"buffer":0,"byteLength":%d},{"buffer":0,"byteOffset":%d,"byteLength":%d}],
     "buffers":[{%s"byteLength":%d}]}
    """
        .formatted(
            nodeMembers,
            mesh.vertexCount(),
            mesh.corner().length,
            points,
            points,
            corners,
            uri,
            points + corners);
  }

  static byte[] gltfText(Mesh mesh) {
    String data = Base64.getEncoder().encodeToString(numbers(mesh));
    String uri = "\"uri\":\"data:application/octet-stream;base64," + data + "\",";
    return Bytes.text(gltf(mesh, uri, ""));
  }

  static byte[] glb(Mesh mesh) {
    return glb(gltf(mesh, "", ""), numbers(mesh));
  }

  /** A GLB of a JSON text and a binary chunk. */
  static byte[] glb(String json, byte[] binary) {
    byte[] text = Bytes.text(json);
    byte[] padded = Arrays.copyOf(text, (text.length + 3) / 4 * 4);
    Arrays.fill(padded, text.length, padded.length, (byte) ' ');
    byte[] data = Arrays.copyOf(binary, (binary.length + 3) / 4 * 4);
    int length = 12 + 8 + padded.length + 8 + data.length;
    ByteBuffer out = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    out.put(Bytes.text("glTF")).putInt(2).putInt(length);
    out.putInt(padded.length).put(Bytes.text("JSON")).put(padded);
    out.putInt(data.length).put(new byte[] {'B', 'I', 'N', 0}).put(data);
    return out.array();
  }

  /** The object element of a mesh. */
  static String object(Mesh mesh, int id, String attributes) {
    StringBuilder out = new StringBuilder("<object id=\"" + id + "\" " + attributes + "><mesh>\n");
    out.append("<vertices>\n");
    for (int v = 0; v < mesh.vertexCount(); v++) {
      out.append("<vertex x=\"" + mesh.x(v) + "\" y=\"" + mesh.y(v) + "\" z=\"" + mesh.z(v));
      out.append("\" />\n");
    }
    out.append("</vertices><triangles>\n");
    for (int h = 0; h < mesh.corner().length; h += 3) {
      out.append("<triangle v1=\"" + mesh.corner()[h] + "\" v2=\"" + mesh.corner()[h + 1]);
      out.append("\" v3=\"" + mesh.corner()[h + 2] + "\" />\n");
    }
    return out.append("</triangles></mesh></object>\n").toString();
  }

  /** A model part. */
  static String model(String attributes, String resources, String build) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model xmlns=\""
        + CORE
        + "\" "
        + attributes
        + ">\n<resources>"
        + resources
        + "</resources>\n<build>"
        + build
        + "</build></model>\n";
  }

  static byte[] threeMf(Mesh mesh) {
    return threeMf(
        model(
            "unit=\"millimeter\"",
            object(mesh, 1, "name=\"body\" type=\"model\""),
            "<item objectid=\"1\" />"));
  }

  /** A 3MF whose root part is as given. */
  static byte[] threeMf(String model) {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put("3D/3dmodel.model", Bytes.text(model));
    return zip(withRelations(parts));
  }

  static Map<String, byte[]> withRelations(Map<String, byte[]> parts) {
    Map<String, byte[]> all = new LinkedHashMap<>();
    all.put(
        "[Content_Types].xml",
        Bytes.text(
            "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default"
                + " Extension=\"model\""
                + " ContentType=\"application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/></Types>"));
    all.put(
        "_rels/.rels",
        Bytes.text(
            "<Relationships"
                + " xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                + "<Relationship Id=\"r0\" Target=\"/3D/3dmodel.model\""
                + " Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>"
                + "</Relationships>"));
    all.putAll(parts);
    return all;
  }

  static byte[] zip(Map<String, byte[]> parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue());
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /**
   * The same archive with its directory in 64-bit fields (APPNOTE.TXT 4.3.14, 4.3.15 and 4.5.3), as
   * some 3MF writers always do.
   */
  static byte[] withWideDirectory(byte[] zip) {
    ByteBuffer in = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
    int end = zip.length - 22;
    int count = in.getShort(end + 10);
    int begin = in.getInt(end + 16);
    ByteBuffer out =
        ByteBuffer.allocate(zip.length + 28 * count + 76).order(ByteOrder.LITTLE_ENDIAN);
    out.put(zip, 0, begin);
    int at = begin;
    for (int i = 0; i < count; i++) {
      int name = in.getShort(at + 28);
      int extra = in.getShort(at + 30);
      int entry = out.position();
      out.put(zip, at, 46 + name);
      out.putInt(entry + 20, -1).putInt(entry + 24, -1).putInt(entry + 42, -1);
      out.putShort(entry + 30, (short) 28);
      out.putShort((short) 1).putShort((short) 24);
      out.putLong(in.getInt(at + 24)).putLong(in.getInt(at + 20)).putLong(in.getInt(at + 42));
      at += 46 + name + extra;
    }
    int wide = out.position();
    out.putInt(0x06064B50).putLong(44).putShort((short) 45).putShort((short) 45).putLong(0);
    out.putLong(count).putLong(count).putLong(wide - begin).putLong(begin);
    out.putInt(0x07064B50).putInt(0).putLong(wide).putInt(1);
    out.putInt(0x06054B50).putInt(0).putInt(-1).putInt(-1).putInt(-1).putShort((short) 0);
    return Arrays.copyOf(out.array(), out.position());
  }

  static byte[] gzip(byte[] content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (OutputStream gzip = new GZIPOutputStream(out)) {
      gzip.write(content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }
}
