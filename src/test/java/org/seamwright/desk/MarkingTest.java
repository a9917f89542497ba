package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.job.Job;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.region.Mark;
import org.seamwright.testsupport.Shapes;

/** Tools of marking on a cube of 40 mm about the origin, whose areas are plain to see. */
class MarkingTest {
  private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

  @TempDir private Path dir;

  private final Deque<Runnable> todo = new ArrayDeque<>();
  private final Desk desk = new Desk(todo::add, todo::add, todo::add, todo::add);
  private final Marking marking = new Marking(desk, todo::add, todo::add);

  @BeforeEach
  void open() throws Exception {
    Path mesh = dir.resolve("block.stl");
    StlWriter.writeBinary(Shapes.cube(40, 8), mesh, "A test block");
    desk.open(mesh);
    work();
    desk.chooseScale(new Job.Scale.Unit("mm"));
    work();
  }

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  private static Touch top(double x, double y) {
    return new Touch(Vector3D.of(x, y, 20), UP);
  }

  private double bare() {
    return desk.state().get().marked().orElseThrow().bareMm2();
  }

  private Mark last() {
    var marks = desk.state().get().job().orElseThrow().marks();
    return marks.get(marks.size() - 1);
  }

  @Test
  void aStrokeIsAddedWhenTheButtonGoesUp() {
    marking.take(MarkTool.STROKE);
    marking.set(marking.settings().get().withRadiusMm(4));
    marking.press(top(-8, 0));
    for (int x = -8; x <= 8; x++) {
      marking.pointAt(Optional.of(top(x, 0)));
    }
    assertThat(desk.state().get().job().orElseThrow().marks()).isEmpty();
    marking.release();
    work();
    // A strip 16 mm long and 8 wide with round ends; circles are off by parts in 10 000 at most.
    double expected = 16 * 8 + Math.PI * 16;
    assertThat(bare()).isCloseTo(expected, within(1e-3 * expected));
    assertThat(last()).isInstanceOf(Mark.Near.class);
  }

  @Test
  void theWheelChangesTheRadiusByEqualFactors() {
    double before = marking.settings().get().radiusMm();
    marking.set(marking.settings().get().widened(1));
    assertThat(marking.settings().get().radiusMm() / before).isCloseTo(1.1, within(0.01));
    marking.set(marking.settings().get().widened(-1));
    assertThat(marking.settings().get().radiusMm()).isCloseTo(before, within(0.01 * before));
  }

  @Test
  void pointingShowsWhatAClickWouldMark() {
    marking.take(MarkTool.FILL);
    marking.pointAt(Optional.of(top(3, 4)));
    work();
    assertThat(desk.preview().get().changedMm2()).isCloseTo(1600, within(1e-6));
    assertThat(bare()).isZero();
    marking.click(top(3, 4));
    work();
    assertThat(bare()).isCloseTo(1600, within(1e-6));
    assertThat(last()).isInstanceOf(Mark.CreaseFill.class);
  }

  @Test
  void aPlaneMarksTheSideThatIsChosen() {
    marking.take(MarkTool.PLANE);
    marking.set(marking.settings().get().withSide(ToolSettings.Side.ABOVE));
    marking.click(new Touch(Vector3D.of(20, 0, 10), Vector3D.Unit.PLUS_X));
    work();
    assertThat(bare()).isCloseTo(1600 + 4 * 40 * 10, within(1e-6));
    desk.undo();
    marking.set(marking.settings().get().withSide(ToolSettings.Side.FACE));
    marking.click(new Touch(Vector3D.of(20, 0, 10), Vector3D.Unit.PLUS_X));
    work();
    // Outwards from the side at x = 20: that side alone.
    assertThat(bare()).isCloseTo(1600, within(1e-6));
  }

  @Test
  void aRingLiesBetweenTheHeightsOfTwoClicks() {
    marking.take(MarkTool.RING);
    marking.click(new Touch(Vector3D.of(20, 0, 5), Vector3D.Unit.PLUS_X));
    assertThat(desk.state().get().job().orElseThrow().marks()).isEmpty();
    marking.click(new Touch(Vector3D.of(0, 20, -5), Vector3D.Unit.PLUS_Y));
    work();
    assertThat(bare()).isCloseTo(4 * 40 * 10, within(1e-6));
  }

  @Test
  void aSliceTurnsFromTheFirstClickToTheSecond() {
    marking.take(MarkTool.SECTOR);
    marking.click(new Touch(Vector3D.of(20, 0, 0), Vector3D.Unit.PLUS_X));
    marking.click(new Touch(Vector3D.of(0, 20, 0), Vector3D.Unit.PLUS_Y));
    work();
    // A quarter of the cube about z.
    assertThat(bare()).isCloseTo(6 * 1600 / 4.0, within(1e-6));
    desk.undo();
    marking.click(new Touch(Vector3D.of(0, 20, 0), Vector3D.Unit.PLUS_Y));
    marking.click(new Touch(Vector3D.of(20, 0, 0), Vector3D.Unit.PLUS_X));
    work();
    assertThat(bare()).isCloseTo(6 * 1600 * 3 / 4.0, within(1e-6));
  }

  @Test
  void anOutlineIsClosedByEnterAndTakesTheSideThatIsClicked() {
    marking.take(MarkTool.OUTLINE);
    marking.click(top(-10, -10));
    marking.click(top(10, -10));
    marking.confirm();
    assertThat(marking.closed().get()).as("two corners enclose nothing").isFalse();
    marking.click(top(10, 10));
    marking.click(top(-10, 10));
    marking.confirm();
    assertThat(marking.closed().get()).isTrue();
    marking.click(top(0, 0));
    work();
    assertThat(bare()).isCloseTo(400, within(0.5));
  }

  @Test
  void escapeDropsWhatWasBegunAndThenTheTool() {
    marking.take(MarkTool.OUTLINE);
    marking.click(top(0, 0));
    marking.escape();
    assertThat(marking.places().get()).isEmpty();
    assertThat(marking.tool().get()).isEqualTo(MarkTool.OUTLINE);
    marking.escape();
    assertThat(marking.tool().get()).isEqualTo(MarkTool.NONE);
  }

  @Test
  void aFormIsShownFirstAndAddedByEnter() {
    marking.take(MarkTool.FILL);
    marking.click(top(0, 0));
    work();
    marking.take(MarkTool.INVERT);
    work();
    assertThat(desk.preview().get().changedMm2()).isCloseTo(6 * 1600, within(1e-6));
    marking.confirm();
    work();
    assertThat(bare()).isCloseTo(5 * 1600, within(1e-6));
    assertThat(marking.tool().get()).isEqualTo(MarkTool.NONE);
  }

  @Test
  void eachToolSaysWhatItDoes() {
    for (MarkTool tool : MarkTool.values()) {
      assertThat(tool.title()).isNotBlank();
      assertThat(tool.help()).isNotBlank();
    }
  }
}
