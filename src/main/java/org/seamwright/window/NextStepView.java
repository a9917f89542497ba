package org.seamwright.window;

import java.util.Locale;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Messages;
import org.seamwright.desk.NextStep;

/** The line that says how the job stands, with a button that goes on from there. */
final class NextStepView extends HBox {
  private final Session session;
  private final Label text = new Label();
  private final Label more = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final Button button = new Button();

  NextStepView(Session session) {
    this.session = session;
    setId("next");
    getStyleClass().add("next");
    setAlignment(Pos.CENTER_LEFT);
    text.setId("next-text");
    text.getStyleClass().add("next-text");
    text.setWrapText(true);
    more.setId("next-more");
    more.setWrapText(true);
    more.managedProperty().bind(more.visibleProperty());
    VBox words = new VBox(text, more);
    words.setMinWidth(0);
    words.setAlignment(Pos.CENTER_LEFT);
    bar.setId("progress");
    bar.setPrefWidth(180);
    bar.setAccessibleText(Messages.text("next.progress"));
    bar.managedProperty().bind(bar.visibleProperty());
    button.setId("next-button");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.managedProperty().bind(button.visibleProperty());
    getChildren().addAll(words, PartsView.gap(), bar, button);
    session.desk().state().watch(state -> show(state));
    session.papers().status().watch(status -> show(session.desk().state().get()));
    session.place().watch(place -> show(session.desk().state().get()));
  }

  private void show(DeskState state) {
    NextStep step = NextStep.of(state, session.papers().areMade());
    for (NextStep.Tone tone : NextStep.Tone.values()) {
      pseudoClassStateChanged(
          PseudoClass.getPseudoClass(tone.name().toLowerCase(Locale.ROOT)), tone == step.tone());
    }
    text.setText(step.text());
    more.setText(step.more());
    more.setVisible(!step.more().isEmpty());
    bar.setVisible(step.tone() == NextStep.Tone.BUSY);
    state.work().ifPresent(work -> bar.setProgress(work.fraction()));
    if (step.deed().isPresent()) {
      NextStep.Deed deed = step.deed().get();
      act(Messages.text("deed." + deed.name().toLowerCase(Locale.ROOT)), () -> session.act(deed));
    } else if (step.goTo().isPresent() && step.goTo().get() != session.place().get()) {
      act(
          Messages.text("next.go", step.goTo().get().title()),
          () -> session.place().set(step.goTo().get()));
    } else {
      button.setVisible(false);
    }
  }

  private void act(String name, Runnable action) {
    button.setText(name);
    button.setAccessibleText(name);
    button.setOnAction(e -> action.run());
    button.setVisible(true);
  }
}
