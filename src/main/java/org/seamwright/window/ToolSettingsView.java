package org.seamwright.window;

import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.seamwright.basis.InputException;
import org.seamwright.desk.MarkCopies;
import org.seamwright.desk.MarkTool;
import org.seamwright.desk.Marking;
import org.seamwright.desk.Messages;
import org.seamwright.desk.ToolSettings;
import org.seamwright.region.Treatment;
import org.seamwright.units.Amounts;
import org.seamwright.units.UnitFormat;
import org.seamwright.units.UnitSystem;

/** What the tool that is taken is set to: only what it uses is shown. */
final class ToolSettingsView extends VBox {
  private final Session session;
  private final Marking marking;

  ToolSettingsView(Session session) {
    this.session = session;
    this.marking = session.marking();
    getStyleClass().add("group");
    marking.tool().watch(tool -> show());
    marking.settings().watch(settings -> showIfIdle());
  }

  /** Fields that are being typed in are left alone. */
  private void showIfIdle() {
    Node focus = getScene() == null ? null : getScene().getFocusOwner();
    if (focus == null || focus.getParent() == null || !isWithin(focus)) {
      show();
    }
  }

  private boolean isWithin(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (at == this) {
        return true;
      }
    }
    return false;
  }

  private void show() {
    getChildren().clear();
    MarkTool tool = marking.tool().get();
    GridPane grid = PartsView.fields();
    int row = 0;
    if (treats(tool)) {
      getChildren().add(treatments());
    }
    switch (tool) {
      case STROKE ->
          length(grid, row, "radius", ToolSettings::radiusMm, mm -> set().withRadiusMm(mm));
      case FILL -> {
        number(
            grid, row, "crease", ToolSettings::creaseDegrees, v -> set().withCreaseDegrees(v), 180);
        length(grid, row + 1, "gaps", ToolSettings::gapsMm, mm -> set().withGapsMm(mm));
      }
      case FACING ->
          number(
              grid,
              row,
              "facing",
              ToolSettings::facingDegrees,
              v -> set().withFacingDegrees(v),
              180);
      case PLANE, MIRROR -> PartsView.field(grid, row, Messages.text("set.side"), sides(tool));
      case GROW, SMOOTH, BOX ->
          length(
              grid,
              row,
              tool == MarkTool.GROW ? "by" : tool == MarkTool.BOX ? "depth" : "smooth",
              ToolSettings::byMm,
              mm -> set().withByMm(mm));
      case TURN ->
          number(grid, row, "count", ToolSettings::count, v -> set().withCount((int) v), 360);
      case NAMED -> PartsView.field(grid, row, Messages.text("set.label"), labels());
      default -> {
        // The other tools have nothing to set but the treatment.
      }
    }
    if (tool.takesPlace()) {
      atOnce(grid);
    }
    if (!grid.getChildren().isEmpty()) {
      getChildren().add(grid);
    }
    if (tool.takesPlace()) {
      CheckBox snap = new CheckBox(Messages.text("set.snap"));
      snap.setId("set-snap");
      snap.setAccessibleText(Messages.text("set.snap"));
      snap.setSelected(marking.snaps().get());
      snap.setOnAction(e -> marking.setSnaps(snap.isSelected()));
      getChildren().add(snap);
    }
  }

  /** Where else the tool marks. */
  private void atOnce(GridPane grid) {
    ComboBox<MarkCopies> box = new ComboBox<>();
    box.setId("set-copies");
    box.setAccessibleText(Messages.text("copies.name"));
    box.getItems().setAll(MarkCopies.values());
    box.setConverter(names(MarkCopies::title));
    box.setValue(marking.copies().get());
    box.setOnAction(
        e -> {
          marking.setCopies(box.getValue());
          show();
        });
    int row = grid.getRowCount();
    PartsView.field(grid, row, Messages.text("copies.name"), box);
    if (marking.copies().get() == MarkCopies.TURN) {
      number(grid, row + 1, "count", ToolSettings::count, v -> set().withCount((int) v), 360);
    }
  }

  private ToolSettings set() {
    return marking.settings().get();
  }

  private static boolean treats(MarkTool tool) {
    return switch (tool) {
      case NONE, MIRROR, TURN, INVERT -> false;
      default -> true;
    };
  }

  private HBox treatments() {
    HBox row = PartsView.row();
    ToggleGroup group = new ToggleGroup();
    for (Treatment treatment : Treatment.values()) {
      String word = treatment.name().toLowerCase(Locale.ROOT).replace('_', '-');
      ToggleButton button = new ToggleButton(Messages.text("treatment." + word));
      button.setId("treat-" + word);
      button.setGraphic(new Swatch(14, 14, MarkClasses.colour(treatment)));
      button.setToggleGroup(group);
      button.getStyleClass().add("small");
      button.setSelected(set().treatment() == treatment);
      button.setAccessibleText(Messages.text("treatment." + word));
      button.setOnAction(e -> marking.set(set().withTreatment(treatment)));
      row.getChildren().add(button);
    }
    return row;
  }

  private void length(
      GridPane grid,
      int row,
      String key,
      ToDoubleFunction<ToolSettings> value,
      DoubleFunction<ToolSettings> with) {
    UnitSystem display =
        session.desk().state().get().job().map(j -> j.display()).orElse(UnitSystem.METRIC);
    UnitFormat in = new UnitFormat(display, Locale.ENGLISH).withPlainSpaces();
    TextField field = new TextField(in.length(value.applyAsDouble(set())));
    String before = field.getText();
    typed(
        grid,
        row,
        key,
        field,
        () -> {
          if (field.getText().equals(before)) {
            return;
          }
          double mm = Amounts.lengthMm(field.getText());
          if (mm > 0 || key.equals("gaps")) {
            marking.set(with.apply(mm));
          }
        });
  }

  private void number(
      GridPane grid,
      int row,
      String key,
      ToDoubleFunction<ToolSettings> value,
      DoubleFunction<ToolSettings> with,
      double most) {
    double now = value.applyAsDouble(set());
    TextField field =
        new TextField(now == Math.rint(now) ? Long.toString((long) now) : Double.toString(now));
    typed(
        grid,
        row,
        key,
        field,
        () -> {
          double typed;
          try {
            typed = Double.parseDouble(field.getText().strip().replace(',', '.'));
          } catch (NumberFormatException e) {
            throw new InputException(field.getText(), "", Messages.text("set.number"), "", e);
          }
          if (typed > 0 && typed <= most && (!key.equals("count") || typed >= 2)) {
            marking.set(with.apply(typed));
          }
        });
  }

  /** Something typed that may be refused. */
  @FunctionalInterface
  private interface Taking {
    void take() throws InputException;
  }

  private void typed(GridPane grid, int row, String key, TextField field, Taking taking) {
    field.setId("set-" + key);
    field.setAccessibleText(Messages.text("set." + key));
    Label wrong = PartsView.text("");
    wrong.getStyleClass().add("wrong");
    wrong.setVisible(false);
    wrong.managedProperty().bind(wrong.visibleProperty());
    Runnable take =
        () -> {
          try {
            taking.take();
            wrong.setVisible(false);
          } catch (InputException e) {
            wrong.setText(e.problem() + ". " + e.remedy());
            wrong.setVisible(true);
          }
        };
    field.setOnAction(e -> take.run());
    field
        .focusedProperty()
        .addListener(
            (value, before, now) -> {
              if (!now) {
                take.run();
              }
            });
    PartsView.field(grid, row, Messages.text("set." + key), new VBox(field, wrong));
  }

  /** What a choice is called. */
  static <T> StringConverter<T> names(Function<T, String> title) {
    return new StringConverter<>() {
      @Override
      public String toString(T choice) {
        return choice == null ? "" : title.apply(choice);
      }

      @Override
      public T fromString(String text) {
        throw new UnsupportedOperationException("This is chosen, not typed");
      }
    };
  }

  private ComboBox<ToolSettings.Side> sides(MarkTool tool) {
    ComboBox<ToolSettings.Side> box = new ComboBox<>();
    box.setId("set-side");
    box.setAccessibleText(Messages.text("set.side"));
    for (ToolSettings.Side side : ToolSettings.Side.values()) {
      if (tool == MarkTool.PLANE || side != ToolSettings.Side.FACE) {
        box.getItems().add(side);
      }
    }
    box.setConverter(names(ToolSettings.Side::title));
    box.setValue(set().side());
    box.setOnAction(e -> marking.set(set().withSide(box.getValue())));
    return box;
  }

  private ComboBox<String> labels() {
    ComboBox<String> box = new ComboBox<>();
    box.setId("set-label");
    box.setAccessibleText(Messages.text("set.label"));
    session
        .desk()
        .state()
        .get()
        .document()
        .ifPresent(
            d ->
                box.setItems(
                    FXCollections.observableArrayList(
                        d.labels().names().stream().filter(n -> !n.isBlank()).toList())));
    box.setPlaceholder(new Label(Messages.text("set.no-labels")));
    box.setValue(set().label().isBlank() ? null : set().label());
    box.setOnAction(
        e -> {
          if (box.getValue() != null) {
            marking.set(set().withLabel(box.getValue()));
          }
        });
    return box;
  }
}
