package org.seamwright.window;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.seamwright.bench.BenchDesk;
import org.seamwright.bench.BenchKeys;
import org.seamwright.bench.BenchState;
import org.seamwright.bench.BenchWords;
import org.seamwright.desk.Messages;

/** Pages of the bench beside the step: cautions, masks, sections, the end, the summary. */
final class BenchListView {
  private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");

  private final BenchDesk bench;
  private final BenchKeys keys;

  BenchListView(BenchDesk bench, BenchKeys keys) {
    this.bench = bench;
    this.keys = keys;
  }

  private static VBox page(Node... nodes) {
    VBox box = new VBox(nodes);
    box.getStyleClass().add("bench-words");
    return box;
  }

  /** The caution to be read now. */
  Node caution(BenchDesk.Run run) {
    BenchWords.Caution caution = run.words().caution().orElseThrow();
    Label text = BenchPartsView.text("bench-large", caution.text());
    text.setId("bench-caution-text");
    VBox box =
        page(
            BenchPartsView.text("bench-note", caution.number()),
            BenchPartsView.text("bench-name", "⚠ " + caution.title()),
            text);
    if (!caution.limits().isEmpty()) {
      box.getChildren().add(BenchPartsView.text("bench-note", caution.limits()));
    }
    return box;
  }

  /** The masks, each to be ticked. */
  Node masks(BenchDesk.Run run) {
    VBox box =
        page(
            BenchPartsView.text("bench-name", Messages.text("bench.masks.title")),
            BenchPartsView.text("bench-note", Messages.text("bench.masks.text")));
    boolean nextFound = false;
    for (int i = 0; i < run.plan().masks().size(); i++) {
      int index = i;
      boolean on = run.state().masks().get(i);
      Button row =
          BenchPartsView.big(
              "bench-mask-" + i,
              (on ? "☑  " : "☐  ") + run.plan().masks().get(i),
              "",
              () -> bench.mask(index, !on));
      row.setAccessibleText(
          Messages.text(on ? "bench.masks.on" : "bench.masks.off", run.plan().masks().get(i)));
      row.getStyleClass().add("bench-row");
      row.pseudoClassStateChanged(CHOSEN, !on && !nextFound);
      nextFound |= !on;
      box.getChildren().add(row);
    }
    return box;
  }

  /** The sections in working order, to choose from. */
  Node sections(BenchDesk.Run run, Optional<PiecePresenter> plan) {
    FlowPane all = new FlowPane();
    all.getStyleClass().add("bench-tiles");
    for (int id = 1; id <= run.plan().sections().size(); id++) {
      int section = id;
      String status = run.words().status(id);
      BenchState.Status far = run.state().sections().get(id - 1).status();
      String sign =
          switch (far) {
            case DONE -> "✔ ";
            case FLASHED -> "◐ ";
            case WAITING -> "";
          };
      boolean here = run.state().sectionId() == id;
      Button tile =
          BenchPartsView.big(
              "bench-section-" + id, (here ? "▶ " : sign) + id, status, () -> keys.choose(section));
      tile.setAccessibleText(Messages.text("bench.row", Integer.toString(id)) + ", " + status);
      tile.getStyleClass().addAll("bench-tile", "bench-" + far.name().toLowerCase(Locale.ROOT));
      tile.pseudoClassStateChanged(CHOSEN, here);
      plan.ifPresent(
          p ->
              tile.setStyle(
                  String.format(
                      Locale.ROOT, "-fx-border-color: #%06x;", p.palette().swatch(section))));
      all.getChildren().add(tile);
    }
    return page(
        BenchPartsView.text("bench-name", Messages.text("bench.sections.title")),
        BenchPartsView.text("bench-note", Messages.text("bench.sections.text")),
        all);
  }

  /** Whether the run is to end. */
  Node end() {
    return page(
        BenchPartsView.text("bench-name", Messages.text("bench.end.title")),
        BenchPartsView.text("bench-text", Messages.text("bench.end.text")),
        BenchPartsView.big("bench-end-now", Messages.text("bench.end.now"), "", keys::end),
        BenchPartsView.big("bench-end-not", Messages.text("bench.end.not"), "Esc", keys::close));
  }

  /** What the run came to. */
  Node summary() {
    VBox box = page(BenchPartsView.text("bench-name", Messages.text("bench.sum.title")));
    Label where =
        BenchPartsView.text(
            "bench-text",
            Messages.text(
                bench.isBooked() ? "bench.sum.booked" : "bench.sum.not-booked",
                String.valueOf(bench.bookFile().getFileName())));
    where.setTooltip(new Tooltip(bench.bookFile().toString()));
    where.setAccessibleHelp(bench.bookFile().toString());
    where.setId("bench-booked");
    box.getChildren().add(where);
    if (!bench.isBooked()) {
      box.getChildren()
          .add(BenchPartsView.big("bench-book", Messages.text("bench.sum.again"), "", bench::end));
    }
    List<BenchWords.Summary> lines = bench.summary();
    for (BenchWords.Summary line : lines) {
      VBox row =
          new VBox(
              BenchPartsView.text(
                  "bench-text",
                  line.name() + (line.status().isEmpty() ? "" : " – " + line.status())),
              BenchPartsView.text("bench-note", line.used()),
              BenchPartsView.text("bench-note", line.thickness()));
      row.getStyleClass().add("bench-sum");
      box.getChildren().add(row);
    }
    box.getChildren()
        .add(BenchPartsView.text("bench-note", Messages.text("bench.sum.uncertainty")));
    box.getChildren()
        .add(BenchPartsView.big("bench-new", Messages.text("bench.new"), "", bench::beginAnew));
    return box;
  }
}
