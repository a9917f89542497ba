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
import java.util.concurrent.atomic.AtomicLong;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.bench.BenchState;
import org.seamwright.bench.BenchState.Phase;
import org.seamwright.job.Job;
import org.seamwright.job.JobFile;
import org.seamwright.job.Planner;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.shop.Run;
import org.seamwright.shop.ShopBook;
import org.seamwright.testsupport.Shapes;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** A section plated at the bench, on a display, by the keyboard and the big buttons. */
@Tag("window")
class BenchViewTest {
  private static final long PATIENCE_SECONDS = 120;

  @TempDir private Path dir;

  private final List<ExecutorService> threads = new ArrayList<>();
  private final FxRobot robot = new FxRobot();
  private final AtomicLong now = new AtomicLong(1_750_000_000_000L);
  private ShellView shell;
  private Session session;

  private Path job;

  @BeforeEach
  void needADisplay() throws Exception {
    Displays.required();
    FxToolkit.registerPrimaryStage();
    job = dir.resolve("block.json");
  }

  @AfterEach
  void stop() throws Exception {
    if (shell != null) {
      close();
      FxToolkit.cleanupStages();
    }
  }

  @Test
  void platesASectionAndComesBackAfterItWasCutOff() throws Exception {
    makeAJob();
    start();
    robot.clickOn("#path-bench");
    settle();
    assertThat(robot.lookup("#bench-go").tryQuery()).as("says what is missing").isPresent();
    shoot("bench-missing");
    call(() -> run(session.benchKeys()::leave));
    open();
    robot.clickOn("#path-bench");
    waitFor(() -> session.bench().run().get().isPresent());
    settle();
    shoot("bench-caution");
    while (state().phase() != Phase.WORK) {
      press(KeyCode.SPACE);
      if (state().phase() == Phase.MASKS && state().masks().indexOf(false) == 0) {
        shoot("bench-masks");
      }
    }
    shoot("bench-ready");
    press(KeyCode.SPACE);
    while (state().wet().sinceMs() < 0) {
      press(KeyCode.SPACE);
    }
    now.addAndGet(6000);
    shoot("bench-step");
    now.addAndGet(30_000);
    shoot("bench-soon");
    now.addAndGet(9000);
    shoot("bench-over");
    press(KeyCode.X);
    assertThat(state().at().step()).as("dried out").isZero();
    assertThat(state().mishaps()).hasSize(1);
    while (state().wet().sinceMs() < 0) {
      press(KeyCode.SPACE);
    }
    press(KeyCode.D);
    robot.clickOn("#bench-dip");
    settle();
    assertThat(state().dips(1)).isEqualTo(2);
    robot.clickOn("#bench-figures");
    settle();
    robot.clickOn("#bench-key-1");
    press(KeyCode.COMMA);
    press(KeyCode.DIGIT5);
    shoot("bench-pad");
    press(KeyCode.ENTER);
    assertThat(state().entries().get(2).value()).isEqualTo(8.5);
    press(KeyCode.U);
    assertThat(state().entries()).hasSize(2);

    // Cut off without a word, and started again.
    BenchState before = state();
    stopHard();
    now.addAndGet(50_000);
    start();
    open();
    waitFor(() -> label("#path-bench").equals("Go on at the bench"));
    robot.clickOn("#path-bench");
    waitFor(() -> session.bench().run().get().isPresent());
    settle();
    shoot("bench-back");
    assertThat(state().at().step()).isEqualTo(before.at().step());
    assertThat(state().sections()).isEqualTo(before.sections());
    assertThat(state().entries()).isEqualTo(before.entries());
    assertThat(state().wet().asked()).isTrue();
    press(KeyCode.SPACE);
    assertThat(state().at().step()).as("the question first").isEqualTo(before.at().step());
    robot.clickOn("#bench-answer-wet");
    settle();
    assertThat(state().wet().asked()).isFalse();
    while (state().sections().get(0).status() == BenchState.Status.WAITING) {
      press(KeyCode.SPACE);
    }
    press(KeyCode.L);
    shoot("bench-sections");
    assertNamed();
    press(KeyCode.ESCAPE);
    call(() -> run(() -> session.dark().set(true)));
    settle();
    shoot("bench-dark");
    press(KeyCode.L);
    robot.clickOn("#bench-section-1");
    press(KeyCode.N);
    press(KeyCode.DOWN);
    press(KeyCode.DOWN);
    press(KeyCode.DOWN);
    for (KeyCode k : new KeyCode[] {KeyCode.DIGIT0, KeyCode.PERIOD, KeyCode.DIGIT4}) {
      press(k);
    }
    shoot("bench-pad-dark");
    press(KeyCode.ENTER);
    press(KeyCode.E);
    press(KeyCode.SPACE);
    waitFor(() -> session.bench().isBooked());
    settle();
    shoot("bench-summary");
    assertThat(label("#bench-booked")).contains("book.db");
    try (ShopBook book = ShopBook.open(dir.resolve("book.db"))) {
      List<Run> runs = book.runs("", "", "", 10);
      assertThat(runs).hasSize(1);
      assertThat(runs.get(0).section()).isEqualTo("1");
      assertThat(runs.get(0).ampHours()).isEqualTo(0.4);
      assertThat(runs.get(0).notes()).contains("flashed", "2 dips", "dried out");
    }
    call(() -> run(() -> session.dark().set(false)));
  }

  /**
   * A block that stands on a bare foot, or the job that -Dseamwright.bench.job names, for pictures
   * of a sample.
   */
  private void makeAJob() throws Exception {
    String sample = System.getProperty("seamwright.bench.job", "");
    if (!sample.isEmpty()) {
      Path file = Path.of(sample);
      Job found = JobFile.read(file);
      Files.copy(Planner.meshFile(found, file), dir.resolve(found.mesh().file()));
      JobFile.write(found, job);
      return;
    }
    StlWriter.writeBinary(Shapes.cube(50, 6), dir.resolve("block.stl"), "A test block");
    Files.writeString(
        job,
        """
        {
          "seamwright": 1,
          "piece": "Test block",
          "mesh": {"file": "block.stl", "unit": "mm"},
          "ground": "plate",
          "marks": [
            {"kind": "halfSpace", "name": "foot", "treatment": "bare",
             "point": [0, 0, -20], "normal": [0, 0, -1]}
          ],
          "plating": {"recipe": "brass", "deposit": "gold-hard"}
        }
        """);
  }

  private static boolean run(Runnable what) {
    what.run();
    return true;
  }

  private void press(KeyCode key) throws Exception {
    now.addAndGet(400); // longer than a pedal bounces
    robot.push(key);
    WaitForAsyncUtils.waitForFxEvents();
    Thread.sleep(30); // the event is on its way to the disk
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void open() throws Exception {
    call(() -> run(() -> session.open(job)));
    waitFor(
        () ->
            session.desk().state().get().isPlanned()
                || session.desk().state().get().trouble().isPresent());
    assertThat(call(() -> session.desk().state().get().trouble())).isEmpty();
    call(() -> run(() -> session.place().set(org.seamwright.desk.Place.SECTIONS)));
    waitFor(() -> shell.plan().isPresent());
  }

  private void assertNamed() {
    List<String> nameless = new ArrayList<>();
    for (Node node : robot.lookup(n -> n.isFocusTraversable() && n.isVisible()).queryAll()) {
      boolean named =
          node.getAccessibleText() != null
              || (node instanceof Labeled labeled && !labeled.getText().isEmpty());
      if (!named) {
        nameless.add(node.toString());
      }
    }
    assertThat(nameless).isEmpty();
  }

  private void start() throws Exception {
    FxToolkit.setupStage(
        (Stage stage) -> {
          session =
              new Session(
                  new Session.Threads(thread(), thread(), thread(), thread(), thread()),
                  Platform::runLater,
                  new NoChoices(),
                  dir.resolve("book.db"),
                  now::get);
          shell = WindowFrame.show(stage, session, thread());
          stage.setX(0);
          stage.setY(0);
          stage.setWidth(1280);
          stage.setHeight(800);
        });
    settle();
  }

  private ExecutorService thread() {
    ExecutorService thread = Executors.newSingleThreadExecutor();
    threads.add(thread);
    return thread;
  }

  private void close() throws Exception {
    call(
        () ->
            run(
                () -> {
                  session.bench().leave();
                  session.desk().close();
                }));
    for (ExecutorService thread : threads) {
      thread.shutdown();
      thread.awaitTermination(5, TimeUnit.SECONDS);
    }
    threads.clear();
  }

  /** Nothing is told at the bench any more; within one process the locks must be given free. */
  private void stopHard() throws Exception {
    close();
  }

  /** Nothing is chosen. */
  private static final class NoChoices implements Choices {
    @Override
    public Optional<Path> open() {
      return Optional.empty();
    }

    @Override
    public Optional<Path> save(Path offered) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> folder(Path offered) {
      return Optional.empty();
    }

    @Override
    public void show(Path folder) {}
  }

  private BenchState state() throws Exception {
    return call(() -> session.bench().run().get().orElseThrow().state());
  }

  private String label(String id) {
    return robot.lookup(id).<Labeled>tryQuery().map(Labeled::getText).orElse("");
  }

  private void settle() throws Exception {
    for (int i = 0; i < 3; i++) {
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
    settle();
    Shots.save(call(() -> shell.getScene().snapshot(null)), name);
  }
}
