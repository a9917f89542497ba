package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.testsupport.Shapes;

/** A job on a cube in a folder of its own, and the ways to plan it and read the plan. */
abstract class PlanFixture {
  static final String MESH = "cube.stl";

  @TempDir Path folder;
  Path jobFile;
  Path out;

  @BeforeEach
  void writeMesh() {
    MeshBytes.write(folder.resolve(MESH), MeshBytes.stl(Shapes.cube(100, 4)));
    jobFile = folder.resolve("cube.job");
    out = folder.resolve("plan");
  }

  /** A job on the cube of side 100 mm, with further keys at its top. */
  Path job(String more) throws IOException {
    return jobOn(MESH, more);
  }

  Path jobOn(String mesh, String more) throws IOException {
    return Files.writeString(
        jobFile,
        """
        {"seamwright": 1,
         "mesh": {"file": "%s", "unit": "mm"},
         %s
         "plating": {"recipe": "brass", "flash": "0.1 µm", "thickness": "0.5 µm", "loss": 0.33}}
        """
            .formatted(mesh, more.isEmpty() ? "" : more + ","));
  }

  JsonNode written() throws IOException {
    return new ObjectMapper().readTree(out.resolve("plan.json").toFile());
  }

  /** Plans without papers, whose own tests hold them. */
  static Run plan(Object... args) {
    List<Object> words = new ArrayList<>(List.of("plan", "--no-papers"));
    words.addAll(List.of(args));
    return Run.of(words.toArray());
  }

  List<String> names(Path where) throws IOException {
    try (Stream<Path> files = Files.list(where)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  void assertRefused(Run run, String says) throws IOException {
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).startsWith("seamwright: ").contains(says);
    assertThat(out).doesNotExist();
    assertThat(names(folder)).noneMatch(n -> n.startsWith("."));
  }
}
