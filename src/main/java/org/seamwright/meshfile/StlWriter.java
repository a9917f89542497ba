package org.seamwright.meshfile;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Writes a mesh as STL. Binary STL holds single precision: coordinates are rounded to about seven
 * digits. Text STL is written with as many digits as a double needs to be read back exactly.
 */
public final class StlWriter {
  private static final int HEADER = 80;

  private StlWriter() {}

  /**
   * Writes binary STL to a file that appears only when whole.
   *
   * @param header up to 80 characters of ASCII; must not begin with "solid", which some programs
   *     take for text
   * @throws IOException if it can't be written
   */
  public static void writeBinary(Mesh mesh, Path file, String header) throws IOException {
    AtomicFile.write(file, stream -> writeBinary(mesh, stream, header));
  }

  /** Writes binary STL to a stream, which stays open. */
  public static void writeBinary(Mesh mesh, OutputStream stream, String header) throws IOException {
    if (header.startsWith("solid")) {
      throw new IllegalArgumentException("Header of a binary STL begins with 'solid': " + header);
    }
    byte[] title = header.getBytes(StandardCharsets.US_ASCII);
    stream.write(Arrays.copyOf(title, HEADER));
    ByteBuffer buffer = ByteBuffer.allocate(50).order(ByteOrder.LITTLE_ENDIAN);
    stream.write(buffer.putInt(mesh.faceCount()).array(), 0, 4);
    double[] normal = new double[3];
    for (int f = 0; f < mesh.faceCount(); f++) {
      Faces.normal(mesh, f, normal);
      buffer.clear();
      for (double n : normal) {
        buffer.putFloat((float) n);
      }
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner()[3 * f + k];
        buffer.putFloat((float) mesh.x(v)).putFloat((float) mesh.y(v)).putFloat((float) mesh.z(v));
      }
      stream.write(buffer.putShort((short) 0).array());
    }
    stream.flush();
  }

  /**
   * Writes text STL to a file that appears only when whole.
   *
   * @param name of the solid; line breaks in it become spaces
   * @throws IOException if it can't be written
   */
  public static void writeText(Mesh mesh, Path file, String name) throws IOException {
    AtomicFile.write(file, stream -> writeText(mesh, stream, name));
  }

  /** Writes text STL to a stream, which stays open. */
  public static void writeText(Mesh mesh, OutputStream stream, String name) throws IOException {
    Writer out = new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
    String title = ObjWriter.oneLine(name);
    out.write(("solid " + title).strip() + "\n");
    double[] normal = new double[3];
    for (int f = 0; f < mesh.faceCount(); f++) {
      Faces.normal(mesh, f, normal);
      out.write("facet normal " + (float) normal[0] + " " + (float) normal[1] + " ");
      out.write((float) normal[2] + "\n outer loop\n");
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner()[3 * f + k];
        out.write("  vertex " + mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v) + "\n");
      }
      out.write(" endloop\nendfacet\n");
    }
    out.write(("endsolid " + title).strip() + "\n");
    out.flush();
  }
}
