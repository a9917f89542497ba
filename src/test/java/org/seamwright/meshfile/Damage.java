package org.seamwright.meshfile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/**
 * Damaged mesh files: bytes changed, cut, repeated and moved, words and numbers of the format put
 * where they don't belong. Packed formats are damaged before and after they are packed, so that
 * damage gets past their checksums.
 */
final class Damage {
  /** Formats, as endings of file names. */
  static final List<String> FORMATS =
      List.of(
          "binary.stl",
          "text.stl",
          "mesh.obj",
          "text.ply",
          "little.ply",
          "big.ply",
          "mesh.glb",
          "mesh.gltf",
          "mesh.3mf",
          "mesh.gz");

  private static final String SIGNS = "0123456789-+.eE/\\#\n\r vfgo{}[]\",:<>&;!='";

  private static final Map<String, List<String>> WORDS =
      Map.of(
          "stl", List.of("solid", "endsolid", "facet", "vertex", "outer", "endloop", "nan", "1e39"),
          "obj", List.of("f", "v", "o", "usemtl", "surf", "-1", "0", "1e39", "//", "\\\n"),
          "ply",
              List.of(
                  "element face 4000000000",
                  "element vertex 3",
                  "property list char int vertex_index",
                  "property list float double x",
                  "property uint y",
                  "tristrips",
                  "end_header\n",
                  "-1",
                  "4294967295",
                  "\r"),
          "glb", gltfWords(),
          "gltf", gltfWords(),
          "3mf",
              List.of(
                  "<component objectid=\"1\"/>",
                  "<components>",
                  "</mesh>",
                  "<mesh>",
                  "<!DOCTYPE a [<!ENTITY b \"bbbb\">]>",
                  "&b;",
                  "&#0;",
                  "<![CDATA[",
                  "<!--",
                  "<?a?>",
                  "xmlns:q=\"\" ",
                  "requiredextensions=\"q\" ",
                  "transform=\"1 0 0 0 1 0 0 0 1 0 0 0\" ",
                  "99999999999",
                  "1e39",
                  "NaN"),
          "gz", List.of("solid", "endsolid"));

  private Damage() {}

  private static List<String> gltfWords() {
    return List.of(
        "4294967296",
        "2147483647",
        "-1",
        "0.5",
        "1e400",
        "5120",
        "5125",
        "null",
        "true",
        "[]",
        "{}",
        "\"sparse\":{\"count\":9,\"indices\":{\"bufferView\":1,\"componentType\":5125},"
            + "\"values\":{\"bufferView\":0}},",
        "\"children\":[0],",
        "\"mode\":5,",
        "\"byteStride\":4,",
        "\"byteOffset\":8,",
        "\"mesh\":0,",
        "\"skin\":0,",
        "\"uri\":\"data:;base64,AAAA\",");
  }

  static Mesh shape() {
    return Shapes.cylinder(2, 3, 6, 1, true);
  }

  /** A sound file, not packed yet. */
  static byte[] original(String format) {
    Mesh mesh = shape();
    return switch (format) {
      case "binary.stl" -> Bytes.stl(mesh);
      case "text.stl", "mesh.gz" -> Bytes.textStl(mesh);
      case "text.ply" -> SceneBytes.ply(mesh, "ascii");
      case "little.ply" -> SceneBytes.ply(mesh, "binary_little_endian");
      case "big.ply" -> SceneBytes.ply(mesh, "binary_big_endian");
      case "mesh.glb" -> Bytes.text(SceneBytes.gltf(mesh, "", ",\"scale\":[1,2,1]"));
      case "mesh.gltf" -> SceneBytes.gltfText(mesh);
      case "mesh.3mf" ->
          Bytes.text(
              SceneBytes.model(
                  "unit=\"inch\"",
                  SceneBytes.object(mesh, 1, "name=\"body\"")
                      + "<object id=\"2\"><components><component objectid=\"1\"/></components>"
                      + "</object>",
                  "<item objectid=\"2\" transform=\"2 0 0 0 1 0 0 0 1 0 0 0\"/>"));
      default ->
          Bytes.text(
              new String(Bytes.obj(mesh), StandardCharsets.UTF_8)
                  + "g lid\nusemtl m\nf 1 2 3 4 5 6\nf -1/1 -2/2/2 -3//3 \\\n -4 # end\n");
    };
  }

  private static byte[] packed(String format, byte[] content, byte[] numbers) {
    return switch (format) {
      case "mesh.glb" -> SceneBytes.glb(new String(content, StandardCharsets.ISO_8859_1), numbers);
      case "mesh.3mf" ->
          SceneBytes.zip(SceneBytes.withRelations(Map.of("3D/3dmodel.model", content)));
      case "mesh.gz" -> SceneBytes.gzip(content);
      default -> content;
    };
  }

  /** A damaged file of a format. */
  static byte[] of(String format, Random random) {
    byte[] made = random.nextInt(3) > 0 ? Generated.of(format, random) : null;
    byte[] content = made == null ? original(format) : made;
    byte[] numbers = SceneBytes.numbers(shape());
    List<String> words = WORDS.get(format.substring(format.lastIndexOf('.') + 1));
    boolean outside = random.nextInt(4) == 0;
    if (!outside) {
      content = strike(content, words, random);
      numbers = random.nextInt(4) == 0 ? strike(numbers, words, random) : numbers;
    }
    byte[] whole = packed(format, content, numbers);
    return outside ? strike(whole, words, random) : whole;
  }

  private static byte[] strike(byte[] original, List<String> words, Random random) {
    byte[] bytes = original.clone();
    int blows = 1 + random.nextInt(4);
    for (int b = 0; b < blows && bytes.length > 0; b++) {
      bytes = blow(bytes, words, random);
    }
    return bytes;
  }

  private static byte[] blow(byte[] bytes, List<String> words, Random random) {
    int at = random.nextInt(bytes.length);
    switch (random.nextInt(9)) {
      case 0 -> bytes[at] = (byte) random.nextInt(256);
      case 1 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
      case 2 -> {
        return Arrays.copyOf(bytes, Math.max(1, at));
      }
      case 3 -> bytes[at] = (byte) SIGNS.charAt(random.nextInt(SIGNS.length()));
      case 4 -> {
        int from = random.nextInt(bytes.length);
        int length = Math.min(bytes.length - Math.max(at, from), random.nextInt(60));
        System.arraycopy(bytes, from, bytes, at, length);
      }
      case 5 -> {
        return insert(bytes, at, Bytes.text(words.get(random.nextInt(words.size()))));
      }
      case 6 -> {
        return digits(bytes, at, random);
      }
      case 7 -> {
        int[] numbers = {0, 1, -1, Integer.MAX_VALUE, Integer.MIN_VALUE, 0x7FC00000, 1 << 20, 255};
        if (at + 4 <= bytes.length) {
          ByteBuffer.wrap(bytes)
              .order(random.nextBoolean() ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN)
              .putInt(at, numbers[random.nextInt(numbers.length)]);
        }
      }
      default -> {
        return Bytes.join(
            Arrays.copyOf(bytes, at),
            Arrays.copyOfRange(bytes, random.nextInt(at + 1), bytes.length));
      }
    }
    return bytes;
  }

  private static byte[] insert(byte[] bytes, int at, byte[] word) {
    return Bytes.join(Arrays.copyOf(bytes, at), word, Arrays.copyOfRange(bytes, at, bytes.length));
  }

  /** Puts another number in place of the next one. */
  private static byte[] digits(byte[] bytes, int at, Random random) {
    int from = at;
    while (from < bytes.length && (bytes[from] < '0' || bytes[from] > '9')) {
      from++;
    }
    int to = from;
    while (to < bytes.length && bytes[to] >= '0' && bytes[to] <= '9') {
      to++;
    }
    String[] numbers = {"0", "1", "7", "-1", "255", "65536", "2147483647", "4294967295", "1e308"};
    return insert(
        Bytes.join(Arrays.copyOf(bytes, from), Arrays.copyOfRange(bytes, to, bytes.length)),
        from,
        Bytes.text(numbers[random.nextInt(numbers.length)]));
  }
}
