package org.seamwright.window;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.RowConstraints;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.seamwright.bench.BenchDesk;
import org.seamwright.bench.BenchKeys;
import org.seamwright.bench.BenchKeys.Deed;
import org.seamwright.bench.BenchState.Phase;
import org.seamwright.bench.Countdown;
import org.seamwright.desk.Messages;
import org.seamwright.desk.NextStep;

/**
 * The bench: what is worked on, the step in hand, its clocks, and buttons for wet gloves. Three
 * parts that stand round the picture of the piece: {@link #bar}, {@link #side} and {@link
 * #buttons}.
 */
final class BenchView {
  private static final Duration TICK = Duration.millis(200);

  /** Share of the window's width that the words take. */
  private static final double SIDE_SHARE = 0.64;

  /** Buttons that are not for gloves, px. */
  private static final double BAR_BUTTON = 60;

  private final Session session;
  private final BenchDesk bench;
  private final BenchKeys keys;
  private final Tones tones;
  private final HBox bar = new HBox();
  private final ScrollPane side = new ScrollPane();
  private final GridPane buttons = new GridPane();
  private final Label piece = BenchPartsView.label("bench-piece", "bench-piece");
  private final StackPane badge = new StackPane();
  private final Label section = BenchPartsView.label("bench-section", "bench-section");
  private final Label told = BenchPartsView.label("bench-note", "bench-told");
  private final Label trouble = BenchPartsView.label("bench-trouble", "bench-trouble");
  private final Button key;
  private final Map<Deed, Button> deeds = new EnumMap<>(Deed.class);
  private final BenchStepView step;
  private final BenchPadView pad;
  private final BenchListView lists;
  private final Timeline clock;
  private Optional<PiecePresenter> plan = Optional.empty();
  private IntConsumer face = id -> {};
  private int faced;

  BenchView(Session session, Tones tones) {
    this.session = session;
    this.bench = session.bench();
    this.keys = session.benchKeys();
    this.tones = tones;
    key = BenchPartsView.big("bench-next", "", " ", keys::mainKey);
    key.getStyleClass().addAll("accent", "bench-main");
    for (Deed deed : Deed.values()) {
      deeds.put(deed, button(deed));
    }
    step = new BenchStepView(bench);
    pad = new BenchPadView(bench, keys);
    lists = new BenchListView(bench, keys);
    fillBar();
    fillButtons();
    side.setFitToWidth(true);
    side.setFitToHeight(true);
    side.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    side.setFocusTraversable(false);
    side.setId("bench");
    side.getStyleClass().add("bench-side");
    clock = new Timeline(new KeyFrame(TICK, e -> tick()));
    clock.setCycleCount(Animation.INDEFINITE);
    keys.open().watch(this::opened);
    bench.run().watch(run -> show());
    bench.halt().watch(halt -> show());
    bench.trouble().watch(what -> show());
    bench.settings().watch(s -> show());
    keys.panel().watch(panel -> show());
    bench.alarm().watch(this::sound);
    tones.isHeard().watch(heard -> show());
    session.desk().state().watch(state -> show());
  }

  /** What stands above. */
  Region bar() {
    return bar;
  }

  /** What stands beside the picture. */
  Region side() {
    return side;
  }

  /** What stands below. */
  Region buttons() {
    return buttons;
  }

  /** How wide the side is in a window. */
  static double sideWidth(double windowWidth) {
    return SIDE_SHARE * windowWidth;
  }

  /** The picture shows another plan; {@code facing} turns a section to the viewer. */
  void follow(Optional<PiecePresenter> presenter, IntConsumer facing) {
    plan = presenter;
    face = facing;
    faced = 0;
    show();
  }

  private Button button(Deed deed) {
    String word = Messages.text("bench.deed." + lower(deed));
    return BenchPartsView.big("bench-" + lower(deed), word, deed.letter(), () -> keys.act(deed));
  }

  private void fillBar() {
    bar.getStyleClass().addAll("header", "bench-bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    badge.setMinSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    for (Label label : List.of(piece, section, told)) {
      label.setWrapText(false);
    }
    piece.setMinWidth(0);
    section.setMinWidth(Region.USE_PREF_SIZE);
    bar.getChildren()
        .addAll(
            badge,
            section,
            told,
            PartsView.gap(),
            piece,
            deeds.get(Deed.SOUND),
            deeds.get(Deed.KEY));
    for (Deed deed : List.of(Deed.SOUND, Deed.KEY)) {
      deeds.get(deed).setMinHeight(BAR_BUTTON);
      deeds.get(deed).setPrefHeight(BAR_BUTTON);
      deeds.get(deed).setMinWidth(Region.USE_PREF_SIZE);
    }
  }

  private void fillButtons() {
    buttons.getStyleClass().add("bench-buttons");
    List<Deed> rows =
        List.of(
            Deed.DIP,
            Deed.STILL_WET,
            Deed.FIGURES,
            Deed.UNDO,
            Deed.BACK,
            Deed.DRIED_OUT,
            Deed.SECTIONS,
            Deed.MASKS,
            Deed.END,
            Deed.LEAVE);
    int columns = rows.size() / 2;
    buttons.add(key, 0, 0, 1, 2);
    ColumnConstraints wide = new ColumnConstraints();
    wide.setPercentWidth(30);
    buttons.getColumnConstraints().add(wide);
    for (int i = 0; i < rows.size(); i++) {
      buttons.add(deeds.get(rows.get(i)), 1 + i % columns, i / columns);
    }
    for (int r = 0; r < 2; r++) {
      // What a label wraps to must not make the rows taller.
      buttons.getRowConstraints().add(rows());
    }
    for (int c = 0; c < columns; c++) {
      ColumnConstraints narrow = new ColumnConstraints();
      narrow.setPercentWidth(70.0 / columns);
      buttons.getColumnConstraints().add(narrow);
    }
    buttons.setMinHeight(Region.USE_PREF_SIZE);
    deeds.get(Deed.DRIED_OUT).getStyleClass().add("danger");
  }

  private static RowConstraints rows() {
    double high = BenchPartsView.BUTTON;
    return new RowConstraints(high, high, high);
  }

  private void opened(boolean open) {
    if (open) {
      clock.play();
    } else {
      clock.stop();
    }
    faced = 0;
    show();
  }

  private void tick() {
    bench.tick();
    step.tick();
  }

  private void sound(BenchDesk.Alarm alarm) {
    if (alarm.sounds() && keys.open().get() && !bench.settings().get().muted()) {
      tones.beep(alarm.level() == Countdown.Level.OVER ? 3 : 1);
    }
  }

  /** A key of the window, before anything else gets it. */
  void onKey(KeyEvent event) {
    if (!keys.open().get() || event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    if (event.getEventType() == KeyEvent.KEY_RELEASED) {
      keys.released(event.getCode().name());
    } else if (event.getEventType() == KeyEvent.KEY_PRESSED) {
      Node focus = side.getScene().getFocusOwner();
      boolean mine = keys.pressed(event.getCode().name(), event.getText());
      if (!mine && event.getCode() == KeyCode.ENTER && focus instanceof ButtonBase button) {
        button.fire();
        mine = true;
      }
      if (mine) {
        event.consume();
      }
    }
  }

  private void show() {
    if (!keys.open().get()) {
      return;
    }
    Optional<BenchDesk.Run> run = bench.run().get();
    piece.setText(run.map(r -> r.plan().figures().piece()).orElse(""));
    section.setText(run.map(r -> r.words().section()).orElse(Messages.text("bench.title")));
    showSection(run.map(r -> r.state().sectionId()).orElse(0));
    told.setText(run.map(r -> r.words().figures()).orElse(""));
    key.setDisable(run.isEmpty() || run.get().state().phase() == Phase.ENDED);
    String letter = bench.settings().get().keyTitle();
    BenchPartsView.name(key, keyWord(run), letter);
    deeds.forEach((deed, button) -> button.setDisable(!keys.can(deed)));
    long dips = run.map(r -> r.state().dips(Math.max(1, r.state().sectionId()))).orElse(0L);
    name(Deed.DIP, Messages.text("bench.deed.dip-count", Long.toString(dips)));
    String undo = run.map(r -> r.words().undo()).orElse("");
    deeds.get(Deed.UNDO).setAccessibleHelp(undo);
    name(Deed.SOUND, soundWord());
    name(Deed.KEY, Messages.text("bench.deed.key-is", letter));
    trouble.setText(bench.trouble().get());
    side.setContent(content(run));
  }

  private String keyWord(Optional<BenchDesk.Run> run) {
    return switch (keys.panel().get()) {
      case NONE -> run.map(r -> r.words().key()).orElse("");
      case END -> Messages.text("bench.end.now");
      case PAD, SECTIONS, MASKS, KEY -> Messages.text("bench.key.shut");
    };
  }

  private void name(Deed deed, String text) {
    BenchPartsView.name(deeds.get(deed), text, deed.letter());
  }

  private String soundWord() {
    if (bench.settings().get().muted()) {
      return Messages.text("bench.sound.muted");
    }
    return Messages.text(tones.isHeard().get() ? "bench.sound.on" : "bench.sound.none");
  }

  private void showSection(int id) {
    badge.getChildren().clear();
    if (id > 0 && plan.isPresent()) {
      Label number = new Label(Integer.toString(id));
      number.getStyleClass().add("bench-badge");
      badge.getChildren().addAll(new Swatch(84, 60, plan.get().palette().swatch(id)), number);
    }
    if (plan.isPresent() && id != faced) {
      faced = id;
      plan.get().select(id);
      if (id > 0) {
        face.accept(id);
      }
    }
  }

  private Node content(Optional<BenchDesk.Run> run) {
    List<Node> nodes = new ArrayList<>();
    if (!bench.trouble().get().isEmpty()) {
      nodes.add(trouble);
    }
    if (run.isEmpty()) {
      nodes.add(absent());
    } else {
      nodes.add(content(run.get()));
    }
    VBox box = new VBox();
    box.getStyleClass().add("bench-content");
    box.getChildren().setAll(nodes);
    VBox.setVgrow(nodes.get(nodes.size() - 1), Priority.ALWAYS);
    return box;
  }

  private Node content(BenchDesk.Run run) {
    switch (keys.panel().get()) {
      case PAD -> {
        return pad;
      }
      case SECTIONS -> {
        return lists.sections(run, plan);
      }
      case MASKS -> {
        return lists.masks(run);
      }
      case KEY -> {
        return words(Messages.text("bench.choose-key"), Messages.text("bench.choose-key.more"));
      }
      case END -> {
        return lists.end();
      }
      case NONE -> {
        return switch (run.state().phase()) {
          case CAUTIONS -> lists.caution(run);
          case MASKS -> lists.masks(run);
          case ENDED -> lists.summary();
          case WORK, THROUGH -> {
            step.show(run);
            yield step;
          }
        };
      }
    }
    throw new IllegalStateException("No such panel: " + keys.panel().get());
  }

  private static Node words(String first, String second) {
    VBox box =
        new VBox(
            BenchPartsView.text("bench-name", first), BenchPartsView.text("bench-text", second));
    box.getStyleClass().add("bench-words");
    return box;
  }

  /** Why there is no run, and the button that leads to where that is mended. */
  private Node absent() {
    if (bench.halt().get().isPresent()) {
      BenchDesk.Halt halt = bench.halt().get().get();
      VBox box = new VBox(words(halt.why(), halt.remedy()));
      box.getStyleClass().add("bench-words");
      if (halt.canSetAside()) {
        box.getChildren()
            .add(
                BenchPartsView.big(
                    "bench-aside", Messages.text("bench.set-aside"), "", bench::beginAnew));
      }
      return box;
    }
    Optional<NextStep> missing = bench.missing();
    if (missing.isEmpty()) {
      return words(Messages.text("bench.opening"), "");
    }
    NextStep next = missing.get();
    VBox box = new VBox(words(next.text(), next.more()));
    box.getStyleClass().add("bench-words");
    if (next.tone() != NextStep.Tone.BUSY) {
      String where =
          next.deed()
              .map(deed -> Messages.text("deed." + deed.name().toLowerCase(Locale.ROOT)))
              .orElseGet(
                  () -> next.goTo().map(p -> Messages.text("next.go", p.title())).orElse(""));
      box.getChildren().add(BenchPartsView.big("bench-go", where, "", () -> goThere(next)));
    }
    return box;
  }

  private static String lower(Enum<?> name) {
    return name.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void goThere(NextStep next) {
    keys.leave();
    next.goTo().ifPresent(session.place()::set);
    next.deed().ifPresent(session::act);
  }
}
