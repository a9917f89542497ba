package org.seamwright.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Pane;

/**
 * The piece to look at, turn and point at, with the numbers of its sections written on it.
 *
 * <p>Whatever needs rays (what is under the pointer, which numbers are in sight) is done once per
 * picture, however many events came before it; between pictures nothing runs.
 */
final class PieceView extends Pane {
  private static final double DEGREES_PER_PIXEL = 0.4;
  private static final double DEGREES_PER_KEY = 10;
  private static final double ZOOM_PER_KEY = 1.15;

  /** Wheel movement that halves the distance, in the toolkit's pixels. */
  private static final double SCROLL_TO_HALVE = 320;

  /** A press that moves less is a click. */
  private static final double CLICK_PIXELS = 4;

  private static final double TURN_SECONDS = 0.35;

  private final PiecePresenter presenter;
  private final PieceScene scene;
  private final OrbitCamera camera;
  private final Pane numbers = new Pane();
  private final List<Label> number = new ArrayList<>();
  private final AnimationTimer pulse;
  private Optional<Turn> turn = Optional.empty();
  private boolean pointerMoved;
  private boolean cameraMoved = true;
  private boolean fitPending = true;
  private double pointerX;
  private double pointerY;
  private double pressX;
  private double pressY;
  private boolean dragged;

  /** A turn of the camera under way. */
  private record Turn(OrbitCamera.Pose from, OrbitCamera.Pose to, long startNanos) {}

  PieceView(PiecePresenter presenter) {
    this.presenter = presenter;
    this.scene = new PieceScene(presenter.piece());
    this.camera = presenter.piece().camera();
    this.pulse =
        new AnimationTimer() {
          @Override
          public void handle(long now) {
            onPulse(now);
          }
        };
    setId("piece");
    getStyleClass().add("piece");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setAccessibleText(Messages.text("piece.accessible"));
    setAccessibleHelp(Messages.text("piece.help"));
    numbers.setMouseTransparent(true);
    numbers.setManaged(false);
    getChildren().addAll(scene.node(), numbers);
    addNumbers();
    presenter.look().watch(look -> repaint());
    presenter.hovered().watch(section -> repaint());
    presenter.selected().watch(section -> repaint());
    addEventHandler(MouseEvent.MOUSE_MOVED, this::onMoved);
    addEventHandler(MouseEvent.MOUSE_EXITED, e -> onExited());
    addEventHandler(MouseEvent.MOUSE_PRESSED, this::onPressed);
    addEventHandler(MouseEvent.MOUSE_DRAGGED, this::onDragged);
    addEventHandler(MouseEvent.MOUSE_RELEASED, this::onReleased);
    addEventHandler(ScrollEvent.SCROLL, this::onScroll);
  }

  private void addNumbers() {
    for (int id = 1; id <= presenter.piece().job().sections().sections().size(); id++) {
      Label label = new Label(Integer.toString(id));
      label.getStyleClass().add("section-number");
      label.setVisible(false);
      number.add(label);
    }
    numbers.getChildren().addAll(number);
  }

  /** The viewer's place. */
  OrbitCamera camera() {
    return camera;
  }

  /** Shows the whole piece, from where the viewer stands. */
  void fit() {
    turnTo(camera.fitted(camera.pose().azimuthDegrees(), camera.pose().elevationDegrees()));
  }

  /** Shows the whole piece from a standard view. */
  void show(StandardView view) {
    turnTo(camera.fitted(view));
  }

  /** Turns a section to the viewer. */
  void face(int section) {
    SectionFacing.Direction to = presenter.facing(section);
    turnTo(camera.fitted(to.azimuthDegrees(), to.elevationDegrees()));
  }

  private void turnTo(OrbitCamera.Pose to) {
    turn = Optional.of(new Turn(camera.pose(), to, System.nanoTime()));
    pulse.start();
  }

  @Override
  protected void layoutChildren() {
    scene.node().setWidth(getWidth());
    scene.node().setHeight(getHeight());
    numbers.resize(getWidth(), getHeight());
    camera.resize(getWidth(), getHeight());
    if (fitPending && getWidth() > 1 && getHeight() > 1) {
      fitPending = false;
      camera.moveTo(camera.fitted(StandardView.CORNER));
    }
    moved();
  }

  private void moved() {
    scene.look(camera);
    cameraMoved = true;
    pointerMoved = true;
    pulse.start();
  }

  private void repaint() {
    scene.paint(presenter.colours(), presenter.look().get() == PieceColours.Look.GOLD ? 0.5 : 0.16);
  }

  private void onPulse(long now) {
    turn.ifPresent(t -> advance(t, now));
    if (pointerMoved && isHover() && !dragged) {
      presenter.pointAt(camera.ray(pointerX, pointerY));
    }
    if (cameraMoved) {
      placeNumbers();
    }
    pointerMoved = false;
    cameraMoved = false;
    if (turn.isEmpty()) {
      pulse.stop();
    }
  }

  private void advance(Turn t, long now) {
    double share = Math.max(0, Math.min(1, (now - t.startNanos) / (TURN_SECONDS * 1e9)));
    // Starts and ends gently: the cubic with level ends.
    camera.moveTo(t.from.towards(t.to, share * share * (3 - 2 * share)));
    moved();
    if (share >= 1) {
      turn = Optional.empty();
    }
  }

  private void placeNumbers() {
    List<Optional<OrbitCamera.OnScreen>> at = presenter.numbers(camera);
    for (int i = 0; i < number.size(); i++) {
      Label label = number.get(i);
      label.setVisible(at.get(i).isPresent());
      at.get(i)
          .ifPresent(
              p -> {
                double width = label.prefWidth(-1);
                double height = label.prefHeight(-1);
                label.resizeRelocate(
                    Math.rint(p.x() - width / 2), Math.rint(p.y() - height / 2), width, height);
              });
    }
  }

  private void onMoved(MouseEvent event) {
    pointerX = event.getX();
    pointerY = event.getY();
    pointerMoved = true;
    pulse.start();
  }

  private void onExited() {
    if (!dragged) {
      presenter.pointAway();
    }
  }

  private void onPressed(MouseEvent event) {
    requestFocus();
    pressX = event.getX();
    pressY = event.getY();
    pointerX = pressX;
    pointerY = pressY;
    turn = Optional.empty();
    dragged = false;
  }

  private void onDragged(MouseEvent event) {
    double dx = event.getX() - pointerX;
    double dy = event.getY() - pointerY;
    if (!dragged && Math.hypot(event.getX() - pressX, event.getY() - pressY) < CLICK_PIXELS) {
      return;
    }
    if (!dragged) {
      dragged = true;
      presenter.pointAway();
      setCursor(Cursor.CLOSED_HAND);
    }
    pointerX = event.getX();
    pointerY = event.getY();
    if (event.isSecondaryButtonDown() || event.isMiddleButtonDown() || event.isShiftDown()) {
      camera.pan(dx, dy);
    } else {
      camera.orbit(-dx * DEGREES_PER_PIXEL, dy * DEGREES_PER_PIXEL);
    }
    moved();
  }

  private void onReleased(MouseEvent event) {
    if (dragged) {
      dragged = false;
      setCursor(Cursor.DEFAULT);
      onMoved(event);
    } else if (event.getButton() == MouseButton.PRIMARY) {
      presenter.pointAt(camera.ray(event.getX(), event.getY()));
      presenter.select(presenter.pointed().get().map(Spot::section).orElse(0));
    }
  }

  private void onScroll(ScrollEvent event) {
    if (event.getDeltaY() == 0) {
      return;
    }
    turn = Optional.empty();
    zoom(Math.pow(2, -event.getDeltaY() / SCROLL_TO_HALVE), event.getX(), event.getY());
    event.consume();
  }

  private void zoom(double factor, double px, double py) {
    double[] anchor =
        presenter
            .piece()
            .under(camera.ray(px, py))
            .map(spot -> new double[] {spot.x(), spot.y(), spot.z()})
            .orElseGet(() -> camera.atOrbitDepth(px, py));
    camera.zoom(factor, anchor);
    moved();
  }

  /** Acts on a key of the window; consumes it if it means something here. */
  void onKey(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    if (act(event.getCode())) {
      event.consume();
    }
  }

  private boolean act(KeyCode key) {
    switch (key) {
      case LEFT -> orbit(-DEGREES_PER_KEY, 0);
      case RIGHT -> orbit(DEGREES_PER_KEY, 0);
      case UP -> orbit(0, DEGREES_PER_KEY);
      case DOWN -> orbit(0, -DEGREES_PER_KEY);
      case PLUS, EQUALS, ADD -> zoom(1 / ZOOM_PER_KEY, getWidth() / 2, getHeight() / 2);
      case MINUS, SUBTRACT -> zoom(ZOOM_PER_KEY, getWidth() / 2, getHeight() / 2);
      case F -> fit();
      case ESCAPE -> presenter.select(0);
      default -> {
        return actOnDigit(key);
      }
    }
    return true;
  }

  private boolean actOnDigit(KeyCode key) {
    int code = key.getCode();
    int digit =
        code - (code < KeyCode.NUMPAD0.getCode() ? KeyCode.DIGIT0 : KeyCode.NUMPAD0).getCode();
    Optional<StandardView> view = StandardView.ofKey(digit);
    view.ifPresent(this::show);
    return view.isPresent();
  }

  private void orbit(double azimuthDegrees, double elevationDegrees) {
    turn = Optional.empty();
    camera.orbit(azimuthDegrees, elevationDegrees);
    moved();
  }
}
