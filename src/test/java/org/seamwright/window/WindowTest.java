package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Place;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.paper.Papers;
import org.seamwright.region.Mark;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** The window from a model to papers, on a display, driven by the mouse and the keyboard. */
@Tag("window")
class WindowTest {
  private static final long PATIENCE_SECONDS = 120;
  private static final Path MODELS = Path.of("models");

  @TempDir private Path dir;

  private final List<ExecutorService> threads = new ArrayList<>();
  private final FxRobot robot = new FxRobot();
  private final List<Path> shownFolders = new ArrayList<>();
  private ShellView shell;
  private Session session;

  @BeforeEach
  void needADisplay() throws Exception {
    Displays.required();
    FxToolkit.registerPrimaryStage();
  }

  @AfterEach
  void stop() throws Exception {
    threads.forEach(ExecutorService::shutdownNow);
    if (shell == null) {
      return; // skipped
    }
    call(
        () -> {
          session.desk().close();
          return true;
        });
    FxToolkit.cleanupStages();
  }

  @Test
  void goesFromAModelToPapers() throws Exception {
    Path mesh = dir.resolve("cup.stl");
    Files.copy(MODELS.resolve("cup.stl"), mesh);
    Path file = dir.resolve("cup.json");
    start();
    shoot("start");
    call(
        () -> {
          session.open(mesh);
          return true;
        });
    waitFor(() -> robot.lookup("#unit-mm").tryQuery().isPresent() && shell.pieceView().isPresent());
    settle();
    shoot("unit");
    robot.clickOn("#unit-mm");
    waitFor(() -> Files.exists(file));
    waitFor(() -> state().isPlanned() || state().trouble().isPresent());
    assertThat(state().trouble()).isEmpty();
    settle();
    shoot("piece");
    Job made = JobFile.read(file);
    assertThat(made.mesh().scale()).isEqualTo(new Job.Scale.Unit("mm"));

    robot.clickOn("#path-marks");
    waitFor(() -> robot.lookup("#tool-stroke").tryQuery().isPresent());
    settle();
    robot.clickOn("#tool-fill");
    Point2D middle = call(() -> middle(0.5, 0.30));
    robot.moveTo(middle);
    waitFor(() -> session.desk().preview().get().map().isPresent());
    settle();
    shoot("preview");
    robot.clickOn("#tool-stroke");
    Point2D from = call(() -> middle(0.42, 0.55));
    Point2D to = call(() -> middle(0.55, 0.50));
    robot.moveTo(from);
    robot.press(MouseButton.PRIMARY);
    robot.moveTo(from.midpoint(to));
    robot.moveTo(to);
    settle();
    shoot("stroke");
    robot.release(MouseButton.PRIMARY);
    waitFor(() -> state().job().orElseThrow().marks().size() == 1);
    waitFor(() -> state().isMarked() && state().marked().orElseThrow().bareMm2() > 0);
    settle();
    shoot("marks");
    assertThat(state().job().orElseThrow().marks().get(0)).isInstanceOf(Mark.Near.class);
    double plated = state().marked().orElseThrow().plateMm2();
    robot.push(KeyCode.CONTROL, KeyCode.Z);
    waitFor(() -> state().isMarked() && state().marked().orElseThrow().bareMm2() == 0);
    robot.push(KeyCode.CONTROL, KeyCode.Y);
    waitFor(() -> state().isMarked() && state().marked().orElseThrow().plateMm2() == plated);

    robot.push(KeyCode.CONTROL, KeyCode.DIGIT3);
    waitFor(() -> state().isPlanned() && shell.plan().isPresent());
    settle();
    shoot("sections");
    assertThat(texts("#figure-area").replace('\u00a0', ' ')).contains("cm²");

    robot.push(KeyCode.CONTROL, KeyCode.DIGIT4);
    settle();
    String gold = texts("#figure-gold");
    call(
        () -> {
          javafx.scene.control.TextField field =
              robot.lookup("#field-thickness").queryAs(javafx.scene.control.TextField.class);
          field.setText("1 µm");
          field.fireEvent(new javafx.event.ActionEvent());
          return true;
        });
    waitFor(() -> state().isPlanned() && !texts("#figure-gold").equals(gold));
    settle();
    shoot("plating");
    assertThat(JobFile.read(file).plating().thicknessUm()).isEqualTo(1);

    robot.push(KeyCode.CONTROL, KeyCode.DIGIT5);
    settle();
    robot.clickOn("#make-papers");
    waitFor(() -> session.papers().areMade());
    settle();
    shoot("papers");
    Path folder = dir.resolve("cup-papers");
    assertThat(Papers.names()).allMatch(name -> Files.exists(folder.resolve(name)));
    robot.clickOn("#show-papers");
    assertThat(shownFolders).containsExactly(folder);
    // Nothing is lost by going back.
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT1);
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT5);
    settle();
    assertThat(call(() -> session.papers().areMade())).isTrue();
    call(
        () -> {
          session.dark().set(true);
          session.place().set(Place.SECTIONS);
          return true;
        });
    settle();
    shoot("dark");
    assertNamed();
    call(
        () -> {
          session.dark().set(false);
          return true;
        });
  }

  @Test
  void saysWhatIsWrongAndWhatToDo() throws Exception {
    Path wrong = dir.resolve("notes.stl");
    Files.writeString(wrong, "no triangles here");
    start();
    call(
        () -> {
          session.open(wrong);
          return true;
        });
    waitFor(() -> texts("#next-text").contains("notes.stl"));
    assertThat(texts("#next-more")).isNotBlank();
  }

  private void assertNamed() throws Exception {
    for (Place place : Place.values()) {
      call(
          () -> {
            session.place().set(place);
            return true;
          });
      settle();
      List<String> nameless = new ArrayList<>();
      for (Node node : robot.lookup(n -> n.isFocusTraversable() && n.isVisible()).queryAll()) {
        boolean named =
            node.getAccessibleText() != null
                || (node instanceof Labeled labeled && !labeled.getText().isEmpty());
        if (!named) {
          nameless.add(node.toString());
        }
      }
      assertThat(nameless).as("controls without a name at %s", place).isEmpty();
    }
  }

  private void start() throws Exception {
    FxToolkit.setupStage(
        (Stage stage) -> {
          session =
              new Session(
                  new Session.Threads(thread(), thread(), thread(), thread(), thread()),
                  Platform::runLater,
                  new FixedChoices());
          shell = WindowFrame.show(stage, session, thread());
          stage.setX(0);
          stage.setY(0);
        });
  }

  private ExecutorService thread() {
    ExecutorService thread = Executors.newSingleThreadExecutor();
    threads.add(thread);
    return thread;
  }

  /** What a user would choose: files of the test's own folder. */
  private final class FixedChoices implements Choices {
    @Override
    public Optional<Path> open() {
      return Optional.empty();
    }

    @Override
    public Optional<Path> save(Path offered) {
      return Optional.of(offered);
    }

    @Override
    public Optional<Path> folder(Path offered) {
      return Optional.of(offered);
    }

    @Override
    public void show(Path folder) {
      shownFolders.add(folder);
    }
  }

  private DeskState state() throws Exception {
    return call(() -> session.desk().state().get());
  }

  private Point2D middle(double shareX, double shareY) {
    PieceView view = shell.pieceView().orElseThrow();
    return view.localToScreen(shareX * view.getWidth(), shareY * view.getHeight());
  }

  private String texts(String id) {
    return robot.lookup(id).<Label>tryQuery().map(Label::getText).orElse("");
  }

  /** Lets pictures that are being made reach the screen. */
  private void settle() throws Exception {
    for (int i = 0; i < 4; i++) {
      WaitForAsyncUtils.waitForFxEvents();
      Thread.sleep(120);
    }
  }

  private static <T> T call(Callable<T> onUserInterface) throws Exception {
    return WaitForAsyncUtils.asyncFx(onUserInterface).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  private static void waitFor(Callable<Boolean> condition) throws Exception {
    WaitForAsyncUtils.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS, condition);
  }

  private void shoot(String name) throws Exception {
    Shots.save(call(() -> shell.getScene().snapshot(null)), name);
  }
}
