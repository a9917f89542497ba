package org.seamwright.window;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.seamwright.job.Planner;

/** The desktop program: one window, opened on the job file it is given, if any. */
public final class WindowApp extends Application {
  private final ExecutorService background =
      Executors.newCachedThreadPool(
          work -> {
            Thread thread = new Thread(work, "planning");
            thread.setDaemon(true);
            return thread;
          });

  /** Made by the toolkit. */
  public WindowApp() {}

  @Override
  public void start(Stage stage) {
    JobPresenter jobs = new JobPresenter(Planner::plan, background, Platform::runLater);
    WindowFrame.show(stage, jobs);
    List<String> files = getParameters().getUnnamed();
    if (!files.isEmpty()) {
      jobs.open(Path.of(files.get(0)));
    }
  }

  @Override
  public void stop() {
    background.shutdownNow();
  }
}
