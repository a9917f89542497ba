package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamwright.testsupport.Shapes;

class MeasureCommandTest {
  @TempDir Path folder;

  static Stream<String> badMeshes() {
    return MeshBytes.bad().keySet().stream();
  }

  /** A cube of side 2 in a file without a unit. */
  private Path cube() {
    return MeshBytes.write(folder.resolve("cube.stl"), MeshBytes.stl(Shapes.cube(2, 3)));
  }

  @Test
  void aCubeHasSixSquares() throws Exception {
    Run run = Run.of("measure", cube(), "--unit", "in", "--json");
    JsonNode json = new ObjectMapper().readTree(run.out());

    // Side 2 in: 6 · 2² = 24 in², 2³ = 8 in³; 1 in = 25.4 mm exactly (NIST SP 811).
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.err()).isEmpty();
    // Corners at thirds of the side are not exact in the file's 32-bit numbers: 1e-7 relative.
    assertThat(json.get("areaIn2").doubleValue()).isCloseTo(24, within(24e-7));
    assertThat(json.get("areaMm2").doubleValue()).isCloseTo(24 * 645.16, within(24 * 645.16e-7));
    assertThat(json.get("volumeMm3").doubleValue()).isCloseTo(8 * 16387.064, within(0.02));
    assertThat(json.get("sizeMm")).hasSize(3);
    json.get("sizeMm").forEach(n -> assertThat(n.doubleValue()).isEqualTo(50.8));
    assertThat(json.get("unit").textValue()).isEqualTo("in");
    assertThat(json.get("mmPerUnit").doubleValue()).isEqualTo(25.4);
    assertThat(json.get("triangles").intValue()).isEqualTo(108);
    // A cube of n by n cells a side has 6n² + 2 vertices, by Euler's formula.
    assertThat(json.get("vertices").intValue()).isEqualTo(56);
    assertThat(json.get("closed").booleanValue()).isTrue();
    for (String none :
        new String[] {
          "openEdges", "branchingEdges", "flippedEdges", "duplicateTriangles", "degenerateTriangles"
        }) {
      assertThat(json.get(none).intValue()).as(none).isZero();
    }
    assertThat(json.get("parts").intValue()).isEqualTo(1);
    double smooth = json.get("smoothAreaMm2").doubleValue();
    assertThat(json.get("smoothLowMm2").doubleValue()).isLessThanOrEqualTo(smooth);
    assertThat(json.get("smoothHighMm2").doubleValue()).isGreaterThanOrEqualTo(smooth);
    assertThat(json.get("notices").findValuesAsText("code")).contains("unit-taken");
  }

  @Test
  void aKnownLengthScales() throws Exception {
    Run run = Run.of("measure", cube(), "--known-length", "1 ft", "--along", "Z", "--json");
    JsonNode json = new ObjectMapper().readTree(run.out());

    assertThat(json.get("areaIn2").doubleValue()).isCloseTo(6 * 144, within(864e-7));
    assertThat(json.get("unit").textValue()).isEqualTo("known length");
  }

  @Test
  void withoutAUnitNothingIsMeasured() {
    Run run = Run.of("measure", cube());

    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .contains("The unit of", "--unit", "--known-length")
        .containsPattern("mm +the piece is 2 mm × 2 mm × 2 mm \\(")
        .containsPattern("in +the piece is 50.8 mm × 50.8 mm × 50.8 mm \\(2 in × 2 in × 2 in\\)");
  }

  @Test
  void withoutAUnitJsonHasSizesButNoArea() throws Exception {
    Run run = Run.of("measure", cube(), "--json");
    JsonNode json = new ObjectMapper().readTree(run.out());

    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(json.get("unit").textValue()).isEqualTo("unknown");
    assertThat(json.has("areaMm2")).isFalse();
    // Side 2: 2, 20, 50.8, 609.6 and 2000 mm. The middle of 20 … 1500 mm is √30000 = 173 mm; the
    // ratios to it are 86.6, 8.66, 3.41, 3.52 and 11.5.
    assertThat(json.get("sizes").findValuesAsText("unit"))
        .containsExactly("in", "ft", "cm", "m", "mm");
    assertThat(json.get("sizes").findValuesAsText("fitsBench"))
        .containsExactly("true", "true", "true", "false", "false");
    assertThat(json.get("sizes").get(0).get("sizeMm").get(2).doubleValue()).isEqualTo(50.8);
  }

  /** A GLB of one triangle with legs of 1 and 2, in metres by the standard. */
  private Path glb() {
    String json =
        """
        {"asset":{"version":"2.0"},"meshes":[{"primitives":[{"attributes":{"POSITION":0}}]}],
         "accessors":[{"bufferView":0,"componentType":5121,"count":3,"type":"VEC3"}],
         "bufferViews":[{"buffer":0,"byteLength":12,"byteStride":4}],
         "buffers":[{"byteLength":12,"uri":"data:;base64,AAAAAAEAAAAAAgAA"}]}
        """;
    return MeshBytes.write(folder.resolve("sheet.gltf"), json.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void theFilesOwnUnitIsTakenAndSaid() throws Exception {
    Run run = Run.of("measure", glb(), "--json");
    JsonNode json = new ObjectMapper().readTree(run.out());

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(json.get("areaMm2").doubleValue()).isEqualTo(1e6);
    assertThat(json.get("unit").textValue()).isEqualTo("m");
    assertThat(Run.of("measure", glb()).out()).contains("taken to be in m, since glTF");
    // 2 m long: more than a bench takes.
    assertThat(json.get("notices").findValuesAsText("code")).contains("unit-unlikely");
  }

  @Test
  void aUnitAgainstTheFilesOwnIsTold() throws Exception {
    for (String[] told :
        new String[][] {
          {"--unit", "in"}, {"--known-length", "2.1 m"}, {"--known-length", "3 in"}
        }) {
      Run run = Run.of("measure", glb(), told[0], told[1], "--json");
      JsonNode notices = new ObjectMapper().readTree(run.out()).get("notices");
      assertThat(notices.findValuesAsText("code")).contains("unit-contradicts-file");
      assertThat(notices.toString()).contains("1 unit = 1000 mm");
    }
    for (String[] told : new String[][] {{"--unit", "m"}, {"--known-length", "2.01 m"}}) {
      Run run = Run.of("measure", glb(), told[0], told[1], "--json");
      assertThat(run.out()).doesNotContain("unit-contradicts-file");
    }
  }

  @Test
  void theTextNamesTheUnitTaken() {
    Run run = Run.of("measure", cube(), "--unit", "cm");

    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    // Side 2 cm: 24 cm², 24 / 2.54² = 3.72 in².
    assertThat(run.out()).contains("24.0 cm² (3.72 in²)", "taken to be in cm", "20 mm × 20 mm");
  }

  @ParameterizedTest
  @MethodSource("badMeshes")
  void badMeshesAreRefusedByName(String name) {
    Path file = MeshBytes.write(folder.resolve(name), MeshBytes.bad().get(name));

    for (Run run :
        new Run[] {Run.of("measure", file, "--unit", "mm"), Run.of("measure", file, "--json")}) {
      if (run.code() == ExitCode.USAGE) {
        // Faces without area are found only when measuring.
        assertThat(name).isIn("flat-line.stl");
        continue;
      }
      assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.REFUSED);
      assertThat(run.out()).isEmpty();
      assertThat(run.err().lines()).hasSize(1);
      assertThat(run.err()).startsWith("seamwright: " + file);
    }
  }

  @Test
  void aMissingFileIsRefused() {
    Run run = Run.of("measure", folder.resolve("none.stl"), "--unit", "mm");

    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("none.stl");
  }

  @Test
  void aFolderIsRefused() {
    Run run = Run.of("measure", folder, "--unit", "mm");

    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains(folder.toString());
  }
}
