package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MaskCommandTest {
  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void copyTheCup() throws Exception {
    job = folder.resolve("cup.json");
    Files.copy(Path.of("models/cup.json"), job);
    Files.copy(Path.of("models/cup.stl"), folder.resolve("cup.stl"));
  }

  private JsonNode mask(Object... more) throws Exception {
    Object[] line = new Object[more.length + 3];
    line[0] = "mask";
    line[1] = job;
    System.arraycopy(more, 0, line, 2, more.length);
    line[more.length + 2] = "--json";
    Run run = Run.of(line);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void brushedUnlessTheJobOrTheLineSaysOtherwise() throws Exception {
    JsonNode brushed = mask();
    assertThat(brushed.has("dip")).isFalse();
    assertThat(brushed.get("lacquerMl").asDouble()).isPositive();
    JsonNode dipped = mask("--vessel", "3 l");
    // The job's lacquer: two coats of 25 µm dry at a quarter solids, so 200 µm wet in all.
    assertThat(dipped.at("/dip/filmMl").asDouble())
        .isCloseTo(dipped.at("/dip/wettedMm2").asDouble() * 0.2 / 1000, within(1e-9));
    assertThat(dipped.get("tapeMm")).isEqualTo(brushed.get("tapeMm"));
    assertThat(mask()).isEqualTo(brushed);
  }

  @Test
  void choiceIsSavedAndTakenBack() throws Exception {
    JsonNode dipped = mask("--vessel", "3 l", "--depth", "40 mm", "--up", "0,0,1", "--save");
    assertThat(mask()).isEqualTo(dipped);
    mask("--brush", "--save");
    assertThat(mask().has("dip")).isFalse();
  }

  @Test
  void refusesWhatDoesNotFitTogether() {
    assertThat(Run.of("mask", job, "--vessel", "1 l", "--brush").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Run.of("mask", job, "--depth", "1 mm").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Run.of("mask", job, "--save").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Run.of("mask", job, "--vessel", "-1 l").code()).isEqualTo(ExitCode.REFUSED);
    assertThat(Run.of("mask", job, "--vessel", "1 l", "--up", "0,0").code())
        .isEqualTo(ExitCode.REFUSED);
  }
}
