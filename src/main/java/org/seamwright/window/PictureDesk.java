package org.seamwright.window;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.seamwright.desk.Desk;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.Identity;
import org.seamwright.desk.Place;
import org.seamwright.desk.SectionDraft;
import org.seamwright.desk.Watched;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceMap;

/**
 * Makes pictures of what the desk holds, off the user interface's thread. Of what is asked for
 * while one is being made only the latest follows; of a picture only the chunks that differ from
 * the last one are made.
 *
 * <p>After 100,000 faces or fewer have changed, a picture of a million takes some 100 ms.
 */
final class PictureDesk {
  private final Desk desk;
  private final Watched<Optional<SectionDraft>> sections;
  private final Executor background;
  private final Executor userInterface;
  private final Watched<Optional<Picture>> picture = new Watched<>(Optional.empty());
  private final Watched<Optional<EdgeLines>> lines = new Watched<>(Optional.empty());
  private final Watched<Boolean> patterns = new Watched<>(true);
  private Place place = Place.PIECE;
  private Optional<Order> wanted = Optional.empty();
  private Optional<Order> last = Optional.empty();
  private boolean making;

  /** Of the background thread: the model, and what of it has been handed over. */
  private Optional<PieceModel> model = Optional.empty();

  private long[] shown = new long[0];

  /** Of the background thread: the marks before a draft, made once for many drafts. */
  private Optional<SurfaceMap> marks = Optional.empty();

  private Optional<ShownSurface> marksSurface = Optional.empty();

  /** Of the background thread: the plan made ready, once for many drafts of its sections. */
  private Optional<OpenedPiece> lastOpened = Optional.empty();

  /** What a picture is made of; parts are compared by identity, since results are made once. */
  private record Order(
      Mesh mesh,
      boolean isClosed,
      Picture.Subject subject,
      Optional<SurfaceMap> map,
      Optional<SurfaceMap> draft,
      Optional<PlannedJob> plan,
      Optional<SectionDraft.Shown> sections,
      boolean patterned) {
    boolean isSame(Order other) {
      return Identity.same(mesh, other.mesh)
          && subject == other.subject
          && Identity.same(map, other.map)
          && Identity.same(draft, other.draft)
          && Identity.same(plan, other.plan)
          && Identity.same(sections, other.sections)
          && patterned == other.patterned;
    }
  }

  PictureDesk(
      Desk desk,
      Watched<Optional<SectionDraft>> sections,
      Executor background,
      Executor userInterface) {
    this.desk = desk;
    this.sections = sections;
    this.background = background;
    this.userInterface = userInterface;
    desk.state().watch(state -> refresh());
    desk.preview().watch(preview -> refresh());
    sections.watch(draft -> refresh());
    patterns.watch(on -> refresh());
  }

  /** What to show, once there is something. */
  Watched<Optional<Picture>> picture() {
    return picture;
  }

  /** Lines on the surface of the last picture; they come a little after it. */
  Watched<Optional<EdgeLines>> lines() {
    return lines;
  }

  /** Whether classes have patterns besides their colours. */
  Watched<Boolean> patterns() {
    return patterns;
  }

  /** The window has gone to another place. */
  void at(Place now) {
    place = now;
    refresh();
  }

  private void refresh() {
    Optional<Order> order = order(desk.state().get());
    if (order.isEmpty()) {
      wanted = Optional.empty();
      last = Optional.empty();
      picture.set(Optional.empty());
      return;
    }
    if (last.isPresent() && last.get().isSame(order.get())) {
      wanted = Optional.empty();
      return;
    }
    wanted = order;
    if (!making) {
      makeNext();
    }
  }

  private Optional<Order> order(DeskState state) {
    if (state.piece().isEmpty()) {
      return state
          .document()
          .map(
              d ->
                  new Order(
                      d.mesh(),
                      false,
                      Picture.Subject.PIECE,
                      Optional.empty(),
                      Optional.empty(),
                      Optional.empty(),
                      Optional.empty(),
                      false));
    }
    Mesh mesh = state.piece().get().mesh();
    boolean closed = state.piece().get().survey().closed();
    Optional<SurfaceMap> map =
        state
            .marked()
            .map(DeskState.Marked::map)
            .filter(m -> m.parentFace().length >= mesh.faceCount() && fits(m, mesh));
    Optional<PlannedJob> plan = state.plan().filter(p -> p.mesh() == mesh);
    if (place == Place.PIECE || map.isEmpty()) {
      return Optional.of(
          new Order(
              mesh,
              closed,
              Picture.Subject.PIECE,
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              false));
    }
    if (place == Place.MARKS || plan.isEmpty()) {
      Optional<SurfaceMap> draft =
          place == Place.MARKS ? desk.preview().get().map() : Optional.empty();
      return Optional.of(
          new Order(
              mesh,
              closed,
              Picture.Subject.MARKS,
              map,
              draft,
              Optional.empty(),
              Optional.empty(),
              patterns.get()));
    }
    Optional<SectionDraft.Shown> draft =
        place == Place.SECTIONS
            ? sections.get().flatMap(SectionDraft::shown).filter(d -> plan.isPresent())
            : Optional.empty();
    return Optional.of(
        new Order(
            mesh,
            closed,
            Picture.Subject.PLAN,
            map,
            Optional.empty(),
            plan,
            draft,
            patterns.get()));
  }

  /** Whether a map is one of this mesh, and not of the piece before it was cleaned otherwise. */
  private static boolean fits(SurfaceMap map, Mesh mesh) {
    for (int f : map.parentFace()) {
      if (f >= mesh.faceCount()) {
        return false;
      }
    }
    return true;
  }

  private void makeNext() {
    if (wanted.isEmpty()) {
      return;
    }
    Order order = wanted.get();
    wanted = Optional.empty();
    last = Optional.of(order);
    making = true;
    background.execute(
        () -> {
          Picture made = make(order);
          userInterface.execute(
              () -> {
                making = false;
                picture.set(Optional.of(made));
                makeNext();
              });
          if (made.subject() != Picture.Subject.PIECE) {
            EdgeLines edges = EdgeLines.of(made.model(), made.surface(), kinds(made));
            EdgeLines all =
                order.patterned()
                    ? edges.with(HatchLines.of(made.model(), made.surface(), patterns(made)))
                    : edges;
            userInterface.execute(() -> lines.set(Optional.of(all)));
          } else {
            userInterface.execute(() -> lines.set(Optional.empty()));
          }
        });
  }

  /** Lines part sections and treatments, not laps. */
  private static IntUnaryOperator kinds(Picture made) {
    return made.subject() == Picture.Subject.PLAN
        ? c -> FaceClasses.section(c) > 0 ? FaceClasses.section(c) + 2 : c
        : IntUnaryOperator.identity();
  }

  private static HatchLines.Pattern patterns(Picture made) {
    return made.subject() == Picture.Subject.PLAN
        ? c -> c <= FaceClasses.BARE ? MarkClasses.pattern(c) : 0
        : MarkClasses::pattern;
  }

  private Picture make(Order order) {
    if (model.isEmpty() || model.get().mesh() != order.mesh()) {
      model = Optional.of(PieceModel.of(order.mesh(), order.isClosed()));
      shown = new long[model.get().chunks()];
      Arrays.fill(shown, 0);
      lastOpened = Optional.empty();
      marks = Optional.empty();
    }
    PieceModel of = model.get();
    Optional<OpenedPiece> opened = Optional.empty();
    ShownSurface surface;
    if (order.subject() == Picture.Subject.PLAN) {
      opened = order.plan().map(plan -> opened(plan, of));
      surface =
          order
              .sections()
              .map(
                  d ->
                      new ShownSurface(
                          d.mesh(), d.origin(), FaceClasses.of(d), of.mesh().faceCount()))
              .orElse(opened.orElseThrow().surface());
    } else if (order.subject() == Picture.Subject.MARKS) {
      ShownSurface before = marks(of, order.map().orElseThrow());
      int marked = order.map().orElseThrow().effects().size();
      // A mark that is changed is cut anew: parts of before and after don't lie in each other.
      surface =
          order
              .draft()
              .map(
                  draft ->
                      draft.effects().size() > marked
                          ? MarkClasses.surface(of, before, draft)
                          : MarkClasses.surface(of, draft))
              .orElse(before);
    } else {
      surface = ShownSurface.plain(order.mesh(), FaceClasses.BARE);
    }
    long[] hashes = surface.hashes(of);
    int[] changed = IntStream.range(0, hashes.length).filter(i -> hashes[i] != shown[i]).toArray();
    List<MeshChunk> chunks = new ArrayList<>();
    for (int i : changed) {
      chunks.add(MeshChunk.of(of, surface, i));
    }
    shown = hashes;
    return new Picture(of, order.subject(), surface, opened, changed, chunks);
  }

  private OpenedPiece opened(PlannedJob plan, PieceModel of) {
    if (lastOpened.isEmpty()
        || !Identity.same(Optional.of(lastOpened.get().job()), Optional.of(plan))) {
      lastOpened = Optional.of(OpenedPiece.of(plan, of));
    }
    return lastOpened.get();
  }

  private ShownSurface marks(PieceModel of, SurfaceMap map) {
    if (!Identity.same(marks, Optional.of(map))) {
      marks = Optional.of(map);
      marksSurface = Optional.of(MarkClasses.surface(of, map));
    }
    return marksSurface.orElseThrow();
  }
}
