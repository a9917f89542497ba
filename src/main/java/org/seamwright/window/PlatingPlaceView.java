package org.seamwright.window;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.css.PseudoClass;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.PlatingForm;
import org.seamwright.job.Job;
import org.seamwright.units.UnitSystem;

/** Plating: base metal, deposit, thickness, loss, and what they come to. */
final class PlatingPlaceView extends VBox {
  private static final PseudoClass EARLIER = PseudoClass.getPseudoClass("earlier");

  private final GridPane amounts = PartsView.fields();
  private final Session session;

  PlatingPlaceView(Session session) {
    this.session = session;
    setId("place-plating");
    getStyleClass().add("place");
    amounts.setId("amounts");
    GridPane grid = PartsView.fields();
    PartsView.field(
        grid,
        0,
        Messages.text("plating.recipe"),
        choice(
            "recipe",
            PlatingForm.recipes(),
            job -> job.plating().recipe(),
            id -> session.desk().change(job -> PlatingForm.withRecipe(job, id))));
    PartsView.field(
        grid,
        1,
        Messages.text("plating.deposit"),
        choice(
            "deposit",
            PlatingForm.deposits(),
            job -> job.plating().deposit(),
            id -> session.desk().change(job -> PlatingForm.withDeposit(job, id))));
    PartsView.field(
        grid,
        2,
        Messages.text("plating.display"),
        choice(
            "display",
            List.of(
                new PlatingForm.Choice("METRIC", Messages.text("plating.metric")),
                new PlatingForm.Choice("INCH", Messages.text("plating.inch"))),
            job -> job.display().name(),
            id ->
                session
                    .desk()
                    .change(job -> PlatingForm.withDisplay(job, UnitSystem.valueOf(id)))));
    FormView form =
        new FormView(
            session,
            PlatingForm.Field.THICKNESS,
            PlatingForm.Field.FLASH,
            PlatingForm.Field.LOSS,
            PlatingForm.Field.SOLUTION,
            PlatingForm.Field.USABLE,
            PlatingForm.Field.SPEED,
            PlatingForm.Field.EFFICIENCY);
    getChildren()
        .addAll(
            PartsView.heading("plating.amounts"),
            amounts,
            PartsView.heading("plating.what"),
            grid,
            form);
    session.desk().state().watch(this::show);
  }

  private ComboBox<PlatingForm.Choice> choice(
      String id, List<PlatingForm.Choice> all, Function<Job, String> now, Consumer<String> choose) {
    ComboBox<PlatingForm.Choice> box = new ComboBox<>();
    box.setId(id);
    box.setMaxWidth(Double.MAX_VALUE);
    box.getItems().setAll(all);
    box.setAccessibleText(Messages.text("plating." + id));
    session
        .desk()
        .state()
        .watch(
            state ->
                state
                    .job()
                    .ifPresent(
                        job ->
                            all.stream()
                                .filter(c -> c.id().equals(now.apply(job)))
                                .findFirst()
                                .ifPresent(box::setValue)));
    box.setOnAction(
        e -> {
          if (box.getValue() != null) {
            choose.accept(box.getValue().id());
          }
        });
    return box;
  }

  private void show(DeskState state) {
    amounts.getChildren().clear();
    amounts.pseudoClassStateChanged(EARLIER, !state.isPlanned());
    List<PlatingForm.Amount> lines = PlatingForm.amounts(state);
    for (int i = 0; i < lines.size(); i++) {
      Label value = new Label(lines.get(i).value());
      value.getStyleClass().add("value");
      PartsView.field(amounts, i, lines.get(i).name(), value);
    }
    if (lines.isEmpty()) {
      amounts.add(PartsView.muted(Messages.text("plating.none")), 0, 0);
    }
  }
}
