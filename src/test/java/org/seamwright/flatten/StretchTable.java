package org.seamwright.flatten;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.testsupport.Shapes;

/**
 * Prints the stretch of the layouts of some open patches for docs/templates.md, and writes the
 * patches as OFF files to a folder, for other programs to lay out ({@code src/bench/peers/arap.cpp}
 * with CGAL).
 */
final class StretchTable {
  private static final int RUNS = 5;

  private StretchTable() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    for (Map.Entry<String, Mesh> entry : patches(folder).entrySet()) {
      Mesh mesh = entry.getValue();
      Files.write(
          folder.resolve(entry.getKey() + ".off"), off(mesh).getBytes(StandardCharsets.US_ASCII));
      System.out.printf(
          Locale.ROOT,
          "%-14s %6d faces  mean: %s  largest: %s%n",
          entry.getKey(),
          mesh.faceCount(),
          line(mesh, 1),
          line(mesh, 0.7 * Patches.laid(mesh, 1).stretch().nearlyAll()));
    }
  }

  /** Patches that are curved, made and scanned ones. */
  private static Map<String, Mesh> patches(Path folder) throws Exception {
    Map<String, Mesh> patches = new LinkedHashMap<>();
    patches.put("cap-0.8", Patches.cap(50, 0.8, 40, 120));
    patches.put("hills-1", Patches.hills(1, 1.2));
    patches.put("hills-2", Patches.hills(2, 1.2));
    patches.put("saddle", saddle());
    patches.put("leukocyte", grown(open("leukocyte.obj", folder), 1500));
    patches.put("erythrocyte", grown(open("erythrocyte.obj", folder), 400));
    patches.put("cap-20000", Patches.cap(50, 0.5, 63, 160));
    return patches;
  }

  private static Mesh saddle() {
    Mesh flat = Shapes.plane(60, 60, 40, 40);
    double[] xyz = flat.xyz().clone();
    for (int v = 0; v < flat.vertexCount(); v++) {
      double x = xyz[3 * v] - 30;
      double y = xyz[3 * v + 1] - 30;
      xyz[3 * v + 2] = (x * x - y * y) / 80;
    }
    return Mesh.of(xyz, flat.corner());
  }

  private static Mesh open(String name, Path folder) throws Exception {
    Path file = folder.resolve(name);
    try (InputStream in =
        StretchTable.class.getResourceAsStream("/graphics/scenery/models/" + name)) {
      Files.write(file, in.readAllBytes());
    }
    return MeshFiles.read(file, Progress.NONE).mesh();
  }

  /** The faces nearest to the first, as a disc. */
  private static Mesh grown(Mesh mesh, int faces) {
    double[] first = new double[3];
    double[] at = new double[3];
    Faces.centroid(mesh, 0, first);
    Integer[] order = new Integer[mesh.faceCount()];
    double[] far = new double[order.length];
    for (int f = 0; f < order.length; f++) {
      Faces.centroid(mesh, f, at);
      far[f] = Math.hypot(Math.hypot(at[0] - first[0], at[1] - first[1]), at[2] - first[2]);
      order[f] = f;
    }
    Arrays.sort(order, (a, b) -> Double.compare(far[a], far[b]));
    int[] list = new int[faces];
    for (int i = 0; i < faces; i++) {
      list[i] = order[i];
    }
    return largestDisc(Sheets.extract(mesh, list).mesh());
  }

  private static Mesh largestDisc(Mesh mesh) {
    Topology topology = Topology.of(mesh);
    Mesh open = Sheets.open(mesh, topology, new boolean[mesh.corner().length]).mesh();
    Parts parts = Parts.of(open, Topology.of(open));
    int[] own = new int[open.faceCount()];
    int count = 0;
    for (int f = 0; f < own.length; f++) {
      if (parts.of()[f] == parts.of()[0]) {
        own[count++] = f;
      }
    }
    return Sheets.extract(open, Arrays.copyOf(own, count)).mesh();
  }

  private static String line(Mesh mesh, double allowed) {
    Stretch stretch = null;
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < RUNS; i++) {
      long from = System.nanoTime();
      stretch = Layout.of(mesh, allowed, Progress.NONE).map(Layout::stretch).orElse(null);
      best = Math.min(best, (System.nanoTime() - from) / 1e9);
    }
    return stretch == null
        ? "none"
        : String.format(
            Locale.ROOT, "%.6f %.6f in %.2f s", stretch.mean(), stretch.largest(), best);
  }

  private static String off(Mesh mesh) {
    StringBuilder out = new StringBuilder("OFF\n");
    out.append(mesh.vertexCount()).append(' ').append(mesh.faceCount()).append(" 0\n");
    for (int v = 0; v < mesh.vertexCount(); v++) {
      out.append(mesh.x(v)).append(' ').append(mesh.y(v)).append(' ').append(mesh.z(v));
      out.append('\n');
    }
    for (int f = 0; f < mesh.faceCount(); f++) {
      out.append("3 ").append(mesh.corner()[3 * f]).append(' ');
      out.append(mesh.corner()[3 * f + 1]).append(' ').append(mesh.corner()[3 * f + 2]);
      out.append('\n');
    }
    return out.toString();
  }
}
