package org.seamwright.window;

import java.nio.file.Path;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the piece is called, where its job is kept, and the sums of the plan. */
final class HeaderView extends HBox {
  HeaderView(PiecePresenter presenter, Runnable choose) {
    Label name = new Label(presenter.piece().job().job().piece());
    name.setId("piece-name");
    name.getStyleClass().add("piece-name");
    Path path = presenter.piece().job().jobFile();
    Label file = new Label(path.toString());
    file.getStyleClass().add("muted");
    VBox what = new VBox(name, file);
    what.setAlignment(Pos.CENTER_LEFT);
    what.setMinWidth(0);
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    Button open = new Button(Messages.text("button.open"));
    open.setOnAction(e -> choose.run());
    open.setAccessibleText(Messages.text("button.open"));
    HBox totals = new HBox();
    totals.setId("totals");
    totals.getStyleClass().add("totals");
    totals.setMinWidth(Region.USE_PREF_SIZE);
    totals.setAlignment(Pos.CENTER_RIGHT);
    for (SectionTexts.Line line : presenter.texts().totals()) {
      totals.getChildren().add(total(line));
    }
    getStyleClass().add("header");
    setAlignment(Pos.CENTER_LEFT);
    getChildren().addAll(what, gap, totals, open);
  }

  private static VBox total(SectionTexts.Line line) {
    Label value = new Label(line.value());
    value.getStyleClass().add("total-value");
    Label name = new Label(line.name());
    name.getStyleClass().add("muted");
    name.setLabelFor(value);
    VBox box = new VBox(value, name);
    box.setAlignment(Pos.CENTER_RIGHT);
    return box;
  }
}
