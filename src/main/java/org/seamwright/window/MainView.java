package org.seamwright.window;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * The whole window: the piece in the middle, its sections beside it and sums above, or the state of
 * opening while there is no piece.
 */
final class MainView extends BorderPane {
  private static final Insets MARGIN = new Insets(14);

  private final JobPresenter jobs;
  private final Runnable choose;
  private Optional<PieceView> pieceView = Optional.empty();
  private Optional<StateView> planning = Optional.empty();

  /**
   * Shows what a presenter holds.
   *
   * @param choose asks the user for a job file
   */
  MainView(JobPresenter jobs, Runnable choose) {
    this.jobs = jobs;
    this.choose = choose;
    getStyleClass().add("main");
    addEventHandler(KeyEvent.KEY_PRESSED, e -> pieceView.ifPresent(view -> view.onKey(e)));
    jobs.state().watch(this::show);
  }

  /** The piece shown, if one is. */
  Optional<PieceView> pieceView() {
    return pieceView;
  }

  private void show(JobState state) {
    if (state instanceof JobState.Planning now && planning.isPresent()) {
      planning.get().progress(now.fraction());
      return;
    }
    planning = Optional.empty();
    pieceView = Optional.empty();
    setTop(null);
    setRight(null);
    if (state instanceof JobState.Open open) {
      showPiece(new PiecePresenter(open.piece()));
    } else {
      setCenter(stateView(state));
    }
  }

  private StateView stateView(JobState state) {
    if (state instanceof JobState.Planning now) {
      StateView view = StateView.planning(name(now.file()), now.fraction(), jobs::cancel);
      planning = Optional.of(view);
      return view;
    }
    if (state instanceof JobState.Cancelled end) {
      return StateView.cancelled(name(end.file()), () -> jobs.open(end.file()), choose);
    }
    if (state instanceof JobState.Refused end) {
      return StateView.refused(end.refusal(), () -> jobs.open(end.file()), choose);
    }
    if (state instanceof JobState.Failed end) {
      return StateView.failed(end.fault(), () -> jobs.open(end.file()), choose);
    }
    return StateView.none(choose);
  }

  private static String name(Path file) {
    Path last = file.getFileName();
    return last == null ? file.toString() : last.toString();
  }

  private void showPiece(PiecePresenter presenter) {
    setTop(new HeaderView(presenter, choose));
    if (Platform.isSupported(ConditionalFeature.SCENE3D)) {
      PieceView view = new PieceView(presenter);
      pieceView = Optional.of(view);
      setCenter(
          new StackPane(
              view,
              floating(PieceTools.looks(presenter), Pos.TOP_LEFT),
              floating(PieceTools.views(view), Pos.TOP_RIGHT),
              floating(PieceTools.legend(presenter), Pos.BOTTOM_LEFT)));
      view.requestFocus();
    } else {
      setCenter(StateView.noDepth());
    }
    SectionsView sections =
        new SectionsView(presenter, id -> pieceView.ifPresent(view -> view.face(id)));
    VBox.setVgrow(sections, Priority.ALWAYS);
    VBox side = new VBox(sections, new NoticesView(presenter.piece().job().notices()));
    side.getStyleClass().add("side-column");
    setRight(side);
  }

  private static Node floating(Node node, Pos at) {
    StackPane.setAlignment(node, at);
    StackPane.setMargin(node, MARGIN);
    return node;
  }
}
