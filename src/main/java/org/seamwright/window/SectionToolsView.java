package org.seamwright.window;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.seamwright.desk.Messages;
import org.seamwright.desk.SectionHands;
import org.seamwright.desk.SectionTool;

/** The tools that change sections by hand, and what the one taken is set to. */
final class SectionToolsView extends VBox {
  private final SectionHands hands;
  private final ToggleGroup group = new ToggleGroup();
  private final Label help = PartsView.muted("");
  private final Label amount = new Label();
  private final HBox setting;

  SectionToolsView(SectionHands hands) {
    this.hands = hands;
    getStyleClass().add("group");
    FlowPane palette = new FlowPane();
    palette.getStyleClass().add("palette");
    for (SectionTool tool : SectionTool.values()) {
      palette.getChildren().add(button(tool));
    }
    help.setId("section-help");
    amount.setId("section-setting");
    Button less = PartsView.sign("setting-less", "−", Messages.text("setting.less"), () -> set(-1));
    Button more = PartsView.sign("setting-more", "+", Messages.text("setting.more"), () -> set(1));
    setting = PartsView.row(amount, less, more);
    setting.managedProperty().bind(setting.visibleProperty());
    Label refusal = PartsView.text("");
    refusal.setId("section-refusal");
    refusal.getStyleClass().add("wrong");
    refusal.managedProperty().bind(refusal.textProperty().isNotEmpty());
    getChildren()
        .addAll(PartsView.heading("section-tool.heading"), palette, help, setting, refusal);
    hands.tool().watch(tool -> show());
    hands.parts().watch(parts -> show());
    hands.share().watch(share -> show());
    hands.draft().watch(draft -> refusal.setText(draft.map(d -> d.refusal()).orElse("")));
  }

  private ToggleButton button(SectionTool tool) {
    ToggleButton button = new ToggleButton(tool.title());
    button.setId("section-tool-" + tool.key());
    button.setUserData(tool);
    button.setToggleGroup(group);
    button.getStyleClass().addAll("small", "tool");
    button.setTooltip(new Tooltip(tool.help()));
    button.setAccessibleText(tool.title() + ". " + tool.help());
    button.setOnAction(
        e -> {
          button.setSelected(true);
          hands.take(tool);
        });
    return button;
  }

  private void set(int step) {
    if (hands.tool().get() == SectionTool.SPLIT) {
      hands.setParts(hands.parts().get() + step);
    } else {
      hands.setShare(hands.share().get() + 0.1 * step);
    }
  }

  private void show() {
    SectionTool tool = hands.tool().get();
    help.setText(tool.help());
    group.getToggles().stream()
        .filter(t -> t.getUserData() == tool)
        .forEach(t -> t.setSelected(true));
    setting.setVisible(tool == SectionTool.SPLIT || tool == SectionTool.SEAM);
    amount.setText(
        tool == SectionTool.SPLIT
            ? Messages.text("setting.parts", Integer.toString(hands.parts().get()))
            : Messages.text("setting.share", Long.toString(Math.round(100 * hands.share().get()))));
  }
}
