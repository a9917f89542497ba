package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.MarkBodies;
import org.seamwright.job.MarkWords;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Shapes;

class MarkCommandTest {
  @TempDir Path folder;
  private Path jobFile;

  /** A cube from -50 to 50 mm, with a job as the program writes it. */
  @BeforeEach
  void writeJob() {
    Path mesh = MeshBytes.write(folder.resolve("cube.stl"), MeshBytes.stl(Shapes.cube(100, 4)));
    jobFile = folder.resolve("cube.json");
    assertThat(Run.of("new", mesh, "--unit", "mm", "--out", jobFile).code()).isZero();
  }

  private Run mark(String words) {
    List<Object> args = new ArrayList<>(List.of("mark", jobFile));
    args.addAll(MarkPage.split(words));
    return Run.of(args.toArray());
  }

  private Run done(String words) {
    Run run = mark(words);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    assertThat(run.err()).isEmpty();
    return run;
  }

  private List<String> names() throws Exception {
    return JobFile.read(jobFile).marks().stream().map(Mark::name).toList();
  }

  static Stream<MarkWords.Kind> kinds() {
    return MarkWords.kinds().stream();
  }

  @Test
  void aHalfOfTheCubeIsAddedWithItsArea() throws Exception {
    Run run = done("add halfSpace --point 0,0,0 --normal 0,0,-1 --name lower");

    assertThat(JobFile.read(jobFile).marks())
        .containsExactly(
            new Mark.HalfSpace("lower", Treatment.BARE, Vector3D.ZERO, Vector3D.of(0, 0, -1)));
    // The bottom and half of four sides: 100² + 4 · 100 · 50 mm².
    assertThat(run.out())
        .contains("Added           mark 1 \"lower\", halfSpace")
        .containsPattern("1 +halfSpace +bare +300 cm² +300 cm² +lower")
        .contains("To plate        300 cm²", "Stays bare      300 cm²", "cube.json.bak");
  }

  @Test
  void jsonTellsAreasToTheLastDigitAndTheMarksThemselves() throws Exception {
    done("add box --low -60,-60,0 --high 60,60,60 --name top --quick");
    done("add halfSpace --point 0,0,25 --normal 0,0,1 --treatment outOfScope --quick");
    JsonNode tree = new ObjectMapper().readTree(done("list --json").out());

    JsonNode marks = tree.get("marks");
    // Upper half: 100² + 4 · 100 · 50; above z = 25: 100² + 4 · 100 · 25 mm².
    assertThat(marks.get(0).get("coveredMm2").doubleValue()).isCloseTo(30_000, within(1e-6));
    assertThat(marks.get(1).get("changedMm2").doubleValue()).isCloseTo(20_000, within(1e-6));
    assertThat(tree.get("areasMm2").get("plate").doubleValue()).isCloseTo(30_000, within(1e-6));
    assertThat(tree.get("areasMm2").get("bare").doubleValue()).isCloseTo(10_000, within(1e-6));
    String page = Files.readString(Path.of("docs", "plan-json.md"));
    for (JsonNode node : List.of(tree, marks.get(0))) {
      node.fieldNames().forEachRemaining(key -> assertThat(page).contains("`" + key + "`"));
    }
    JsonNode written = new ObjectMapper().readTree(jobFile.toFile()).get("marks");
    assertThat(marks.get(0).get("mark")).isEqualTo(written.get(0));
    assertThat(tree.get("written").booleanValue()).isFalse();
  }

  @Test
  void aBodyIsFoundBesideTheJobAndItsChangeIsTold() throws Exception {
    // A box of 2 by 3 by 4 in, its middle moved to the top of the cube: 2 in by 3 in of it covered.
    MeshBytes.write(folder.resolve("plug.stl"), MeshBytes.stl(Shapes.box(2, 3, 4, 2)));
    done("add inside --file plug.stl --unit in --move 0,0,50 --turn 90 --name plug");
    Mark.Inside mark = (Mark.Inside) JobFile.read(jobFile).marks().get(0);
    assertThat(mark.body().sha256()).hasSize(64);
    JsonNode tree = new ObjectMapper().readTree(done("list --json").out());
    assertThat(tree.get("marks").get(0).get("coveredMm2").doubleValue())
        .isCloseTo(6 * 25.4 * 25.4, within(1e-3));
    assertThat(done("list").out()).doesNotContain("has changed");

    MeshBytes.write(folder.resolve("plug.stl"), MeshBytes.stl(Shapes.box(2, 3, 5, 2)));
    assertThat(done("list").out()).contains("plug.stl of mark 1 \"plug\" has changed");
    MeshBytes.write(folder.resolve("peg.stl"), MeshBytes.stl(Shapes.box(1, 1, 4, 1)));
    assertThat(done("set plug --file peg.stl").out()).doesNotContain("has changed");

    done("set plug --off true");
    Path off = folder.resolve("off.json");
    String unrecorded = Files.readString(jobFile).replaceAll(",\\s*\"sha256\": \"[0-9a-f]*\"", "");
    Files.writeString(off, unrecorded);
    Job recorded = MarkBodies.recordedIn(JobFile.read(off), off, false);
    Mark.Inside unused = (Mark.Inside) ((Mark.Off) recorded.marks().get(0)).mark();
    assertThat(unused.body().sha256()).hasSize(64);
    done("set plug --off false");

    Run unit = mark("add inside --file peg.stl");
    assertThat(unit.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(unit.err()).contains("marks[1].unit", "does not say the unit");
    Run missing = mark("add inside --file nothing.stl --unit mm");
    assertThat(missing.err()).contains("marks[1].file", "nothing.stl of a body does not exist");
    Mesh open = Shapes.without(Shapes.cube(9, 1), 0);
    MeshBytes.write(folder.resolve("open.stl"), MeshBytes.stl(open));
    assertThat(mark("add inside --file open.stl --unit mm").err()).contains("is not closed");
  }

  @Test
  void whatCannotBeReachedGoesOutOfScopeByItself() throws Exception {
    done("add outOfReach --radius \"3 mm\"");
    assertThat(JobFile.read(jobFile).marks())
        .containsExactly(new Mark.OutOfReach("", Treatment.OUT_OF_SCOPE, 3));
    assertThat(done("add outOfReach --help").out()).contains("outOfScope if left out");
  }

  @Test
  void marksAreMovedRenamedSwitchedChangedAndDropped() throws Exception {
    done("add near --path 0,0,50 --radius \"1/2 in\" --name a --quick");
    done("add near --path \"0,0,50 10,0,50\" --radius \"4 mm\" --name b --quick");
    done("add part --point 0,0,50 --at 1 --name c --quick");
    assertThat(names()).containsExactly("c", "a", "b");

    done("move c 3");
    assertThat(names()).containsExactly("a", "b", "c");
    done("rename 2 \"maker's mark\"");
    done("treat \"maker's mark\" outOfScope");
    done("set a --radius \"20 mm\" --path 1,2,50");
    done("ground bare");
    Job job = JobFile.read(jobFile);
    assertThat(job.marks().subList(0, 2))
        .containsExactly(
            new Mark.Near("a", Treatment.BARE, List.of(Vector3D.of(1, 2, 50)), 20),
            new Mark.Near(
                "maker's mark",
                Treatment.OUT_OF_SCOPE,
                List.of(Vector3D.of(0, 0, 50), Vector3D.of(10, 0, 50)),
                4));
    assertThat(job.ground()).isEqualTo(Treatment.BARE);
    done("drop 1 c");
    assertThat(names()).containsExactly("maker's mark");
  }

  @Test
  void theVersionBeforeIsKeptAndADryRunWritesNothing() throws Exception {
    String before = Files.readString(jobFile);
    Run dry = done("add part --point 0,0,50 --dry-run");
    assertThat(dry.out())
        .contains("Would add       mark 1, part", "To plate        0 mm²")
        .contains("Now to plate    600 cm²", "Written         nothing");
    assertThat(jobFile).hasContent(before);
    assertThat(folder.resolve("cube.json.bak")).doesNotExist();

    done("add part --point 0,0,50 --quick");
    assertThat(folder.resolve("cube.json.bak")).hasContent(before);
    Run same = done("rename 1 \"\"");
    assertThat(same.out()).contains("nothing: the marks are so already");
    assertThat(folder.resolve("cube.json.bak")).hasContent(before);
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void everyKindsExampleParsesAndHelpShowsIt(MarkWords.Kind kind) throws Exception {
    done("add " + kind.word() + " " + kind.example() + " --quick");
    Job job = JobFile.read(jobFile);
    assertThat(MarkWords.kindOf(job.marks().get(0))).isEqualTo(kind.word());

    Run help = mark("add " + kind.word() + " --help");
    assertThat(help.code()).isZero();
    assertThat(help.out())
        .startsWith("Usage: seamwright mark JOB add " + kind.word())
        .contains(kind.does());
    assertThat(help.out().replaceAll("\\s+", " ")).contains(kind.example());
    kind.keys().keySet().forEach(key -> assertThat(help.out()).contains("--" + key));
    assertThat(mark("add --help").out().replaceAll("\\s+", " ")).contains(kind.word(), kind.does());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void addingThenDroppingGivesTheSameBytes(long seed) throws Exception {
    Random random = new Random(seed);
    List<MarkWords.Kind> kinds = MarkWords.kinds();
    for (int i = 0; i < 4; i++) {
      MarkWords.Kind kind = kinds.get(random.nextInt(kinds.size()));
      done("add " + kind.word() + " " + kind.example() + " --quick");
    }
    byte[] before = Files.readAllBytes(jobFile);
    MarkWords.Kind kind = kinds.get(random.nextInt(kinds.size()));
    int at = 1 + random.nextInt(5);
    done("add " + kind.word() + " " + kind.example() + " --quick --at " + at);
    assertThat(Files.readAllBytes(jobFile)).as("seed %d", seed).isNotEqualTo(before);
    done("drop --quick " + at);
    assertThat(Files.readAllBytes(jobFile)).as("seed %d", seed).isEqualTo(before);

    int to = 1 + random.nextInt(4);
    done("move --quick 2 " + to);
    done("move --quick " + to + " 2");
    assertThat(Files.readAllBytes(jobFile)).as("seed %d", seed).isEqualTo(before);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          add                                       | Name a kind of mark: halfSpace, near
          add haldSpace                             | Did you mean: add halfSpace
          add near --radius 4mm                     | --path is missing.
          add near --path 0,0,50                    | --radius is missing.
          add near --path 0,0,50 --radius 4         | --radius: "4": the unit is missing
          add near --path 0,0 --radius 4mm          | --path[0]: Expected three numbers (x, y, z), found 2
          add near --path 0,0,50 --radius 4mm --radios 3 | Possible solutions: --radius
          add part --point 0,0,z                    | --point[2]:
          add part --point 0,0,1..2                 | --point[2]: Expected a number, found "1..2"
          add part --point 0,0,[                    | --point[2]: Expected a number
          add part --point [0,0                     | --point: This is not valid JSON
          add part --point 0,0,0 --treatment plated | Did you mean "plate"?
          add part --point 0,0,0 --at 0             | "0" is no position
          add part --point 0,0,0 --at 9             | has positions 1 to 5.
          add creaseFill --point 0,0,50 --angle 181 | at most 180
          add box --low 0,0,0 --high 1,1,0          | Box is empty
          add turn --point 0,0,0 --axis 0,0,1 --count 1.5 | whole number
          drop                                      | Missing required parameter: 'MARK'
          drop zzz                                  | is called "zzz". Known: "a", "twice".
          drop 9                                    | "9" is no position
          drop twice                                | numbers 2, 3. Name it by its number.
          treat a gold                              | Known here: plate, bare, outOfScope.
          treat 4 bare                              | There is no key "treatment" here
          move a 0                                  | "0" is no position
          set a                                     | Name a key to change. A mark of the kind part has --name, --treatment, --off, --point.
          set a --radius 4mm                        | There is no key "radius" here
          """)
  void wrongUsageIsCode2SaysWhatToTryAndWritesNothing(String words, String says) throws Exception {
    done("add part --point 0,0,50 --name a --quick");
    done("add part --point 0,0,50 --name twice --quick");
    done("add part --point 0,0,50 --name twice --quick");
    done("add invert --quick");
    byte[] before = Files.readAllBytes(jobFile);

    Run run = mark(words);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).startsWith("seamwright: ").contains(says).contains("--help.");
    assertThat(run.out()).isEmpty();
    assertThat(Files.readAllBytes(jobFile)).isEqualTo(before);
  }

  @Test
  void aMarkThatCannotBeCarriedOutIsRefusedInItsPlaceAndNotWritten() throws Exception {
    byte[] before = Files.readAllBytes(jobFile);
    Run run = mark("add named --label lid");

    assertThat(run.code()).as(run.out()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains(jobFile.toString(), "marks[0]");
    assertThat(Files.readAllBytes(jobFile)).isEqualTo(before);
    assertThat(Run.of("mark", folder.resolve("none.json")).code()).isEqualTo(ExitCode.REFUSED);
    assertThat(Run.of("mark").err()).contains("Missing required parameter: 'JOB'");
    assertThat(Run.of("mark", "add", "near", "--help").code()).isZero();
    Files.delete(folder.resolve("cube.stl"));
    assertThat(mark("list").err()).contains("mesh.file");
    assertThat(mark("list --quick").code()).isZero();
  }

  @Test
  void jsonAsInTheJobFileIsTakenToo() throws Exception {
    String typed = "[[0, 0, 50], [\"1 in\", 0, 50]]";
    Run json =
        Run.of("mark", jobFile, "add", "near", "--path", typed, "--radius", "4 mm", "--quick");
    done("add near --path \"0,0,50; 1 in,0,50\" --radius 4mm --quick");

    List<Mark> marks = JobFile.read(jobFile).marks();
    assertThat(json.code()).as(json.err()).isZero();
    assertThat(marks.get(0)).isEqualTo(marks.get(1));
    assertThat(((Mark.Near) marks.get(1)).path())
        .containsExactly(Vector3D.of(0, 0, 50), Vector3D.of(25.4, 0, 50));
  }
}
