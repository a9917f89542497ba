package org.seamwright.window;

import java.util.Optional;
import java.util.function.IntConsumer;
import javafx.scene.control.Button;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.PlatingForm;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;

/** Sections: how large they may be, and those that came of it. */
final class SectionsPlaceView extends VBox {
  private final VBox found = new VBox();

  SectionsPlaceView(Session session) {
    setId("place-sections");
    getStyleClass().add("place");
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
    VBox.setVgrow(found, Priority.ALWAYS);
    getChildren().addAll(PartsView.heading("sections.rules"), form, way, found);
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
    plan.ifPresent(
        p -> {
          SectionsView sections = new SectionsView(p, onChosen);
          VBox.setVgrow(sections, Priority.ALWAYS);
          found.getChildren().add(sections);
        });
  }
}
