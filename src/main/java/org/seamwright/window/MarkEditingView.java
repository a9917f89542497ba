package org.seamwright.window;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.seamwright.basis.InputException;
import org.seamwright.desk.MarkEditing;
import org.seamwright.desk.MarkNumbers;
import org.seamwright.desk.Messages;
import org.seamwright.region.Mark;

/** The numbers of a mark that is changed after the fact. */
final class MarkEditingView extends VBox {
  private final MarkEditing editing;
  private List<MarkNumbers.Entry> shown = List.of();

  MarkEditingView(Session session) {
    editing = session.marking().editing();
    setId("mark-editing");
    getStyleClass().addAll("group", "mark");
    managedProperty().bind(visibleProperty());
    Button done =
        PartsView.button(
            "mark-editing-done", Messages.text("marks.editing.done"), session.marking()::escape);
    done.getStyleClass().add("small");
    editing.mark().watch(mark -> show(mark, done));
    editing.index().watch(index -> show(editing.mark().get(), done));
  }

  private void show(Optional<Mark> mark, Button done) {
    boolean some = mark.isPresent() && editing.isActive();
    setVisible(some);
    if (!some) {
      shown = List.of();
      getChildren().clear();
      return;
    }
    List<MarkNumbers.Entry> numbers = editing.numbers();
    if (!getChildren().isEmpty() && numbers.equals(shown)) {
      return;
    }
    shown = numbers;
    GridPane grid = PartsView.fields();
    Label wrong = PartsView.text("");
    wrong.setId("mark-editing-wrong");
    wrong.getStyleClass().add("wrong");
    wrong.managedProperty().bind(wrong.textProperty().isNotEmpty());
    for (int i = 0; i < numbers.size(); i++) {
      PartsView.field(grid, i, numbers.get(i).title(), field(numbers.get(i), wrong));
    }
    String which = Integer.toString(editing.index().get().orElse(0) + 1);
    getChildren().setAll(PartsView.muted(Messages.text("marks.editing", which)), grid, wrong, done);
  }

  private TextField field(MarkNumbers.Entry number, Label wrong) {
    TextField field = new TextField(number.text());
    field.setId("mark-number-" + number.key().toLowerCase(Locale.ROOT));
    field.setAccessibleText(number.title());
    Runnable take =
        () -> {
          try {
            wrong.setText("");
            editing.type(number.key(), field.getText());
          } catch (InputException e) {
            wrong.setText(e.problem() + ". " + e.remedy());
          }
        };
    field.setOnAction(e -> take.run());
    field
        .focusedProperty()
        .addListener(
            (value, before, now) -> {
              if (!now && !field.getText().equals(number.text())) {
                take.run();
              }
            });
    return field;
  }
}
