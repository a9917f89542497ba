package org.seamwright.window;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;

/** Small parts that panels are made of, so that they all look and read alike. */
final class PartsView {
  private PartsView() {}

  /** A heading within a panel. */
  static Label heading(String key) {
    Label label = new Label(Messages.text(key));
    label.getStyleClass().add("side-heading");
    return label;
  }

  /** Running text. */
  static Label text(String text) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  /** Quiet running text. */
  static Label muted(String text) {
    Label label = text(text);
    label.getStyleClass().add("muted");
    return label;
  }

  /** A button whose text is its name. */
  static Button button(String id, String text, Runnable action) {
    Button button = new Button(text);
    button.setId(id);
    button.setOnAction(e -> action.run());
    button.setAccessibleText(text);
    button.setMinWidth(Region.USE_PREF_SIZE);
    return button;
  }

  /** A small button with a sign, named by its tip. */
  static Button sign(String id, String sign, String tip, Runnable action) {
    Button button = button(id, sign, action);
    button.getStyleClass().addAll("flat", "small", "sign");
    button.setTooltip(new Tooltip(tip));
    button.setAccessibleText(tip);
    return button;
  }

  /** Controls side by side. */
  static HBox row(Node... nodes) {
    HBox row = new HBox(nodes);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add("row");
    return row;
  }

  /** What pushes the rest of a row to its end. */
  static Region gap() {
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    VBox.setVgrow(gap, Priority.ALWAYS);
    return gap;
  }

  /** A group of controls. */
  static VBox group(Node... nodes) {
    VBox box = new VBox(nodes);
    box.getStyleClass().add("group");
    return box;
  }

  /** A control beside its name. */
  static void field(GridPane grid, int row, String name, Node control) {
    Label label = new Label(name);
    label.setWrapText(true);
    label.setLabelFor(control);
    label.setMinHeight(Region.USE_PREF_SIZE);
    GridPane.setHgrow(control, Priority.ALWAYS);
    grid.addRow(row, label, control);
  }

  /** A grid of controls beside their names. */
  static GridPane fields() {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("fields");
    return grid;
  }
}
