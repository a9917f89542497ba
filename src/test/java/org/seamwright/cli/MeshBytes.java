package org.seamwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Mesh files for the tests of commands: good ones, and every kind of bad one. */
final class MeshBytes {
  private static final int HEADER = 84;
  private static final int FACET = 50;

  private MeshBytes() {}

  /** A mesh as binary STL, in the numbers it has. */
  static byte[] stl(Mesh mesh) {
    ByteBuffer out =
        ByteBuffer.allocate(HEADER + FACET * mesh.faceCount()).order(ByteOrder.LITTLE_ENDIAN);
    out.position(80);
    out.putInt(mesh.faceCount());
    for (int h = 0; h < mesh.corner().length; h++) {
      if (h % 3 == 0) {
        out.putFloat(0).putFloat(0).putFloat(0);
      }
      int v = mesh.corner()[h];
      out.putFloat((float) mesh.x(v)).putFloat((float) mesh.y(v)).putFloat((float) mesh.z(v));
      if (h % 3 == 2) {
        out.putShort((short) 0);
      }
    }
    return out.array();
  }

  static Path write(Path file, byte[] bytes) {
    try {
      return Files.write(file, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Name of the file → its bytes; each must be refused. */
  static Map<String, byte[]> bad() {
    byte[] cube = stl(Shapes.cube(10, 1));
    Map<String, byte[]> bad = new LinkedHashMap<>();
    bad.put("empty.stl", new byte[0]);
    bad.put("empty.obj", new byte[0]);
    bad.put("truncated.stl", java.util.Arrays.copyOf(cube, cube.length - 20));
    bad.put("header-only.stl", java.util.Arrays.copyOf(cube, 40));
    bad.put("count-too-high.stl", withInt(cube, 80, 13));
    bad.put("count-too-low.stl", withInt(cube, 80, 5));
    bad.put("count-absurd.stl", withInt(cube, 80, -1));
    bad.put("nan.stl", withInt(cube, HEADER + 12, Float.floatToIntBits(Float.NaN)));
    bad.put(
        "infinite.stl", withInt(cube, HEADER + 12, Float.floatToIntBits(Float.POSITIVE_INFINITY)));
    bad.put("flat-line.stl", stl(Mesh.of(new double[] {0, 0, 0, 1, 0, 0, 2, 0, 0}, corners())));
    bad.put("one-point.stl", stl(Mesh.of(new double[] {1, 1, 1, 1, 1, 1, 1, 1, 1}, corners())));
    bad.put("index-too-high.obj", text("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n"));
    bad.put("index-zero.obj", text("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 0 1 2\n"));
    bad.put("nan.obj", text("v 0 0 nan\nv 1 0 0\nv 0 1 0\nf 1 2 3\n"));
    bad.put("no-faces.obj", text("v 0 0 0\nv 1 0 0\n"));
    bad.put("text.stl", text("This is a letter, and no mesh at all.\n"));
    bad.put("half-text.stl", text("solid cube\n facet normal 0 0 1\n  outer loop\n   vertex 0 0"));
    return bad;
  }

  private static int[] corners() {
    return new int[] {0, 1, 2};
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] withInt(byte[] bytes, int at, int value) {
    byte[] changed = bytes.clone();
    ByteBuffer.wrap(changed).order(ByteOrder.LITTLE_ENDIAN).putInt(at, value);
    return changed;
  }
}
