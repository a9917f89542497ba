package org.seamwright.meshfile;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/**
 * Writes a mesh as OBJ, with as many digits as a double needs to be read back exactly; a face's
 * label becomes its group.
 */
public final class ObjWriter {
  private ObjWriter() {}

  /**
   * Writes OBJ to a file that appears only when whole.
   *
   * @param labels one per face of the mesh
   * @throws IOException if it can't be written
   */
  public static void write(Mesh mesh, Labels labels, Path file) throws IOException {
    AtomicFile.write(file, stream -> write(mesh, labels, stream));
  }

  /** Writes OBJ to a stream, which stays open. */
  public static void write(Mesh mesh, Labels labels, OutputStream stream) throws IOException {
    if (labels.of().length != mesh.faceCount()) {
      throw new IllegalArgumentException(
          labels.of().length + " labels for " + mesh.faceCount() + " faces");
    }
    Writer out = new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
    for (int v = 0; v < mesh.vertexCount(); v++) {
      out.write("v " + mesh.x(v) + " " + mesh.y(v) + " " + mesh.z(v) + "\n");
    }
    int label = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (labels.of()[f] != label) {
        label = labels.of()[f];
        out.write(("g " + oneLine(labels.names().get(label))).strip() + "\n");
      }
      int h = 3 * f;
      out.write("f " + (mesh.corner()[h] + 1) + " " + (mesh.corner()[h + 1] + 1) + " ");
      out.write((mesh.corner()[h + 2] + 1) + "\n");
    }
    out.flush();
  }

  static String oneLine(String text) {
    return text.replaceAll("[\\r\\n]+", " ").strip();
  }
}
