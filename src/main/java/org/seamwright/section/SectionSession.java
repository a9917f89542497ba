package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.CutMesh;
import org.seamwright.mesh.Mesh;
import org.seamwright.region.SurfaceCuts;
import org.seamwright.region.SurfaceMap;

/**
 * Sections under editing: found once, then each edit at the cost of what it touches. After an edit
 * only places within reach of laps from faces that changed sections are lapped anew; their former
 * figures are taken off the sums and the new ones added. Net areas and lengths of seams are those
 * of evaluating from nothing to rounding; laps to the error of distances, which depend a little on
 * how much is measured at once (within 0.1% in the tests).
 *
 * <p>{@link #plan} gives the whole plan with its mesh cut along laps. Not for two threads at a
 * time.
 */
public final class SectionSession {
  /** Editors kept for undo; older states are made anew from the edits. */
  private static final int KEPT = 6;

  private final SectionSettings settings;
  private final CutMesh before;
  private final SectionEditor base;
  private final List<Notice> found;

  /** One entry per edit and one more: figures after it. */
  private final List<RunningFigures> figures = new ArrayList<>();

  /** The same: editors, where still kept. */
  private final List<SectionEditor> editors = new ArrayList<>();

  private final List<SectionEdit> edits = new ArrayList<>();

  private SectionSession(
      SectionSettings settings, CutMesh before, SectionEditor base, List<Notice> found) {
    this.settings = settings;
    this.before = before;
    this.base = base;
    this.found = found;
  }

  /**
   * Finds sections and carries out the edits asked for so far.
   *
   * @param map the piece with its treatments
   * @param settings limit and lap widths
   * @param choices way, symmetry and edits
   * @throws SectionException if the way or an edit can't be carried out
   */
  public static SectionSession of(
      SurfaceMap map, SectionSettings settings, SectionChoices choices, Progress progress)
      throws SectionException {
    boolean[] show = new boolean[map.mesh().faceCount()];
    ChosenSections chosen = new ChosenSections(map, show, settings, choices);
    Sectioning.Divided divided = chosen.divided(progress.between(0, 0.7));
    SectionEditor base = chosen.editor(divided);
    CutMesh before = divided.fine().then(divided.layout().cut().cut());
    Progress lapping = progress.between(0.7, 0.9);
    SectionPlan plan =
        settings.rings()
            ? Sectioning.plan(divided.fine(), divided.layout(), settings, lapping)
            : base.copy().plan(before, lapping);
    SectionSession session = new SectionSession(settings, before, base, chosen.notices());
    RunningFigures figures = new RunningFigures();
    figures.add(plan, base.order());
    session.figures.add(figures);
    session.editors.add(base);
    base.warm();
    for (SectionEdit edit : choices.edits()) {
      session.edit(edit);
    }
    progress.at(1);
    return session;
  }

  /** The edits made so far. */
  public List<SectionEdit> edits() {
    return List.copyOf(edits);
  }

  /** What was found on the way: axis, symmetry. */
  public List<Notice> found() {
    return List.copyOf(found);
  }

  private SectionEditor editor() {
    return editors.get(editors.size() - 1);
  }

  /** The piece cut along marks and seams, but not along laps. */
  public Mesh mesh() {
    return editor().cuts().toMesh();
  }

  /** One entry per face of {@link #mesh}: number of its section, 0 where nothing is plated. */
  public int[] sectionOf() {
    return ids(editor().label(), editor().order());
  }

  /** One entry per face of {@link #mesh}: its face in the surface map's mesh. */
  public int[] parentFace() {
    int[] parent = editor().cuts().parents();
    for (int f = 0; f < parent.length; f++) {
      parent[f] = before.parentFace()[parent[f]];
    }
    return parent;
  }

  /** The figures as they are now. */
  public SectionFigures figures() {
    return figures
        .get(figures.size() - 1)
        .figures(editor().order(), editor()::name, settings.limitMm2());
  }

  /**
   * Makes an edit after those so far.
   *
   * @throws SectionException if it can't be carried out; the session is as it was before
   */
  public SectionFigures edit(SectionEdit edit) throws SectionException {
    SectionEditor now = editor().copy();
    now.apply(edits.size(), edit);
    figures.add(follow(editor(), now));
    editors.add(now);
    edits.add(edit);
    if (editors.size() > KEPT) {
      editors.set(editors.size() - 1 - KEPT, base);
    }
    return figures();
  }

  /**
   * Drops the last edit.
   *
   * @throws IllegalStateException if there is none
   */
  public SectionFigures undo() {
    if (edits.isEmpty()) {
      throw new IllegalStateException("There is no edit to drop");
    }
    edits.remove(edits.size() - 1);
    figures.remove(figures.size() - 1);
    editors.remove(editors.size() - 1);
    if (!edits.isEmpty() && editor() == base) {
      SectionEditor anew = base.copy();
      try {
        for (int i = 0; i < edits.size(); i++) {
          anew.apply(i, edits.get(i));
        }
      } catch (SectionException e) {
        throw new IllegalStateException("An edit that was carried out once is refused", e);
      }
      editors.set(editors.size() - 1, anew);
    }
    return figures();
  }

  /** The whole plan as it is now, the mesh cut along laps: the cost of lapping all sections. */
  public SectionPlan plan(Progress progress) {
    SectionPlan plan = editor().copy().plan(before, progress);
    List<Notice> all = new ArrayList<>(found);
    all.addAll(plan.notices());
    return plan.with(plan.sections(), all);
  }

  private static int[] ids(int[] label, List<Integer> order) {
    int[] id = new int[order.stream().mapToInt(s -> s).max().orElse(0) + 1];
    for (int i = 0; i < order.size(); i++) {
      id[order.get(i)] = i + 1;
    }
    int[] section = new int[label.length];
    for (int f = 0; f < section.length; f++) {
      section[f] = label[f] >= 0 ? id[label[f]] : 0;
    }
    return section;
  }

  private RunningFigures follow(SectionEditor was, SectionEditor is) {
    RunningFigures next = figures.get(figures.size() - 1).copy();
    int[] old = is.cuts().carried(was.label());
    int[] now = is.label();
    int moved = moved(was.order(), is.order());
    int[] changed = new int[now.length];
    int count = 0;
    for (int f = 0; f < now.length; f++) {
      if (old[f] != now[f] || (now[f] >= 0 && now[f] == moved)) {
        changed[count++] = f;
      }
    }
    if (count > 0) {
      int[] near = near(is.cuts(), now, Arrays.copyOf(changed, count));
      // Both on the mesh that each is measured on as a whole: distances depend on it a little.
      int[] parent = is.cuts().carried(IntStream.range(0, was.label().length).toArray());
      boolean[] touched = new boolean[was.label().length];
      for (int f : near) {
        touched[parent[f]] = true;
      }
      int[] before = IntStream.range(0, touched.length).filter(f -> touched[f]).toArray();
      int[] after = IntStream.range(0, now.length).filter(f -> touched[parent[f]]).toArray();
      Mesh wasMesh = was.cuts().part(before);
      Mesh isMesh = is.cuts().part(after);
      next.add(laps(wasMesh, before, was.label(), was.order()), was.order(), -1);
      next.add(laps(isMesh, after, now, is.order()), is.order(), 1);
    }
    return next;
  }

  /** The one section that changed places with others that stayed in theirs; -1 for none. */
  private static int moved(List<Integer> was, List<Integer> is) {
    List<Integer> old = new ArrayList<>(was);
    old.retainAll(new HashSet<>(is));
    List<Integer> now = new ArrayList<>(is);
    now.retainAll(new HashSet<>(was));
    for (int section : now) {
      List<Integer> oldRest = new ArrayList<>(old);
      List<Integer> nowRest = new ArrayList<>(now);
      oldRest.remove((Integer) section);
      nowRest.remove((Integer) section);
      if (!old.equals(now) && oldRest.equals(nowRest)) {
        return section;
      }
    }
    return -1;
  }

  private Laps laps(Mesh mesh, int[] faces, int[] label, List<Integer> order) {
    int[] own = new int[faces.length];
    for (int i = 0; i < own.length; i++) {
      own[i] = label[faces[i]];
    }
    return Laps.of(
        mesh,
        ids(own, order),
        order.size(),
        settings.activationLapMm(),
        settings.flashLapMm(),
        Progress.NONE);
  }

  /**
   * The plated faces within two laps of those that changed: within one, laps may differ; within two
   * lie the seams that these come from. A grid of that step tells them, and some more.
   */
  private int[] near(SurfaceCuts cuts, int[] label, int[] changed) {
    double longest = 0;
    for (int f : changed) {
      longest = Math.max(longest, longestEdge(cuts, f));
    }
    double lapMm = Math.max(settings.activationLapMm(), settings.flashLapMm());
    double step = 2 * lapMm + 2 * longest;
    Set<Long> cells = new HashSet<>();
    for (int f : changed) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        addRound(cuts, cuts.from(h), step, cells);
      }
    }
    boolean[] seen = new boolean[label.length];
    int[] queue = changed.clone();
    int end = queue.length;
    for (int f : changed) {
      seen[f] = true;
    }
    for (int begin = 0; begin < end; begin++) {
      for (int h = 3 * queue[begin]; h < 3 * queue[begin] + 3; h++) {
        for (int g = cuts.ring(h); g != h; g = cuts.ring(g)) {
          int f = g / 3;
          if (!seen[f] && label[f] >= 0 && isNear(cuts, f, step, cells)) {
            seen[f] = true;
            queue = end == queue.length ? Arrays.copyOf(queue, 2 * end) : queue;
            queue[end++] = f;
          }
        }
      }
    }
    int[] near = Arrays.copyOf(queue, end);
    Arrays.sort(near);
    return near;
  }

  private static double longestEdge(SurfaceCuts cuts, int face) {
    return Math.max(
        cuts.length(3 * face), Math.max(cuts.length(3 * face + 1), cuts.length(3 * face + 2)));
  }

  private static long cell(SurfaceCuts cuts, int vertex, double step, int dx, int dy, int dz) {
    double[] p = cuts.coordinates();
    long x = (long) Math.floor(p[3 * vertex] / step) + dx;
    long y = (long) Math.floor(p[3 * vertex + 1] / step) + dy;
    long z = (long) Math.floor(p[3 * vertex + 2] / step) + dz;
    return ((x & 0x1FFFFF) << 42) | ((y & 0x1FFFFF) << 21) | (z & 0x1FFFFF);
  }

  private static void addRound(SurfaceCuts cuts, int vertex, double step, Set<Long> cells) {
    for (int i = 0; i < 27; i++) {
      cells.add(cell(cuts, vertex, step, i % 3 - 1, i / 3 % 3 - 1, i / 9 - 1));
    }
  }

  private static boolean isNear(SurfaceCuts cuts, int face, double step, Set<Long> cells) {
    for (int h = 3 * face; h < 3 * face + 3; h++) {
      if (cells.contains(cell(cuts, cuts.from(h), step, 0, 0, 0))) {
        return true;
      }
    }
    // A face much larger than the step may reach in between its corners.
    return longestEdge(cuts, face) > step;
  }
}
