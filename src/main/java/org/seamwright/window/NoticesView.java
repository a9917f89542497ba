package org.seamwright.window;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.VBox;
import org.seamwright.basis.Notice;
import org.seamwright.desk.Messages;

/** What was assumed, mended or could not be kept while planning; folded away until wanted. */
final class NoticesView extends TitledPane {
  private static final double HEIGHT = 170;

  NoticesView(List<Notice> notices) {
    VBox list = new VBox();
    list.getStyleClass().add("notices");
    for (Notice notice : notices) {
      Label text = new Label(notice.text());
      text.setWrapText(true);
      list.getChildren().add(text);
    }
    ScrollPane scroll = new ScrollPane(list);
    scroll.setFitToWidth(true);
    scroll.setPrefHeight(HEIGHT);
    setText(Messages.text("notices.heading", Integer.toString(notices.size())));
    setId("notices");
    getStyleClass().add("notices-pane");
    setContent(scroll);
    setExpanded(false);
    setAnimated(false);
    setVisible(!notices.isEmpty());
    setManaged(!notices.isEmpty());
  }
}
