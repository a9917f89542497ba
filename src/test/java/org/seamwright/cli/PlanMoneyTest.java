package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * Spreads, prices, steep places, own recipes and the thickness reached, on a cube of side 100 mm:
 * 600 cm² of faces.
 */
class PlanMoneyTest extends PlanFixture {
  private static final String DECIDED =
      """
      {"seamwright": 1,
       "mesh": {"file": "cube.stl", "unit": "mm"},
       "sections": {"limit": "1000 cm2"},
       "plating": {"recipe": %s, "flash": "0.1 µm", "thickness": "0.5 µm",
         "loss": {"low": 0.2, "likely": 0.3, "high": 0.4}, "secondsPerCm2PerUm": 25,
         "tool": {"dip": "0.5 ml"}, "hold": {"up": [0, 0, 1], "steeper": 60}},
       "quote": {"currency": "XTS", "labourPerHour": 36, "metalPerGram": 100, "tax": 0.2}}
      """;

  private void plan(String recipe) throws Exception {
    Files.writeString(jobFile, DECIDED.formatted(recipe));
    Run run = plan(jobFile, "--out", out);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
  }

  /**
   * 600 cm² × 0.5 µm × 19.3 g/cm³ = 0.579 g, × 1.3 = 0.7527 g. The triangle 0.2, 0.3, 0.4 has P90
   * at 0.4 − √(0.1 · 0.2 · 0.1). One section without laps; top faces alone are not steep: 500 cm².
   */
  @Test
  void amountsBandsAndPriceAreThoseOfTheFormulas() throws Exception {
    plan("\"brass\"");
    JsonNode totals = written().get("totals");
    assertThat(totals.get("goldG").asDouble()).isCloseTo(0.7527, within(1e-9));
    double high = 0.4 - Math.sqrt(0.1 * 0.2 * 0.1);
    assertThat(totals.get("goldBandG").get("p90").asDouble())
        .isCloseTo(0.579 * (1 + high), within(1e-9));
    assertThat(totals.get("goldBandG").get("p10").asDouble())
        .isCloseTo(0.579 * (1.6 - high), within(1e-9));
    assertThat(totals.get("steepMm2").asDouble()).isCloseTo(50_000, within(1e-6));
    // 0.7527 g in 8 g/l of which 0.8 can be laid down: 117.6 ml.
    assertThat(totals.get("dips").asDouble()).isEqualTo(236);
    JsonNode quote = written().get("quote");
    double labour = Math.round(totals.get("seconds").asDouble()) / 100.0;
    assertThat(quote.get("lines").get(0).get("amount").asDouble()).isCloseTo(labour, within(0.006));
    assertThat(quote.get("lines").get(1).get("amount").asDouble()).isEqualTo(75.27);
    assertThat(quote.get("total").asDouble())
        .isCloseTo(1.2 * quote.get("net").asDouble(), within(0.006));
  }

  @Test
  void recipeThatIsPrintedCanBeWrittenIntoTheJob() throws Exception {
    Run printed = Run.of("recipe", "brass", "--json");
    assertThat(printed.code()).isEqualTo(ExitCode.DONE);
    plan("\"brass\"");
    JsonNode known = written();
    plan(printed.out());
    assertThat(written().get("totals")).isEqualTo(known.get("totals"));
    assertThat(written().get("trace")).isEqualTo(known.get("trace"));
  }

  @Test
  void goldRightOnCopperIsAskedAbout() throws Exception {
    plan(
        """
        {"base": "Gun metal", "copper": true,
         "steps": [{"name": "Flash", "kind": "flash"}, {"name": "Build", "kind": "build"}]}""");
    assertThat(written().get("notices").toString()).contains("no-barrier");
  }

  @Test
  void recipesOutOfOrderAreRefused() throws Exception {
    Files.writeString(
        jobFile,
        DECIDED.formatted(
            """
            {"base": "Gun metal",
             "steps": [{"name": "Flash", "kind": "flash"}, {"name": "Clean", "kind": "wet"}]}"""));
    assertRefused(plan(jobFile, "--out", out), "follows one of the kind \"flash\"");
  }

  /**
   * A gain of 0.579 g is just the planned 0.5 µm; of 0.2895 g half of it, so that 0.25 µm, another
   * 0.2895 g, are missing. Two readings of a scale of 0.01 g: u = 0.01/√6 g.
   */
  @Test
  void thicknessReachedIsToldAgainstThePlan() throws Exception {
    plan("\"brass\"");
    Path plan = out.resolve("plan.json");
    Run run =
        Run.of(
            "shop",
            "thickness",
            plan,
            "--before",
            "100 g",
            "--after",
            "100.2895 g",
            "--scale",
            "0.01 g",
            "--reading",
            "0.4 µm",
            "--reading",
            "0.2 µm",
            "--json");
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    JsonNode told =
        new com.fasterxml.jackson.databind.ObjectMapper()
            .readTree(run.out())
            .get("measured")
            .get(0);
    assertThat(told.get("byWeight").get("um").asDouble()).isCloseTo(0.25, within(1e-9));
    assertThat(told.get("byWeight").get("missingG").asDouble()).isCloseTo(0.2895, within(1e-9));
    assertThat(told.get("byWeight").get("standardUm").asDouble())
        .isCloseTo(0.25 * 0.01 / Math.sqrt(6) / 0.2895, within(1e-9));
    assertThat(told.get("readings").get("leastUm").asDouble()).isEqualTo(0.2);
    assertThat(Run.of("shop", "thickness", plan).code()).isEqualTo(ExitCode.REFUSED);
    assertThat(Run.of("shop", "thickness", jobFile, "--charge", "1 Ah").err())
        .contains("This is no plan");
  }

  @Test
  void runsOfAJobAreComparedBySection() throws Exception {
    plan("\"brass\"");
    Path book = folder.resolve("b.db");
    Run.of(
        "shop",
        "run",
        "add",
        "--job",
        "cube",
        "--section",
        "1",
        "--before",
        "100 g",
        "--after",
        "100.579 g",
        "--book",
        book);
    Run run =
        Run.of("shop", "thickness", out.resolve("plan.json"), "--job", "cube", "--book", book);
    assertThat(run.out()).contains("Section 1, by weight: 0.500", "nothing missing on the mean");
  }

  @Test
  void shopsPricesGoIntoAJobOnRequest() throws Exception {
    Path book = folder.resolve("b.db");
    job("");
    assertThat(Run.of("shop", "apply", jobFile, "--prices", "--book", book).err())
        .contains("it holds no prices");
    assertThat(Run.of("shop", "set", "currency", "XTS", "--book", book).code()).isZero();
    assertThat(Run.of("shop", "set", "labourPerHour", "60", "--book", book).code()).isZero();
    assertThat(Run.of("shop", "set", "extraTime", "2 h", "--book", book).code()).isZero();
    assertThat(Run.of("shop", "set", "tax", "-1", "--book", book).code())
        .isEqualTo(ExitCode.REFUSED);
    assertThat(Run.of("shop", "set", "wages", "1", "--book", book).err()).contains("Known:");
    assertThat(Run.of("shop", "settings", "--book", book).out()).contains("labourPerHour: 60");
    assertThat(Run.of("shop", "apply", jobFile, "--prices", "--book", book).code()).isZero();
    Run planned = plan(jobFile, "--out", out);
    assertThat(planned.out()).contains("Price");
    assertThat(written().get("quote").get("lines").get(0).get("what").asText()).isEqualTo("Labour");
  }
}
