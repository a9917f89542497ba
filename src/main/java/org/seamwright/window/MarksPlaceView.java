package org.seamwright.window;

import java.util.List;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.MarkEdits;
import org.seamwright.desk.MarkRows;
import org.seamwright.desk.MarkTool;
import org.seamwright.desk.Messages;
import org.seamwright.desk.Preview;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitFormat;

/** What stays bare: the tools of marking, what a draft would do, and the marks in their order. */
final class MarksPlaceView extends VBox {
  private final Session session;
  private final Label help = PartsView.muted("");
  private final Label draft = PartsView.text("");
  private final VBox list = PartsView.group();
  private final ToggleGroup tools = new ToggleGroup();
  private List<Object> shown = List.of();

  MarksPlaceView(Session session) {
    this.session = session;
    setId("place-marks");
    getStyleClass().add("place");
    help.setId("tool-help");
    draft.setId("draft");
    draft.getStyleClass().add("value");
    Button add =
        PartsView.button("add-mark", Messages.text("marks.add"), session.marking()::confirm);
    add.managedProperty().bind(add.visibleProperty());
    FlowPane palette = new FlowPane();
    palette.getStyleClass().add("palette");
    for (MarkTool tool : MarkTool.values()) {
      palette.getChildren().add(tool(tool));
    }
    getChildren()
        .addAll(
            PartsView.heading("marks.tools"),
            palette,
            help,
            new ToolSettingsView(session),
            draft,
            add,
            new MarkEditingView(session),
            PartsView.heading("marks.list"),
            list);
    session
        .marking()
        .tool()
        .watch(
            tool -> {
              help.setText(tool.help());
              add.setVisible(tool.use() == MarkTool.Use.FORM);
              tools.getToggles().stream()
                  .filter(t -> t.getUserData() == tool)
                  .forEach(t -> t.setSelected(true));
            });
    session
        .marking()
        .closed()
        .watch(
            closed -> {
              if (closed) {
                help.setText(Messages.text("tool.outline.inside"));
              }
            });
    session.desk().preview().watch(this::show);
    session.desk().state().watch(this::show);
  }

  private ToggleButton tool(MarkTool tool) {
    ToggleButton button = new ToggleButton(tool.title());
    button.setId("tool-" + tool.key());
    button.setUserData(tool);
    button.setToggleGroup(tools);
    button.getStyleClass().addAll("small", "tool");
    button.setTooltip(new Tooltip(tool.help()));
    button.setAccessibleText(tool.title() + ". " + tool.help());
    button.setOnAction(
        e -> {
          button.setSelected(true);
          session.marking().take(tool);
        });
    return button;
  }

  private void show(Preview preview) {
    DeskState state = session.desk().state().get();
    if (!preview.refusal().isEmpty()) {
      draft.setText(preview.refusal());
    } else if (preview.map().isPresent() && state.job().isPresent()) {
      UnitFormat in = new UnitFormat(state.job().get().display(), Locale.ENGLISH);
      draft.setText(Messages.text("marks.draft", in.area(preview.changedMm2())));
    } else {
      draft.setText("");
    }
  }

  private void show(DeskState state) {
    List<MarkRows.Row> rows = MarkRows.of(state);
    List<Object> now = List.of(rows, state.job().map(job -> job.ground().name()).orElse(""));
    if (shown.equals(now)) {
      return;
    }
    shown = now;
    list.getChildren().clear();
    state.job().ifPresent(job -> list.getChildren().add(ground(job.ground())));
    if (rows.isEmpty()) {
      list.getChildren().add(PartsView.muted(Messages.text("marks.none")));
    }
    for (MarkRows.Row row : rows) {
      list.getChildren().add(row(row, rows.size()));
    }
  }

  /** What becomes of all that no mark covers. */
  private HBox ground(Treatment ground) {
    Label text = new Label(Messages.text("marks.ground"));
    Button next =
        PartsView.button(
            "ground",
            treatment(ground),
            () -> session.desk().change(job -> job.withGround(following(job.ground()))));
    next.getStyleClass().add("small");
    next.setAccessibleText(Messages.text("marks.ground") + " " + treatment(ground));
    return PartsView.row(text, PartsView.gap(), next);
  }

  private static Treatment following(Treatment treatment) {
    List<Treatment> all = List.of(Treatment.values());
    return all.get((all.indexOf(treatment) + 1) % all.size());
  }

  private static String treatment(Treatment treatment) {
    return Messages.text(
        "treatment." + treatment.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  private VBox row(MarkRows.Row row, int count) {
    int i = row.index();
    String number = Integer.toString(i + 1);
    CheckBox on = new CheckBox();
    on.setId("mark-on-" + number);
    on.setSelected(row.isOn());
    on.setAccessibleText(Messages.text("marks.on", row.title()));
    on.setTooltip(new Tooltip(Messages.text("marks.on", row.title())));
    on.setOnAction(
        e ->
            session
                .desk()
                .change(job -> job.withMarks(MarkEdits.switched(job.marks(), i, on.isSelected()))));
    TextField name = new TextField(row.name());
    name.setId("mark-name-" + number);
    name.setPromptText(row.kind());
    name.setAccessibleText(Messages.text("marks.name", number, row.kind()));
    name.getStyleClass().add("mark-name");
    HBox.setHgrow(name, Priority.ALWAYS);
    Runnable rename =
        () ->
            session
                .desk()
                .change(
                    job ->
                        i < job.marks().size()
                            ? job.withMarks(
                                MarkEdits.renamed(job.marks(), i, name.getText().strip()))
                            : job);
    name.setOnAction(e -> rename.run());
    name.focusedProperty()
        .addListener(
            (value, before, now) -> {
              if (!now && !name.getText().strip().equals(row.name())) {
                rename.run();
              }
            });
    Button up = move("↑", "marks.up", row, i - 1, i > 0);
    Button down = move("↓", "marks.down", row, i + 1, i + 1 < count);
    Button drop =
        PartsView.sign(
            "mark-drop-" + number,
            "✕",
            Messages.text("marks.drop", row.title()),
            () -> session.desk().change(job -> job.withMarks(MarkEdits.dropped(job.marks(), i))));
    Button edit =
        PartsView.sign(
            "mark-edit-" + number,
            "✎",
            Messages.text("marks.edit", row.title()),
            () -> session.marking().edit(i));
    edit.setDisable(!row.isOn());
    HBox top = PartsView.row(on, name, edit, up, down, drop);
    Label what = new Label(row.name().isEmpty() ? "" : row.kind());
    what.getStyleClass().add("muted");
    Label changes = new Label(row.changes());
    changes.setId("mark-area-" + number);
    HBox below = PartsView.row(what, PartsView.gap(), changes);
    row.treatment()
        .ifPresent(
            t -> {
              Swatch swatch = new Swatch(14, 14, MarkClasses.colour(t));
              Button change =
                  PartsView.button(
                      "mark-treatment-" + number,
                      treatment(t),
                      () ->
                          session
                              .desk()
                              .change(
                                  job ->
                                      job.withMarks(
                                          MarkEdits.treated(job.marks(), i, following(t)))));
              change.setGraphic(swatch);
              change.getStyleClass().addAll("flat", "small");
              change.setAccessibleText(Messages.text("marks.treatment", row.title(), treatment(t)));
              below.getChildren().add(0, change);
            });
    VBox box = new VBox(top, below);
    box.getStyleClass().add("mark");
    box.setAlignment(Pos.CENTER_LEFT);
    return box;
  }

  private Button move(String sign, String key, MarkRows.Row row, int to, boolean can) {
    int i = row.index();
    Button button =
        PartsView.sign(
            "mark-" + key.substring(key.indexOf('.') + 1) + "-" + (i + 1),
            sign,
            Messages.text(key, row.title()),
            () -> session.desk().change(job -> job.withMarks(MarkEdits.moved(job.marks(), i, to))));
    button.setDisable(!can);
    return button;
  }
}
