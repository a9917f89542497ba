package org.seamwright.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.region.Mark;
import org.seamwright.units.UnitSystem;

/**
 * A mark of the list while it is changed: its places are handles, its numbers can be typed. Each
 * change takes the mark's place in the order, as one step that can be undone.
 */
public final class MarkEditing {
  /** A handle is taken from this far, as a share of the piece's diagonal. */
  private static final double REACH_SHARE = 0.02;

  private final Desk desk;
  private final Supplier<Optional<PieceAxis>> axis;
  private final Watched<OptionalInt> index = new Watched<>(OptionalInt.empty());
  private final Watched<Optional<Mark>> mark = new Watched<>(Optional.empty());
  private final Watched<OptionalInt> handle = new Watched<>(OptionalInt.empty());
  private Optional<SurfaceFoot> foot = Optional.empty();
  private boolean dragging;
  private boolean byKey;
  private Optional<Touch> last = Optional.empty();

  MarkEditing(Desk desk, Supplier<Optional<PieceAxis>> axis) {
    this.desk = desk;
    this.axis = axis;
    desk.state().watch(state -> follow());
  }

  /** Which mark is changed, if one is. */
  public Watched<OptionalInt> index() {
    return index;
  }

  /** The mark as it would be. */
  public Watched<Optional<Mark>> mark() {
    return mark;
  }

  /** The handle under the pointer, or chosen by key. */
  public Watched<OptionalInt> handle() {
    return handle;
  }

  /** The surface that handles move on: of the piece that is shown. */
  public void over(SurfaceFoot surface) {
    foot = Optional.of(surface);
  }

  /** Whether a mark is being changed. */
  public boolean isActive() {
    return index.get().isPresent();
  }

  /** Where the handles are. */
  public List<Vector3D> handles() {
    return mark.get().isPresent() && foot.isPresent()
        ? MarkHandles.of(mark.get().get(), axis.get(), foot.get())
        : List.of();
  }

  /** How many of the handles, from the first, are joined by a line. */
  public int joined() {
    return mark.get().map(MarkHandles::joined).orElse(0);
  }

  private Optional<Mark> inJob() {
    if (index.get().isEmpty()) {
      return Optional.empty();
    }
    int i = index.get().getAsInt();
    return desk.state()
        .get()
        .job()
        .map(Job::marks)
        .filter(m -> i < m.size() && !(m.get(i) instanceof Mark.Off))
        .map(m -> m.get(i));
  }

  void take(int of) {
    index.set(OptionalInt.of(of));
    dragging = false;
    handle.set(OptionalInt.empty());
    follow();
  }

  void leave() {
    if (isActive()) {
      index.set(OptionalInt.empty());
      mark.set(Optional.empty());
      handle.set(OptionalInt.empty());
      dragging = false;
      desk.tryOut(List.of());
    }
  }

  private void follow() {
    if (!isActive()) {
      return;
    }
    Optional<Mark> now = inJob();
    if (now.isEmpty()) {
      leave();
    } else if (!dragging) {
      mark.set(now);
    }
  }

  /** Whether a press there takes a handle. */
  public boolean grabs() {
    return isActive() && handle.get().isPresent();
  }

  void pointAt(Optional<Touch> touch) {
    boolean rests = byKey && !dragging && touch.equals(last);
    last = touch;
    if (rests) {
      return;
    }
    if (dragging && !byKey) {
      touch.ifPresent(t -> move(t.point()));
      return;
    }
    if (!dragging) {
      byKey = false;
      handle.set(touch.map(t -> nearest(t.point())).orElse(OptionalInt.empty()));
    }
  }

  private OptionalInt nearest(Vector3D place) {
    List<Vector3D> all = handles();
    int best = -1;
    double least = foot.map(f -> REACH_SHARE * f.diagonalMm()).orElse(0.0);
    for (int i = 0; i < all.size(); i++) {
      double far = all.get(i).distance(place);
      if (far <= least) {
        least = far;
        best = i;
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  void press(Touch touch) {
    if (grabs()) {
      dragging = true;
      byKey = false;
      last = Optional.of(touch);
    }
  }

  private void move(Vector3D to) {
    Vector3D tidy = Tidy.point(to, foot.orElseThrow().diagonalMm());
    Optional<Mark> next =
        MarkHandles.moved(mark.get().orElseThrow(), handle.get().getAsInt(), tidy, axis.get());
    next.ifPresent(
        m -> {
          mark.set(next);
          desk.tryOut(index.get().getAsInt(), m);
        });
  }

  /** Keeps what was moved. */
  void release() {
    if (dragging) {
      dragging = false;
      byKey = false;
      mark.get().ifPresent(this::keep);
    }
  }

  private void keep(Mark now) {
    int i = index.get().getAsInt();
    desk.change(
        job ->
            i < job.marks().size() ? job.withMarks(MarkEdits.replaced(job.marks(), i, now)) : job);
  }

  /** Chooses the next handle by key. */
  public boolean next(int step) {
    int count = handles().size();
    if (!isActive() || count == 0) {
      return false;
    }
    byKey = true;
    int before = handle.get().orElse(step > 0 ? -1 : 0);
    handle.set(OptionalInt.of(Math.floorMod(before + step, count)));
    return true;
  }

  /** Moves the handle by key; Enter keeps it. */
  public boolean nudge(Vector3D byMm) {
    if (!grabs() || foot.isEmpty()) {
      return false;
    }
    dragging = true;
    byKey = true;
    Vector3D from = handles().get(handle.get().getAsInt());
    Vector3D to = from.add(byMm);
    move(mark.get().orElseThrow() instanceof Mark.InBox ? to : foot.get().under(to).point());
    return true;
  }

  /** The numbers that can be typed. */
  public List<MarkNumbers.Entry> numbers() {
    return mark.get().map(m -> MarkNumbers.of(m, display())).orElse(List.of());
  }

  private UnitSystem display() {
    return desk.state().get().job().map(Job::display).orElse(UnitSystem.METRIC);
  }

  /**
   * Takes a number that was typed.
   *
   * @throws InputException if it can't be that
   */
  public void type(String key, String text) throws InputException {
    if (isActive() && mark.get().isPresent()) {
      keep(MarkNumbers.typed(mark.get().get(), key, text, display()));
    }
  }
}
