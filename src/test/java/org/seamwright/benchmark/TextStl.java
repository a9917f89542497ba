package org.seamwright.benchmark;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.meshfile.MeshFiles;

/** Writes a mesh as text STL with ten digits, as a file to time. */
final class TextStl {
  private TextStl() {}

  public static void main(String[] args) throws IOException, InputException {
    Mesh mesh = MeshFiles.read(Path.of(args[0]), Progress.NONE).mesh();
    try (Writer file = Files.newBufferedWriter(Path.of(args[1]));
        BufferedWriter out = new BufferedWriter(file, 1 << 20)) {
      out.write("solid model\n");
      for (int f = 0; f < mesh.faceCount(); f++) {
        out.write("  facet normal 0 0 0\n    outer loop\n");
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner()[3 * f + k];
          out.write(
              String.format(
                  Locale.ROOT, "      vertex %.9e %.9e %.9e%n", mesh.x(v), mesh.y(v), mesh.z(v)));
        }
        out.write("    endloop\n  endfacet\n");
      }
      out.write("endsolid model\n");
    }
  }
}
