package org.seamwright.window;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Parts of the bench: all of them large. */
final class BenchPartsView {
  /** Height of a button that a wet glove hits, px. */
  static final double BUTTON = 84;

  private BenchPartsView() {}

  /** A text of a style, broken into lines. */
  static Label text(String style, String text) {
    Label label = PartsView.text(text);
    label.getStyleClass().add(style);
    return label;
  }

  /** A text that will change. */
  static Label label(String style, String id) {
    Label label = text(style, "");
    label.setId(id);
    return label;
  }

  /** A large button with the letter that stands for it. */
  static Button big(String id, String text, String letter, Runnable action) {
    Label word = new Label(text);
    word.getStyleClass().add("bench-word");
    word.setWrapText(true);
    Label key = new Label(letter);
    key.getStyleClass().add("bench-letter");
    key.setMinWidth(Region.USE_PREF_SIZE);
    VBox both = letter.isEmpty() ? new VBox(word) : new VBox(word, key);
    both.setAlignment(Pos.CENTER);
    Button button = new Button();
    button.setGraphic(both);
    button.setId(id);
    button.getStyleClass().add("bench-button");
    button.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    // A label that may wrap asks for more height than it needs.
    button.setPrefHeight(BUTTON);
    button.setMinHeight(BUTTON);
    button.setAccessibleText(letter.isEmpty() ? text : text + " (" + letter + ")");
    button.setOnAction(e -> action.run());
    return button;
  }

  /** Changes what such a button says. */
  static void name(Button button, String text, String letter) {
    VBox both = (VBox) button.getGraphic();
    ((Label) both.getChildren().get(0)).setText(text);
    if (both.getChildren().size() > 1) {
      ((Label) both.getChildren().get(1)).setText(letter);
    }
    button.setAccessibleText(letter.isEmpty() ? text : text + " (" + letter + ")");
  }
}
