package org.seamwright.benchmark;

import java.nio.file.Path;
import java.util.Locale;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.measure.Area;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshFileException;
import org.seamwright.meshfile.MeshFiles;

/**
 * What the peers of src/bench/peers.sh do, with this project's mesh engine: read, weld, match
 * half-edges, count faults and parts, sum the area. Times are those of the whole process.
 */
final class ReadCheck {
  private ReadCheck() {}

  public static void main(String[] args) throws MeshFileException {
    Mesh mesh = MeshFiles.read(Path.of(args[0]), Progress.NONE).mesh();
    Topology topology = Topology.of(mesh);
    double[] area = new double[1];
    int[] parts = new int[1];
    Parallel.each(
        2,
        task -> {
          if (task == 0) {
            area[0] = Area.ofFaces(mesh);
          } else {
            parts[0] = Parts.of(mesh, topology).count();
          }
        });
    System.out.printf(
        Locale.ROOT,
        "%d vertices, %d triangles, %d open, %d branching, %d flipped edges, %d parts, area %.9f%n",
        mesh.vertexCount(),
        mesh.faceCount(),
        topology.openEdges(),
        topology.branchingEdges(),
        topology.flippedEdges(),
        parts[0],
        area[0]);
  }
}
