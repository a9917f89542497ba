package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TemplateCommandTest {
  private static final Path CUP = Path.of("models/cup.json");

  @TempDir private Path folder;

  /** The shield is 18 mm round on a cup that is nearly a cylinder there: it lies almost flat. */
  @Test
  void shieldIsOnePieceOfItsArea() throws Exception {
    Path out = folder.resolve("shield");
    Run run = Run.of("template", CUP, "--mark", "Shield for engraving", "--out", out, "--json");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    JsonNode tree = new ObjectMapper().readTree(run.out());
    assertThat(tree.get("templates")).hasSize(1);
    // π · 18² less what the curve of the surface takes away.
    assertThat(tree.at("/templates/0/areaMm2").asDouble())
        .isBetween(0.99 * Math.PI * 18 * 18, 1.01 * Math.PI * 18 * 18);
    assertThat(tree.at("/templates/0/stretch").asDouble()).isLessThan(0.02);
    assertThat(out.resolve("templates.pdf")).isRegularFile();
    assertThat(out.resolve("template-1.svg")).isRegularFile();
    assertThat(out.resolve("template-1.dxf")).isRegularFile();
  }

  @Test
  void refusesWhatItCannotDo() {
    assertThat(Run.of("template", CUP, "--mark", "Nothing", "--out", folder).code())
        .isEqualTo(ExitCode.REFUSED);
    assertThat(Run.of("template", CUP, "--stretch", "-1%", "--out", folder).code())
        .isEqualTo(ExitCode.USAGE);
    assertThat(folder).isEmptyDirectory();
  }
}
