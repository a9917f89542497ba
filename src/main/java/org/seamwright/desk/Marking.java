package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.job.Piece;
import org.seamwright.region.Mark;

/**
 * Marking by hand: which tool is taken, what the pointer has done with it so far, and the draft
 * that comes of it. A draft is tried out on the desk, which tells its exact edge and area; adding
 * it is a change of the job.
 */
public final class Marking {
  /** Places of a stroke closer than this share of its radius are one: they add nothing to see. */
  private static final double CLOSE = 0.25;

  private final Desk desk;
  private final Executor background;
  private final Executor userInterface;
  private final Watched<MarkTool> tool = new Watched<>(MarkTool.NONE);
  private final Watched<ToolSettings> settings = new Watched<>(ToolSettings.start(100));
  private final Watched<List<Vector3D>> places = new Watched<>(List.of());
  private final Watched<Boolean> closed = new Watched<>(false);
  private Optional<Piece> piece = Optional.empty();
  private Optional<PieceAxis> axis = Optional.empty();
  private final Watched<MarkCopies> copies = new Watched<>(MarkCopies.NONE);
  private final Watched<Boolean> snaps = new Watched<>(false);
  private final MarkEditing editing;
  private Optional<CreaseSnap> creases = Optional.empty();
  private Optional<Touch> under = Optional.empty();
  private boolean isDrawing;

  /** An edge turned by less than this is no sharp edge to lay a corner on, degrees. */
  private static final double SHARP_DEGREES = 30;

  /**
   * Makes a presenter.
   *
   * @param background looks for the piece's axis
   */
  public Marking(Desk desk, Executor background, Executor userInterface) {
    this.desk = desk;
    this.background = background;
    this.userInterface = userInterface;
    this.editing = new MarkEditing(desk, () -> axis);
    desk.state().watch(state -> onPiece(state.piece()));
  }

  /** The tool that is taken. */
  public Watched<MarkTool> tool() {
    return tool;
  }

  /** What tools are set to. */
  public Watched<ToolSettings> settings() {
    return settings;
  }

  /** Where else a tool marks in the same breath. */
  public Watched<MarkCopies> copies() {
    return copies;
  }

  /** Whether places near a sharp edge are laid on it. */
  public Watched<Boolean> snaps() {
    return snaps;
  }

  /** The mark that is changed after the fact. */
  public MarkEditing editing() {
    return editing;
  }

  /** Sets where else a tool marks. */
  public void setCopies(MarkCopies next) {
    copies.set(next);
    refresh();
  }

  /** Sets whether places near a sharp edge are laid on it. */
  public void setSnaps(boolean next) {
    snaps.set(next);
    refresh();
  }

  /** Takes a mark of the list to be changed: its places become handles. */
  public void edit(int index) {
    clear();
    tool.set(MarkTool.NONE);
    desk.tryOut(Optional.<Mark>empty());
    editing.take(index);
  }

  /** Places of the stroke, the limits or the corners so far. */
  public Watched<List<Vector3D>> places() {
    return places;
  }

  /** Whether an outline is closed, so that the next click says which side is meant. */
  public Watched<Boolean> closed() {
    return closed;
  }

  /** Whether a stroke is being drawn. */
  public boolean isDrawing() {
    return isDrawing;
  }

  /** The axis that rings and sectors go about, once it is known. */
  public Optional<PieceAxis> axis() {
    return axis;
  }

  private void onPiece(Optional<Piece> now) {
    if (now.isEmpty() || Identity.same(piece, now)) {
      return;
    }
    double before = piece.map(p -> p.survey().bounds().diagonal()).orElse(0.0);
    piece = now;
    axis = Optional.empty();
    creases = Optional.empty();
    double diagonal = diagonal();
    if (Math.abs(diagonal - before) > 0.5 * diagonal) {
      settings.set(ToolSettings.start(diagonal).withTreatment(settings.get().treatment()));
    }
    Piece of = now.get();
    background.execute(
        () -> {
          PieceAxis found = PieceAxis.of(of.mesh());
          CreaseSnap sharp = CreaseSnap.of(of.mesh(), SHARP_DEGREES);
          userInterface.execute(
              () -> {
                if (Identity.same(piece, now)) {
                  axis = Optional.of(found);
                  creases = Optional.of(sharp);
                  refresh();
                }
              });
        });
  }

  private double diagonal() {
    return piece.map(p -> p.survey().bounds().diagonal()).orElse(1.0);
  }

  /** Takes a tool; what the last one had begun is dropped. */
  public void take(MarkTool next) {
    clear();
    editing.leave();
    tool.set(next);
    refresh();
  }

  /** Sets the tools. */
  public void set(ToolSettings next) {
    settings.set(next);
    refresh();
  }

  /** A place as it counts: on a sharp edge if one is near and that is wanted. */
  public Touch snapped(Touch touch) {
    return snaps.get()
        ? creases
            .flatMap(c -> c.near(touch.point()))
            .map(p -> new Touch(p, touch.normal()))
            .orElse(touch)
        : touch;
  }

  /** The pointer is on a place, or off the piece. */
  public void pointAt(Optional<Touch> pointer) {
    Optional<Touch> touch = pointer.map(this::snapped);
    if (editing.isActive()) {
      editing.pointAt(touch);
      return;
    }
    under = touch;
    if (isDrawing) {
      touch.ifPresent(this::draw);
    } else {
      refresh();
    }
  }

  /** A button goes down on a place: a stroke begins. */
  public void press(Touch pointer) {
    Touch touch = snapped(pointer);
    if (editing.isActive()) {
      editing.press(touch);
      return;
    }
    under = Optional.of(touch);
    if (tool.get().use() == MarkTool.Use.DRAG) {
      isDrawing = true;
      places.set(List.of(touch.point()));
    }
  }

  private void draw(Touch touch) {
    List<Vector3D> so = places.get();
    double step = CLOSE * settings.get().radiusMm();
    if (so.isEmpty() || so.get(so.size() - 1).distance(touch.point()) >= step) {
      List<Vector3D> longer = new ArrayList<>(so);
      longer.add(touch.point());
      places.set(longer);
    }
  }

  /** The button goes up: a stroke is added. */
  public void release() {
    if (editing.isActive()) {
      editing.release();
    } else if (isDrawing) {
      isDrawing = false;
      Optional<Mark> stroke = Drafts.stroke(settings.get(), places.get(), diagonal());
      places.set(List.of());
      stroke.ifPresent(this::add);
    }
  }

  /** A click on a place with a tool that is no brush. */
  public void click(Touch pointer) {
    Touch touch = snapped(pointer);
    if (editing.isActive()) {
      return;
    }
    under = Optional.of(touch);
    switch (tool.get().use()) {
      case CLICK -> draft().ifPresent(this::add);
      case TWO_CLICKS -> {
        if (places.get().isEmpty()) {
          places.set(List.of(touch.point()));
          refresh();
        } else {
          draft().ifPresent(this::add);
        }
      }
      case CORNERS -> {
        if (closed.get()) {
          draft().ifPresent(this::add);
        } else {
          List<Vector3D> longer = new ArrayList<>(places.get());
          longer.add(touch.point());
          places.set(longer);
        }
      }
      case DRAG -> {
        press(touch);
        release();
      }
      default -> {
        // Without a tool, and with a form, a click on the piece means nothing here.
      }
    }
  }

  /** Enter: closes an outline, or adds what a form shows. */
  public void confirm() {
    if (editing.isActive()) {
      editing.release();
    } else if (tool.get().use() == MarkTool.Use.CORNERS
        && !closed.get()
        && places.get().size() >= 3) {
      closed.set(true);
      refresh();
    } else if (tool.get().use() == MarkTool.Use.FORM) {
      draft().ifPresent(this::add);
    }
  }

  /** Escape: drops what was begun, or puts the tool back. */
  public void escape() {
    if (editing.isActive()) {
      editing.leave();
    } else if (places.get().isEmpty() && !closed.get()) {
      take(MarkTool.NONE);
    } else {
      clear();
      refresh();
    }
  }

  /** Whether escape would do anything. */
  public boolean isActive() {
    return tool.get() != MarkTool.NONE || editing.isActive();
  }

  private void clear() {
    isDrawing = false;
    closed.set(false);
    places.set(List.of());
  }

  private void add(Mark mark) {
    boolean form = tool.get().use() == MarkTool.Use.FORM;
    clear();
    List<Mark> more = withCopies(mark);
    desk.change(job -> job.withMarks(Trial.added(job.marks(), more).marks()));
    if (form) {
      // A form's mark stays shown as a draft otherwise, as if it were to be added again.
      tool.set(MarkTool.NONE);
    }
    under = Optional.empty();
    refresh();
  }

  /** The mark that would be added now. */
  public Optional<Mark> draft() {
    ToolSettings set = settings.get();
    return switch (tool.get().use()) {
      case CLICK -> under.flatMap(t -> Drafts.at(tool.get(), set, t, diagonal()));
      case TWO_CLICKS ->
          places.get().isEmpty() || axis.isEmpty()
              ? Optional.empty()
              : under.flatMap(
                  t ->
                      Drafts.between(
                          tool.get(), set, axis.get(), places.get().get(0), t.point(), diagonal()));
      case CORNERS ->
          closed.get()
              ? under.flatMap(t -> Drafts.outline(set, places.get(), t.point(), diagonal()))
              : Optional.empty();
      case FORM -> axis.flatMap(a -> Drafts.form(tool.get(), set, a, diagonal()));
      default -> Optional.empty();
    };
  }

  private List<Mark> withCopies(Mark mark) {
    return axis.isPresent() && tool.get().takesPlace()
        ? copies.get().of(mark, axis.get(), settings.get().count(), diagonal())
        : List.of(mark);
  }

  private void refresh() {
    if (!editing.isActive()) {
      desk.tryOut(draft().map(this::withCopies).orElse(List.of()));
    }
  }
}
