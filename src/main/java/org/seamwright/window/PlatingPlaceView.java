package org.seamwright.window;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.PlatingForm;
import org.seamwright.desk.RateForm;
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
            form,
            hold(session),
            new TitledPane(
                Messages.text("plating.tool"), new FormView(session, RateForm.ToolField.values())),
            price(session));
    getChildren().stream()
        .filter(node -> node instanceof TitledPane)
        .forEach(PlatingPlaceView::fold);
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

  /** A part that is there for those who want it: closed at first. */
  private static void fold(Node node) {
    TitledPane pane = (TitledPane) node;
    pane.setExpanded(false);
    pane.setAnimated(false);
    pane.setMinHeight(USE_PREF_SIZE);
    pane.setAccessibleText(pane.getText());
    pane.getStyleClass().add("dense");
  }

  /** How the piece is held. */
  private static TitledPane hold(Session session) {
    ComboBox<RateForm.Up> up = new ComboBox<>();
    up.setId("hold-up");
    up.setMaxWidth(Double.MAX_VALUE);
    up.setAccessibleText(Messages.text("plating.up"));
    up.setConverter(ToolSettingsView.names(RateForm.Up::title));
    FormView steeper = new FormView(session, RateForm.STEEPER);
    session
        .desk()
        .state()
        .watch(
            state ->
                state
                    .job()
                    .ifPresent(
                        job -> {
                          if (!up.getItems().equals(RateForm.ups(job))) {
                            up.getItems().setAll(RateForm.ups(job));
                          }
                          up.setValue(RateForm.up(job));
                          steeper.setDisable(job.plating().hold().isEmpty());
                        }));
    up.setOnAction(
        e -> {
          if (up.getValue() != null) {
            session.desk().change(job -> RateForm.withUp(job, up.getValue()));
          }
        });
    GridPane grid = PartsView.fields();
    PartsView.field(grid, 0, Messages.text("plating.up"), up);
    VBox box = new VBox(grid, steeper);
    box.getStyleClass().add("group");
    TitledPane pane = new TitledPane(Messages.text("plating.hold"), box);
    pane.setId("hold");
    return pane;
  }

  /** What it is to cost. */
  private static TitledPane price(Session session) {
    CheckBox on = new CheckBox(Messages.text("price.on"));
    on.setId("price-on");
    on.setAccessibleText(Messages.text("price.on"));
    on.setOnAction(e -> session.desk().change(job -> RateForm.priced(job, on.isSelected())));
    FormView form = new FormView(session, RateForm.PriceField.values());
    GridPane lines = PartsView.fields();
    lines.setId("price-lines");
    session
        .desk()
        .state()
        .watch(
            state -> {
              boolean priced = state.job().filter(j -> j.quote().isPresent()).isPresent();
              on.setSelected(priced);
              form.setDisable(!priced);
              lines.getChildren().clear();
              lines.pseudoClassStateChanged(EARLIER, !state.isPlanned());
              List<PlatingForm.Amount> amounts = RateForm.price(state);
              for (int i = 0; i < amounts.size(); i++) {
                Label value = new Label(amounts.get(i).value());
                value.getStyleClass().add("value");
                PartsView.field(lines, i, amounts.get(i).name(), value);
              }
            });
    VBox box = new VBox(on, lines, form);
    box.getStyleClass().add("group");
    TitledPane pane = new TitledPane(Messages.text("price.heading"), box);
    pane.setId("price");
    return pane;
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
