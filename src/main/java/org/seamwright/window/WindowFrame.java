package org.seamwright.window;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.Objects;
import java.util.concurrent.Executor;
import javafx.application.Application;
import javafx.css.PseudoClass;
import javafx.scene.Scene;
import javafx.scene.image.Image;
import javafx.stage.Stage;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;

/** The frame of the window: theme, style sheet, title. */
final class WindowFrame {
  private static final PseudoClass DARK = PseudoClass.getPseudoClass("dark");
  private static final double WIDTH = 1360;
  private static final double HEIGHT = 880;
  private static final double LEAST_WIDTH = 1000;
  private static final double LEAST_HEIGHT = 640;

  /** Sides of the icon that a desktop chooses from, pixels. */
  private static final int[] ICON_SIDES = {16, 32, 48, 64, 128, 256};

  private WindowFrame() {}

  /**
   * Fills a stage and shows it.
   *
   * @param background draws still pictures where there is no 3D
   */
  static ShellView show(Stage stage, Session session, Executor background) {
    ShellView view = new ShellView(session, background);
    session
        .dark()
        .watch(
            dark -> {
              Application.setUserAgentStylesheet(
                  dark
                      ? new PrimerDark().getUserAgentStylesheet()
                      : new PrimerLight().getUserAgentStylesheet());
              view.pseudoClassStateChanged(DARK, dark);
            });
    Scene scene = new Scene(view, WIDTH, HEIGHT);
    scene
        .getStylesheets()
        .add(Objects.requireNonNull(WindowFrame.class.getResource("window.css")).toExternalForm());
    session.desk().state().watch(state -> stage.setTitle(title(state)));
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

  private static String title(DeskState state) {
    return state
        .job()
        .map(job -> Messages.text("window.title.piece", job.piece()))
        .orElse(Messages.text("window.title"));
  }
}
