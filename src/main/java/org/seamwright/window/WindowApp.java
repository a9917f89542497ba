package org.seamwright.window;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;

/** The desktop program: one window, opened on the job or model it is given, if any. */
public final class WindowApp extends Application {
  private static final long LAST_SAVE_SECONDS = 10;

  private final ExecutorService marker = single("marking");
  private final ExecutorService planner = single("planning");
  private final ExecutorService saver = single("saving");
  private final ExecutorService pictures = single("pictures");
  private final ExecutorService others = single("papers");
  private Session session;

  /** Made by the toolkit. */
  public WindowApp() {}

  private static ExecutorService single(String name) {
    return Executors.newSingleThreadExecutor(
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  @Override
  public void start(Stage stage) {
    Session.Threads threads = new Session.Threads(marker, planner, saver, pictures, others);
    session =
        new Session(
            threads, Platform::runLater, new DesktopFrame(stage, getHostServices()::showDocument));
    WindowFrame.show(stage, session, others);
    List<String> files = getParameters().getUnnamed();
    if (!files.isEmpty()) {
      session.open(Path.of(files.get(0)));
    }
  }

  @Override
  public void stop() throws InterruptedException {
    session.benchKeys().leave();
    // What was decided last is still being written: the window closes when it is on the disk.
    saver.shutdown();
    saver.awaitTermination(LAST_SAVE_SECONDS, TimeUnit.SECONDS);
    session.desk().close();
    Stream.of(marker, planner, pictures, others).forEach(ExecutorService::shutdownNow);
  }
}
