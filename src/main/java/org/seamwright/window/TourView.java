package org.seamwright.window;

import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.seamwright.desk.Messages;
import org.seamwright.desk.Tour;

/** The step of the tour that is shown, and what can be done with it. */
final class TourView extends HBox {
  private final Label number = new Label();
  private final Label text = new Label();
  private final Tour tour;
  private final Button act;
  private final Button next;

  TourView(Tour tour) {
    this.tour = tour;
    setId("tour");
    getStyleClass().add("tour");
    number.getStyleClass().add("path-number");
    text.setId("tour-text");
    text.setWrapText(true);
    text.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(text, Priority.ALWAYS);
    act = PartsView.button("tour-act", Messages.text("tour.act"), tour::act);
    next = PartsView.button("tour-next", Messages.text("tour.next"), tour::next);
    next.setDefaultButton(false);
    Button leave = PartsView.button("tour-leave", Messages.text("tour.leave"), tour::leave);
    leave.getStyleClass().add("flat");
    getChildren().addAll(number, text, act, next, leave);
    managedProperty().bind(visibleProperty());
    tour.step().watch(step -> show());
    tour.done().watch(done -> show());
  }

  private void show() {
    Optional<Tour.Step> step = tour.step().get();
    setVisible(step.isPresent());
    if (step.isEmpty()) {
      return;
    }
    boolean end = step.get() == Tour.Step.END;
    number.setText(Integer.toString(step.get().number()));
    text.setText(step.get().text());
    act.setDisable(tour.done().get() || end);
    next.setDisable(!tour.done().get() || end);
  }
}
