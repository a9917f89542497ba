package org.seamwright.window;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.seamwright.bench.BenchDesk;
import org.seamwright.bench.BenchEvent.What;
import org.seamwright.bench.BenchKeys;
import org.seamwright.bench.BenchWords;
import org.seamwright.desk.Messages;

/** The number pad: what is told, the figure, and keys large enough for gloves. */
final class BenchPadView extends VBox {
  private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
  private static final String[] KEYS = {"7", "8", "9", "4", "5", "6", "1", "2", "3", ",", "0", "⌫"};

  private final BenchDesk bench;
  private final BenchKeys keys;
  private final Map<What, Button> quantities = new EnumMap<>(What.class);
  private final Label figure = BenchPartsView.label("bench-figure", "bench-figure");
  private final Label soFar = BenchPartsView.label("bench-note", "bench-so-far");
  private final Button confirm;
  private final Button subject;

  BenchPadView(BenchDesk bench, BenchKeys keys) {
    this.bench = bench;
    this.keys = keys;
    getStyleClass().add("bench-pad");
    subject =
        BenchPartsView.big("bench-subject", "", "P", () -> keys.whole().set(!keys.whole().get()));
    List<Button> kinds = new ArrayList<>();
    for (What what : BenchKeys.QUANTITIES) {
      Button button =
          BenchPartsView.big(
              "bench-" + what.name().toLowerCase(Locale.ROOT),
              BenchWords.quantity(what),
              BenchWords.unit(what),
              () -> keys.choose(what));
      quantities.put(what, button);
      kinds.add(button);
    }
    kinds.add(subject);
    List<Button> digits = new ArrayList<>();
    for (int i = 0; i < KEYS.length; i++) {
      String key = KEYS[i];
      boolean erase = i == KEYS.length - 1;
      Button button =
          BenchPartsView.big("bench-key-" + i, key, "", () -> press(erase, key.charAt(0)));
      button.setAccessibleText(erase ? Messages.text("bench.pad.erase") : key);
      digits.add(button);
    }
    confirm =
        BenchPartsView.big("bench-enter", Messages.text("bench.pad.enter"), "↵", keys::confirm);
    confirm.getStyleClass().add("accent");
    Button cancel =
        BenchPartsView.big("bench-cancel", Messages.text("button.cancel"), "Esc", keys::close);
    VBox.setVgrow(confirm, Priority.ALWAYS);
    VBox.setVgrow(cancel, Priority.ALWAYS);
    VBox ends = new VBox(cancel, confirm);
    ends.getStyleClass().add("bench-ends");
    GridPane left = grid("bench-kinds", 2, kinds);
    GridPane middle = grid("bench-keys", 3, digits);
    HBox all = new HBox(left, middle, ends);
    all.getStyleClass().add("bench-answers");
    HBox.setHgrow(left, Priority.ALWAYS);
    HBox.setHgrow(middle, Priority.ALWAYS);
    getChildren().addAll(figure, soFar, all);
    keys.pad().watch(pad -> show());
    keys.quantity().watch(what -> show());
    keys.whole().watch(whole -> show());
    keys.panel().watch(panel -> show());
  }

  private static GridPane grid(String style, int columns, List<Button> buttons) {
    GridPane grid = new GridPane();
    grid.getStyleClass().add(style);
    for (int c = 0; c < columns; c++) {
      ColumnConstraints even = new ColumnConstraints();
      even.setPercentWidth(100.0 / columns);
      grid.getColumnConstraints().add(even);
    }
    for (int i = 0; i < buttons.size(); i++) {
      grid.add(buttons.get(i), i % columns, i / columns);
    }
    return grid;
  }

  private void press(boolean erase, char key) {
    if (erase) {
      keys.erase();
    } else {
      keys.type(key);
    }
  }

  private void show() {
    What what = keys.quantity().get();
    String typed = keys.pad().get().text();
    figure.setText(
        BenchWords.quantity(what)
            + "  "
            + (typed.isEmpty() ? "–" : typed)
            + " "
            + BenchWords.unit(what));
    quantities.forEach((w, button) -> button.pseudoClassStateChanged(CHOSEN, w == what));
    confirm.setDisable(!keys.canConfirm());
    String of =
        keys.whole().get()
            ? Messages.text("bench.piece")
            : Messages.text("bench.row", Integer.toString(keys.subject()));
    BenchPartsView.name(subject, of, "P");
    bench.run().get().ifPresent(run -> soFar.setText(run.words().soFar(keys.subject(), what)));
  }
}
