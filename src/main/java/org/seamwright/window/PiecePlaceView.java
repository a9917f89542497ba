package org.seamwright.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.FaultList;
import org.seamwright.desk.Messages;
import org.seamwright.desk.PlatingForm;
import org.seamwright.desk.SizeChoice;
import org.seamwright.job.Job;
import org.seamwright.job.Piece;
import org.seamwright.mend.Mended;
import org.seamwright.mend.Repair;
import org.seamwright.units.Amounts;

/** The piece: how large it is, what is wrong with its model, what of it is table or stand. */
final class PiecePlaceView extends VBox {
  private final Session session;
  private final PlainShowing showing;
  private final VBox size = PartsView.group();
  private final VBox faults = PartsView.group();
  private final VBox cut = PartsView.group();
  private final List<Vector3D> ends = new ArrayList<>();
  private final Label lengthHelp = PartsView.muted("");
  private final TextField length = new TextField();
  private final Label lengthWrong = PartsView.text("");
  private Optional<Object> shownSize = Optional.empty();
  private Optional<Object> shownFaults = Optional.empty();

  PiecePlaceView(Session session, PlainShowing showing) {
    this.session = session;
    this.showing = showing;
    setId("place-piece");
    getStyleClass().add("place");
    lengthWrong.getStyleClass().add("wrong");
    lengthWrong.managedProperty().bind(lengthWrong.visibleProperty());
    lengthWrong.setVisible(false);
    length.setId("known-length");
    length.setPromptText(Messages.text("piece.length.prompt"));
    length.setAccessibleText(Messages.text("piece.length.name"));
    length.setOnAction(e -> useLength());
    getChildren().addAll(size, faults, cut);
    session.desk().state().watch(this::show);
  }

  private void show(DeskState state) {
    boolean some = state.document().isPresent();
    setVisible(some);
    if (!some) {
      return;
    }
    Object sizeKey =
        List.of(
            state.document().get().sha256(),
            state.job().map(j -> (Object) j.mesh().scale()).orElse(""),
            state.job().map(j -> (Object) j.display()).orElse(""),
            state.piece().map(p -> (Object) p.mmPerUnit()).orElse(""));
    if (!shownSize.equals(Optional.of(sizeKey))) {
      shownSize = Optional.of(sizeKey);
      showSize(state);
    }
    // Records of a piece hold whole meshes, so they are told apart by identity.
    Object faultKey =
        List.of(
            state.piece().map(System::identityHashCode).orElse(0),
            state.job().map(j -> (Object) j.cleaning()).orElse(""));
    if (!shownFaults.equals(Optional.of(faultKey))) {
      shownFaults = Optional.of(faultKey);
      showFaults(state);
      showCut(state);
    }
  }

  private void showSize(DeskState state) {
    size.getChildren().setAll(PartsView.heading("piece.size"));
    state
        .piece()
        .ifPresent(
            piece -> {
              Label is = PartsView.text(Piece.size(piece.survey().bounds()));
              is.setId("piece-size");
              is.getStyleClass().add("value");
              size.getChildren().add(is);
            });
    if (state.piece().isEmpty()) {
      size.getChildren().add(PartsView.text(Messages.text("piece.size.ask")));
    }
    for (SizeChoice.Unit unit : SizeChoice.units(state.document().orElseThrow())) {
      size.getChildren().add(unit(state, unit));
    }
    lengthHelp.setText(Messages.text("piece.length.help"));
    Button use = PartsView.button("use-length", Messages.text("piece.length.use"), this::useLength);
    Button pick =
        PartsView.button("pick-length", Messages.text("piece.length.pick"), this::pickLength);
    size.getChildren()
        .addAll(
            PartsView.heading("piece.length"),
            lengthHelp,
            PartsView.row(pick),
            PartsView.row(length, use),
            lengthWrong);
  }

  private Button unit(DeskState state, SizeChoice.Unit unit) {
    boolean chosen = state.job().filter(j -> j.mesh().scale().equals(unit.scale())).isPresent();
    String text = Messages.text("piece.unit", unit.symbol(), unit.size());
    Button button = PartsView.button("unit-" + unit.symbol(), text, () -> choose(unit.scale()));
    button.setWrapText(true);
    button.setMaxWidth(Double.MAX_VALUE);
    button.setMinWidth(0);
    button.getStyleClass().add("choice");
    if (chosen) {
      button.getStyleClass().add("accent");
    }
    if (!unit.likely()) {
      button.getStyleClass().add("unlikely");
      button.setAccessibleText(text + ". " + Messages.text("piece.unlikely"));
    }
    return button;
  }

  private void choose(Job.Scale scale) {
    boolean first = session.desk().state().get().job().isEmpty();
    session.desk().chooseScale(scale);
    if (first) {
      session.saveAs();
    }
  }

  private void pickLength() {
    ends.clear();
    lengthWrong.setVisible(false);
    lengthHelp.setText(Messages.text("piece.length.first"));
    showing.ask(this::end);
    showing.showPlaces(ends);
  }

  private void end(Vector3D place) {
    if (ends.size() == 2) {
      ends.clear();
    }
    ends.add(place);
    showing.showPlaces(ends);
    lengthHelp.setText(
        Messages.text(ends.size() == 1 ? "piece.length.second" : "piece.length.type"));
    if (ends.size() == 2) {
      length.requestFocus();
    }
  }

  private void useLength() {
    try {
      if (ends.size() != 2) {
        wrong(Messages.text("piece.length.two"));
        return;
      }
      double mm = Amounts.lengthMm(length.getText());
      Vector3D a = session.desk().inFileUnits(ends.get(0));
      Vector3D b = session.desk().inFileUnits(ends.get(1));
      if (!(mm > 0) || !(a.distance(b) > 0)) {
        wrong(Messages.text("piece.length.two"));
        return;
      }
      Job.Scale scale =
          SizeChoice.known(session.desk().state().get().document().orElseThrow(), a, b, mm);
      lengthWrong.setVisible(false);
      ends.clear();
      showing.askNoMore();
      choose(scale);
    } catch (InputException e) {
      wrong(e.getMessage());
    }
  }

  private void wrong(String text) {
    lengthWrong.setText(text);
    lengthWrong.setVisible(true);
  }

  private void showFaults(DeskState state) {
    faults.getChildren().clear();
    if (state.piece().isEmpty()) {
      return;
    }
    Piece piece = state.piece().get();
    faults.getChildren().add(PartsView.heading("piece.model"));
    List<FaultList.Fault> found = FaultList.of(piece);
    if (found.isEmpty()) {
      Label none = PartsView.muted(Messages.text("piece.faultless"));
      none.setId("faultless");
      faults.getChildren().add(none);
    }
    for (FaultList.Fault fault : found) {
      Button mend =
          PartsView.button("mend-" + fault.key(), fault.button(), () -> mend(fault.repair()));
      VBox box = new VBox(PartsView.text(fault.text()), mend);
      box.getStyleClass().add("fault");
      faults.getChildren().add(box);
    }
    if (!piece.cleaned().done().isEmpty()) {
      faults.getChildren().add(PartsView.heading("piece.done"));
    }
    for (int i = 0; i < piece.cleaned().done().size(); i++) {
      Mended.Done done = piece.cleaned().done().get(i);
      int index = i;
      Button drop =
          PartsView.sign(
              "drop-step-" + (i + 1), "✕", Messages.text("piece.drop-step"), () -> dropStep(index));
      Label text = PartsView.text(done.text());
      text.setMaxWidth(Double.MAX_VALUE);
      javafx.scene.layout.HBox.setHgrow(text, javafx.scene.layout.Priority.ALWAYS);
      faults.getChildren().add(PartsView.row(text, drop));
    }
  }

  private void mend(Repair repair) {
    session
        .desk()
        .change(
            job -> {
              List<Repair> steps = new ArrayList<>(job.cleaning());
              steps.add(repair);
              return job.withCleaning(steps);
            });
  }

  private void dropStep(int index) {
    session
        .desk()
        .change(
            job -> {
              List<Repair> steps = new ArrayList<>(job.cleaning());
              if (index < steps.size()) {
                steps.remove(index);
              }
              return job.withCleaning(steps);
            });
  }

  private void showCut(DeskState state) {
    cut.getChildren().clear();
    if (state.piece().isEmpty()) {
      return;
    }
    TextField name = new TextField(state.job().map(Job::piece).orElse(""));
    name.setId("piece-title");
    name.setAccessibleText(Messages.text("piece.name"));
    Runnable rename =
        () -> session.desk().change(job -> PlatingForm.withPieceName(job, name.getText()));
    name.setOnAction(e -> rename.run());
    name.focusedProperty()
        .addListener(
            (value, before, now) -> {
              if (!now) {
                rename.run();
              }
            });
    Button table =
        PartsView.button(
            "drop-table",
            Messages.text("piece.table"),
            () -> mend(new Repair.CutTable(Optional.empty(), OptionalDouble.empty())));
    Button at =
        PartsView.button(
            "drop-table-at",
            Messages.text("piece.table.at"),
            () ->
                showing.ask(
                    place -> {
                      showing.askNoMore();
                      mend(new Repair.CutTable(Optional.of(place), OptionalDouble.empty()));
                    }));
    Button part =
        PartsView.button(
            "keep-part",
            Messages.text("piece.keep"),
            () ->
                showing.ask(
                    place -> {
                      showing.askNoMore();
                      mend(new Repair.KeepParts(List.of(place)));
                    }));
    cut.getChildren()
        .addAll(
            PartsView.heading("piece.cut"),
            PartsView.muted(Messages.text("piece.cut.help")),
            table,
            at,
            part,
            PartsView.heading("piece.name"),
            name);
  }
}
