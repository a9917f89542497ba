package org.seamwright.window;

import java.util.Optional;
import java.util.function.IntConsumer;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Spinner;
import javafx.scene.control.TitledPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.PlatingForm;
import org.seamwright.desk.WayForm;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;

/** Sections: how large they may be, those that came of it, and the tools that change them. */
final class SectionsPlaceView extends VBox {
  private static final PseudoClass OVER_LIMIT = PseudoClass.getPseudoClass("over-limit");

  private final Session session;
  private final VBox found = new VBox();
  private Optional<SectionsView> list = Optional.empty();
  private final Label limit = PartsView.muted("");

  SectionsPlaceView(Session session) {
    this.session = session;
    setId("place-sections");
    getStyleClass().addAll("place", "sections-place");
    FormView form =
        new FormView(
            session,
            PlatingForm.Field.LIMIT,
            PlatingForm.Field.ACTIVATION_LAP,
            PlatingForm.Field.FLASH_LAP);
    Button way = PartsView.button("limit-way", "", () -> switchLimit(session));
    way.getStyleClass().add("small");
    session
        .desk()
        .state()
        .watch(
            state -> {
              String text = Messages.text(isByArea(state) ? "sections.by-wet" : "sections.by-area");
              way.setText(text);
              way.setAccessibleText(text);
            });
    limit.setId("limit-sentence");
    limit.getStyleClass().add("limit");
    VBox rules = new VBox(form, way, ways());
    rules.getStyleClass().add("group");
    TitledPane pane = new TitledPane(Messages.text("sections.rules"), rules);
    pane.setId("section-rules");
    pane.setExpanded(false);
    pane.setAnimated(false);
    pane.setMinHeight(USE_PREF_SIZE);
    pane.setAccessibleText(Messages.text("sections.rules"));
    pane.getStyleClass().add("dense");
    VBox.setVgrow(found, Priority.ALWAYS);
    session.hands().draft().watch(draft -> list.ifPresent(view -> view.showDraft(draft)));
    getChildren().addAll(new SectionToolsView(session.hands()), limit, pane, found);
  }

  /** How sections are made, and how many parts there are to be. */
  private GridPane ways() {
    ComboBox<WayForm.Way> way = new ComboBox<>();
    way.setId("section-way");
    way.setMaxWidth(Double.MAX_VALUE);
    way.setAccessibleText(Messages.text("way.name"));
    way.setConverter(ToolSettingsView.names(WayForm.Way::title));
    way.getItems().setAll(WayForm.Way.values());
    Spinner<Integer> count = new Spinner<>(0, 200, 0);
    count.setId("section-way-count");
    count.setEditable(true);
    count.setMaxWidth(Double.MAX_VALUE);
    count.setAccessibleText(Messages.text("way.count"));
    count.getEditor().setAccessibleText(Messages.text("way.count"));
    boolean[] showing = {false};
    session
        .desk()
        .state()
        .watch(
            state ->
                state
                    .job()
                    .ifPresent(
                        job -> {
                          showing[0] = true;
                          way.setValue(WayForm.of(job));
                          count.getValueFactory().setValue(WayForm.count(job));
                          count.setDisable(!WayForm.of(job).counts());
                          showing[0] = false;
                        }));
    way.setOnAction(
        e -> {
          if (!showing[0] && way.getValue() != null) {
            session.desk().change(job -> WayForm.with(job, way.getValue(), WayForm.count(job)));
          }
        });
    count
        .valueProperty()
        .addListener(
            (value, before, now) -> {
              if (!showing[0] && now != null) {
                session.desk().change(job -> WayForm.with(job, WayForm.of(job), now));
              }
            });
    GridPane grid = PartsView.fields();
    PartsView.field(grid, 0, Messages.text("way.name"), way);
    PartsView.field(grid, 1, Messages.text("way.count"), count);
    return grid;
  }

  private static boolean isByArea(DeskState state) {
    return state.job().filter(j -> j.sections().limit() instanceof Job.Limit.Area).isPresent();
  }

  private static void switchLimit(Session session) {
    DeskState state = session.desk().state().get();
    double limit = state.plan().map(PlannedJob::limitMm2).orElse(10_000.0);
    session.desk().change(job -> PlatingForm.limitedByArea(job, !isByArea(state), limit));
  }

  /**
   * Shows the sections of a plan.
   *
   * @param onChosen told a section chosen in the list
   */
  void show(Optional<PiecePresenter> plan, IntConsumer onChosen) {
    found.getChildren().clear();
    list = Optional.empty();
    plan.ifPresent(
        p -> {
          limit.setText(p.texts().limit());
          limit.setTooltip(new Tooltip(p.texts().limitExplanation()));
          pseudoClassStateChanged(OVER_LIMIT, p.texts().isAnyOver());
          SectionsView sections = new SectionsView(p, session.hands(), onChosen);
          VBox.setVgrow(sections, Priority.ALWAYS);
          list = Optional.of(sections);
          found.getChildren().add(sections);
        });
  }
}
