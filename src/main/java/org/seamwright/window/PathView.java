package org.seamwright.window;

import java.util.EnumMap;
import java.util.Map;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import org.seamwright.desk.Messages;
import org.seamwright.desk.Place;

/** The five places as one path, the one that is shown among them. */
final class PathView extends HBox {
  private static final PseudoClass UNDER_WAY = PseudoClass.getPseudoClass("under-way");

  private final Map<Place, ToggleButton> buttons = new EnumMap<>(Place.class);

  PathView(Session session) {
    setId("path");
    getStyleClass().add("path");
    setAlignment(Pos.CENTER_LEFT);
    ToggleGroup group = new ToggleGroup();
    for (Place place : Place.values()) {
      if (place != Place.PIECE) {
        Region link = new Region();
        link.getStyleClass().add("path-link");
        getChildren().add(link);
      }
      ToggleButton button = button(session, place);
      button.setToggleGroup(group);
      buttons.put(place, button);
      getChildren().add(button);
    }
    Button bench = PartsView.button("path-bench", "", session.benchKeys()::enter);
    bench.getStyleClass().add("path-bench");
    getChildren().addAll(PartsView.gap(), bench);
    session
        .bench()
        .underWay()
        .watch(
            underWay -> {
              String text = Messages.text(underWay ? "bench.go-on" : "bench.title");
              bench.setText(text);
              bench.setAccessibleText(text);
              bench.pseudoClassStateChanged(UNDER_WAY, underWay);
            });
    group
        .selectedToggleProperty()
        .addListener(
            (value, before, now) -> {
              if (now == null) {
                before.setSelected(true);
              }
            });
    session.place().watch(place -> buttons.get(place).setSelected(true));
    session
        .desk()
        .state()
        .watch(
            state ->
                buttons.forEach(
                    (place, button) ->
                        button.setDisable(place != Place.PIECE && state.job().isEmpty())));
  }

  private static ToggleButton button(Session session, Place place) {
    Label number = new Label(Integer.toString(place.number()));
    number.getStyleClass().add("path-number");
    ToggleButton button = new ToggleButton(place.title(), number);
    button.setId("path-" + place.key());
    button.getStyleClass().add("path-step");
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(e -> session.place().set(place));
    button.setAccessibleText(
        Messages.text("path.accessible", Integer.toString(place.number()), place.title()));
    return button;
  }
}
