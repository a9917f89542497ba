package org.seamwright.meshfile;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/** Files for the reader's tests, made byte by byte. */
final class Bytes {
  private Bytes() {}

  /** Binary STL whose count is as given, whatever the number of facets. */
  static byte[] stl(String header, int count, float[]... facets) {
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * facets.length).order(ByteOrder.LITTLE_ENDIAN);
    out.put(header.getBytes(StandardCharsets.US_ASCII)).position(80);
    out.putInt(count);
    for (float[] facet : facets) {
      out.putFloat(0).putFloat(0).putFloat(1);
      for (float value : facet) {
        out.putFloat(value);
      }
      out.putShort((short) 0);
    }
    return out.array();
  }

  static byte[] stl(Mesh mesh) {
    return written(out -> StlWriter.writeBinary(mesh, out, "made for a test"));
  }

  static byte[] textStl(Mesh mesh) {
    return written(out -> StlWriter.writeText(mesh, out, "made for a test"));
  }

  static byte[] obj(Mesh mesh) {
    return written(out -> ObjWriter.write(mesh, Labels.none(mesh.faceCount()), out));
  }

  private static byte[] written(AtomicFile.Content content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      content.writeTo(out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  /** Writes a file and reads it as a mesh. */
  static MeshDocument read(Path directory, String name, byte[] bytes) throws MeshFileException {
    Path file = directory.resolve(name);
    try {
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return MeshFiles.read(file, Progress.NONE);
  }
}
