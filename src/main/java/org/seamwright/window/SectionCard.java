package org.seamwright.window;

import java.util.List;
import java.util.OptionalInt;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;
import org.seamwright.desk.SectionHands;

/** The figures of the section under the pointer, or else of the chosen one. */
final class SectionCard extends VBox {
  private static final PseudoClass OVER_LIMIT = PseudoClass.getPseudoClass("over-limit");
  private static final double PLACE_HEIGHT = 38;

  private final PiecePresenter presenter;
  private final SectionHands hands;
  private final TextField called = new TextField();
  private final HBox title = new HBox();
  private final Label place = new Label();
  private final GridPane grid = new GridPane();
  private final ProgressBar share = new ProgressBar(0);
  private final Label limit = new Label();

  SectionCard(PiecePresenter presenter, SectionHands hands) {
    this.presenter = presenter;
    this.hands = hands;
    setId("section-card");
    getStyleClass().add("card");
    // The list below scrolls; the figures are never squeezed.
    setMinHeight(USE_PREF_SIZE);
    title.getStyleClass().add("card-title");
    title.setAlignment(Pos.CENTER_LEFT);
    place.setId("place");
    place.setWrapText(true);
    place.getStyleClass().add("muted");
    grid.getStyleClass().add("figures");
    share.setMaxWidth(Double.MAX_VALUE);
    share.getStyleClass().add("share");
    limit.getStyleClass().add("limit");
    // Room for two lines, so that nothing jumps while the pointer moves over the piece.
    place.setMinHeight(PLACE_HEIGHT);
    place.setAlignment(Pos.TOP_LEFT);
    share.setAccessibleText(Messages.text("section.share"));
    limit.setWrapText(true);
    called.setId("section-name");
    called.getStyleClass().add("mark-name");
    called.setPromptText(Messages.text("section.name"));
    called.setAccessibleText(Messages.text("section.name"));
    HBox.setHgrow(called, Priority.ALWAYS);
    called.setOnAction(e -> rename());
    called
        .focusedProperty()
        .addListener(
            (value, before, now) -> {
              if (!now) {
                rename();
              }
            });
    getChildren().addAll(title, place, grid, share, limit);
    if (!presenter.texts().rows().isEmpty()) {
      // Hidden at first, so that the card has its full height from the start.
      show(1);
    }
    presenter.pointed().watch(spot -> refresh());
    presenter.hovered().watch(section -> refresh());
    presenter.selected().watch(section -> refresh());
  }

  /** Only a section that is chosen can be named: the pointer would change it while typing. */
  private void rename() {
    OptionalInt chosen = presenter.selected().get();
    if (chosen.isPresent()
        && !called.getText().strip().equals(presenter.texts().name(chosen.getAsInt()))) {
      hands.rename(chosen.getAsInt(), called.getText());
    }
  }

  private void refresh() {
    if (called.isFocused()) {
      return;
    }
    OptionalInt shown = presenter.shown();
    boolean some = shown.isPresent();
    grid.setVisible(some);
    share.setVisible(some);
    limit.setVisible(some);
    String sentence =
        presenter
            .pointed()
            .get()
            .map(presenter.texts()::place)
            .orElse(some ? "" : Messages.text("card.none.text"));
    place.setText(sentence);
    if (some) {
      show(shown.getAsInt());
    } else {
      Label none = new Label(Messages.text("card.none.title"));
      none.setId("section-title");
      none.getStyleClass().add("card-name");
      title.getChildren().setAll(none);
    }
  }

  private void show(int id) {
    Label name = new Label(presenter.texts().title(id));
    name.setId("section-title");
    name.getStyleClass().add("card-name");
    double used = presenter.texts().shareOfLimit(id);
    title.getChildren().setAll(SectionsView.badge(presenter, id, used > 1), name);
    OptionalInt chosen = presenter.selected().get();
    if (chosen.isPresent() && chosen.getAsInt() == id) {
      called.setText(presenter.texts().name(id));
      title.getChildren().add(called);
    } else if (!presenter.texts().name(id).isEmpty()) {
      name.setText(presenter.texts().name(id));
    }
    List<SectionTexts.Line> lines = presenter.texts().laps(id);
    grid.getChildren().clear();
    for (int row = 0; row < lines.size(); row++) {
      Label key = new Label(lines.get(row).name());
      key.getStyleClass().add("muted");
      Label value = new Label(lines.get(row).value());
      value.getStyleClass().add("value");
      key.setLabelFor(value);
      grid.addRow(row, key, value);
    }
    share.setProgress(Math.min(1, used));
    limit.setText(presenter.texts().limitSentence(id));
    pseudoClassStateChanged(OVER_LIMIT, used > 1);
  }
}
