package org.seamwright.window;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.seamwright.basis.InputException;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.Typed;
import org.seamwright.job.Job;

/** Settings that are typed: taken over at Enter or on leaving the field, or refused beside it. */
final class FormView extends VBox {
  private final Session session;
  private final Map<Typed, TextField> fields = new LinkedHashMap<>();
  private final Map<Typed, Label> wrongs = new LinkedHashMap<>();

  FormView(Session session, Typed... shown) {
    this.session = session;
    GridPane grid = PartsView.fields();
    for (int i = 0; i < shown.length; i++) {
      add(grid, i, shown[i]);
    }
    getChildren().add(grid);
    session.desk().state().watch(this::show);
  }

  private void add(GridPane grid, int row, Typed field) {
    String name = Messages.text("field." + field.key());
    TextField text = new TextField();
    text.setId("field-" + field.key());
    text.setAccessibleText(name);
    text.setTooltip(new Tooltip(Messages.text("field." + field.key() + ".tip")));
    Label wrong = PartsView.text("");
    wrong.setId("wrong-" + field.key());
    wrong.getStyleClass().add("wrong");
    wrong.setVisible(false);
    wrong.managedProperty().bind(wrong.visibleProperty());
    text.setOnAction(e -> take(field));
    text.focusedProperty()
        .addListener(
            (value, before, now) -> {
              if (!now) {
                take(field);
              }
            });
    fields.put(field, text);
    wrongs.put(field, wrong);
    PartsView.field(grid, row, name, new VBox(text, wrong));
  }

  private void take(Typed field) {
    DeskState state = session.desk().state().get();
    if (state.job().isEmpty()) {
      return;
    }
    Label wrong = wrongs.get(field);
    try {
      Job job = field.typed(state.job().get(), fields.get(field).getText());
      wrong.setVisible(false);
      session.desk().change(before -> job);
    } catch (InputException e) {
      String problem = e.problem();
      wrong.setText(
          problem.substring(0, 1).toUpperCase(java.util.Locale.ROOT)
              + problem.substring(1)
              + ". "
              + e.remedy());
      wrong.setVisible(true);
    }
  }

  private void show(DeskState state) {
    state
        .job()
        .ifPresent(
            job ->
                fields.forEach(
                    (field, text) -> {
                      // What is being typed, or was refused, stays as it is typed.
                      if (!text.isFocused() && !wrongs.get(field).isVisible()) {
                        text.setText(field.text(job));
                      }
                    }));
  }
}
