package org.seamwright.section;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.job.JobFile;
import org.seamwright.job.Planner;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.region.SurfaceMap;

/**
 * Prints the table of docs/sections.md that sets seams beside the cuts of METIS (G. Karypis and V.
 * Kumar, 1998): the same mesh, refined alike, the same number of parts, no part heavier than our
 * heaviest, the dual graph weighted by area and by edge length times seam cost, the best of ten
 * seeds. No laps, of which METIS knows nothing. Run by {@code src/bench/partition-peers.sh}.
 *
 * <p>Our seams are measured as they are, smooth, and snapped to the edges of the mesh: each face
 * goes to the section that has most of it.
 */
public final class PartitionPeers {
  private static final int SEEDS = 10;

  /** Weights of the graph are whole numbers: so many per mean length and mean area. */
  private static final double WEIGHT_STEPS = 1000;

  private PartitionPeers() {}

  /**
   * Compares.
   *
   * @param args files: jobs (.json), or meshes with a number of parts after a colon
   */
  public static void main(String[] args) throws Exception {
    System.out.println(
        "| piece | faces | parts | heaviest ÷ mean | METIS, mm | ours on mesh edges | ours |"
            + " ours ÷ METIS |");
    System.out.println("|---|---|---|---|---|---|---|---|");
    double logs = 0;
    for (String arg : args) {
      logs += Math.log(compare(arg));
    }
    System.out.printf(
        Locale.ROOT, "| geometric mean | | | | | | | %.3f |%n", Math.exp(logs / args.length));
  }

  private static double compare(String arg) throws Exception {
    SurfaceMap map;
    SectionSettings settings;
    String name;
    if (arg.endsWith(".json")) {
      Path file = Path.of(arg);
      var job = JobFile.read(file);
      map = Planner.mark(job, file, Planner.piece(job, file, Progress.NONE), Progress.NONE).map();
      double limit = ((org.seamwright.job.Job.Limit.Area) job.sections().limit()).mm2();
      settings = settings(limit);
      name = job.piece();
    } else {
      int colon = arg.lastIndexOf(':');
      Path file = Path.of(arg.substring(0, colon));
      Mesh mesh = MeshFiles.read(file, Progress.NONE).mesh();
      int[] parent = new int[mesh.faceCount()];
      Arrays.setAll(parent, f -> f);
      map = new SurfaceMap(mesh, parent, new byte[parent.length], List.of(), List.of());
      double area = Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
      settings = settings(1.05 * area / Integer.parseInt(arg.substring(colon + 1)));
      name = file.getFileName().toString();
    }
    return row(name, map, settings);
  }

  private static SectionSettings settings(double limit) {
    SeamWeights usual = SeamWeights.DEFAULT;
    SeamWeights lines = new SeamWeights(usual.crease(), usual.valley(), 1, 1);
    return new SectionSettings(limit, 0, 0, OrderPins.NONE, lines);
  }

  private static double row(String name, SurfaceMap map, SectionSettings settings)
      throws IOException, InterruptedException {
    SectionPlan plan = Sectioning.split(map, settings, Progress.NONE);
    CutMesh fine = Sectioning.refined(map, settings.limitMm2());
    Mesh mesh = fine.mesh();
    int parts = plan.sections().size();
    double[] area = new double[mesh.faceCount()];
    int[] plated = new int[area.length];
    double total = 0;
    for (int f = 0; f < area.length; f++) {
      plated[f] = map.treatment()[fine.parentFace()[f]] == 0 ? 0 : -1;
      area[f] = Faces.area(mesh, f);
      total += plated[f] == 0 ? area[f] : 0;
    }
    double mean = total / parts;
    double heaviest = plan.sections().stream().mapToDouble(Section::netMm2).max().orElseThrow();
    double leastMm = Sectioning.LEAST_LINE * Math.sqrt(settings.limitMm2());
    double ours = cost(plan.mesh(), plan.sectionOf(), settings.seams(), leastMm);
    double snapped = cost(mesh, snapped(plan, fine, map), settings.seams(), leastMm);
    Graph graph = Graph.of(mesh, plated, settings.seams(), leastMm);
    double metis = Double.POSITIVE_INFINITY;
    for (int seed = 1; seed <= SEEDS; seed++) {
      int[] part = graph.partition(parts, heaviest / mean, seed);
      double[] weight = new double[parts + 1];
      for (int f = 0; f < part.length; f++) {
        weight[part[f]] += area[f];
      }
      double most = Arrays.stream(weight, 1, parts + 1).max().orElseThrow();
      // A whole number of weight steps more is rounding.
      if (most <= heaviest * 1.003) {
        metis = Math.min(metis, cost(mesh, part, settings.seams(), leastMm));
      }
    }
    System.out.printf(
        Locale.ROOT,
        "| %s | %,d | %d | %.3f | %.0f | %.0f | %.0f | %.3f |%n",
        name,
        mesh.faceCount(),
        parts,
        heaviest / mean,
        metis,
        snapped,
        ours,
        ours / metis);
    return ours / metis;
  }

  private static double cost(Mesh mesh, int[] label, SeamWeights weights, double leastMm) {
    EdgeRings rings = EdgeRings.of(mesh, Topology.of(mesh));
    float[] even = new float[mesh.faceCount()];
    Arrays.fill(even, 1);
    SeamCost cost = SeamCost.of(mesh, rings, weights, even, leastMm);
    double sum = 0;
    for (int h = 0; h < mesh.corner().length; h++) {
      for (int other = rings.next(h); other != h; other = rings.next(other)) {
        int a = label[h / 3];
        int b = label[other / 3];
        if (other > h && a != b && a > 0 && b > 0) {
          int to = mesh.corner()[Topology.next(h)];
          sum += cost.along(h, other) * Faces.length(mesh, mesh.corner()[h], to);
        }
      }
    }
    return sum;
  }

  /** Section per face of the refined mesh: the one with most of it. */
  private static int[] snapped(SectionPlan plan, CutMesh fine, SurfaceMap map) {
    // Pieces of both meshes are pieces of the map's faces; a piece of the plan lies in the fine
    // face whose plane coordinates hold its middle, found by the nearest face.
    var tree = org.seamwright.mesh.FaceTree.of(fine.mesh());
    List<double[]> share = new ArrayList<>();
    for (int f = 0; f < fine.mesh().faceCount(); f++) {
      share.add(new double[0]);
    }
    double[] centre = new double[3];
    for (int f = 0; f < plan.sectionOf().length; f++) {
      if (plan.sectionOf()[f] > 0) {
        Faces.centroid(plan.mesh(), f, centre);
        int in = tree.nearest(centre[0], centre[1], centre[2]).orElseThrow().face();
        double[] sums = share.get(in);
        if (sums.length == 0) {
          sums = new double[plan.sections().size() + 1];
          share.set(in, sums);
        }
        sums[plan.sectionOf()[f]] += Faces.area(plan.mesh(), f);
      }
    }
    int[] label = new int[share.size()];
    for (int f = 0; f < label.length; f++) {
      double[] sums = share.get(f);
      boolean isPlated = map.treatment()[fine.parentFace()[f]] == 0;
      for (int s = 1; s < sums.length && isPlated; s++) {
        label[f] = label[f] == 0 || sums[s] > sums[label[f]] ? s : label[f];
      }
    }
    return label;
  }

  /** The dual graph in METIS's format, in a file of its own. */
  private record Graph(Path file, int[] number) {
    static Graph of(Mesh mesh, int[] plated, SeamWeights weights, double leastMm)
        throws IOException {
      EdgeRings rings = EdgeRings.of(mesh, Topology.of(mesh));
      float[] even = new float[mesh.faceCount()];
      Arrays.fill(even, 1);
      SeamCost cost = SeamCost.of(mesh, rings, weights, even, leastMm);
      int[] number = new int[mesh.faceCount()];
      int nodes = 0;
      double area = 0;
      for (int f = 0; f < number.length; f++) {
        number[f] = plated[f] == 0 ? ++nodes : 0;
        area += plated[f] == 0 ? Faces.area(mesh, f) : 0;
      }
      double length = 0;
      int borders = 0;
      List<StringBuilder> lines = new ArrayList<>();
      for (int f = 0; f < number.length; f++) {
        lines.add(new StringBuilder());
      }
      for (int pass = 0; pass < 2; pass++) {
        double step = pass == 0 ? 1 : length / borders / WEIGHT_STEPS;
        for (int h = 0; h < mesh.corner().length; h++) {
          for (int other = rings.next(h); other != h; other = rings.next(other)) {
            if (number[h / 3] > 0 && number[other / 3] > 0 && other / 3 != h / 3) {
              int to = mesh.corner()[Topology.next(h)];
              double along = cost.along(h, other) * Faces.length(mesh, mesh.corner()[h], to);
              if (pass == 0) {
                length += along;
                borders++;
              } else {
                long weight = Math.max(1, Math.round(along / step));
                lines.get(h / 3).append(' ').append(number[other / 3]).append(' ').append(weight);
              }
            }
          }
        }
      }
      StringBuilder text = new StringBuilder();
      text.append(nodes).append(' ').append(borders / 2).append(" 011\n");
      for (int f = 0; f < number.length; f++) {
        if (number[f] > 0) {
          double weight = Faces.area(mesh, f) / (area / nodes) * WEIGHT_STEPS;
          text.append(Math.max(1, Math.round(weight))).append(lines.get(f)).append('\n');
        }
      }
      Path file = Files.createTempFile("dual", ".graph");
      file.toFile().deleteOnExit();
      Files.writeString(file, text);
      return new Graph(file, number);
    }

    /** Part per face from 1, 0 for faces that are not in the graph. */
    int[] partition(int parts, double unevenness, int seed)
        throws IOException, InterruptedException {
      long factor = Math.max(1, (long) Math.floor(1000 * (unevenness - 1)));
      Process run =
          new ProcessBuilder(
                  "gpmetis",
                  "-ufactor=" + factor,
                  "-seed=" + seed,
                  file.toString(),
                  Integer.toString(parts))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (run.waitFor() != 0) {
        throw new UncheckedIOException(new IOException("gpmetis failed on " + file));
      }
      Path result = Path.of(file + ".part." + parts);
      List<String> lines = Files.readAllLines(result);
      Files.delete(result);
      int[] part = new int[number.length];
      for (int f = 0; f < part.length; f++) {
        part[f] = number[f] > 0 ? 1 + Integer.parseInt(lines.get(number[f] - 1).strip()) : 0;
      }
      return part;
    }
  }
}
