package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import org.seamwright.mesh.FaceTree;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.section.Section;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionWay;
import org.seamwright.testsupport.Shapes;

/**
 * Sections by hand on the top of a cube of 40 mm about the origin, 1600 mm², in two strips that
 * meet at x = 0: all areas are those of rectangles.
 */
class SectionHandsTest {
  private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

  /**
   * A seam of 40 mm is told by 49 places; from the last one on plated ground its end runs on to the
   * edge by the shortest way, at no more than 45° to the seam: a triangle of 40/48 mm at each end.
   */
  private static final double ROUNDING_MM2 = 40.0 / 48 * 40.0 / 48;

  @TempDir private Path dir;

  private final Deque<Runnable> todo = new ArrayDeque<>();
  private final Desk desk = new Desk(todo::add, todo::add, todo::add, todo::add);
  private final SectionHands hands = new SectionHands(desk, todo::add, todo::add);
  private Path file;

  @BeforeEach
  void open() throws Exception {
    Path mesh = dir.resolve("block.stl");
    StlWriter.writeBinary(Shapes.cube(40, 8), mesh, "A test block");
    desk.open(mesh);
    work();
    desk.chooseScale(new Job.Scale.Unit("mm"));
    file = dir.resolve("block.json");
    desk.saveAs(file);
    desk.change(
        job ->
            job.withGround(Treatment.BARE)
                .withMarks(List.of(new Mark.Facing("top", Treatment.PLATE, UP, 5)))
                .withSections(
                    new Job.SectionRules(new Job.Limit.Area(5000), 1, 2)
                        .withChoices(
                            SectionChoices.of(new SectionWay.Strips(Vector3D.Unit.PLUS_X, 2)))));
    work();
    var meshMm = desk.state().get().piece().orElseThrow().mesh();
    hands.over(new SurfaceFoot(meshMm, FaceTree.of(meshMm)));
  }

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  private static Optional<Touch> top(double x, double y) {
    return Optional.of(new Touch(Vector3D.of(x, y, 20), UP));
  }

  private List<Double> nets() {
    assertThat(desk.state().get().trouble()).isEmpty();
    return desk.state().get().plan().orElseThrow().sections().sections().stream()
        .map(Section::netMm2)
        .sorted()
        .toList();
  }

  private List<SectionEdit> edits() {
    return desk.state().get().job().orElseThrow().sections().choices().edits();
  }

  private int sectionAt(double x) {
    // The strip towards smaller x holds the place (-10, 0, 20).
    var plan = desk.state().get().plan().orElseThrow().sections();
    var at = FaceTree.of(plan.mesh()).nearest(x, 1, 20).orElseThrow();
    return plan.sectionOf()[at.face()];
  }

  private void take(SectionTool tool) {
    hands.take(tool);
    work();
  }

  private void assertNets(double... expected) {
    List<Double> nets = nets();
    assertThat(nets).hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(nets.get(i)).isCloseTo(expected[i], within(ROUNDING_MM2));
    }
  }

  @Test
  void aDraggedSeamMovesAndTellsItsAreasOnTheWay() throws Exception {
    assertNets(800, 800);
    take(SectionTool.SEAM);
    hands.setShare(1);
    hands.pointAt(top(0.3, 2), 1);
    assertThat(hands.seam().get()).isPresent();
    assertThat(hands.seam().get().orElseThrow().lengthMm()).isCloseTo(40, within(1e-9));
    assertThat(hands.grabs()).isTrue();
    hands.press(top(0, 2).orElseThrow(), 1);
    hands.pointAt(top(3, 2), 1);
    work();
    assertThat(hands.draft().get().orElseThrow().refusal()).isEmpty();
    List<Section> live = hands.draft().get().orElseThrow().shown().orElseThrow().sections();
    // 3 mm of 40 have gone from the one to the other.
    assertThat(live.stream().mapToDouble(Section::netMm2).max().orElseThrow())
        .isCloseTo(23 * 40, within(ROUNDING_MM2));
    assertThat(edits()).isEmpty();
    hands.pointAt(top(5, 2), 1);
    hands.release();
    work();
    assertNets(15 * 40, 25 * 40);
    assertThat(edits()).singleElement().isInstanceOf(SectionEdit.MoveSeam.class);
    assertThat(JobFile.read(file).sections().choices().edits()).isEqualTo(edits());
    assertThat(hands.draft().get()).isEmpty();
    desk.undo();
    work();
    assertNets(800, 800);
    desk.redo();
    work();
    assertNets(600, 1000);
  }

  @Test
  void aStretchOfASeamBulgesAndTheRestStays() {
    take(SectionTool.SEAM);
    hands.setShare(0.5);
    hands.pointAt(top(0, 0), 1);
    hands.press(top(0, 0).orElseThrow(), 1);
    hands.pointAt(top(4, 0), 1);
    hands.release();
    work();
    // The integral of 4·(1 + cos(πs/10))/2 over 10 mm to both sides, told by chords 40/48 mm long:
    // the trapezoid rule is exact for a whole period of a cosine.
    assertNets(800 - 40, 800 + 40);
  }

  @Test
  void movesASeamByKeysAlone() {
    take(SectionTool.SEAM);
    hands.setShare(1);
    hands.nextSeam(1, 0);
    assertThat(hands.nudge(Vector3D.of(-1, 0, 0))).isTrue();
    assertThat(hands.nudge(Vector3D.of(-1, 0, 0))).isTrue();
    work();
    assertThat(edits()).isEmpty();
    hands.confirm();
    work();
    assertNets(18 * 40, 22 * 40);
    assertThat(hands.escape()).isTrue();
    assertThat(hands.tool().get()).isEqualTo(SectionTool.LOOK);
  }

  @Test
  void escapeLeavesTheSeamWhereItWas() {
    take(SectionTool.SEAM);
    hands.nextSeam(1, 0);
    hands.nudge(Vector3D.of(2, 0, 0));
    hands.escape();
    work();
    assertThat(hands.draft().get()).isEmpty();
    assertThat(hands.line().get()).isEmpty();
    assertThat(edits()).isEmpty();
  }

  @Test
  void splitsEvenlyAndShowsItFirst() {
    take(SectionTool.SPLIT);
    hands.setParts(4);
    hands.pointAt(top(-10, 1), sectionAt(-10));
    work();
    assertThat(hands.draft().get().orElseThrow().shown().orElseThrow().sections()).hasSize(5);
    assertThat(edits()).isEmpty();
    hands.click(top(-10, 1).orElseThrow(), sectionAt(-10));
    work();
    assertNets(200, 200, 200, 200, 800);
  }

  @Test
  void splitsAlongALineThatIsDrawn() {
    take(SectionTool.LINE);
    int section = sectionAt(-10);
    hands.press(top(-19.9, 10).orElseThrow(), section);
    for (double x = -19; x <= -0.05; x += 0.5) {
      hands.pointAt(top(x, 10), section);
    }
    hands.release();
    work();
    // The line y = 10 leaves 10 mm of 40 on its one side; its ends run on to the nearest edges.
    assertNets(20 * 10, 20 * 30, 800);
  }

  @Test
  void refusesALineThatPartsNothingAndKeepsTheJob() {
    take(SectionTool.LINE);
    int section = sectionAt(-10);
    hands.click(top(-12, 5).orElseThrow(), section);
    hands.click(top(-12, 5.1).orElseThrow(), section);
    hands.confirm();
    work();
    assertThat(edits()).isEmpty();
    assertNets(800, 800);
  }

  @Test
  void mergesAcrossASeamAndPinsOne() {
    take(SectionTool.PIN);
    hands.click(top(0, 0).orElseThrow(), 1);
    work();
    assertThat(hands.draft().get().map(SectionDraft::refusal).orElse("")).isEmpty();
    assertThat(edits()).singleElement().isInstanceOf(SectionEdit.Pin.class);
    assertNets(800, 800);
    take(SectionTool.MERGE);
    hands.pointAt(top(0, 0), 1);
    work();
    assertThat(hands.draft().get().orElseThrow().shown().orElseThrow().sections()).hasSize(1);
    hands.click(top(0, 0).orElseThrow(), 1);
    work();
    assertNets(1600);
    hands.dropEdits();
    work();
    assertNets(800, 800);
  }

  @Test
  void namesAndReordersSections() throws Exception {
    int left = sectionAt(-10);
    hands.rename(left, "handle side");
    work();
    assertThat(desk.state().get().plan().orElseThrow().sections().sections().get(left - 1).name())
        .isEqualTo("handle side");
    hands.renumber(left, 3 - left);
    work();
    assertThat(sectionAt(-10)).isEqualTo(3 - left);
    assertThat(JobFile.read(file).sections().choices().edits()).hasSize(2);
  }
}
