package org.seamwright.window;

import java.nio.file.Path;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;
import org.seamwright.desk.SampleModels;
import org.seamwright.desk.Tour;

/** The first thing there is to see: what to open, or a sample to look around with. */
final class StartView extends StackPane {
  private static final double WIDTH = 560;

  StartView(Session session) {
    Label heading = PartsView.text(Messages.text("start.title"));
    heading.getStyleClass().add("title-3");
    Button open = PartsView.button("start-open", Messages.text("start.open"), session::open);
    open.setDefaultButton(true);
    VBox card =
        new VBox(
            heading,
            PartsView.text(Messages.text("start.text")),
            PartsView.row(open),
            PartsView.muted(Messages.text("start.drop")));
    List<Path> samples = SampleModels.find();
    if (!samples.isEmpty()) {
      FlowPane row = new FlowPane();
      row.getStyleClass().add("row");
      for (Path sample : samples) {
        String name = String.valueOf(sample.getFileName()).replace(".json", "");
        Button button = PartsView.button("sample-" + name, name, () -> session.open(sample));
        row.getChildren().add(button);
      }
      card.getChildren()
          .addAll(
              PartsView.heading("start.samples"),
              PartsView.muted(Messages.text("start.invented")),
              row);
    }
    Tour.samples()
        .ifPresent(
            sample -> {
              Button tour =
                  PartsView.button(
                      "start-tour",
                      Messages.text("start.tour"),
                      () -> session.tour().start(sample));
              card.getChildren().add(PartsView.row(tour));
            });
    card.getStyleClass().addAll("card", "state");
    card.setMaxSize(WIDTH, Region.USE_PREF_SIZE);
    setAlignment(card, Pos.CENTER);
    getStyleClass().add("piece");
    getChildren().add(card);
  }
}
