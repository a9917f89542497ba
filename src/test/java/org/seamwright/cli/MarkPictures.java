package org.seamwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.seamwright.basis.InputException;
import org.seamwright.basis.Progress;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkedJob;
import org.seamwright.job.Planner;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.picture.Background;
import org.seamwright.picture.Image;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.Png;
import org.seamwright.picture.View;
import org.seamwright.region.SurfaceMap;
import org.seamwright.testsupport.Shapes;

/**
 * Draws the pictures of {@code docs/marks.md} by running the commands that stand beside them:
 * {@code MarkPictures [KIND...]}, from the project's folder.
 */
final class MarkPictures {
  private static final Map<String, View> VIEWS =
      Map.of(
          "cup", new View("front, from above", 0.25, -0.9, 0.3),
          "cup-on-stand", new View("front, from above", 0.25, -0.9, 0.3),
          "hollow-egg", new View("front, from above", 0.25, -0.9, 0.3),
          "plaque", new View("from above", 0.15, -0.7, 0.8));

  private static final int WIDTH = 330;
  private static final int HEIGHT = 300;

  private MarkPictures() {}

  /** Draws all pictures, or those of the kinds named. */
  public static void main(String[] args) throws IOException, InputException {
    Path folder = Files.createTempDirectory("marks");
    for (Map.Entry<String, MarkPage.Example> entry : MarkPage.examples().entrySet()) {
      if (args.length == 0 || List.of(args).contains(entry.getKey())) {
        draw(entry.getValue(), folder);
      }
    }
  }

  private static void draw(MarkPage.Example example, Path folder)
      throws IOException, InputException {
    Path job = job(example.piece(), folder);
    List<Image> images = new ArrayList<>();
    for (List<String> command : example.commands()) {
      List<Object> words = new ArrayList<>(List.of("mark", job));
      words.addAll(command);
      words.add("--quick");
      Run run = Run.of(words.toArray());
      if (run.code() != ExitCode.DONE) {
        throw new IllegalStateException(run.err());
      }
      MarkedJob marked =
          Planner.mark(
              JobFile.read(job),
              job,
              Planner.piece(JobFile.read(job), job, Progress.NONE),
              Progress.NONE);
      SurfaceMap map = example.piece().startsWith("hollow") ? back(marked.map()) : marked.map();
      images.add(
          Pictures.plain(
              Pictures.customerScene(map),
              VIEWS.get(example.piece()),
              WIDTH,
              HEIGHT,
              Background.WHITE));
    }
    Png.write(
        images.size() == 1 ? images.get(0) : Pictures.sheet(images, images.size()),
        example.image());
  }

  /** The half away from the viewer, so that the picture shows what is inside. */
  private static SurfaceMap back(SurfaceMap map) {
    Mesh mesh = map.mesh();
    double[] at = new double[3];
    int[] kept =
        IntStream.range(0, mesh.faceCount())
            .filter(
                f -> {
                  Faces.centroid(mesh, f, at);
                  return at[1] > 0;
                })
            .toArray();
    int[] corner = new int[3 * kept.length];
    int[] parent = new int[kept.length];
    byte[] treatment = new byte[kept.length];
    for (int i = 0; i < kept.length; i++) {
      System.arraycopy(mesh.corner(), 3 * kept[i], corner, 3 * i, 3);
      parent[i] = map.parentFace()[kept[i]];
      treatment[i] = map.treatment()[kept[i]];
    }
    return new SurfaceMap(
        Mesh.of(mesh.xyz(), corner), parent, treatment, map.effects(), map.notices());
  }

  /** A job without marks on a sample piece. */
  static Path job(String piece, Path folder) throws IOException, InputException {
    Path mesh = Path.of("models", piece + (piece.equals("plaque") ? ".obj" : ".stl"));
    if (piece.equals("cup-on-stand")) {
      mesh = MeshBytes.write(folder.resolve(piece + ".stl"), MeshBytes.stl(cupOnStand()));
    }
    if (piece.equals("hollow-egg")) {
      mesh = MeshBytes.write(folder.resolve(piece + ".stl"), MeshBytes.stl(hollowEgg()));
    }
    // What the examples name beside the piece.
    Mesh hoop = Shapes.torus(22, 7, 96, 48);
    MeshBytes.write(folder.resolve("hoop.stl"), MeshBytes.stl(hoop));
    Path job = folder.resolve(piece + ".json");
    Files.deleteIfExists(job);
    Run run = Run.of("new", mesh, "--unit", "mm", "--out", job);
    if (run.code() != ExitCode.DONE) {
      throw new IllegalStateException(run.err());
    }
    return job;
  }

  /** An egg with a wall of 4 mm. */
  private static Mesh hollowEgg() {
    return Shapes.join(Shapes.ellipsoid(30, 30, 40, 48, 72), Shapes.ellipsoid(26, 26, 36, 48, 72));
  }

  /** The cup on a plinth of its own. */
  private static Mesh cupOnStand() throws InputException {
    Mesh cup = MeshFiles.read(Path.of("models", "cup.stl"), Progress.NONE).mesh();
    return Shapes.join(cup, Shapes.moved(Shapes.box(110, 110, 34, 1), 0, 0, -18));
  }
}
