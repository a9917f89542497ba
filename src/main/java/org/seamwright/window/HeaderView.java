package org.seamwright.window;

import java.nio.file.Path;
import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.RunningFigures;

/** What the piece is called, where its job is kept, and the figures that stay in sight. */
final class HeaderView extends HBox {
  private static final PseudoClass ABOUT = PseudoClass.getPseudoClass("about");
  private static final PseudoClass EARLIER = PseudoClass.getPseudoClass("earlier");

  private final Label name = new Label();
  private final Label file = new Label();
  private final HBox totals = new HBox();

  HeaderView(Session session) {
    name.setId("piece-name");
    name.getStyleClass().add("piece-name");
    file.setId("saved");
    file.getStyleClass().add("muted");
    VBox what = new VBox(name, file);
    what.setAlignment(Pos.CENTER_LEFT);
    what.setMinWidth(0);
    totals.setId("totals");
    totals.getStyleClass().add("totals");
    totals.setMinWidth(Region.USE_PREF_SIZE);
    totals.setAlignment(Pos.CENTER_RIGHT);
    Button undo = PartsView.sign("undo", "↶", Messages.text("button.undo"), session.desk()::undo);
    Button redo = PartsView.sign("redo", "↷", Messages.text("button.redo"), session.desk()::redo);
    Button dark =
        PartsView.sign(
            "dark",
            "◐",
            Messages.text("button.dark"),
            () -> session.dark().set(!session.dark().get()));
    Button open = PartsView.button("button-open", Messages.text("button.open"), session::open);
    getStyleClass().add("header");
    setAlignment(Pos.CENTER_LEFT);
    HBox tools = new HBox(undo, redo, dark, open);
    tools.setAlignment(Pos.CENTER_RIGHT);
    tools.getStyleClass().add("row");
    tools.setMinWidth(Region.USE_PREF_SIZE);
    getChildren().addAll(what, PartsView.gap(), totals, tools);
    session
        .desk()
        .state()
        .watch(
            state -> {
              undo.setDisable(!state.canUndo());
              redo.setDisable(!state.canRedo());
              show(state);
            });
  }

  private void show(DeskState state) {
    name.setText(state.job().map(j -> j.piece()).orElse(Messages.text("window.title")));
    file.setText(saved(state));
    List<RunningFigures.Figure> figures = RunningFigures.of(state);
    totals.getChildren().clear();
    for (RunningFigures.Figure figure : figures) {
      totals.getChildren().add(total(figure));
    }
  }

  private static String saved(DeskState state) {
    String where = state.jobFile().map(Path::toString).orElse("");
    if (state.job().isEmpty()) {
      return state.meshFile().map(Path::toString).orElse("");
    }
    DeskState.Saving saving = state.saving();
    if (saving instanceof DeskState.Saving.Done) {
      return Messages.text("saved.done", where);
    }
    if (saving instanceof DeskState.Saving.Under) {
      return Messages.text("saved.under", where);
    }
    if (saving instanceof DeskState.Saving.Nowhere) {
      return Messages.text("saved.nowhere");
    }
    return Messages.text("saved.not", where);
  }

  private static VBox total(RunningFigures.Figure figure) {
    Label value = new Label(figure.value());
    value.setId("figure-" + figure.key());
    value.getStyleClass().add("total-value");
    value.pseudoClassStateChanged(ABOUT, figure.standing() == RunningFigures.Standing.ABOUT);
    value.pseudoClassStateChanged(EARLIER, figure.standing() == RunningFigures.Standing.EARLIER);
    Label name = new Label(figure.name());
    name.getStyleClass().add("muted");
    name.setLabelFor(value);
    VBox box = new VBox(value, name);
    box.setAlignment(Pos.CENTER_RIGHT);
    return box;
  }
}
