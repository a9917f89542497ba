package org.seamwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.testsupport.Shapes;

/**
 * Parts, open edges, volume and size against the admesh program (Debian package admesh), an
 * independent implementation. Skipped where it is not installed, except under CI.
 */
class AdmeshTest {
  @TempDir Path directory;

  @BeforeAll
  static void needsAdmesh() throws IOException, InterruptedException {
    boolean found;
    try {
      Process process = new ProcessBuilder("admesh", "--version").redirectErrorStream(true).start();
      process.getInputStream().readAllBytes();
      found = process.waitFor() == 0;
    } catch (IOException absent) {
      found = false;
    }
    if ("true".equals(System.getenv("CI"))) {
      assertThat(found).as("admesh must be installed under CI").isTrue();
    }
    Assumptions.assumeTrue(found, "admesh is not installed: apt-get install admesh");
  }

  private static Mesh shape(String name) {
    return switch (name) {
      case "cube" -> Shapes.cube(2, 3);
      case "torus" -> Shapes.torus(30, 7, 40, 24);
      case "two spheres" -> Shapes.twoSpheres(10, 30, 12, 16);
      case "shell in a shell" ->
          Shapes.join(Shapes.sphere(10, 12, 16), Shapes.icosphere(5, 2), Shapes.cube(1, 1));
      case "open cup" -> Shapes.cylinder(5, 8, 20, 4, false);
      case "holed cube" -> Shapes.without(Shapes.cube(2, 2), 0, 5, 17, 30);
      case "rectangle" -> Shapes.plane(30, 40, 5, 6);
      case "loose faces" -> Shapes.soup(40, 100, 5, 7);
      default -> throw new IllegalArgumentException(name);
    };
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "cube",
        "torus",
        "two spheres",
        "shell in a shell",
        "open cup",
        "holed cube",
        "rectangle",
        "loose faces"
      })
  void shapesAreSurveyedAlike(String name) throws Exception {
    Path file = directory.resolve("shape.stl");
    StlWriter.writeBinary(shape(name), file, "shape");
    compare(file);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/graphics/scenery/models/erythrocyte.stl",
        "/models/cube-binary.stl",
        "/models/cube-minus-sphere.stl"
      })
  void openMeshesAreSurveyedAlike(String resource) throws Exception {
    Path file = directory.resolve("open.stl");
    try (InputStream stream = AdmeshTest.class.getResourceAsStream(resource)) {
      Files.write(file, stream.readAllBytes());
    }
    compare(file);
  }

  private static void compare(Path file) throws Exception {
    MeshDocument document = MeshFiles.read(file, Progress.NONE);
    Mesh mesh = document.mesh();
    Survey ours = Surveyor.survey(mesh, Topology.of(mesh), document.droppedFaces(), Progress.NONE);
    String theirs = admesh(file);
    assertThat(ours.triangles()).isEqualTo((int) number(theirs, "Number of facets *: *"));
    assertThat(ours.parts()).isEqualTo((int) number(theirs, "Number of parts *: *"));
    double open =
        number(theirs, "Facets with 1 disconnected edge *: *")
            + 2 * number(theirs, "Facets with 2 disconnected edges *: *")
            + 3 * number(theirs, "Facets with 3 disconnected edges *: *");
    assertThat(ours.openEdges()).isEqualTo((int) open);
    if (ours.closed()) {
      // It sums in single precision and prints six decimals.
      double volume = number(theirs, "Volume *: *");
      assertThat(ours.volumeMm3()).isCloseTo(volume, within(2e-5 * volume + 1e-6));
    }
    assertThat(ours.bounds().maxX()).isCloseTo(number(theirs, "Max X = *"), within(1e-6));
    assertThat(ours.bounds().minZ()).isCloseTo(number(theirs, "Min Z = *"), within(1e-6));
  }

  private static String admesh(Path file) throws IOException, InterruptedException {
    ProcessBuilder builder =
        new ProcessBuilder("admesh", "--exact", "--normal-directions", file.toString())
            .redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    Process process = builder.start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
    return output;
  }

  private static double number(String text, String before) {
    Matcher matcher = Pattern.compile(before + "(-?[0-9.]+)").matcher(text);
    assertThat(matcher.find()).as("%s in %s", before, text).isTrue();
    return Double.parseDouble(matcher.group(1));
  }
}
