package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.mesh.FaceTree;
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

  private SurfaceFoot foot() {
    var mesh = desk.state().get().piece().orElseThrow().mesh();
    return new SurfaceFoot(mesh, FaceTree.of(mesh));
  }

  private int count() {
    return desk.state().get().job().orElseThrow().marks().size();
  }

  @Test
  void aBoxGoesFromCornerToCornerAndAsDeepAsIsSet() {
    marking.take(MarkTool.BOX);
    marking.set(marking.settings().get().withByMm(3));
    marking.click(top(-10, -5));
    marking.pointAt(Optional.of(top(6, 5)));
    work();
    // 16 × 10 of the top; 3 mm deep it reaches no other side.
    assertThat(desk.preview().get().changedMm2()).isCloseTo(160, within(1e-6));
    marking.click(top(6, 5));
    work();
    assertThat(bare()).isCloseTo(160, within(1e-6));
    assertThat(last())
        .isEqualTo(
            new Mark.InBox(
                "",
                org.seamwright.region.Treatment.BARE,
                Vector3D.of(-10, -5, 17),
                Vector3D.of(6, 5, 23)));
  }

  @Test
  void paintsInAMirrorAndRoundTheAxisAsOneStep() {
    marking.take(MarkTool.STROKE);
    marking.set(marking.settings().get().withRadiusMm(3).withCount(4));
    marking.setCopies(MarkCopies.MIRROR_X);
    marking.press(top(-10, 2));
    marking.release();
    work();
    double disc = Math.PI * 9;
    assertThat(count()).isEqualTo(2);
    assertThat(bare()).isCloseTo(2 * disc, within(2e-3 * disc));
    desk.undo();
    work();
    assertThat(count()).isZero();
    marking.setCopies(MarkCopies.TURN);
    marking.press(top(-10, 2));
    marking.release();
    work();
    assertThat(count()).isEqualTo(4);
    assertThat(bare()).isCloseTo(4 * disc, within(4e-3 * disc));
    assertThat(((Mark.Near) last()).path().get(0))
        .matches(
            p ->
                p.distance(Vector3D.of(-2, -10, 20)) < 1e-2
                    || p.distance(Vector3D.of(2, 10, 20)) < 1e-2);
    desk.undo();
    work();
    // A stroke on the mirror has no copy of its own.
    marking.setCopies(MarkCopies.MIRROR_X);
    marking.press(top(0, 2));
    marking.release();
    work();
    assertThat(count()).isEqualTo(1);
  }

  @Test
  void laysAPlaceNearASharpEdgeOnIt() {
    marking.setSnaps(true);
    // A hundredth of the diagonal of 69 mm is 0.69 mm.
    assertThat(marking.snapped(top(19.5, 3)).point()).isEqualTo(Vector3D.of(20, 3, 20));
    assertThat(marking.snapped(top(18, 3)).point()).isEqualTo(Vector3D.of(18, 3, 20));
    marking.setSnaps(false);
    assertThat(marking.snapped(top(19.5, 3)).point()).isEqualTo(Vector3D.of(19.5, 3, 20));
  }

  @Test
  void aMarkIsChangedAfterTheFactAtItsPlaceInTheOrder() throws Exception {
    marking.editing().over(foot());
    marking.take(MarkTool.STROKE);
    marking.set(marking.settings().get().withRadiusMm(3));
    marking.press(top(-8, 0));
    marking.release();
    marking.press(top(8, 0));
    marking.release();
    work();
    double disc = Math.PI * 9;
    marking.edit(0);
    assertThat(marking.editing().handles()).hasSize(1);
    marking.pointAt(Optional.of(top(-8.2, 0)));
    assertThat(marking.editing().grabs()).isTrue();
    marking.press(top(-8.2, 0));
    marking.pointAt(Optional.of(top(8, 0)));
    work();
    // On top of the second one it covers what that covers; nothing is changed in the job yet.
    assertThat(desk.preview().get().changedMm2()).isCloseTo(disc, within(2e-3 * disc));
    assertThat(bare()).isCloseTo(2 * disc, within(2e-3 * disc));
    marking.release();
    work();
    assertThat(bare()).isCloseTo(disc, within(2e-3 * disc));
    assertThat(count()).isEqualTo(2);
    marking.editing().type("radius", "6 mm");
    work();
    assertThat(bare()).isCloseTo(Math.PI * 36, within(2e-3 * Math.PI * 36));
    assertThatThrownBy(() -> marking.editing().type("radius", "-1 mm"))
        .isInstanceOf(InputException.class);
    desk.undo();
    desk.undo();
    work();
    assertThat(bare()).isCloseTo(2 * disc, within(2e-3 * disc));
    assertThat(marking.editing().mark().get().orElseThrow())
        .isEqualTo(desk.state().get().job().orElseThrow().marks().get(0));
    // The same by keys.
    assertThat(marking.editing().next(1)).isTrue();
    assertThat(marking.editing().nudge(Vector3D.of(0, 2, 0))).isTrue();
    marking.confirm();
    work();
    assertThat(((Mark.Near) desk.state().get().job().orElseThrow().marks().get(0)).path().get(0))
        .isEqualTo(Vector3D.of(-8, 2, 20));
    marking.escape();
    assertThat(marking.editing().isActive()).isFalse();
    assertThat(desk.preview().get().map()).isEmpty();
  }

  @Test
  void handlesOfEachKindMoveWhatTheyStandFor() {
    SurfaceFoot foot = foot();
    Optional<PieceAxis> axis = marking.axis();
    var bare = org.seamwright.region.Treatment.BARE;
    Mark ring = new Mark.Ring("", bare, Vector3D.ZERO, UP, -5, 5, 0, Double.POSITIVE_INFINITY);
    assertThat(MarkHandles.of(ring, axis, foot))
        .extracting(Vector3D::getZ)
        .allSatisfy(z -> assertThat(Math.abs(z)).isCloseTo(5, within(1e-9)));
    Mark.Ring taller =
        (Mark.Ring) MarkHandles.moved(ring, 1, Vector3D.of(20, 0, 8), axis).orElseThrow();
    assertThat(taller.toMm()).isEqualTo(8);
    // A ring whose upper limit is drawn below its lower one is none.
    assertThat(MarkHandles.moved(ring, 1, Vector3D.of(20, 0, -8), axis)).isEmpty();
    Mark sector = new Mark.Sector("", bare, Vector3D.ZERO, UP, Vector3D.Unit.PLUS_X, 0, 45);
    Mark.Sector wider =
        (Mark.Sector) MarkHandles.moved(sector, 1, Vector3D.of(0, 20, 3), axis).orElseThrow();
    assertThat(wider.toDegrees()).isCloseTo(90, within(1e-9));
    Mark plane = new Mark.HalfSpace("", bare, Vector3D.of(0, 0, 20), UP);
    assertThat(MarkHandles.moved(plane, 0, Vector3D.of(20, 0, 4), axis).orElseThrow())
        .isEqualTo(new Mark.HalfSpace("", bare, Vector3D.of(20, 0, 4), UP));
  }
}
