package org.seamwright.window;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.IntConsumer;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;
import org.seamwright.desk.SectionDraft;
import org.seamwright.desk.SectionHands;

/** The sections in working order, and the figures of the one pointed at or chosen. */
final class SectionsView extends VBox {
  private static final PseudoClass DROP = PseudoClass.getPseudoClass("drop");

  /** Its heading and some rows: in a low window the figures below make room. */
  private static final double LEAST_HEIGHT = 150;

  private final PiecePresenter presenter;
  private final SectionHands hands;
  private final IntConsumer onChosen;
  private final TableView<SectionTexts.Row> table = new TableView<>();

  /**
   * Shows a piece's sections.
   *
   * @param onChosen told a section that was chosen in the list, to be turned to the viewer
   */
  SectionsView(PiecePresenter presenter, SectionHands hands, IntConsumer onChosen) {
    this.presenter = presenter;
    this.hands = hands;
    this.onChosen = onChosen;
    getStyleClass().add("side");
    Label heading = new Label(Messages.text("sections.heading"));
    heading.getStyleClass().add("side-heading");
    fillTable();
    VBox.setVgrow(table, Priority.ALWAYS);
    table.setMinHeight(LEAST_HEIGHT);
    getChildren().addAll(heading, table, new SectionCard(presenter, hands));
    presenter.selected().watch(this::showSelected);
  }

  /** While an edit is tried out the list has its figures. */
  void showDraft(Optional<SectionDraft> draft) {
    List<SectionTexts.Row> rows =
        draft
            .flatMap(SectionDraft::shown)
            .map(d -> presenter.texts().rows(d.sections(), d.plating()))
            .orElse(presenter.texts().rows());
    if (!rows.equals(List.copyOf(table.getItems()))) {
      table.getItems().setAll(rows);
    }
  }

  private void onKey(KeyEvent event) {
    SectionTexts.Row row = table.getSelectionModel().getSelectedItem();
    int step = event.getCode() == KeyCode.UP ? -1 : event.getCode() == KeyCode.DOWN ? 1 : 0;
    if (event.isAltDown() && step != 0 && row != null) {
      hands.renumber(row.id(), row.id() + step);
      event.consume();
    }
  }

  private void fillTable() {
    table.setId("sections");
    table.getStyleClass().addAll("edge-to-edge", "dense", "sections");
    table.setAccessibleText(Messages.text("sections.accessible"));
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN);
    table.getColumns().add(numberColumn());
    table.getColumns().add(column("sections.worked", SectionTexts.Row::worked));
    table.getColumns().add(column("sections.gold", SectionTexts.Row::gold));
    table.getColumns().add(column("sections.time", SectionTexts.Row::time));
    table.getItems().setAll(presenter.texts().rows());
    table.setRowFactory(view -> row());
    table.addEventFilter(KeyEvent.KEY_PRESSED, this::onKey);
    table.setTooltip(new Tooltip(Messages.text("sections.reorder")));
    table
        .getSelectionModel()
        .selectedItemProperty()
        .addListener((value, before, now) -> chosen(now == null ? 0 : now.id()));
  }

  private TableRow<SectionTexts.Row> row() {
    TableRow<SectionTexts.Row> row = new TableRow<>();
    row.hoverProperty()
        .addListener(
            (value, before, now) ->
                presenter.hover(now && !row.isEmpty() ? row.getItem().id() : 0));
    row.setOnDragDetected(
        e -> {
          if (!row.isEmpty()) {
            row.startFullDrag();
            e.consume();
          }
        });
    row.setOnMouseDragEntered(e -> row.pseudoClassStateChanged(DROP, !row.isEmpty()));
    row.setOnMouseDragExited(e -> row.pseudoClassStateChanged(DROP, false));
    row.setOnMouseDragReleased(
        e -> {
          row.pseudoClassStateChanged(DROP, false);
          if (!row.isEmpty() && e.getGestureSource() instanceof TableRow<?> from) {
            hands.renumber(from.getIndex() + 1, row.getItem().id());
          }
        });
    return row;
  }

  private TableColumn<SectionTexts.Row, SectionTexts.Row> numberColumn() {
    TableColumn<SectionTexts.Row, SectionTexts.Row> column =
        new TableColumn<>(Messages.text("sections.number"));
    column.setCellValueFactory(cell -> new ReadOnlyObjectWrapper<>(cell.getValue()));
    column.setCellFactory(view -> new NumberCell());
    column.setSortable(false);
    column.setReorderable(false);
    column.setMinWidth(58);
    column.setMaxWidth(58);
    return column;
  }

  private static TableColumn<SectionTexts.Row, String> column(
      String key, Function<SectionTexts.Row, String> text) {
    TableColumn<SectionTexts.Row, String> column = new TableColumn<>(Messages.text(key));
    column.setCellValueFactory(cell -> new ReadOnlyObjectWrapper<>(text.apply(cell.getValue())));
    column.getStyleClass().add("figure-column");
    // The order is the order of work, which nothing here may change.
    column.setSortable(false);
    column.setReorderable(false);
    return column;
  }

  private void chosen(int section) {
    if (section > 0 && !isSelected(section)) {
      presenter.select(section);
      hands.chosen(section);
      onChosen.accept(section);
    }
  }

  private boolean isSelected(int section) {
    OptionalInt selected = presenter.selected().get();
    return selected.isPresent() && selected.getAsInt() == section;
  }

  private void showSelected(OptionalInt section) {
    if (section.isEmpty()) {
      table.getSelectionModel().clearSelection();
    } else {
      table.getSelectionModel().select(section.getAsInt() - 1);
      table.scrollTo(Math.max(0, section.getAsInt() - 3));
    }
  }

  /** The number of a section on its colour, with a warning where it is over the limit. */
  private final class NumberCell extends TableCell<SectionTexts.Row, SectionTexts.Row> {
    NumberCell() {
      setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
      setAlignment(Pos.CENTER);
    }

    @Override
    protected void updateItem(SectionTexts.Row row, boolean empty) {
      super.updateItem(row, empty);
      if (empty || row == null) {
        setGraphic(null);
        setText(null);
        return;
      }
      setText(Integer.toString(row.id()));
      setAccessibleText(row.overLimit() ? Messages.text("sections.over", getText()) : getText());
      setGraphic(badge(presenter, row.id(), row.overLimit()));
    }
  }

  /** A section's number on its colour. */
  static StackPane badge(PiecePresenter presenter, int section, boolean overLimit) {
    Swatch ground = new Swatch(34, 20, presenter.palette().swatch(section));
    Label text = new Label(overLimit ? section + "!" : Integer.toString(section));
    text.getStyleClass().add("badge");
    return new StackPane(ground, text);
  }
}
