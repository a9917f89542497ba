package org.seamwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.section.SectionEdit;
import org.seamwright.testsupport.Shapes;

/** The command on a sheet of 100 by 60 mm in four strips. */
class SectionCommandTest {
  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void makeJob() throws Exception {
    Path mesh =
        MeshBytes.write(folder.resolve("sheet.stl"), MeshBytes.stl(Shapes.plane(100, 60, 20, 12)));
    job = folder.resolve("sheet.json");
    done("new", mesh, "--unit", "mm", "--out", job);
    String text = Files.readString(job);
    Files.writeString(
        job, text.replaceFirst("\"sections\": \\{", "\"sections\": {\"limit\": \"20 cm2\","));
    done(section("way", "strips", "--direction", "1,0,0", "--count", "4", "--quick"));
  }

  private Object[] section(Object... words) {
    List<Object> all = new ArrayList<>(List.of("section", job));
    all.addAll(List.of(words));
    return all.toArray();
  }

  private static String done(Object... words) {
    Run run = Run.of(words);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    return run.out();
  }

  private List<SectionEdit> edits() throws Exception {
    Job read = JobFile.read(job);
    return read.sections().choices().edits();
  }

  @Test
  void listsSectionsAndWhatIsAsked() {
    assertThat(done(section())).contains("No.  Net").contains("15.0 cm²").contains("Way", "strips");
    assertThat(done(section("list", "--json")))
        .contains("\"number\": 4")
        .contains("\"way\": {\"kind\": \"strips\"")
        .contains("\"limitMm2\": 2000");
  }

  @Test
  void editsAreAddedAndDropped() throws Exception {
    done(section("split", "2", "--parts", "3"));
    done(section("rename", "1", "edge"));
    assertThat(edits()).hasSize(2);
    assertThat(done(section("list"))).contains("edge").contains("Edit 2").contains("5.0");

    assertThat(done(section("undo"))).contains("rename");
    assertThat(edits()).hasSize(1);
    assertThat(done(section("renumber", "1", "2", "--dry-run"))).contains("Would");
    assertThat(edits()).hasSize(1);
    assertThat(Files.exists(folder.resolve("sheet.json.bak"))).isTrue();
  }

  @Test
  void sectionsAreNamedByNumberAndKeptAsPoints() throws Exception {
    done(section("move", "[-37,0,0]", "[-12,0,0]", "--path", "-20,-30,0; -20,30,0"));
    done(section("pin", "--path", "0,-30,0; 0,30,0"));
    done(section("split", "1", "--parts", "2"));
    SectionEdit.SplitEvenly split = (SectionEdit.SplitEvenly) edits().get(2);
    assertThat(Math.abs(split.at().getX())).isLessThan(50);
  }

  @Test
  void aPinnedSeamTellsItsCourse() throws Exception {
    Run run = Run.of(section("pin", "1", "2"));
    if (run.code() == ExitCode.USAGE) {
      // Not neighbours, by the order of work: then 1 and 3 are.
      run = Run.of(section("pin", "1", "3"));
    }
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
    SectionEdit.Pin pin = (SectionEdit.Pin) edits().get(0);
    assertThat(pin.path()).hasSize(2);
    assertThat(pin.path().get(0).distance(pin.path().get(1))).isCloseTo(60, within(1e-3));
  }

  @Test
  void aLimitThatAnEditBreaksIsCode4() throws Exception {
    Run run = Run.of(section("merge", "[-37,0,0]", "[-12,0,0]"));

    assertThat(run.code()).isEqualTo(ExitCode.LIMIT_BROKEN);
    assertThat(run.err()).contains("is over the limit");
    assertThat(edits()).hasSize(1);
  }

  @Test
  void anEditThatCannotBeCarriedOutIsRefusedAndNotWritten() throws Exception {
    Run run = Run.of(section("merge", "[-37,0,0]", "[37,0,0]"));

    assertThat(run.code()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("section edit 1 (merge)").contains("do not meet");
    assertThat(edits()).isEmpty();
  }

  @Test
  void waysAndSymmetryAreSwitched() throws Exception {
    done(section("symmetry", "--axis", "0,0,1", "--count", "2", "--quick"));
    assertThat(JobFile.read(job).sections().choices().way()).isEmpty();
    assertThat(done(section("symmetry", "--none"))).contains("automatic");
    assertThat(JobFile.read(job).sections().choices().symmetry()).isEmpty();
    done(section("way", "naturalFaces", "--angle", "40", "--quick"));
    assertThat(done(section("way", "automatic", "--quick"))).contains("automatic");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          split 1                          | Give either --path or --parts.
          split 9 --parts 2                | There is no section 9: they are numbered from 1 to 4.
          split 1 --parts 1                | --parts
          split 1,2 --parts 2 --quick      | --point
          way strips                       | --direction is missing
          way ringz                        | ringz
          way                              | Name a way
          pin 1                            | Give either two sections or --path.
          undo                             | There is no edit to drop.
          symmetry --count 1               | --count
          """)
  void wrongUsageIsCode2(String words, String says) {
    Run run = Run.of(section((Object[]) words.split(" ")));

    assertThat(run.code()).as(run.out()).isEqualTo(ExitCode.USAGE);
    assertThat(run.err()).contains(says);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "list",
        "way",
        "symmetry",
        "merge",
        "split",
        "move",
        "pin",
        "rename",
        "renumber",
        "undo"
      })
  void everySubcommandHelpsWithAnExample(String command) {
    assertThat(done("section", command, "--help"))
        .contains("Usage: seamwright section JOB " + command)
        .contains("Example")
        .contains("  seamwright section rim.json " + command);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"automatic", "rings", "sectors", "ringsAndSectors", "strips", "naturalFaces"})
  void everyWayHelpsWithAnExample(String way) {
    assertThat(done("section", "way", way, "--help"))
        .contains("Usage: seamwright section JOB way " + way)
        .contains("  seamwright section rim.json way " + way);
  }
}
