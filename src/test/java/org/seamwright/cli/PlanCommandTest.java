package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamwright.paper.Papers;
import org.seamwright.plating.Deposits;
import org.seamwright.section.SectionPlan;
import org.seamwright.testsupport.Shapes;

class PlanCommandTest extends PlanFixture {
  static Stream<String> badMeshes() {
    return MeshBytes.bad().keySet().stream();
  }

  @Test
  void aWholeCubeInOneSection() throws Exception {
    Run run = plan(job("\"sections\": {\"limit\": \"700 cm2\"}"), "--out", out);
    JsonNode plan = written();

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(run.err()).isEmpty();
    JsonNode totals = plan.get("totals");
    // 6 · 100² mm²; corners at quarters of the side are exact in the file.
    assertThat(totals.get("netMm2").doubleValue()).isCloseTo(60_000, within(1e-6));
    assertThat(totals.get("workedMm2").doubleValue()).isCloseTo(60_000, within(1e-6));
    // m = ρ · t · A · (1 + loss), with 600 cm² and 0.5 µm = 5e-5 cm.
    double density = Deposits.byId("gold-hard").densityGCm3();
    assertThat(totals.get("goldG").doubleValue())
        .isCloseTo(600 * 5e-5 * density * 1.33, within(1e-9));
    assertThat(plan.get("sections")).hasSize(1);
    assertThat(plan.get("seams")).isEmpty();
    assertThat(plan.get("masks")).isEmpty();
    assertThat(plan.get("activatedMm2").get("once").doubleValue()).isCloseTo(60_000, within(1e-6));
    assertThat(plan.get("activatedMm2").get("more").doubleValue()).isZero();
    assertThat(plan.get("notices").findValuesAsText("code"))
        .contains("unit-taken", "mesh-not-recorded");
    assertThat(run.out()).contains("600 cm² to plate", "1 section of at most 700 cm²", "plan.json");
  }

  @Test
  void sectionsKeepTheLimitAndAddUp() throws Exception {
    Run run =
        plan(
            job(
                """
                "marks": [{"kind": "halfSpace", "point": [0, 0, -25], "normal": [0, 0, -1]}],
                "sections": {"limit": "120 cm2", "flashLap": "3 mm", "activationLap": "1 mm"}
                """),
            "--out",
            out);
    JsonNode plan = written();

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    double net = 0;
    double worked = 0;
    double gold = 0;
    double seconds = 0;
    int order = 1;
    for (JsonNode section : plan.get("sections")) {
      assertThat(section.get("id").intValue()).isEqualTo(order);
      assertThat(section.get("order").intValue()).isEqualTo(order++);
      assertThat(section.get("limitMm2").doubleValue()).isEqualTo(12_000);
      assertThat(section.get("workedMm2").doubleValue()).isLessThanOrEqualTo(12_000 * (1 + 1e-9));
      net += section.get("netMm2").doubleValue();
      worked += section.get("workedMm2").doubleValue();
      gold += section.get("goldG").doubleValue();
      seconds += section.get("seconds").doubleValue();
    }
    // Above z = -25: the top and three quarters of four sides, 4 · 10,000 mm².
    assertThat(net).isCloseTo(40_000, within(1e-3));
    JsonNode totals = plan.get("totals");
    assertThat(totals.get("netMm2").doubleValue()).isCloseTo(net, within(1e-6));
    assertThat(totals.get("workedMm2").doubleValue()).isCloseTo(worked, within(1e-6));
    assertThat(totals.get("goldG").doubleValue()).isCloseTo(gold, within(1e-9));
    assertThat(totals.get("seconds").doubleValue()).isCloseTo(seconds, within(1e-6));
    assertThat(totals.get("bareMm2").doubleValue()).isCloseTo(20_000, within(1e-3));
    JsonNode activated = plan.get("activatedMm2");
    assertThat(
            activated.get("once").doubleValue()
                + activated.get("twice").doubleValue()
                + activated.get("more").doubleValue())
        .isCloseTo(net, within(1e-3));
    // The edge of the only mask runs once around the cube.
    assertThat(plan.get("masks")).hasSize(1);
    assertThat(plan.get("masks").get(0).get("edgeMm").doubleValue()).isCloseTo(400, within(1e-3));
    for (JsonNode seam : plan.get("seams")) {
      assertThat(seam.get("between").get(0).intValue())
          .isLessThan(seam.get("between").get(1).intValue());
    }
  }

  @Test
  void theSameJobGivesTheSameBytesWhereverItIsWritten() throws Exception {
    job("\"sections\": {\"limit\": \"150 cm2\"}");
    Path other = folder.resolve("a/b/c");
    Run first = plan(jobFile, "--out", out, "--json");
    Run second = plan(jobFile, "--out", other, "--json");

    assertThat(second.code()).as(second.err()).isEqualTo(ExitCode.DONE);
    assertThat(second.out()).isEqualTo(first.out());
    assertThat(names(out)).containsExactly("plan.json");
    assertThat(names(other)).isEqualTo(names(out));
    assertThat(other.resolve("plan.json")).hasSameBinaryContentAs(out.resolve("plan.json"));
    assertThat(new ObjectMapper().readTree(first.out())).isEqualTo(written());
    assertThat(first.out().chars()).allMatch(c -> c < 0x80);
  }

  @Test
  void thePapersComeWithThePlan() throws Exception {
    job("\"sections\": {\"limit\": \"700 cm2\"}");
    Run run = Run.of("plan", jobFile, "--out", out, "--date", "2026-02-28");

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    List<String> expected = new ArrayList<>(Papers.names());
    expected.add("plan.json");
    assertThat(names(out)).containsExactlyInAnyOrderElementsOf(expected);
    for (String name : expected) {
      assertThat(out.resolve(name)).isNotEmptyFile();
      assertThat(run.out()).contains(name);
    }
  }

  @Test
  void everyKeyIsDescribed() throws Exception {
    String page = Files.readString(Path.of("docs", "plan-json.md"));
    job(
        """
        "marks": [{"kind": "halfSpace", "point": [0, 0, -25], "normal": [0, 0, -1]}],
        "sections": {"wetWindow": "45 s"}
        """);
    Run run = plan(jobFile, "--out", out);

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(written().get("seams")).as("a plan with seams").isNotEmpty();
    assertThat(written().get("masks")).as("a plan with masks").isNotEmpty();
    for (String key : keys(written())) {
      assertThat(page).contains("`" + key + "`");
    }
  }

  private static Set<String> keys(JsonNode node) {
    Set<String> keys = new TreeSet<>();
    node.fieldNames().forEachRemaining(keys::add);
    node.forEach(child -> keys.addAll(keys(child)));
    return keys;
  }

  @Test
  void otherFilesInTheFolderStay() throws Exception {
    Files.createDirectories(out);
    Files.writeString(out.resolve("photo.jpg"), "mine");
    Files.writeString(out.resolve("plan.json"), "old");

    Run run = plan(job(""), "--out", out);

    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(out.resolve("photo.jpg")).hasContent("mine");
    assertThat(written().get("plan").intValue()).isEqualTo(1);
    assertThat(names(out)).noneMatch(n -> n.startsWith("."));
    assertThat(names(folder)).noneMatch(n -> n.startsWith("."));
  }

  /**
   * Whatever the split, the section worked last has only earlier neighbours, so its worked area
   * holds all places within the lap of 10 mm of it: at least a disc of that radius. On a cube of
   * side 25 mm a disc holds at most one corner, where three quarters of a plane meet, so it has at
   * least 0.75 · π · 10² = 235.6 mm², above the limit of 210 mm².
   */
  @Test
  void aBrokenLimitIsDoneWithCode4AndSaidInALineEach() throws Exception {
    MeshBytes.write(folder.resolve(MESH), MeshBytes.stl(Shapes.cube(25, 2)));
    job("\"sections\": {\"limit\": \"210 mm2\", \"flashLap\": \"10 mm\"}");
    Run run = plan(jobFile, "--out", out);

    assertThat(run.code()).isEqualTo(ExitCode.LIMIT_BROKEN);
    long over =
        written().get("notices").findValuesAsText("code").stream()
            .filter(SectionPlan.OVER_LIMIT::equals)
            .count();
    assertThat(over).isPositive();
    assertThat(run.err().lines()).hasSize((int) over);
    assertThat(run.err().lines()).allMatch(line -> line.startsWith("seamwright: Section "));
    assertThat(run.out()).contains("plan.json");
  }

  @ParameterizedTest
  @MethodSource("badMeshes")
  void badMeshesAreRefusedAndLeaveNothing(String name) throws Exception {
    Path mesh = MeshBytes.write(folder.resolve(name), MeshBytes.bad().get(name));
    jobOn(name, "");

    assertRefused(plan(jobFile, "--out", out), mesh.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "colour": "red"                         | colour (line 3): There is no key
          "sections": {"limit": "0 in2"}          | sections.limit (line 3): "0 in2" is out of range
          "sections": {"limit": "40 mm2"}         | sections.limit: The limit of
          "sections": {"limit": "0.1 in2", "flashLap": "10 mm"} | leaves no room beside laps
          "sections": {"wetWindow": "0.001 s"}    | sections.wetWindow
          "ground": "bare"                        | marks: Nothing is left to plate
          "marks": [{"kind": "box", "low": [-60,-60,-60], "high": [60,60,60]}] | Nothing is left to plate
          "masking": {"tapeWidth": "12"}          | masking.tapeWidth (line 3)
          "marks": [{"kind": "near", "path": [[0,0,50]]}] | marks[0] (line 3): The key "radius" is missing
          """)
  void impossibleJobsAreRefusedAndLeaveNothing(String more, String says) throws Exception {
    Run run = plan(job(more), "--out", out);

    assertRefused(run, jobFile.toString());
    assertThat(run.err()).contains(says);
  }

  @Test
  void wrongVersionsRecipesAndMissingFilesAreRefused() throws Exception {
    Files.writeString(jobFile, "{\"seamwright\": 99}");
    assertRefused(plan(jobFile, "--out", out), "version 99");
    Files.writeString(jobFile, "");
    assertRefused(plan(jobFile, "--out", out), "The file is empty");
    jobOn("none.stl", "");
    assertRefused(plan(jobFile, "--out", out), "mesh.file: The mesh file");
    Files.writeString(jobFile, Files.readString(job("")).replace("brass", "bras"));
    assertRefused(plan(jobFile, "--out", out), "Did you mean \"brass\"?");
    assertRefused(plan(folder.resolve("none.job"), "--out", out), "no such file");
  }

  @Test
  void targetsThatCannotBeWrittenAreRefused() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "mine");

    assertRefused(plan(job(""), "--out", file), "not a folder");
    assertRefused(plan(job(""), "--out", file.resolve("below")), "not a folder");
    assertThat(file).hasContent("mine");
    Files.createDirectories(out.resolve("plan.json"));
    Run run = plan(job(""), "--out", out);
    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("A folder stands where a file is to be written");
    assertThat(names(out)).containsExactly("plan.json");
  }

  @Test
  void papersOfAnEarlierPlanAreTold() throws Exception {
    Path job = job("\"sections\": {\"limit\": \"700 cm2\"}");
    Files.createDirectories(out);
    Files.writeString(out.resolve("bench-sheet.pdf"), "of an earlier plan");
    Run run = plan(job, "--out", out);

    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.err()).contains("papers of an earlier plan: bench-sheet.pdf", "--no-papers");
    assertThat(out.resolve("bench-sheet.pdf")).hasContent("of an earlier plan");
  }

  @Test
  void aDateThatIsNoneIsWrongUsage() throws Exception {
    Run run = plan(job(""), "--out", out, "--date", "2026-02-30");

    assertThat(run.code()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains("2026-01-31").doesNotContain("java.");
  }
}
