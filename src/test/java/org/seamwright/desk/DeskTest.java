package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.mend.Repair;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Shapes;

/** The desk without a window: everything runs on one thread, in the order it was asked for. */
class DeskTest {
  /** A cube of 40 mm has six sides of 16 cm². */
  private static final double CUBE_MM2 = 6 * 40 * 40;

  @TempDir private Path dir;

  private final Deque<Runnable> todo = new ArrayDeque<>();
  private final Desk desk = new Desk(todo::add, todo::add, todo::add, todo::add);
  private Path mesh;

  @BeforeEach
  void writeACube() throws Exception {
    mesh = dir.resolve("block.stl");
    StlWriter.writeBinary(Shapes.cube(40, 8), mesh, "A test block");
  }

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  private DeskState state() {
    return desk.state().get();
  }

  private void openInMm() {
    desk.open(mesh);
    work();
    desk.chooseScale(new Job.Scale.Unit("mm"));
    work();
  }

  private static Mark below(double z) {
    return new Mark.HalfSpace("foot", Treatment.BARE, Vector3D.of(0, 0, z), Vector3D.of(0, 0, -1));
  }

  @Test
  void asksForTheUnitOfAModelAndThenPlansIt() {
    desk.open(mesh);
    work();
    assertThat(state().document()).isPresent();
    assertThat(state().job()).isEmpty();
    assertThat(NextStep.of(state(), false).goTo()).contains(Place.PIECE);
    List<SizeChoice.Unit> units = SizeChoice.units(state().document().orElseThrow());
    // 40 long: 40 mm, 40 cm and 40 in (1.016 m) fit a bench of 20 mm to 1.5 m; 40 m does not.
    assertThat(units.stream().filter(SizeChoice.Unit::likely).map(SizeChoice.Unit::symbol))
        .containsExactlyInAnyOrder("mm", "cm", "in");
    desk.chooseScale(new Job.Scale.Unit("mm"));
    work();
    assertThat(state().trouble()).isEmpty();
    assertThat(state().isPlanned()).isTrue();
    assertThat(state().plan().orElseThrow().plating().totals().netMm2())
        .isCloseTo(CUBE_MM2, within(1e-6));
    assertThat(state().saving()).isInstanceOf(DeskState.Saving.Nowhere.class);
  }

  @Test
  void takesALengthBetweenTwoPlacesForTheScale() {
    desk.open(mesh);
    work();
    // The diagonal of a side of the cube, 40·√2 in the file, is measured to be 80·√2 mm.
    Job.Scale scale =
        SizeChoice.known(
            state().document().orElseThrow(),
            Vector3D.of(-20, -20, 20),
            Vector3D.of(20, 20, 20),
            80 * Math.sqrt(2));
    desk.chooseScale(scale);
    work();
    assertThat(state().piece().orElseThrow().mmPerUnit()).isCloseTo(2, within(1e-12));
    assertThat(state().marked().orElseThrow().plateMm2()).isCloseTo(4 * CUBE_MM2, within(1e-5));
  }

  @Test
  void savesEachChangeAndUndoesWithoutLimit() throws Exception {
    openInMm();
    Path file = dir.resolve("block.json");
    desk.saveAs(file);
    work();
    assertThat(state().saving()).isInstanceOf(DeskState.Saving.Done.class);
    assertThat(JobFile.read(file).mesh().file()).isEqualTo("block.stl");
    for (int i = 0; i < 30; i++) {
      Mark mark = below(-19 + i);
      desk.change(job -> job.withMarks(MarkEdits.added(job.marks(), mark)));
      work();
      assertThat(JobFile.read(file).marks()).hasSize(i + 1);
    }
    // Bare is the foot's side and the lower 30 mm of four sides: z from -20 to 10.
    assertThat(state().marked().orElseThrow().bareMm2())
        .isCloseTo(1600 + 4 * 40 * 30, within(1e-6));
    for (int i = 0; i < 30; i++) {
      desk.undo();
    }
    work();
    assertThat(state().marked().orElseThrow().bareMm2()).isZero();
    assertThat(JobFile.read(file).marks()).isEmpty();
    assertThat(state().canRedo()).isTrue();
    desk.redo();
    work();
    assertThat(JobFile.read(file).marks()).hasSize(1);
    // z from -20 to -19.
    assertThat(state().marked().orElseThrow().bareMm2()).isCloseTo(1600 + 4 * 40, within(1e-6));
  }

  @Test
  void aMarkThatIsSwitchedOffDoesNothingAndKeepsItsPlace() throws Exception {
    openInMm();
    Path file = dir.resolve("block.json");
    desk.saveAs(file);
    desk.change(job -> job.withMarks(List.of(below(-10), below(0))));
    work();
    double both = state().marked().orElseThrow().bareMm2();
    desk.change(job -> job.withMarks(MarkEdits.switched(job.marks(), 1, false)));
    work();
    assertThat(both).isCloseTo(1600 + 4 * 40 * 20, within(1e-6));
    assertThat(state().marked().orElseThrow().bareMm2())
        .isCloseTo(1600 + 4 * 40 * 10, within(1e-6));
    assertThat(Files.readString(file)).contains("\"off\": true");
    assertThat(JobFile.read(file).marks()).isEqualTo(state().job().orElseThrow().marks());
    List<MarkRows.Row> rows = MarkRows.of(state());
    assertThat(rows).extracting(MarkRows.Row::isOn).containsExactly(true, false);
    desk.change(job -> job.withMarks(MarkEdits.renamed(job.marks(), 1, "waist")));
    desk.change(job -> job.withMarks(MarkEdits.switched(job.marks(), 1, true)));
    work();
    assertThat(state().job().orElseThrow().marks().get(1).name()).isEqualTo("waist");
    assertThat(state().marked().orElseThrow().bareMm2()).isEqualTo(both);
  }

  @Test
  void triesAMarkOutWithoutChangingTheJob() {
    openInMm();
    Job before = state().job().orElseThrow();
    desk.tryOut(Optional.of(below(-10)));
    work();
    assertThat(desk.preview().get().changedMm2()).isCloseTo(1600 + 4 * 40 * 10, within(1e-6));
    assertThat(state().job()).contains(before);
    desk.tryOut(Optional.empty());
    assertThat(desk.preview().get().map()).isEmpty();
  }

  @Test
  void saysWhereAMarkThatCannotBeCarriedOutIsMended() {
    openInMm();
    Mark named = new Mark.Named("", Treatment.BARE, "no such name");
    desk.change(job -> job.withMarks(List.of(named)));
    work();
    assertThat(state().trouble().orElseThrow().at()).isEqualTo(Place.MARKS);
    assertThat(NextStep.of(state(), false).tone()).isEqualTo(NextStep.Tone.WRONG);
    desk.undo();
    work();
    assertThat(state().trouble()).isEmpty();
    assertThat(state().isPlanned()).isTrue();
  }

  @Test
  void aSecondDeskOnTheSameJobIsWarnedAndSavesNothing() throws Exception {
    openInMm();
    Path file = dir.resolve("block.json");
    desk.saveAs(file);
    work();
    Desk second = new Desk(todo::add, todo::add, todo::add, todo::add);
    second.open(file);
    work();
    assertThat(second.state().get().saving()).isInstanceOf(DeskState.Saving.Elsewhere.class);
    byte[] saved = Files.readAllBytes(file);
    second.change(job -> job.withMarks(List.of(below(0))));
    work();
    assertThat(Files.readAllBytes(file)).isEqualTo(saved);
    assertThat(NextStep.of(second.state().get(), false).deed()).contains(NextStep.Deed.SAVE_AS);
    second.close();
    desk.close();
    Desk third = new Desk(todo::add, todo::add, todo::add, todo::add);
    third.open(file);
    work();
    assertThat(third.state().get().saving()).isInstanceOf(DeskState.Saving.Done.class);
    third.close();
  }

  @Test
  void doesNotSaveOverAnotherProgramsChange() throws Exception {
    openInMm();
    Path file = dir.resolve("block.json");
    desk.saveAs(file);
    work();
    Job other = JobFile.read(file).withMarks(List.of(below(-15)));
    JobFile.write(other, file);
    desk.change(job -> job.withMarks(List.of(below(0))));
    work();
    assertThat(state().saving()).isInstanceOf(DeskState.Saving.Changed.class);
    assertThat(JobFile.read(file)).isEqualTo(other);
    desk.saveOver();
    work();
    assertThat(JobFile.read(file).marks()).containsExactly(below(0));
    assertThat(JobFile.read(dir.resolve("block.json.bak"))).isEqualTo(other);
  }

  @Test
  void cleansByStepsThatCanBeTakenBack() {
    openInMm();
    desk.change(
        job -> job.withCleaning(List.of(new Repair.CutBelow(Vector3D.ZERO, Vector3D.of(0, 0, 1)))));
    work();
    // The upper half: one side of 40 × 40 and four of 40 × 20.
    assertThat(state().marked().orElseThrow().plateMm2())
        .isCloseTo(1600 + 4 * 40 * 20, within(1e-6));
    assertThat(FaultList.of(state().piece().orElseThrow()))
        .extracting(FaultList.Fault::key)
        .contains("holes");
    desk.undo();
    work();
    assertThat(state().marked().orElseThrow().plateMm2()).isCloseTo(CUBE_MM2, within(1e-6));
    assertThat(FaultList.of(state().piece().orElseThrow())).isEmpty();
  }

  @Test
  void figuresFollowAtOnceAndThenBecomeThoseOfThePlan() {
    openInMm();
    desk.change(job -> job.withMarks(List.of(below(-10))));
    boolean about = false;
    while (!todo.isEmpty()) {
      todo.poll().run();
      List<RunningFigures.Figure> now = RunningFigures.of(state());
      if (state().isMarked() && !state().isPlanned()) {
        about |= now.get(1).standing() == RunningFigures.Standing.ABOUT;
        assertThat(now.get(0).value().replace('\u00a0', ' ')).isEqualTo("64.0 cm²");
      }
    }
    assertThat(about).as("a figure without laps in between").isTrue();
    assertThat(RunningFigures.of(state()))
        .allSatisfy(f -> assertThat(f.standing()).isEqualTo(RunningFigures.Standing.PLANNED));
  }

  @Test
  void refusesAFileThatIsNoModelWithItsNameAndARemedy() throws Exception {
    Path wrong = dir.resolve("notes.stl");
    Files.writeString(wrong, "no triangles here");
    desk.open(wrong);
    work();
    NextStep step = NextStep.of(state(), false);
    assertThat(step.tone()).isEqualTo(NextStep.Tone.WRONG);
    assertThat(step.text()).contains("notes.stl");
    assertThat(step.more()).isNotBlank();
  }
}
