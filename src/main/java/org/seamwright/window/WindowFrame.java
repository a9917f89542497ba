package org.seamwright.window;

import atlantafx.base.theme.PrimerLight;
import java.io.File;
import java.util.Objects;
import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.image.Image;
import javafx.stage.FileChooser;
import javafx.stage.Stage;

/** The frame of the window: theme, style sheet, title, and the dialogue that asks for a job. */
final class WindowFrame {
  private static final double WIDTH = 1280;
  private static final double HEIGHT = 820;
  private static final double LEAST_WIDTH = 960;
  private static final double LEAST_HEIGHT = 600;

  /** Sides of the icon that a desktop chooses from, pixels. */
  private static final int[] ICON_SIDES = {16, 32, 48, 64, 128, 256};

  private WindowFrame() {}

  /** Fills a stage and shows it. */
  static MainView show(Stage stage, JobPresenter jobs) {
    Application.setUserAgentStylesheet(new PrimerLight().getUserAgentStylesheet());
    MainView view = new MainView(jobs, () -> choose(stage, jobs));
    Scene scene = new Scene(view, WIDTH, HEIGHT);
    scene
        .getStylesheets()
        .add(Objects.requireNonNull(WindowFrame.class.getResource("window.css")).toExternalForm());
    jobs.state().watch(state -> stage.setTitle(title(state)));
    for (int side : ICON_SIDES) {
      String icon = "icon-" + side + ".png";
      stage
          .getIcons()
          .add(new Image(Objects.requireNonNull(WindowFrame.class.getResourceAsStream(icon))));
    }
    stage.setMinWidth(LEAST_WIDTH);
    stage.setMinHeight(LEAST_HEIGHT);
    stage.setScene(scene);
    stage.show();
    return view;
  }

  private static String title(JobState state) {
    return state instanceof JobState.Open open
        ? Messages.text("window.title.piece", open.piece().job().job().piece())
        : Messages.text("window.title");
  }

  private static void choose(Stage stage, JobPresenter jobs) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(Messages.text("choose.title"));
    chooser
        .getExtensionFilters()
        .add(
            new FileChooser.ExtensionFilter(
                Messages.text("choose.jobs"), "*.seamwright", "*.json"));
    File chosen = chooser.showOpenDialog(stage);
    if (chosen != null) {
      jobs.open(chosen.toPath());
    }
  }
}
