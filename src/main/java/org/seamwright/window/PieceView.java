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
import org.seamwright.desk.Messages;

/**
 * The piece to look at, turn and point at. What the pointer means beyond that is up to the {@link
 * Showing} of the moment.
 *
 * <p>Whatever needs rays (what is under the pointer, which numbers are in sight) is done once per
 * picture, however many events came before it; between pictures nothing runs.
 */
final class PieceView extends Pane {
  private static final double DEGREES_PER_PIXEL = 0.4;
  private static final double DEGREES_PER_KEY = 10;
  private static final double PAN_PER_KEY = 40;
  private static final double ZOOM_PER_KEY = 1.15;

  /** Wheel movement that halves the distance, in the toolkit's pixels. */
  private static final double SCROLL_TO_HALVE = 320;

  /** What an arrow key moves, as a share of the diagonal; with the shift key. */
  private static final double NUDGE = 0.01;

  private static final double NUDGE_FINE = 0.002;

  /** A press that moves less is a click. */
  private static final double CLICK_PIXELS = 4;

  private static final double TURN_SECONDS = 0.35;

  private final PieceModel model;
  private final PieceScene scene;
  private final OrbitCamera camera;
  private final SketchView sketch = new SketchView();
  private final Pane numbers = new Pane();
  private final List<Label> number = new ArrayList<>();
  private final AnimationTimer pulse;
  private Showing showing;
  private Optional<Turn> turn = Optional.empty();
  private boolean pointerMoved;
  private boolean cameraMoved = true;
  private boolean fitPending = true;
  private Optional<OrbitCamera.Pose> turned = Optional.empty();
  private double pointerX;
  private double pointerY;
  private double pressX;
  private double pressY;
  private boolean dragged;
  private boolean brushing;

  /** A turn of the camera under way. */
  private record Turn(OrbitCamera.Pose from, OrbitCamera.Pose to, long startNanos) {}

  PieceView(PieceModel model, Showing first) {
    this.model = model;
    this.scene = new PieceScene(model);
    this.camera = model.camera();
    this.showing = first;
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
    getChildren().addAll(scene.node(), sketch, numbers);
    addEventHandler(MouseEvent.MOUSE_MOVED, this::onMoved);
    addEventHandler(MouseEvent.MOUSE_EXITED, e -> onExited());
    addEventHandler(MouseEvent.MOUSE_PRESSED, this::onPressed);
    addEventHandler(MouseEvent.MOUSE_DRAGGED, this::onDragged);
    addEventHandler(MouseEvent.MOUSE_RELEASED, this::onReleased);
    addEventHandler(ScrollEvent.SCROLL, this::onScroll);
    show(first);
  }

  /** The piece that is looked at. */
  PieceModel model() {
    return model;
  }

  /** The viewer's place. */
  OrbitCamera camera() {
    return camera;
  }

  /** The drawn piece itself, for tests that look at its pixels. */
  javafx.scene.Node drawn() {
    return scene.node();
  }

  /** Changes what is shown and what the pointer means. */
  void show(Showing now) {
    showing.onChange(() -> {});
    showing = now;
    now.onChange(this::repaint);
    repaint();
    numbersFor(now.numbers(camera).size());
    cameraMoved = true;
    pointerMoved = true;
    pulse.start();
  }

  /** Shows the next picture of this piece. */
  void show(Picture picture) {
    scene.show(picture.changed(), picture.chunks());
  }

  /** Looks from where another view of the piece looked, turned alike, the whole of it in sight. */
  void keep(OrbitCamera before) {
    fitPending = false;
    turned = Optional.of(before.pose());
  }

  /** Shows no lines. */
  void showNoLines() {
    scene.show(new EdgeLines(new float[0], new int[0]));
  }

  /** Shows lines on the surface. */
  void show(EdgeLines lines) {
    scene.show(lines);
  }

  private void numbersFor(int count) {
    number.clear();
    for (int id = 1; id <= count; id++) {
      Label label = new Label(Integer.toString(id));
      label.getStyleClass().add("section-number");
      label.setVisible(false);
      number.add(label);
    }
    numbers.getChildren().setAll(number);
  }

  /** Shows the whole piece, from where the viewer stands. */
  void fit() {
    turnTo(camera.fitted(camera.pose().azimuthDegrees(), camera.pose().elevationDegrees()));
  }

  /** Shows the whole piece from a standard view. */
  void show(StandardView view) {
    turnTo(camera.fitted(view));
  }

  /** Turns the piece so that it is seen from a direction. */
  void face(SectionFacing.Direction to) {
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
    sketch.fit(getWidth(), getHeight());
    camera.resize(getWidth(), getHeight());
    if (getWidth() > 1 && getHeight() > 1) {
      if (fitPending) {
        camera.moveTo(camera.fitted(StandardView.CORNER));
      }
      turned.ifPresent(p -> camera.moveTo(camera.fitted(p.azimuthDegrees(), p.elevationDegrees())));
      fitPending = false;
      turned = Optional.empty();
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
    scene.paint(showing.colours(), showing.shine());
    sketch.draw(showing.sketch(), camera);
    if (showing.isBrush()) {
      setCursor(Cursor.CROSSHAIR);
    } else if (!dragged) {
      setCursor(Cursor.DEFAULT);
    }
  }

  private void onPulse(long now) {
    turn.ifPresent(t -> advance(t, now));
    if (pointerMoved && isHover() && (!dragged || brushing)) {
      showing.pointAt(pick(pointerX, pointerY));
    }
    if (cameraMoved) {
      placeNumbers();
      sketch.draw(showing.sketch(), camera);
    }
    pointerMoved = false;
    cameraMoved = false;
    if (turn.isEmpty()) {
      pulse.stop();
    }
  }

  private Optional<Pick> pick(double x, double y) {
    return Pick.under(model, camera.ray(x, y));
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
    List<Optional<OrbitCamera.OnScreen>> at = showing.numbers(camera);
    for (int i = 0; i < number.size() && i < at.size(); i++) {
      Label label = number.get(i);
      label.setVisible(at.get(i).isPresent());
      at.get(i)
          .ifPresent(
              p -> {
                // Its size is unknown until its style is.
                label.applyCss();
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
      showing.pointAt(Optional.empty());
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
    brushing = false;
    boolean plain = event.getButton() == MouseButton.PRIMARY && !event.isShiftDown();
    if (plain && showing.isBrush()) {
      Optional<Pick> pick = pick(pressX, pressY);
      brushing = pick.isPresent();
      pick.ifPresent(showing::press);
    }
  }

  private void onDragged(MouseEvent event) {
    double dx = event.getX() - pointerX;
    double dy = event.getY() - pointerY;
    if (brushing) {
      dragged = true;
      pointerX = event.getX();
      pointerY = event.getY();
      // A stroke takes every place the pointer passes, not one a picture.
      showing.pointAt(pick(pointerX, pointerY));
      return;
    }
    if (!dragged && Math.hypot(event.getX() - pressX, event.getY() - pressY) < CLICK_PIXELS) {
      return;
    }
    if (!dragged) {
      dragged = true;
      showing.pointAt(Optional.empty());
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
    if (brushing) {
      brushing = false;
      dragged = false;
      showing.release();
      onMoved(event);
    } else if (dragged) {
      dragged = false;
      setCursor(showing.isBrush() ? Cursor.CROSSHAIR : Cursor.DEFAULT);
      onMoved(event);
    } else if (event.getButton() == MouseButton.PRIMARY) {
      showing.click(pick(event.getX(), event.getY()));
    }
  }

  private void onScroll(ScrollEvent event) {
    if (event.getDeltaY() == 0) {
      return;
    }
    event.consume();
    if (event.isControlDown()) {
      showing.wheel(event.getDeltaY() > 0 ? 1 : -1);
      return;
    }
    turn = Optional.empty();
    zoom(Math.pow(2, -event.getDeltaY() / SCROLL_TO_HALVE), event.getX(), event.getY());
  }

  private void zoom(double factor, double px, double py) {
    double[] anchor = pick(px, py).map(Pick::xyz).orElseGet(() -> camera.atOrbitDepth(px, py));
    camera.zoom(factor, anchor);
    moved();
  }

  /** Acts on a key of the window; consumes it if it means something here. */
  void onKey(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    if (act(event.getCode(), event.isShiftDown())) {
      event.consume();
    }
  }

  private boolean act(KeyCode key, boolean shift) {
    switch (key) {
      case LEFT -> step(-1, 0, shift);
      case RIGHT -> step(1, 0, shift);
      case UP -> step(0, 1, shift);
      case DOWN -> step(0, -1, shift);
      case PLUS, EQUALS, ADD -> zoom(1 / ZOOM_PER_KEY, getWidth() / 2, getHeight() / 2);
      case MINUS, SUBTRACT -> zoom(ZOOM_PER_KEY, getWidth() / 2, getHeight() / 2);
      case F -> fit();
      case OPEN_BRACKET -> showing.wheel(-1);
      case CLOSE_BRACKET -> showing.wheel(1);
      case N -> {
        return showing.next(shift ? -1 : 1);
      }
      case SPACE -> clickByKey();
      case ENTER -> {
        return showing.confirm();
      }
      case ESCAPE -> {
        return showing.escape();
      }
      default -> {
        return actOnDigit(key);
      }
    }
    return true;
  }

  /** Without a mouse the middle of the picture is the pointer. */
  private void clickByKey() {
    boolean mouse = isHover();
    double x = mouse ? pointerX : getWidth() / 2;
    double y = mouse ? pointerY : getHeight() / 2;
    Optional<Pick> pick = pick(x, y);
    showing.pointAt(pick);
    showing.click(pick);
  }

  private boolean actOnDigit(KeyCode key) {
    int code = key.getCode();
    int digit =
        code - (code < KeyCode.NUMPAD0.getCode() ? KeyCode.DIGIT0 : KeyCode.NUMPAD0).getCode();
    Optional<StandardView> view = StandardView.ofKey(digit);
    view.ifPresent(this::show);
    return view.isPresent();
  }

  /** A step to the side or upwards as the viewer sees it, mm. */
  private double[] nudge(int right, int up, boolean fine) {
    double[] m = camera.cameraMatrix();
    double mm = model.bounds().diagonal() * (fine ? NUDGE_FINE : NUDGE);
    double[] by = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      // Columns of the matrix: right, down, ahead.
      by[axis] = mm * (right * m[4 * axis] - up * m[4 * axis + 1]);
    }
    return by;
  }

  private void step(int right, int up, boolean pan) {
    if (showing.nudge(nudge(right, up, pan))) {
      return;
    }
    turn = Optional.empty();
    if (pan) {
      camera.pan(right * PAN_PER_KEY, -up * PAN_PER_KEY);
    } else {
      camera.orbit(right * DEGREES_PER_KEY, up * DEGREES_PER_KEY);
    }
    moved();
  }
}
