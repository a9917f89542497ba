package org.seamwright.window;

import java.util.Locale;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.bench.BenchDesk;
import org.seamwright.bench.BenchState;
import org.seamwright.bench.BenchWords;
import org.seamwright.bench.Countdown;
import org.seamwright.desk.Messages;

/** The step in hand, large: what, why, with which current, how long, and how long it stays wet. */
final class BenchStepView extends VBox {
  private static final PseudoClass LATE = PseudoClass.getPseudoClass("late");

  private final BenchDesk bench;
  private final Label inStep = BenchPartsView.label("bench-clock", "bench-in-step");
  private final Label left = BenchPartsView.label("bench-clock", "bench-left");
  private final Label wetWords = BenchPartsView.label("bench-note", "bench-wet-words");
  private final Region spent = new Region();
  private final Region share = new Region();
  private final VBox wet;
  private final VBox question = new VBox();
  private final Label asked = BenchPartsView.label("bench-text", "bench-question");
  private final VBox words = new VBox();

  BenchStepView(BenchDesk bench) {
    this.bench = bench;
    getStyleClass().add("bench-step");
    share.getStyleClass().add("bench-share");
    spent.getStyleClass().add("bench-spent");
    StackPane bar = new StackPane(spent, share);
    StackPane.setAlignment(share, Pos.CENTER_LEFT);
    wet =
        new VBox(
            BenchPartsView.text("bench-note", Messages.text("bench.wet.title")),
            left,
            bar,
            wetWords);
    wet.setId("bench-wet");
    wet.managedProperty().bind(wet.visibleProperty());
    wet.getStyleClass().add("bench-wet");
    HBox.setHgrow(wet, Priority.ALWAYS);
    fillQuestion();
    words.getStyleClass().add("bench-words");
  }

  private void fillQuestion() {
    Button dried =
        BenchPartsView.big(
            "bench-answer-dried", Messages.text("bench.answer.dried"), "X", bench::driedOut);
    Button still =
        BenchPartsView.big(
            "bench-answer-wet", Messages.text("bench.answer.wet"), "W", bench::stillWet);
    dried.getStyleClass().add("danger");
    HBox answers = new HBox(dried, still);
    answers.getStyleClass().add("bench-answers");
    question.getChildren().addAll(asked, answers);
    question.getStyleClass().add("bench-asked");
  }

  /** Shows the run as it stands. */
  void show(BenchDesk.Run run) {
    BenchWords say = run.words();
    words.getChildren().clear();
    Optional<BenchWords.StepWords> step = say.step();
    VBox clock =
        new VBox(
            BenchPartsView.text("bench-note", Messages.text("bench.step.time", say.planned())),
            inStep);
    clock.getStyleClass().add("bench-timer");
    clock.setMinWidth(USE_PREF_SIZE);
    HBox clocks = new HBox(clock, wet);
    clocks.getStyleClass().add("bench-clocks");
    getChildren().clear();
    if (step.isEmpty()) {
      String through = Messages.text("bench.through." + place(run));
      words.getChildren().add(BenchPartsView.text("bench-text", through));
      getChildren().add(words);
      return;
    }
    BenchWords.StepWords of = step.get();
    Label name = BenchPartsView.text("bench-name", of.name());
    name.setId("bench-step-name");
    Label number = BenchPartsView.text("bench-note", of.number());
    words.getChildren().add(BenchPartsView.text("bench-text", of.purpose()));
    if (!of.supply().isEmpty()) {
      FlowPane supply = new FlowPane();
      supply.getStyleClass().add("bench-supply");
      of.supply().forEach(s -> supply.getChildren().add(BenchPartsView.text("bench-chip", s)));
      words.getChildren().add(supply);
    }
    add("bench-caution", "bench.step.caution", of.caution());
    add("bench-done", "bench.step.done", of.done());
    add("bench-wrong", "bench.step.wrong", of.wrong());
    VBox head = new VBox(number, name);
    getChildren().add(head);
    if (run.state().wet().asked()) {
      getChildren().add(question);
    }
    getChildren().add(clocks);
    if (!say.away().isEmpty()) {
      getChildren().add(BenchPartsView.text("bench-note", say.away()));
    }
    getChildren().add(words);
    tick();
  }

  private static String place(BenchDesk.Run run) {
    return run.state().phase() == BenchState.Phase.THROUGH ? "all" : "one";
  }

  private void add(String style, String key, String text) {
    if (!text.isEmpty()) {
      Label label = BenchPartsView.text(style, Messages.text(key, text));
      label.setId(style);
      words.getChildren().add(label);
    }
  }

  /** Shows the time. */
  void tick() {
    if (bench.run().get().isEmpty()) {
      return;
    }
    BenchWords say = bench.run().get().get().words();
    long now = bench.nowMs();
    inStep.setText(say.inStep(now));
    inStep.pseudoClassStateChanged(LATE, say.isLate(now));
    say.question(now).ifPresent(asked::setText);
    Optional<Countdown> countdown = bench.countdown().get();
    wet.setVisible(countdown.isPresent());
    for (Countdown.Level level : Countdown.Level.values()) {
      wet.pseudoClassStateChanged(
          PseudoClass.getPseudoClass(level.name().toLowerCase(Locale.ROOT)),
          countdown.filter(c -> c.level() == level).isPresent());
    }
    countdown.ifPresent(
        c -> {
          left.setText(BenchWords.left(c));
          share.setMaxWidth(spent.getWidth() * Math.max(0, c.leftMs()) / c.windowMs());
          wetWords.setText(say.wet(c));
        });
  }
}
