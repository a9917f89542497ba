package org.seamwright.window;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Place;
import org.seamwright.desk.SectionTool;

/**
 * The whole window: figures and path above, the piece in the middle, the place that is shown beside
 * it, and the line that says how the job stands below.
 */
final class ShellView extends BorderPane {
  private static final Insets MARGIN = new Insets(14);

  private final Session session;
  private final Executor background;
  private final StackPane middle = new StackPane();
  private final PlainShowing plain = new PlainShowing();
  private final Map<Place, Region> places = new EnumMap<>(Place.class);
  private final SectionsPlaceView sections;
  private final StartView start;
  private final BenchView bench;
  private final Region head;
  private final Region next;
  private Optional<PieceView> piece = Optional.empty();
  private Optional<MarkShowing> marks = Optional.empty();
  private Optional<PiecePresenter> plan = Optional.empty();
  private Optional<SectionShowing> hands = Optional.empty();
  private Optional<OpenedPiece> opened = Optional.empty();
  private Showing current = plain;

  ShellView(Session session, Executor background) {
    this.session = session;
    this.background = background;
    getStyleClass().add("main");
    sections = new SectionsPlaceView(session);
    start = new StartView(session);
    places.put(Place.PIECE, scrolled(new PiecePlaceView(session, plain)));
    places.put(Place.MARKS, scrolled(new MarksPlaceView(session)));
    places.put(Place.SECTIONS, sections);
    places.put(Place.PLATING, scrolled(new PlatingPlaceView(session)));
    places.put(Place.PAPERS, scrolled(new PapersPlaceView(session)));
    places.values().forEach(p -> p.getStyleClass().add("side-column"));
    head = new VBox(new HeaderView(session), new PathView(session));
    next = new VBox(new TourView(session.tour()), new NextStepView(session));
    bench = new BenchView(session, new Tones(background, Platform::runLater));
    setCenter(middle);
    middle.getChildren().setAll(start);
    addEventHandler(KeyEvent.KEY_PRESSED, this::onKey);
    // On the scene, since a button that was just pressed may be gone, and the focus with it.
    sceneProperty().addListener((v, was, is) -> is.addEventFilter(KeyEvent.ANY, bench::onKey));
    bench
        .side()
        .prefWidthProperty()
        .bind(widthProperty().map(w -> BenchView.sideWidth(w.doubleValue())));
    session.benchKeys().open().watch(this::atBench);
    addEventHandler(DragEvent.DRAG_OVER, this::onDragOver);
    addEventHandler(DragEvent.DRAG_DROPPED, this::onDropped);
    session.pictures().picture().watch(this::show);
    session
        .pictures()
        .lines()
        .watch(lines -> piece.ifPresent(p -> lines.ifPresentOrElse(p::show, p::showNoLines)));
    session.place().watch(place -> showPlace());
    session.desk().state().watch(state -> showPlace());
    session.marking().tool().watch(tool -> marks.ifPresent(MarkShowing::refresh));
    session.marking().settings().watch(s -> marks.ifPresent(MarkShowing::refresh));
    session.marking().places().watch(p -> marks.ifPresent(MarkShowing::changedPlaces));
    session.marking().editing().mark().watch(mark -> marks.ifPresent(MarkShowing::refresh));
    session.marking().editing().handle().watch(h -> marks.ifPresent(MarkShowing::refresh));
    session
        .marking()
        .editing()
        .index()
        .watch(i -> piece.filter(p -> i.isPresent()).ifPresent(PieceView::requestFocus));
    session.hands().tool().watch(tool -> takeSectionTool(tool));
    session.hands().seam().watch(seam -> hands.ifPresent(SectionShowing::refresh));
    session.hands().line().watch(line -> hands.ifPresent(SectionShowing::refresh));
  }

  /** A tool that is taken acts on the piece: keys go there from now on. */
  private void takeSectionTool(SectionTool tool) {
    hands.ifPresent(SectionShowing::refresh);
    if (tool != SectionTool.LOOK) {
      piece.ifPresent(PieceView::requestFocus);
    }
  }

  /** The piece shown, if one is. */
  Optional<PieceView> pieceView() {
    return piece;
  }

  /** The sections shown, if a plan is. */
  Optional<PiecePresenter> plan() {
    return plan;
  }

  private static ScrollPane scrolled(Region content) {
    ScrollPane pane = new ScrollPane(content);
    pane.setFitToWidth(true);
    pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    pane.setFocusTraversable(false);
    return pane;
  }

  /** At the bench the picture stays, and all that stands round it is the bench's. */
  private void atBench(boolean open) {
    if (open) {
      session.place().set(Place.SECTIONS);
    }
    session.hands().take(SectionTool.LOOK);
    setTop(open ? bench.bar() : head);
    setBottom(open ? bench.buttons() : next);
    showPlace();
    piece.ifPresent(view -> overlay(current));
  }

  private void showPlace() {
    DeskState state = session.desk().state().get();
    boolean some = state.document().isPresent();
    boolean atBench = session.benchKeys().open().get();
    Node side = atBench ? bench.side() : some ? places.get(session.place().get()) : null;
    if (getRight() != side) {
      setRight(side);
    }
    showing();
  }

  /** Gives the picture what the pointer is to mean at this place. */
  private void showing() {
    if (piece.isEmpty()) {
      return;
    }
    Showing now = wantedShowing();
    if (now != current) {
      current = now;
      piece.get().show(now);
      overlay(now);
    }
  }

  private Showing wantedShowing() {
    Optional<Picture> picture = session.pictures().picture().get();
    Picture.Subject subject = picture.map(Picture::subject).orElse(Picture.Subject.PIECE);
    return switch (subject) {
      case PLAN ->
          session.place().get() == Place.SECTIONS
              ? hands.<Showing>map(h -> h).orElse(plain)
              : plan.<Showing>map(p -> p).orElse(plain);
      case MARKS -> marks.<Showing>map(m -> m).orElse(plain);
      case PIECE -> plain;
    };
  }

  private void show(Optional<Picture> picture) {
    if (picture.isEmpty()) {
      piece = Optional.empty();
      middle.getChildren().setAll(start);
      return;
    }
    if (!Platform.isSupported(ConditionalFeature.SCENE3D)) {
      if (!(middle.getChildren().get(0) instanceof FallbackView)) {
        middle.getChildren().setAll(new FallbackView(session, background, Platform::runLater));
      }
      followPlan(picture.get());
      return;
    }
    Picture now = picture.get();
    if (piece.isEmpty() || piece.get().model() != now.model()) {
      PieceView view = new PieceView(now.model(), plain);
      piece.map(PieceView::camera).ifPresent(old -> view.keep(old));
      piece = Optional.of(view);
      marks = Optional.of(new MarkShowing(session.marking(), now.model()));
      current = plain;
      overlay(plain);
      view.requestFocus();
    }
    piece.get().show(now);
    marks.ifPresent(MarkShowing::settled);
    followPlan(now);
    showing();
  }

  private void followPlan(Picture now) {
    if (now.opened().isPresent() && now.opened().get() != opened.orElse(null)) {
      opened = now.opened();
      PiecePresenter presenter = new PiecePresenter(now.opened().get());
      plan.ifPresent(before -> presenter.look().set(before.look().get()));
      plan = Optional.of(presenter);
      hands = Optional.of(new SectionShowing(presenter, session.hands()));
      sections.show(plan, id -> piece.ifPresent(view -> view.face(presenter.facing(id))));
      bench.follow(plan, id -> piece.ifPresent(view -> view.face(presenter.facing(id))));
    }
  }

  /** What floats over the picture. */
  private void overlay(Showing now) {
    PieceView view = piece.orElseThrow();
    if (session.benchKeys().open().get()) {
      middle.getChildren().setAll(view);
      return;
    }
    List<Node> nodes = new ArrayList<>(List.of(view));
    nodes.add(floating(PieceTools.views(view), Pos.TOP_RIGHT));
    Optional<PiecePresenter> planned =
        now instanceof SectionShowing s
            ? Optional.of(s.presenter())
            : now instanceof PiecePresenter p ? Optional.of(p) : Optional.empty();
    if (planned.isPresent()) {
      PiecePresenter presenter = planned.get();
      nodes.add(floating(PieceTools.looks(presenter), Pos.TOP_LEFT));
      nodes.add(
          floating(PieceTools.legend(presenter, session.pictures().patterns()), Pos.BOTTOM_LEFT));
    } else if (now instanceof MarkShowing) {
      nodes.add(floating(PieceTools.markLegend(session.pictures().patterns()), Pos.BOTTOM_LEFT));
    }
    middle.getChildren().setAll(nodes);
  }

  private static Node floating(Node node, Pos at) {
    StackPane.setAlignment(node, at);
    StackPane.setMargin(node, MARGIN);
    return node;
  }

  private void onKey(KeyEvent event) {
    if (session.benchKeys().open().get()) {
      return; // what is worked by does not change at the bench
    }
    if (event.isShortcutDown()) {
      onShortcut(event);
      return;
    }
    Node focus = getScene().getFocusOwner();
    boolean typing = focus instanceof TextInputControl || focus instanceof ComboBoxBase<?>;
    boolean pressing =
        focus != piece.orElse(null)
            && (event.getCode() == KeyCode.SPACE || event.getCode() == KeyCode.ENTER);
    if (!typing && !pressing) {
      piece.ifPresent(view -> view.onKey(event));
    }
  }

  private void onShortcut(KeyEvent event) {
    switch (event.getCode()) {
      case Z -> {
        if (event.isShiftDown()) {
          session.desk().redo();
        } else {
          session.desk().undo();
        }
      }
      case Y -> session.desk().redo();
      case O -> session.open();
      case S -> session.saveAs();
      case DIGIT1, DIGIT2, DIGIT3, DIGIT4, DIGIT5 -> {
        Place to = List.of(Place.values()).get(Integer.parseInt(event.getCode().getName()) - 1);
        if (to == Place.PIECE || session.desk().state().get().job().isPresent()) {
          session.place().set(to);
        }
      }
      default -> {
        return;
      }
    }
    event.consume();
  }

  private void onDragOver(DragEvent event) {
    if (event.getDragboard().hasFiles() && !session.benchKeys().open().get()) {
      event.acceptTransferModes(TransferMode.COPY);
      event.consume();
    }
  }

  private void onDropped(DragEvent event) {
    if (event.getDragboard().hasFiles()) {
      session.open(event.getDragboard().getFiles().get(0).toPath());
      event.setDropCompleted(true);
      event.consume();
    }
  }
}
