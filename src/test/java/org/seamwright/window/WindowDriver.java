package org.seamwright.window;

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
import javafx.scene.control.Labeled;
import javafx.scene.transform.Scale;
import javafx.stage.Stage;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.desk.DeskState;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** A window on a display with a sample job open, for tests that use mouse and keyboard. */
@Tag("window")
abstract class WindowDriver {
  private static final long PATIENCE_SECONDS = 120;

  @TempDir private Path dir;

  private final List<ExecutorService> threads = new ArrayList<>();
  final FxRobot robot = new FxRobot();
  ShellView shell;
  Session session;

  @BeforeEach
  final void needADisplay() throws Exception {
    Displays.required();
    FxToolkit.registerPrimaryStage();
  }

  @AfterEach
  final void stop() throws Exception {
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

  /** Opens a window without a job. */
  final void start() throws Exception {
    FxToolkit.setupStage(
        (Stage stage) -> {
          session =
              new Session(
                  new Session.Threads(thread(), thread(), thread(), thread(), thread()),
                  Platform::runLater,
                  new OwnFolder());
          shell = WindowFrame.show(stage, session, thread());
          stage.setX(0);
          stage.setY(0);
        });
  }

  /** Opens a copy of a sample's job and waits for its plan; gives the job file. */
  final Path open(String job, String mesh) throws Exception {
    Path models = Path.of("models");
    Path file = dir.resolve(job);
    Files.copy(models.resolve(job), file);
    Files.copy(models.resolve(mesh), dir.resolve(mesh));
    start();
    call(
        () -> {
          session.open(file);
          return true;
        });
    waitFor(() -> state().isPlanned() || state().trouble().isPresent());
    settle();
    return file;
  }

  private ExecutorService thread() {
    ExecutorService thread = Executors.newSingleThreadExecutor();
    threads.add(thread);
    return thread;
  }

  /** What a user would choose: files of the test's own folder. */
  private static final class OwnFolder implements Choices {
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
      // Nothing is opened outside the window.
    }
  }

  final DeskState state() throws Exception {
    return call(() -> session.desk().state().get());
  }

  /** Where a share of the picture's width and height is on the screen. */
  final Point2D at(double shareX, double shareY) throws Exception {
    return call(
        () -> {
          PieceView view = shell.pieceView().orElseThrow();
          return view.localToScreen(shareX * view.getWidth(), shareY * view.getHeight());
        });
  }

  /** Where a place of the piece is on the screen; empty if the piece itself hides it. */
  final Optional<Point2D> onScreen(Vector3D place) throws Exception {
    return call(
        () -> {
          PieceView view = shell.pieceView().orElseThrow();
          OrbitCamera camera = view.camera();
          OrbitCamera.OnScreen p = camera.project(place.getX(), place.getY(), place.getZ());
          Optional<Pick> seen = Pick.under(view.model(), camera.ray(p.x(), p.y()));
          double close = 0.01 * view.model().bounds().diagonal();
          return seen.filter(s -> s.point().distance(place) < close)
              .map(s -> view.localToScreen(p.x(), p.y()));
        });
  }

  final String text(String id) {
    return robot.lookup(id).<Labeled>tryQuery().map(Labeled::getText).orElse("");
  }

  /** Lets pictures that are being made reach the screen. */
  static void settle() throws Exception {
    for (int i = 0; i < 3; i++) {
      WaitForAsyncUtils.waitForFxEvents();
      Thread.sleep(120);
    }
  }

  static <T> T call(Callable<T> onUserInterface) throws Exception {
    return WaitForAsyncUtils.asyncFx(onUserInterface).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
  }

  static void waitFor(Callable<Boolean> condition) throws Exception {
    WaitForAsyncUtils.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS, condition);
  }

  /** Saves what the window shows. */
  final void shoot(String name) throws Exception {
    Shots.save(call(() -> shell.getScene().snapshot(null)), name);
  }

  /** Saves what the window shows on a screen of twice the pixels. */
  final void shootTwice(String name) throws Exception {
    Shots.save(
        call(
            () -> {
              javafx.scene.SnapshotParameters twice = new javafx.scene.SnapshotParameters();
              twice.setTransform(new Scale(2, 2));
              return shell.snapshot(twice, null);
            }),
        name);
  }
}
