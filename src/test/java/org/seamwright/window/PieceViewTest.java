package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.geometry.VerticalDirection;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TableView;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Progress;
import org.seamwright.desk.Desk;
import org.seamwright.desk.SectionHands;
import org.seamwright.job.PlannedJob;
import org.seamwright.region.Treatment;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** The piece in the window, on a display, driven by the mouse and the keyboard. */
@Tag("window")
class PieceViewTest {
  private static final PlannedJob RING = PlannedFixture.ring(192, 48);
  private static final long PATIENCE_SECONDS = 60;

  private static final OpenedPiece PIECE = OpenedPiece.of(RING, Progress.NONE);

  private final FxRobot robot = new FxRobot();
  private PieceView view;

  @BeforeEach
  void needADisplay() throws Exception {
    Displays.required();
    FxToolkit.registerPrimaryStage();
  }

  @AfterEach
  void stop() throws Exception {
    if (view == null) {
      return; // skipped
    }
    FxToolkit.cleanupStages();
  }

  @Test
  void namesTheSectionUnderThePointer() throws Exception {
    open();
    assertThat(Platform.isSupported(ConditionalFeature.SCENE3D)).isTrue();
    shoot("sections");
    Map<String, double[]> places = places(view);
    assertThat(places.keySet())
        .as("what is seen from the first view")
        .contains("Nothing pointed at", "bare", "out of scope")
        .hasSizeGreaterThan(9);
    assertColours(view);
    for (Map.Entry<String, double[]> place : places.entrySet()) {
      moveTo(view, place.getValue()[0], place.getValue()[1]);
      String key = place.getKey();
      if (key.startsWith("Section")) {
        waitFor(() -> text("#section-title").equals(key));
      } else {
        waitFor(() -> text("#section-title").equals("Nothing pointed at"));
        String sentence = text("#place");
        assertThat(sentence.contains("stays bare"))
            .as(key + ": " + sentence)
            .isEqualTo(key.equals("bare"));
        assertThat(sentence.contains("not part"))
            .as(key + ": " + sentence)
            .isEqualTo(key.equals("out of scope"));
      }
    }
    double[] lit = places.get("Section 11 of 12");
    moveTo(view, lit[0], lit[1]);
    waitFor(() -> text("#section-title").equals("Section 11 of 12"));
    shoot("pointed");
  }

  @Test
  void turnsByDragAndKeysAndZoomsByWheel() throws Exception {
    open();
    OrbitCamera.Pose start = pose();
    WritableImage before = picture(view);
    Point2D middle = robot.point(view).query();
    robot.drag(middle.add(-120, 0), MouseButton.PRIMARY).dropTo(middle.add(60, -50));
    waitFor(() -> pose().azimuthDegrees() < start.azimuthDegrees() - 30);
    assertThat(pose().elevationDegrees()).isLessThan(start.elevationDegrees() - 5);
    assertThat(pose().distance()).isEqualTo(start.distance());
    assertThat(differingPixels(before, picture(view))).isGreaterThan(10_000);
    shoot("turned");

    robot.push(KeyCode.DIGIT5);
    waitFor(() -> Math.abs(pose().elevationDegrees() - 90) < 1e-6);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("top");
    double above = pose().distance();
    robot.moveTo(view).scroll(4, VerticalDirection.UP);
    waitFor(() -> pose().distance() < 0.95 * above);
    robot.push(KeyCode.F);
    waitFor(() -> Math.abs(pose().distance() - above) < 1e-6 * above);
    robot.push(KeyCode.LEFT);
    waitFor(() -> Math.abs(pose().azimuthDegrees() + 10) < 1e-6);
  }

  @Test
  void pansByShiftDrag() throws Exception {
    open();
    Point2D middle = robot.point(view).query();
    OrbitCamera.Pose start = pose();
    robot.press(KeyCode.SHIFT);
    robot.drag(middle, MouseButton.PRIMARY).dropTo(middle.add(100, 40));
    robot.release(KeyCode.SHIFT);
    waitFor(() -> !pose().equals(start));
    assertThat(pose().azimuthDegrees()).isEqualTo(start.azimuthDegrees());
    OrbitCamera.OnScreen now = call(() -> view.camera().project(start.x(), start.y(), start.z()));
    assertThat(now.x() - view.getWidth() / 2).isBetween(80.0, 120.0);
    assertThat(now.y() - view.getHeight() / 2).isBetween(25.0, 55.0);
  }

  @Test
  void facesTheSectionChosenInTheListAndShowsGold() throws Exception {
    open();
    // What is pointed at goes before what is chosen, and the pointer is where a test before left
    // it.
    moveAway();
    TableView<?> table = robot.lookup("#sections").query();
    call(
        () -> {
          table.getSelectionModel().select(6);
          return true;
        });
    waitFor(() -> text("#section-title").equals("Section 7 of 12"));
    // Section 7 is the outer half of the sector from 135 to 180 degrees.
    waitFor(() -> Math.abs(Math.IEEEremainder(pose().azimuthDegrees() - 247.5, 360)) < 12);
    moveAway();
    shoot("chosen");
    robot.clickOn("#look-gold");
    WaitForAsyncUtils.waitForFxEvents();
    moveAway();
    shoot("gold-chosen");
    robot.clickOn("#piece", MouseButton.PRIMARY);
    robot.push(KeyCode.ESCAPE);
    moveAway();
    waitFor(() -> text("#section-title").equals("Nothing pointed at"));
    shoot("gold");
  }

  private void open() throws Exception {
    FxToolkit.setupStage(
        (Stage stage) -> {
          PiecePresenter presenter = new PiecePresenter(PIECE);
          view = new PieceView(PIECE.model(), presenter);
          int[] all = IntStream.range(0, PIECE.model().chunks()).toArray();
          view.show(
              new Picture(
                  PIECE.model(),
                  Picture.Subject.PLAN,
                  PIECE.surface(),
                  Optional.of(PIECE),
                  all,
                  IntStream.of(all)
                      .mapToObj(c -> MeshChunk.of(PIECE.model(), PIECE.surface(), c))
                      .toList()));
          SectionsView sections =
              new SectionsView(
                  presenter,
                  new SectionHands(
                      new Desk(Runnable::run, Runnable::run, Runnable::run, Runnable::run),
                      Runnable::run,
                      Runnable::run),
                  id -> view.face(presenter.facing(id)));
          VBox side = new VBox(PieceTools.looks(presenter), sections);
          side.setPrefWidth(380);
          BorderPane root = new BorderPane(view);
          root.setRight(side);
          root.addEventHandler(KeyEvent.KEY_PRESSED, view::onKey);
          stage.setScene(new Scene(root, 1280, 820));
          stage.setX(0);
          stage.setY(0);
          stage.show();
          view.requestFocus();
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  private OrbitCamera.Pose pose() throws Exception {
    return call(() -> view.camera().pose());
  }

  private void moveTo(PieceView view, double x, double y) throws Exception {
    Point2D at = call(() -> view.localToScreen(x, y));
    robot.moveTo(at);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void moveAway() throws Exception {
    moveTo(view, 3, view.getHeight() / 2);
    Thread.sleep(300);
    WaitForAsyncUtils.waitForFxEvents();
  }

  /**
   * Pixels well inside what is seen, one for each kind, by a camera and a ray of the test's own.
   */
  private Map<String, double[]> places(PieceView view) throws Exception {
    OrbitCamera.Pose pose = pose();
    Map<String, double[]> places = new TreeMap<>();
    for (double y = 120; y < view.getHeight() - 80; y += 23) {
      for (double x = 20; x < view.getWidth() - 20; x += 29) {
        String kind = kindAt(view, pose, x, y);
        if (!places.containsKey(kind)
            && kind.equals(kindAt(view, pose, x - 4, y - 4))
            && kind.equals(kindAt(view, pose, x + 4, y + 4))) {
          places.put(kind, new double[] {x, y});
        }
      }
    }
    return places;
  }

  /** Light changes brightness, hardly hue: every plated place is drawn in the hue of its class. */
  private void assertColours(PieceView view) throws Exception {
    WritableImage drawn = picture(view.drawn());
    int[] colours =
        PieceColours.of(RING.sections())
            .colours(PieceColours.Look.SECTIONS, OptionalInt.empty(), OptionalInt.empty());
    int[] classes = FaceClasses.of(RING);
    OrbitCamera.Pose pose = pose();
    int laps = 0;
    for (int y = 30; y < view.getHeight(); y += 31) {
      for (int x = 30; x < view.getWidth(); x += 23) {
        int face = faceAt(view, pose, x + 0.5, y + 0.5);
        int other = faceAt(view, pose, x + 3.5, y + 3.5);
        int before = faceAt(view, pose, x - 2.5, y - 2.5);
        if (face >= 0
            && RING.sections().sectionOf()[face] > 0
            && other >= 0
            && before >= 0
            && classes[face] == classes[other]
            && classes[face] == classes[before]) {
          laps += FaceClasses.isLap(classes[face]) ? 1 : 0;
          int rgb = colours[classes[face]];
          Color expected = Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255);
          Color seen = drawn.getPixelReader().getColor(x, y);
          assertThat(Math.IEEEremainder(seen.getHue() - expected.getHue(), 360))
              .as("hue at %d, %d: drawn %s, its class %s", x, y, seen, expected)
              .isBetween(-15.0, 15.0);
        }
      }
    }
    assertThat(laps).as("places on laps").isGreaterThan(5);
  }

  /** The face under a pixel, by a camera and a ray of the test's own; -1 for none. */
  private static int faceAt(PieceView view, OrbitCamera.Pose pose, double x, double y) {
    double[] ray = Pinhole.ray(pose, view.getWidth(), view.getHeight(), x, y);
    return Pinhole.firstFace(RING.sections().mesh(), ray);
  }

  private static String kindAt(PieceView view, OrbitCamera.Pose pose, double x, double y) {
    int face = faceAt(view, pose, x, y);
    if (face < 0) {
      return "Nothing pointed at";
    }
    int section = RING.sections().sectionOf()[face];
    return section > 0
        ? "Section " + section + " of 12"
        : RING.map().of(face) == Treatment.BARE ? "bare" : "out of scope";
  }

  private String text(String id) {
    return robot.lookup(id).<Label>tryQuery().map(Label::getText).orElse("");
  }

  private static <T> T call(Callable<T> onUserInterface) throws Exception {
    return WaitForAsyncUtils.asyncFx(onUserInterface).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  private static void waitFor(Callable<Boolean> condition) throws Exception {
    WaitForAsyncUtils.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS, condition);
  }

  private static WritableImage picture(Node node) throws Exception {
    return call(() -> node.snapshot(null, null));
  }

  private static int differingPixels(WritableImage a, WritableImage b) {
    PixelReader left = a.getPixelReader();
    PixelReader right = b.getPixelReader();
    int count = 0;
    for (int y = 0; y < a.getHeight(); y++) {
      for (int x = 0; x < a.getWidth(); x++) {
        count += left.getArgb(x, y) == right.getArgb(x, y) ? 0 : 1;
      }
    }
    return count;
  }

  /** Saves what the window shows to target/screenshots. */
  private void shoot(String name) throws Exception {
    WritableImage shown = call(() -> view.getScene().snapshot(null));
    Shots.save(shown, name);
  }
}
