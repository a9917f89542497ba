package org.seamwright.window;

import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.basis.InputException;

/** What is shown while there is no piece to show: progress, or what went wrong and what to do. */
final class StateView extends StackPane {
  private static final double WIDTH = 560;

  private final VBox card = new VBox();
  private final ProgressBar bar = new ProgressBar(0);

  private StateView(String title, Node... parts) {
    Label heading = new Label(title);
    heading.setId("state-title");
    heading.setWrapText(true);
    heading.getStyleClass().add("title-3");
    card.getStyleClass().addAll("card", "state");
    card.setMaxSize(WIDTH, Region.USE_PREF_SIZE);
    card.getChildren().add(heading);
    card.getChildren().addAll(parts);
    getChildren().add(card);
  }

  /** No job yet. */
  static StateView none(Runnable choose) {
    return new StateView(
        Messages.text("none.title"),
        text(Messages.text("none.text")),
        buttons(button("open", choose, true)));
  }

  /** A job is being planned. */
  static StateView planning(String file, double fraction, Runnable cancel) {
    StateView view = new StateView(Messages.text("planning.title", file));
    view.bar.setId("progress");
    view.bar.setMaxWidth(Double.MAX_VALUE);
    view.bar.setAccessibleText(Messages.text("planning.title", file));
    view.card.getChildren().addAll(view.bar, buttons(button("cancel", cancel, false)));
    view.progress(fraction);
    return view;
  }

  /** Shows how far the planning is, 0 to 1. */
  void progress(double fraction) {
    bar.setProgress(fraction);
  }

  /** The planning was broken off. */
  static StateView cancelled(String file, Runnable again, Runnable choose) {
    return new StateView(
        Messages.text("cancelled.title"),
        text(Messages.text("cancelled.text", file)),
        buttons(button("again", again, true), button("open", choose, false)));
  }

  /** The job was refused. */
  static StateView refused(InputException refusal, Runnable again, Runnable choose) {
    String where =
        refusal.place().isEmpty()
            ? refusal.source()
            : Messages.text("refused.place", refusal.source(), refusal.place());
    Label place = text(where);
    place.setId("refused-place");
    place.getStyleClass().add("muted");
    Label problem = text(Messages.text("refused.problem", sentence(refusal.problem())));
    problem.setId("refused-problem");
    problem.getStyleClass().add("problem");
    Label remedy = text(refusal.remedy());
    remedy.setId("refused-remedy");
    return new StateView(
        Messages.text("refused.title"),
        place,
        problem,
        remedy,
        buttons(button("again", again, true), button("open", choose, false)));
  }

  /** The program failed. */
  static StateView failed(Throwable fault, Runnable again, Runnable choose) {
    Label what = text(fault.toString());
    what.getStyleClass().add("muted");
    return new StateView(
        Messages.text("failed.title"),
        text(Messages.text("failed.text")),
        what,
        buttons(button("again", again, true), button("open", choose, false)));
  }

  /** Pictures in depth can't be drawn here. */
  static StateView noDepth() {
    return new StateView(Messages.text("depth.title"), text(Messages.text("depth.text")));
  }

  private static String sentence(String clause) {
    return clause.isEmpty()
        ? clause
        : clause.substring(0, 1).toUpperCase(Locale.ROOT) + clause.substring(1);
  }

  private static Label text(String text) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  private static HBox buttons(Button... buttons) {
    HBox box = new HBox(buttons);
    box.setAlignment(Pos.CENTER_LEFT);
    box.getStyleClass().add("buttons");
    return box;
  }

  private static Button button(String key, Runnable action, boolean first) {
    Button button = new Button(Messages.text("button." + key));
    button.setId("button-" + key);
    button.setOnAction(e -> action.run());
    button.setDefaultButton(first);
    button.setCancelButton(key.equals("cancel"));
    button.setAccessibleText(Messages.text("button." + key));
    return button;
  }
}
