package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

/** Masks of a plan, on a cube of side 100 mm with a bare belt of 20 mm round its middle. */
class PlanMaskTest extends PlanFixture {
  private static final String BELT =
      """
      "marks": [{"kind": "box", "treatment": "bare", "low": [-51, -51, -10], "high": [51, 51, 10]}],
      "sections": {"limit": "1000 cm2"},
      "masking": {"tapeWidth": "12 mm", "tapes": [{"name": "narrow", "width": "6 mm", "bend": "10 mm", "roll": "30 m"},
        {"name": "wide", "width": "12 mm", "bend": "100 mm", "roll": "30 m"}]}
      """;

  /**
   * The belt parts the cube in two sections. Both edges are squares of 4 × 100 mm with four
   * corners, taped with the wide tape, each strip over the 12 mm of the one before; the corners of
   * the cube run under the tape at all eight.
   */
  @Test
  void beltIsTapedAlongBothEdges() throws Exception {
    job(BELT);
    Run run = plan(jobFile, "--out", out);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    JsonNode mask = written().get("masks").get(0);
    assertThat(mask.get("edgeMm").asDouble()).isCloseTo(800, within(1e-6));
    assertThat(mask.get("edges").asInt()).isEqualTo(2);
    assertThat(mask.get("beside").toString()).isEqualTo("[1,2]");
    assertThat(mask.get("wrapMm").asDouble()).isPositive();
    assertThat(mask.get("byHandMm").asDouble()).isZero();
    // A square round a cube is straight within its unrolled wall: no corners, no bends.
    assertThat(mask.get("corners").asInt()).isZero();
    JsonNode tape = mask.get("tape");
    assertThat(tape).hasSize(2);
    assertThat(tape.get(0).get("name").asText()).isEqualTo("wide");
    assertThat(tape.get(0).get("lengthMm").asDouble()).isCloseTo(405, within(1.0));
    JsonNode used = written().get("tapes");
    assertThat(used).hasSize(1);
    assertThat(used.get(0).get("rolls").asInt()).isEqualTo(1);
  }
}
