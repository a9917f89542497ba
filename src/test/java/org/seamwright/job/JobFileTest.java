package org.seamwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.plating.BenchPace;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.section.OrderPins;
import org.seamwright.units.UnitSystem;

class JobFileTest {
  /** The least that a job must say. */
  private static final String LEAST =
      """
      {"seamwright": 1,
       "mesh": {"file": "cup.stl", "unit": "mm"},
       "plating": {"recipe": "brass"}}
      """;

  @TempDir Path folder;

  static Job parse(String text) throws JobFileException {
    return JobFile.parse(text.getBytes(StandardCharsets.UTF_8), "a.job");
  }

  static JobFileException refused(String text) {
    JobFileException refusal = catchThrowableOfType(JobFileException.class, () -> parse(text));
    assertThat(refusal).as("refusal of %s", text).isNotNull();
    assertThat(refusal.source()).isEqualTo("a.job");
    assertThat(refusal.remedy()).endsWith(".");
    return refusal;
  }

  @Test
  void whatIsLeftOutTakesTheDefaults() throws Exception {
    Job job = parse(LEAST);

    assertThat(job.piece()).isEqualTo("cup");
    assertThat(job.ground()).isEqualTo(Treatment.PLATE);
    assertThat(job.marks()).isEmpty();
    assertThat(job.display()).isEqualTo(UnitSystem.METRIC);
    assertThat(job.sections()).isEqualTo(JobDefaults.sections());
    assertThat(job.plating()).isEqualTo(JobDefaults.plating("brass"));
    assertThat(job.masking()).isEqualTo(JobDefaults.masking());
    assertThat(job.mesh()).isEqualTo(new Job.MeshSource("cup.stl", "", new Job.Scale.Unit("mm")));
  }

  @Test
  void amountsAreReadInTheirUnits() throws Exception {
    Job job =
        parse(
            """
            {"seamwright": 1, "display": "inch",
             "mesh": {"file": "cup.stl", "knownLength": {"length": "17 in", "along": "y"}},
             "marks": [
               {"kind": "near", "treatment": "outOfScope", "radius": "1/4 in",
                "path": [[1, "1 in", "-1 in"]]}],
             "sections": {"wetWindow": "1 min", "flashLap": "0.5 cm"},
             "plating": {"recipe": "brass", "flash": "3 µin", "thickness": "20 uin",
                         "solution": "1 g/ml"}}
            """);

    // 1 in = 25.4 mm exactly (NIST SP 811), so 1 µin = 0.0254 µm.
    assertThat(job.mesh().scale()).isEqualTo(new Job.Scale.KnownLength(431.8, Job.Along.Y));
    assertThat(job.marks())
        .containsExactly(
            new Mark.Near(
                "", Treatment.OUT_OF_SCOPE, List.of(Vector3D.of(1, 25.4, -25.4)), 25.4 / 4));
    assertThat(job.sections()).isEqualTo(new Job.SectionRules(new Job.Limit.Wet(60), 2, 5));
    assertThat(job.plating().flashUm()).isEqualTo(0.0762);
    assertThat(job.plating().thicknessUm()).isEqualTo(0.508);
    assertThat(job.plating().solutionGPerL()).isEqualTo(1000);
  }

  @Test
  void aMarkSwitchedOffKeepsWhatItIs() throws Exception {
    String mark = "\"marks\": [{\"kind\": \"part\", \"name\": \"lid\", %s\"point\": [1,2,3]}], ";
    Job on = parse(LEAST.replace("\"mesh\"", mark.formatted("") + "\"mesh\""));
    Job stillOn = parse(LEAST.replace("\"mesh\"", mark.formatted("\"off\": false, ") + "\"mesh\""));
    Job off = parse(LEAST.replace("\"mesh\"", mark.formatted("\"off\": true, ") + "\"mesh\""));

    assertThat(stillOn).isEqualTo(on);
    assertThat(off.marks()).containsExactly(new Mark.Off(on.marks().get(0)));
    assertThat(JobFile.text(on)).doesNotContain("\"off\"");
    assertThat(parse(JobFile.text(off))).isEqualTo(off);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {0, 1})
  void everyJobSurvivesARoundTrip(int block) throws Exception {
    for (int seed = 150 * block; seed < 150 * (block + 1); seed++) {
      Job job = JobSamples.random(seed);
      String text = JobFile.text(job);
      assertThat(parse(text)).as("seed %d: %s", seed, text).isEqualTo(job);
      assertThat(JobFile.text(parse(text))).as("seed %d", seed).isEqualTo(text);
    }
  }

  @Test
  void roundFiguresStayAsTheyWereWritten() throws Exception {
    String text =
        JobFile.text(
            parse(
                """
                {"seamwright": 1, "mesh": {"file": "cup.stl", "unit": "in"},
                 "sections": {"limit": "40 in2", "flashLap": "3/16 in"},
                 "plating": {"recipe": "brass", "flash": "3 µin", "thickness": "0.5 µm"}}
                """));

    assertThat(text)
        .contains("\"limit\": \"258.064 cm2\"", "\"flashLap\": \"4.7625 mm\"")
        .contains("\"flash\": \"0.0762 µm\"", "\"thickness\": \"0.5 µm\"");
    assertThat(JobFile.text(parse(text.replace("metric", "inch"))))
        .contains("\"limit\": \"40 in2\"", "\"flashLap\": \"0.1875 in\"")
        .contains("\"flash\": \"3 µin\"", "\"activationLap\": \"2 mm\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "piece": 5                                  | piece               | Expected text
          "peice": "cup"                              | peice               | Did you mean "piece"?
          "zzz": 1                                    | zzz                 | Known here: seamwright, piece
          "piece": "a", "piece": "b"                  | piece               | a second time
          "ground": "plated"                          | ground              | Did you mean "plate"?
          "ground": null                              | ground              | found null
          "display": "imperial"                       | display             | Known here: metric, inch
          "marks": {}                                 | marks               | Expected a list
          "marks": [7]                                | marks[0]            | Expected an object
          "marks": [{"name": "a"}]                    | marks[0]            | "kind" is missing
          "marks": [{"kind": "haldSpace"}]            | marks[0].kind       | Did you mean "halfSpace"?
          "marks": [{"kind": "part", "radius": "1 mm", "point": [0,0,0]}] | marks[0].radius | There is no key "radius" here
          "marks": [{"kind": "part"}]                 | marks[0]            | "point" is missing
          "marks": [{"kind": "part", "point": [1,2]}] | marks[0].point      | found 2
          "marks": [{"kind": "part", "point": [1,2,"3"]}] | marks[0].point[2] | unit
          "marks": [{"kind": "part", "point": [1,2,1e99]}] | marks[0].point[2] | out of range
          "marks": [{"kind": "part", "point": [1,2,true]}] | marks[0].point[2] | found true
          "marks": [{"kind": "halfSpace", "point": [0,0,0], "normal": [0,0,0]}] | marks[0].normal | all zero
          "marks": [{"kind": "near", "path": [[0,0,0]], "radius": 4}] | marks[0].radius | "4 mm"
          "marks": [{"kind": "near", "path": [[0,0,0]], "radius": "0 mm"}] | marks[0].radius | must be above 0
          "marks": [{"kind": "near", "path": [[0,0,0]], "radius": "4 s"}] | marks[0].radius | length
          "marks": [{"kind": "near", "path": [], "radius": "4 mm"}] | marks[0].path | no point
          "marks": [{"kind": "creaseFill", "point": [0,0,0], "angle": 181}] | marks[0].angle | at most 180
          "marks": [{"kind": "sector", "point": [0,0,0], "axis": [0,0,1], "zero": [1,0,0], "from": 9, "to": 9}] | marks[0] | span
          "marks": [{"kind": "sector", "point": [0,0,0], "axis": [0,0,1], "zero": [0,0,1], "from": 0, "to": 9}] | marks[0] | along the axis
          "marks": [{"kind": "box", "low": [0,0,0], "high": [1,1,0]}] | marks[0] | Box is empty
          "marks": [{"kind": "part", "off": "yes", "point": [1,2,3]}] | marks[0].off | true
          "marks": [{"kind": "box", "off": true, "low": [0,0,0], "high": [1,1,0]}] | marks[0] | Box is empty
          "sections": {"limit": "40 in2", "wetWindow": "0 s"} | sections.wetWindow | must be above 0
          "sections": {"order": {"first": [[0,0]]}}   | sections.order.first[0] | three numbers
          "sections": {"order": {"before": [{"section": [0,0,0]}]}} | sections.order.before[0] | is missing
          "sections": {"limit": "0 in2"}              | sections.limit      | must be above 0
          "sections": {"limit": "40 in"}              | sections.limit      | area
          "sections": {"wetWindow": "45"}             | sections.wetWindow  | unit
          "sections": {"flashLap": "-1 mm"}           | sections.flashLap   | below zero
          "masking": {"tapeWidth": "0 mm"}            | masking.tapeWidth   | must be above 0
          "masking": {"lacquerSolids": 25}            | masking.lacquerSolids | at most 1
          "masking": {"lacquerCoats": 1.5}            | masking.lacquerCoats | whole number
          "masking": {"lacquerLoss": 1}               | masking.lacquerLoss | below 1
          """)
  void whatDoesNotFitIsRefusedInItsPlace(String entry, String place, String says) {
    JobFileException refusal = refused(LEAST.replace("\"mesh\"", entry + ",\n\"mesh\""));

    assertThat(refusal.place()).isEqualTo(place + " (line 2)");
    assertThat(refusal.getMessage()).contains(says);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "flash": "3 in"      | plating.thickness     | ``
          "flash": "1 µm", "thickness": "0.5 µm" | plating.thickness | below that of the flash
          "loss": 33           | plating.loss          | 0.33 for a third more
          "loss": -0.1         | plating.loss          | from 0
          "solution": "8 g"    | plating.solution      | mass per volume
          "solution": "8 l/g"  | plating.solution      | mass
          "usable": 0          | plating.usable        | above 0
          "efficiency": 1.2    | plating.efficiency    | at most 1
          "secondsPerCm2PerUm": "12" | plating.secondsPerCm2PerUm | without quotes
          "bench": {"handling": "7 mm"} | plating.bench.handling | time
          "bench": {"secondsPerCm2": -1} | plating.bench.secondsPerCm2 | from 0
          "bench": {"flashPasses": 0} | plating.bench.flashPasses | from 1
          "bench": {"steps": [{"step": "Nickl"}]} | plating.bench.steps[0].step | "Nickel"
          "bench": {"steps": [{"step": "Degrease"}]} | plating.bench.steps[0].step | Known here
          "bench": {"steps": [{"step": "Gold flash", "secondsPerCm2": 1}]} | plating.bench.steps[0].secondsPerCm2 | thickness
          "bench": {"steps": [{"step": "Nickel"}, {"step": "Nickel"}]} | plating.bench.steps | twice
          """)
  void platingRulesOutOfRangeAreRefused(String entry, String place, String says) throws Exception {
    String text = LEAST.replace("\"recipe\": \"brass\"", "\"recipe\": \"brass\", " + entry);
    if (says.isEmpty()) {
      // A thick flash raises the thickness that was left out.
      assertThat(parse(text).plating().thicknessUm()).isEqualTo(parse(text).plating().flashUm());
      return;
    }
    JobFileException refusal = refused(text);

    assertThat(refusal.place()).isEqualTo(place + " (line 3)");
    assertThat(refusal.getMessage()).contains(says);
  }

  @Test
  void readsOrderAndPace() throws Exception {
    Job job =
        parse(
            """
            {"seamwright": 1, "mesh": {"file": "cup.stl", "unit": "mm"},
             "sections": {"limit": "10 cm2", "wetWindow": "30 s",
               "order": {"first": [[1, 2, "1 in"]], "last": [[4, 5, 6], [7, 8, 9]],
                         "before": [{"section": [0, 0, 1], "before": [0, 0, 2]}]}},
             "plating": {"recipe": "brass", "bench": {"handling": "9 s", "rinseSecondsPerCm2": 0.3,
               "steps": [{"step": "Nickel", "passes": 4, "handling": "1 min"}]}}}
            """);
    assertThat(job.sections().limit()).isEqualTo(new Job.Limit.Area(1000, 30));
    assertThat(job.sections().order())
        .isEqualTo(
            new OrderPins(
                List.of(Vector3D.of(1, 2, 25.4)),
                List.of(Vector3D.of(4, 5, 6), Vector3D.of(7, 8, 9)),
                List.of(new OrderPins.Before(Vector3D.of(0, 0, 1), Vector3D.of(0, 0, 2)))));
    BenchPace bench = job.plating().bench();
    assertThat(bench.handlingSeconds()).hasValue(9);
    assertThat(bench.rinseSecondsPerCm2()).hasValue(0.3);
    assertThat(bench.secondsPerCm2()).isEmpty();
    assertThat(bench.steps())
        .containsExactly(
            new BenchPace.OfStep(
                "Nickel", OptionalDouble.of(60), OptionalDouble.empty(), OptionalInt.of(4)));
  }

  @Test
  void aMeshHasOneScaleOrThatOfItsFile() throws Exception {
    Job.Scale ofFile = new Job.Scale.OfFile();
    assertThat(parse(LEAST.replace(", \"unit\": \"mm\"", "")).mesh().scale()).isEqualTo(ofFile);
    assertThat(parse(LEAST.replace("\"mm\"", "\"file\"")).mesh().scale()).isEqualTo(ofFile);
    assertThat(refused(LEAST.replace("\"mm\"", "\"mm\", \"knownLength\": {\"length\": \"1 in\"}")))
        .hasMessageContaining("exclude each other");
    assertThat(refused(LEAST.replace("\"mm\"", "\"mn\"")))
        .hasMessageContaining("Did you mean \"mm\"?");
    assertThat(refused(LEAST.replace("\"mm\"", "\"mm\", \"sha256\": \"12\"")))
        .hasMessageContaining("64 hex digits");
    assertThat(refused(LEAST.replace("cup.stl", " "))).hasMessageContaining("empty");
    String surface = "\"mm\", \"surface\": {\"area\": \"1 cm2\", \"samples\": \"%s\"}";
    assertThat(refused(LEAST.replace("\"mm\"", surface.formatted("1,2,3 4,5"))))
        .hasMessageContaining("mesh.surface.samples (line 2): \"4,5\" is not a place");
    assertThat(refused(LEAST.replace("\"mm\"", surface.formatted("1,2,3 4,5,6"))))
        .hasMessageContaining("fewer than 16 places");
  }

  @Test
  void otherVersionsAreRefusedBeforeTheirKeysAre() {
    JobFileException newer = refused("{\"seamwright\": 2, \"alloys\": []}");
    assertThat(newer.place()).isEqualTo("seamwright (line 1)");
    assertThat(newer.problem()).contains("version 2", "newer");

    assertThat(refused("{\"seamwright\": 0}").problem()).contains("no version 0");
    assertThat(refused("{\"seamwright\": \"1\"}").problem()).contains("found text");
    assertThat(refused("{\"mesh\": {}}").remedy()).contains("\"seamwright\": 1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[1]",
        "7",
        "\"job\"",
        "null",
        "{",
        "{\"seamwright\": 1,}",
        "{\"seamwright\": 1} x",
        "// job\n{}",
        "{'seamwright': 1}",
        "{\"seamwright\": NaN}",
        "{\"seamwright\": 01}",
        "solid"
      })
  void whatIsNoJsonOrNoObjectIsRefused(String text) {
    assertThat(refused(text).getMessage()).startsWith("a.job").doesNotContain("Feature", "enabled");
  }

  @Test
  void anEmptyFileIsCalledEmpty() {
    assertThat(refused("").problem()).isEqualTo("The file is empty");
    assertThat(refused(" \n").problem()).isEqualTo("The file is empty");
  }

  @Test
  void deepNestingIsRefusedAndDoesNotExhaustTheStack() {
    assertThat(refused("[".repeat(100_000)).problem()).contains("nested too deeply");
  }

  @Test
  void textThatIsNotUtf8IsRefused() {
    byte[] latin1 =
        "{\"seamwright\": 1, \"piece\": \"Kännchen\"}".getBytes(StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> JobFile.parse(latin1, "a.job"))
        .isInstanceOf(JobFileException.class)
        .hasMessageContaining("UTF-8");
  }

  @Test
  void aMissingFileAndAFolderAreRefused() {
    assertThatThrownBy(() -> JobFile.read(folder.resolve("none.job")))
        .isInstanceOf(JobFileException.class)
        .hasMessageContaining("There is no such file");
    assertThatThrownBy(() -> JobFile.read(folder))
        .isInstanceOf(JobFileException.class)
        .hasMessageContaining("This is a folder");
  }

  @Test
  void theVersionBeforeIsKeptUntilTheNextChange() throws Exception {
    Path file = folder.resolve("a.job");
    Path kept = folder.resolve("a.job.bak");
    Job first = JobSamples.random(1);
    Job second = JobSamples.random(2);

    JobFile.write(first, file);
    assertThat(kept).doesNotExist();
    JobFile.write(second, file);
    JobFile.write(second, file);

    assertThat(JobFile.read(file)).isEqualTo(second);
    assertThat(JobFile.read(kept)).isEqualTo(first);
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactlyInAnyOrder(file, kept);
    }
  }

  @Test
  void aFolderInThePlaceOfTheFileIsRefusedAndLeftAlone() throws Exception {
    Path target = Files.createDirectory(folder.resolve("a.job"));
    Files.writeString(target.resolve("inside"), "kept");

    assertThatThrownBy(() -> JobFile.write(JobSamples.random(1), target))
        .isInstanceOf(JobFileException.class)
        .hasMessageContaining("cannot be written");
    assertThat(target.resolve("inside")).hasContent("kept");
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactly(target);
    }
  }

  @Test
  void aMissingFolderIsNamed() {
    assertThatThrownBy(() -> JobFile.write(JobSamples.random(1), folder.resolve("none/a.job")))
        .isInstanceOf(JobFileException.class)
        .hasMessageContaining("The folder for this file does not exist");
  }
}
