package org.seamwright.window;

import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.IntConsumer;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.geometry.Pos;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;

/** The sections in working order, and the figures of the one pointed at or chosen. */
final class SectionsView extends VBox {
  private final PiecePresenter presenter;
  private final IntConsumer onChosen;
  private final TableView<SectionTexts.Row> table = new TableView<>();

  /**
   * Shows a piece's sections.
   *
   * @param onChosen told a section that was chosen in the list, to be turned to the viewer
   */
  SectionsView(PiecePresenter presenter, IntConsumer onChosen) {
    this.presenter = presenter;
    this.onChosen = onChosen;
    getStyleClass().add("side");
    Label heading = new Label(Messages.text("sections.heading"));
    heading.getStyleClass().add("side-heading");
    fillTable();
    VBox.setVgrow(table, Priority.ALWAYS);
    getChildren().addAll(new SectionCard(presenter), heading, table);
    presenter.selected().watch(this::showSelected);
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
