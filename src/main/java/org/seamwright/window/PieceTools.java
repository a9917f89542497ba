package org.seamwright.window;

import java.util.List;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;
import org.seamwright.desk.Watched;

/** What floats over the picture: the choice of look, the standard views, the key to colours. */
final class PieceTools {
  private PieceTools() {}

  /** The choice between section colours and finished gold. */
  static Node looks(PiecePresenter presenter) {
    ToggleGroup group = new ToggleGroup();
    ToggleButton sections = look(presenter, group, PieceColours.Look.SECTIONS, "look.sections");
    ToggleButton gold = look(presenter, group, PieceColours.Look.GOLD, "look.gold");
    sections.getStyleClass().add("left-pill");
    ToggleButton again = look(presenter, group, PieceColours.Look.AGAIN, "look.again");
    again.getStyleClass().add("center-pill");
    gold.getStyleClass().add("right-pill");
    group
        .selectedToggleProperty()
        .addListener(
            (value, before, now) -> {
              if (now == null) {
                before.setSelected(true);
              }
            });
    HBox box = new HBox(sections, again, gold);
    box.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    return box;
  }

  private static ToggleButton look(
      PiecePresenter presenter, ToggleGroup group, PieceColours.Look look, String key) {
    ToggleButton button = new ToggleButton(Messages.text(key));
    button.setId(key.replace('.', '-'));
    button.setToggleGroup(group);
    button.setSelected(presenter.look().get() == look);
    button.setOnAction(e -> presenter.look().set(look));
    button.setTooltip(new Tooltip(Messages.text(key + ".tip")));
    button.setAccessibleText(Messages.text(key + ".tip"));
    return button;
  }

  /** Buttons for the whole piece and the standard views. */
  static Node views(PieceView view) {
    HBox box = new HBox(button("view.fit", "F", view::fit));
    for (StandardView standard : StandardView.values()) {
      String key = "view." + standard.name().toLowerCase(Locale.ROOT);
      String shortcut = Integer.toString(standard.key());
      box.getChildren().add(button(key, shortcut, () -> view.show(standard)));
    }
    box.getStyleClass().add("views");
    box.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    return box;
  }

  private static Button button(String key, String shortcut, Runnable action) {
    Button button = new Button(Messages.text(key));
    button.setId(key.replace('.', '-'));
    button.getStyleClass().addAll("flat", "small");
    button.setOnAction(e -> action.run());
    button.setFocusTraversable(false);
    button.setTooltip(new Tooltip(Messages.text("view.tip", Messages.text(key), shortcut)));
    button.setAccessibleText(Messages.text("view.tip", Messages.text(key), shortcut));
    return button;
  }

  /** The key to the colours that are not a section's own. */
  static Node legend(PiecePresenter presenter, Watched<Boolean> patterns) {
    PieceColours palette = presenter.palette();
    VBox box =
        new VBox(
            entry(palette.gold(), "legend.gold"),
            entry(PieceColours.mix(palette.swatch(1), 0x26313C, 0.35), "legend.lap"),
            hatched(palette.bare(), "legend.bare", FaceClasses.BARE),
            hatched(palette.outOfScope(), "legend.out", FaceClasses.OUT_OF_SCOPE));
    List<String> activated = presenter.texts().activated();
    for (int times = activated.size(); times >= 1; times--) {
      box.getChildren().add(0, named(PieceColours.again(times), activated.get(times - 1)));
    }
    int heat = activated.size();
    box.getChildren().add(patterns(patterns));
    box.getStyleClass().add("legend");
    box.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    presenter
        .look()
        .watch(
            look -> {
              for (int i = 0; i < heat; i++) {
                box.getChildren().get(i).setVisible(look == PieceColours.Look.AGAIN);
              }
              box.getChildren().get(heat).setVisible(look == PieceColours.Look.GOLD);
              box.getChildren().get(heat + 1).setVisible(look == PieceColours.Look.SECTIONS);
            });
    return box;
  }

  /** The switch between colours alone and colours with patterns. */
  static Node patterns(Watched<Boolean> patterns) {
    CheckBox box = new CheckBox(Messages.text("set.patterns"));
    box.setId("patterns");
    box.setTooltip(new Tooltip(Messages.text("set.patterns.tip")));
    box.setAccessibleText(Messages.text("set.patterns.tip"));
    box.setSelected(patterns.get());
    box.setOnAction(e -> patterns.set(box.isSelected()));
    return box;
  }

  /** The key to the colours while marking. */
  static Node markLegend(Watched<Boolean> patterns) {
    VBox box = new VBox();
    int[] colours = MarkClasses.colours();
    String[] keys = {"legend.out", "legend.bare", "legend.gold", "", "legend.draft"};
    for (int c = keys.length - 1; c >= 0; c--) {
      if (!keys[c].isEmpty()) {
        HBox entry = entry(colours[c], keys[c]);
        ((Swatch) entry.getChildren().get(0)).hatch(MarkClasses.pattern(c));
        box.getChildren().add(entry);
      }
    }
    box.getChildren().add(patterns(patterns));
    box.getStyleClass().add("legend");
    box.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    return box;
  }

  private static HBox hatched(int rgb, String key, int faceClass) {
    HBox entry = entry(rgb, key);
    ((Swatch) entry.getChildren().get(0)).hatch(MarkClasses.pattern(faceClass));
    return entry;
  }

  private static HBox entry(int rgb, String key) {
    return named(rgb, Messages.text(key));
  }

  private static HBox named(int rgb, String name) {
    Swatch swatch = new Swatch(14, 14, rgb);
    Label text = new Label(name);
    HBox entry = new HBox(swatch, text);
    entry.setAlignment(Pos.CENTER_LEFT);
    entry.getStyleClass().add("legend-entry");
    entry.managedProperty().bind(entry.visibleProperty());
    return entry;
  }
}
