package org.seamwright.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.job.Job;
import org.seamwright.job.PlannedJob;
import org.seamwright.mesh.Faces;
import org.seamwright.section.SectionEdit;
import org.seamwright.section.SectionPlan;
import org.seamwright.section.SectionPoints;

/**
 * Sections changed by hand: which tool is taken, which seam or section it is on, and what it would
 * do. Each change is tried out away from the user interface's thread, the latest one only, and
 * becomes an operation of the job once it is known that it can be carried out.
 */
public final class SectionHands {
  /** A seam is taken from this far, as a share of the piece's diagonal. */
  private static final double REACH_SHARE = 0.02;

  /** Places of a drawn line are this far apart at least, as a share of the diagonal. */
  private static final double CLOSE_SHARE = 0.008;

  /** Ends of a line are taken this far within what is plated, as a share of the diagonal. */
  private static final double RIM_SHARE = 4e-4;

  /** Parts an even split may make: as many as there are colours set aside. */
  public static final int MOST_PARTS = 8;

  /** Faces of a section that are looked at for the one farthest from a line. */
  private static final int LOOKED_AT = 600;

  private final Desk desk;
  private final Executor background;
  private final Executor userInterface;
  private final Watched<SectionTool> tool = new Watched<>(SectionTool.LOOK);
  private final Watched<Optional<SeamCourse>> seam = new Watched<>(Optional.empty());
  private final Watched<List<Vector3D>> line = new Watched<>(List.of());
  private final Watched<Optional<SectionDraft>> draft = new Watched<>(Optional.empty());
  private final Watched<Boolean> ready = new Watched<>(false);
  private final Watched<Integer> parts = new Watched<>(2);
  private final Watched<Double> share = new Watched<>(0.6);

  /** Of the background thread. */
  private final SectionBench bench = new SectionBench();

  private Optional<PlannedJob> plan = Optional.empty();
  private List<SeamCourse> courses = List.of();
  private Optional<SurfaceFoot> foot = Optional.empty();
  private Optional<boolean[]> plated = Optional.empty();
  private Optional<Anchors> anchored = Optional.empty();
  private Optional<SeamPull> pull = Optional.empty();
  private boolean drawing;

  /** Whether keys have chosen the seam or section, and where the pointer was then. */
  private boolean byKey;

  private Optional<Touch> last = Optional.empty();

  /** The section that a line is drawn over, or that is to be split; 0 for none. */
  private int section;

  private Optional<Wish> wanted = Optional.empty();
  private boolean trying;

  /** The job that the last change made: its draft stays in sight until its plan is there. */
  private Optional<Job> awaited = Optional.empty();

  /** Points that stay with the two sections of a seam that is pulled: looked for once. */
  private record Anchors(SeamPull of, Vector3D a, Vector3D b) {}

  /** An edit to try out. */
  private record Wish(SectionEdit edit, int section, boolean toKeep) {}

  /** Makes a presenter. */
  public SectionHands(Desk desk, Executor background, Executor userInterface) {
    this.desk = desk;
    this.background = background;
    this.userInterface = userInterface;
    desk.state().watch(this::follow);
  }

  /** The tool that is taken. */
  public Watched<SectionTool> tool() {
    return tool;
  }

  /** The seam under the pointer, or the one chosen by keys. */
  public Watched<Optional<SeamCourse>> seam() {
    return seam;
  }

  /** The seam as it is pulled, or the line drawn so far. */
  public Watched<List<Vector3D>> line() {
    return line;
  }

  /** What the change would do, as far as it is known. */
  public Watched<Optional<SectionDraft>> draft() {
    return draft;
  }

  /** Whether seams can be taken. */
  public Watched<Boolean> ready() {
    return ready;
  }

  /** Into how many parts a section is split evenly. */
  public Watched<Integer> parts() {
    return parts;
  }

  /** How much of a seam moves when it is dragged; 1 for all of it alike. */
  public Watched<Double> share() {
    return share;
  }

  /** All seams of the plan. */
  public List<SeamCourse> courses() {
    return courses;
  }

  /** Whether a seam is pulled or a line drawn with the pointer. */
  public boolean isDrawing() {
    return drawing;
  }

  /** What points are moved over: the piece that is shown. */
  public void over(SurfaceFoot surface) {
    foot = Optional.of(surface);
  }

  private void follow(DeskState state) {
    if (awaited.isPresent() && !state.job().equals(awaited)) {
      awaited = Optional.empty();
      draft.set(Optional.empty());
      line.set(List.of());
    }
    Optional<PlannedJob> now = state.isPlanned() ? state.plan() : Optional.empty();
    if (Identity.same(plan, now)) {
      return;
    }
    plan = now;
    courses = List.of();
    drop();
    ready.set(false);
    if (now.isPresent()) {
      awaited = Optional.empty();
      draft.set(Optional.empty());
      line.set(List.of());
      if (tool.get() != SectionTool.LOOK) {
        prepare(now.get());
      }
    }
  }

  private void drop() {
    pull = Optional.empty();
    drawing = false;
    section = 0;
    wanted = Optional.empty();
    seam.set(Optional.empty());
    if (awaited.isEmpty()) {
      line.set(List.of());
      draft.set(Optional.empty());
    }
  }

  /** Finds seams and sections once, so that the first movement need not wait for it. */
  private void prepare(PlannedJob of) {
    background.execute(
        () -> {
          List<SeamCourse> found = SeamCourse.of(of.sections());
          boolean[] some = platedFaces(of);
          userInterface.execute(
              () -> {
                if (Identity.same(plan, Optional.of(of))) {
                  courses = found;
                  plated = Optional.of(some);
                  ready.set(true);
                }
              });
          try {
            bench.ready(of, Progress.NONE);
          } catch (org.seamwright.section.SectionException e) {
            // The plan itself was made by the same edits; trying one out will tell.
            return;
          }
        });
  }

  /** Takes a tool; what the last one had begun is dropped. */
  public void take(SectionTool next) {
    drop();
    tool.set(next);
    if (next != SectionTool.LOOK && !ready.get()) {
      plan.ifPresent(this::prepare);
    }
  }

  /** Sets into how many parts a section is split evenly. */
  public void setParts(int count) {
    parts.set(Math.max(2, Math.min(MOST_PARTS, count)));
    if (tool.get() == SectionTool.SPLIT && section > 0) {
      int again = section;
      section = 0;
      over(again);
    }
  }

  /** Sets how much of a seam moves, from a twentieth to all. */
  public void setShare(double next) {
    share.set(Math.max(0.05, Math.min(1, Tidy.toTwoDigits(next))));
  }

  /**
   * The pointer is on a place, or off the piece.
   *
   * @param on the section there by the plan; 0 where nothing is plated
   */
  public void pointAt(Optional<Touch> touch, int on) {
    boolean rests = byKey && !drawing && rests(touch);
    last = touch;
    if (rests) {
      return;
    }
    byKey = false;
    if (drawing) {
      touch.ifPresent(t -> move(t, on));
    } else if (tool.get().takesSeam() && pull.isEmpty() && foot.isPresent()) {
      double reach = REACH_SHARE * foot.get().diagonalMm();
      choose(touch.flatMap(t -> SeamCourse.nearest(courses, t.point(), reach)));
    } else if (tool.get() == SectionTool.SPLIT) {
      over(on);
    }
  }

  /** Whether the pointer is where it was: what keys have chosen meanwhile is not to be lost. */
  private boolean rests(Optional<Touch> touch) {
    if (touch.isEmpty() || last.isEmpty() || foot.isEmpty()) {
      return touch.isEmpty() && last.isEmpty();
    }
    double moved = touch.get().point().distance(last.get().point());
    return moved <= CLOSE_SHARE * foot.get().diagonalMm();
  }

  private void choose(Optional<SeamCourse> next) {
    if (next.equals(seam.get())) {
      return;
    }
    seam.set(next);
    if (tool.get() == SectionTool.MERGE) {
      if (next.isPresent()) {
        SectionEdit merge = new SectionEdit.Merge(beside(next.get(), 0), beside(next.get(), 1));
        tryOut(new Wish(merge, next.get().later(), false));
      } else {
        forget();
      }
    }
  }

  private void over(int on) {
    if (on == section) {
      return;
    }
    section = on;
    if (on == 0) {
      forget();
    } else {
      tryOut(new Wish(new SectionEdit.SplitEvenly(inside(on), parts.get()), on, false));
    }
  }

  private void forget() {
    wanted = Optional.empty();
    if (awaited.isEmpty()) {
      draft.set(Optional.empty());
    }
  }

  /** Whether a press there would draw or pull, and not turn the piece. */
  public boolean grabs() {
    return awaited.isEmpty()
        && plan.isPresent()
        && (tool.get() == SectionTool.LINE
            || (tool.get() == SectionTool.SEAM && seam.get().isPresent()));
  }

  /** A button goes down on a place. */
  public void press(Touch touch, int on) {
    if (!grabs() || foot.isEmpty()) {
      return;
    }
    drawing = true;
    if (tool.get() == SectionTool.SEAM) {
      pull =
          Optional.of(
              new SeamPull(seam.get().orElseThrow(), touch, share.get(), foot.orElseThrow()));
      line.set(pull.get().whole());
    } else if (line.get().isEmpty()) {
      section = on;
      line.set(List.of(touch.point()));
    } else {
      move(touch, on);
    }
  }

  private void move(Touch touch, int on) {
    if (pull.isPresent()) {
      pull.get().to(touch);
      line.set(pull.get().whole());
      tryOut(new Wish(pulled(pull.get()), 0, false));
      return;
    }
    List<Vector3D> so = line.get();
    double step = CLOSE_SHARE * foot.orElseThrow().diagonalMm();
    if (so.isEmpty() || so.get(so.size() - 1).distance(touch.point()) >= step) {
      List<Vector3D> longer = new ArrayList<>(so);
      longer.add(touch.point());
      section = section == 0 ? on : section;
      line.set(longer);
      split().ifPresent(this::tryOut);
    }
  }

  private Optional<Wish> split() {
    if (section == 0 || line.get().size() < 2) {
      return Optional.empty();
    }
    List<Vector3D> path = tidy(line.get());
    SectionEdit edit =
        new SectionEdit.SplitAlong(farthest(section, new SeamCourse(0, 0, path)), path);
    return Optional.of(new Wish(edit, section, false));
  }

  private SectionEdit pulled(SeamPull by) {
    if (anchored.filter(a -> a.of() == by).isEmpty()) {
      anchored = Optional.of(new Anchors(by, beside(by.course(), 0), beside(by.course(), 1)));
    }
    Anchors stay = anchored.get();
    return new SectionEdit.MoveSeam(stay.a(), stay.b(), tidy(offRim(by.path())));
  }

  /**
   * An open line whose ends are a little within: on the rim of what is plated an end would belong
   * to the bare side as much. An edit leads them on to the edge again.
   */
  private List<Vector3D> offRim(List<Vector3D> path) {
    if (path.get(0).equals(path.get(path.size() - 1))) {
      return path;
    }
    double by = RIM_SHARE * foot.orElseThrow().diagonalMm();
    List<Vector3D> within = new ArrayList<>(path);
    while (within.size() > 2 && !isPlated(within.get(0))) {
      within.remove(0);
    }
    while (within.size() > 2 && !isPlated(within.get(within.size() - 1))) {
      within.remove(within.size() - 1);
    }
    int last = within.size() - 1;
    within.set(0, towards(within.get(0), within.get(1), by));
    within.set(last, towards(within.get(last), within.get(last - 1), by));
    return within;
  }

  private boolean isPlated(Vector3D place) {
    return plated.isEmpty() || plated.get()[foot.orElseThrow().face(place)];
  }

  /** Faces of the piece of which some is plated. */
  private static boolean[] platedFaces(PlannedJob of) {
    boolean[] some = new boolean[of.mesh().faceCount()];
    int[] sectionOf = of.sections().sectionOf();
    for (int f = 0; f < sectionOf.length; f++) {
      if (sectionOf[f] > 0) {
        some[of.map().parentFace()[of.sections().parentFace()[f]]] = true;
      }
    }
    return some;
  }

  private static Vector3D towards(Vector3D from, Vector3D to, double by) {
    double length = from.distance(to);
    return length > 0 ? from.lerp(to, Math.min(0.5, by / length)) : from;
  }

  private List<Vector3D> tidy(List<Vector3D> path) {
    double diagonal = foot.orElseThrow().diagonalMm();
    List<Vector3D> tidy = new ArrayList<>();
    for (Vector3D p : path) {
      Vector3D next = Tidy.point(p, diagonal);
      if (tidy.isEmpty() || !tidy.get(tidy.size() - 1).equals(next)) {
        tidy.add(next);
      }
    }
    return tidy.size() > 1 ? tidy : path;
  }

  /** A point of one of the two sections of a seam, far from it. */
  private Vector3D beside(SeamCourse of, int which) {
    return farthest(which == 0 ? of.earlier() : of.later(), of);
  }

  private Vector3D farthest(int of, SeamCourse from) {
    SectionPlan sections = plan.orElseThrow().sections();
    int[] sectionOf = sections.sectionOf();
    int count = 0;
    for (int id : sectionOf) {
      count += id == of ? 1 : 0;
    }
    int every = Math.max(1, count / LOOKED_AT);
    double most = -1;
    Vector3D best = Vector3D.ZERO;
    double[] at = new double[3];
    int seen = 0;
    for (int f = 0; f < sectionOf.length; f++) {
      if (sectionOf[f] == of && seen++ % every == 0) {
        Faces.centroid(sections.mesh(), f, at);
        Vector3D place = Vector3D.of(at);
        double far = from.farFrom(place);
        if (far > most) {
          most = far;
          best = place;
        }
      }
    }
    return Tidy.point(best, sections.mesh().bounds().diagonal());
  }

  private Vector3D inside(int of) {
    SectionPlan sections = plan.orElseThrow().sections();
    return Tidy.point(SectionPoints.inside(sections, of), sections.mesh().bounds().diagonal());
  }

  /** The button goes up: what was pulled or drawn is kept, if it can be carried out. */
  public void release() {
    if (drawing && tool.get() == SectionTool.SEAM) {
      confirm();
    } else if (drawing && line.get().size() > 2) {
      confirm();
    }
    drawing = false;
  }

  /** A click on a place: splits, merges and pins; with the line, one more corner. */
  public void click(Touch touch, int on) {
    switch (tool.get()) {
      case LINE -> {
        press(touch, on);
        drawing = false;
      }
      case SPLIT, MERGE, PIN -> {
        pointAt(Optional.of(touch), on);
        confirm();
      }
      default -> {
        // Without a tool a click chooses a section; a seam is dragged.
      }
    }
  }

  /** Enter: keeps what is shown. */
  public void confirm() {
    if (plan.isEmpty() || awaited.isPresent()) {
      return;
    }
    Optional<Wish> wish =
        switch (tool.get()) {
          case SEAM -> pull.map(p -> new Wish(pulled(p), 0, true));
          case LINE -> split();
          case SPLIT ->
              section > 0
                  ? Optional.of(
                      new Wish(
                          new SectionEdit.SplitEvenly(inside(section), parts.get()), section, true))
                  : Optional.empty();
          case MERGE ->
              seam.get()
                  .map(
                      s ->
                          new Wish(
                              new SectionEdit.Merge(beside(s, 0), beside(s, 1)), s.later(), true));
          case PIN ->
              seam.get()
                  .map(
                      s ->
                          new Wish(
                              new SectionEdit.Pin(
                                  tidy(offRim(SeamPull.resampled(s.points(), PIN_PARTS)))),
                              0,
                              true));
          case LOOK -> Optional.empty();
        };
    wish.ifPresent(w -> tryOut(new Wish(w.edit(), w.section(), true)));
    pull = Optional.empty();
    drawing = false;
  }

  /** Parts that the course of a pinned seam is told in. */
  private static final int PIN_PARTS = 48;

  /** Escape: drops what was begun, or puts the tool back; false if there is nothing to drop. */
  public boolean escape() {
    if (tool.get() == SectionTool.LOOK) {
      return false;
    }
    boolean begun = pull.isPresent() || !line.get().isEmpty() || seam.get().isPresent();
    if (begun) {
      drop();
    } else {
      take(SectionTool.LOOK);
    }
    return true;
  }

  /** Chooses the next seam by key: of the section that is chosen if one is, else of all. */
  public void nextSeam(int step, int ofSection) {
    List<SeamCourse> of =
        courses.stream()
            .filter(c -> ofSection == 0 || c.earlier() == ofSection || c.later() == ofSection)
            .toList();
    if (!tool.get().takesSeam() || of.isEmpty()) {
      return;
    }
    byKey = true;
    int at = seam.get().map(of::indexOf).orElse(step > 0 ? -1 : 0);
    pull = Optional.empty();
    line.set(List.of());
    choose(Optional.of(of.get(Math.floorMod(at + step, of.size()))));
  }

  /** The section chosen in the list is the one to split. */
  public void chosen(int on) {
    if (tool.get() == SectionTool.SPLIT) {
      byKey = true;
      over(on);
    }
  }

  /**
   * Moves the chosen seam by key.
   *
   * @param by the movement, mm
   * @return whether there was a seam to move
   */
  public boolean nudge(Vector3D by) {
    if (tool.get() != SectionTool.SEAM || seam.get().isEmpty() || foot.isEmpty()) {
      return false;
    }
    if (pull.isEmpty()) {
      Touch at = foot.get().under(seam.get().get().middle());
      pull = Optional.of(new SeamPull(seam.get().get(), at, share.get(), foot.get()));
    }
    move(foot.get().under(pull.get().hand().point().add(by)), 0);
    return true;
  }

  /** Names a section; an empty name takes the name away. */
  public void rename(int of, String name) {
    named(of, point -> new SectionEdit.Rename(point, name.strip()));
  }

  /** Gives a section another place in the working order. */
  public void renumber(int of, int number) {
    int count = plan.map(p -> p.sections().sections().size()).orElse(0);
    if (number != of && number >= 1 && number <= count) {
      named(of, point -> new SectionEdit.Renumber(point, number));
    }
  }

  private void named(int of, java.util.function.Function<Vector3D, SectionEdit> edit) {
    if (plan.isPresent() && awaited.isEmpty()) {
      add(edit.apply(inside(of)));
    }
  }

  /** Takes all edits by hand away. */
  public void dropEdits() {
    desk.change(job -> withEdits(job, List.of()));
  }

  private void add(SectionEdit edit) {
    List<SectionEdit> edits =
        new ArrayList<>(desk.state().get().job().orElseThrow().sections().choices().edits());
    edits.add(edit);
    desk.change(job -> withEdits(job, edits));
  }

  private static Job withEdits(Job job, List<SectionEdit> edits) {
    return job.withSections(job.sections().withChoices(job.sections().choices().withEdits(edits)));
  }

  private void tryOut(Wish wish) {
    wanted = Optional.of(wish);
    if (!trying) {
      tryNext();
    }
  }

  private void tryNext() {
    if (wanted.isEmpty() || plan.isEmpty()) {
      return;
    }
    Wish wish = wanted.get();
    PlannedJob on = plan.get();
    wanted = Optional.empty();
    trying = true;
    background.execute(
        () -> {
          SectionDraft found = tried(on, wish);
          userInterface.execute(
              () -> {
                trying = false;
                if (Identity.same(plan, Optional.of(on))) {
                  found(wish, found);
                }
                tryNext();
              });
        });
  }

  private SectionDraft tried(PlannedJob on, Wish wish) {
    try {
      return bench.tried(on, wish.edit(), wish.section(), Progress.NONE);
    } catch (RuntimeException | Error e) {
      // The thread's last stop: a fault must reach the user, and must not end the thread.
      return SectionDraft.refused(wish.edit(), e.toString());
    }
  }

  private void found(Wish wish, SectionDraft found) {
    boolean wants = wish.toKeep() || isWanted();
    if (!wants) {
      return;
    }
    draft.set(Optional.of(found));
    if (wish.toKeep() && found.shown().isPresent()) {
      Job before = desk.state().get().job().orElseThrow();
      List<SectionEdit> edits = new ArrayList<>(before.sections().choices().edits());
      edits.add(wish.edit());
      awaited = Optional.of(withEdits(before, edits));
      seam.set(Optional.empty());
      section = 0;
      desk.change(job -> awaited.orElse(job));
      line.set(List.of());
    } else if (wish.toKeep()) {
      line.set(List.of());
    }
  }

  /** Whether what was tried out is still of use: the pointer may have gone elsewhere meanwhile. */
  private boolean isWanted() {
    return pull.isPresent() || seam.get().isPresent() || section > 0;
  }
}
