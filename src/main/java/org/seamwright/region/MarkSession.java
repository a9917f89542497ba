package org.seamwright.region;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

/**
 * A piece under marking: marks are added one by one, each at the cost of that mark alone, and the
 * map can be asked for in between. A copy taken before a mark is the way back.
 *
 * <p>The map is the same, to the bit, as that of {@link Marks#evaluate} with all marks at once. Not
 * for use by two threads at a time.
 */
public final class MarkSession {
  private final Piece piece;
  private final Labels labels;
  private final EditableSurface surface;
  private final List<Mark> marks;
  private final List<Step> steps;
  private final List<SurfaceMap.Effect> effects;
  private final List<Notice> notices;

  /** Places of the piece as read of which it is told which marks cover them. */
  private final List<SurfacePoint> places;

  private MarkSession(
      Piece piece,
      Labels labels,
      List<SurfacePoint> places,
      EditableSurface surface,
      List<Mark> marks,
      List<Step> steps,
      List<SurfaceMap.Effect> effects,
      List<Notice> notices) {
    this.piece = piece;
    this.labels = labels;
    this.places = places;
    this.surface = surface;
    this.marks = marks;
    this.steps = steps;
    this.effects = effects;
    this.notices = notices;
  }

  /**
   * Starts with a piece without marks.
   *
   * @param meshMm the piece as read, in mm; any triangle soup
   * @param labels names that came with its faces
   * @param ground treatment where no mark applies
   */
  public static MarkSession of(Mesh meshMm, Labels labels, Treatment ground) {
    return of(meshMm, labels, ground, List.of());
  }

  /**
   * Starts with a piece without marks, to be told which marks cover some places.
   *
   * @param places anywhere, mm; the nearest places of the piece count
   * @see #of(Mesh, Labels, Treatment)
   */
  public static MarkSession of(
      Mesh meshMm, Labels labels, Treatment ground, List<Vector3D> places) {
    if (labels.of().length != meshMm.faceCount()) {
      throw new IllegalArgumentException("Labels don't fit the mesh");
    }
    Piece piece = new Piece(meshMm);
    EditableSurface surface = new EditableSurface(meshMm, piece.ring(), ground.code());
    List<SurfacePoint> nearest = places.stream().map(p -> piece.nearest(p).orElseThrow()).toList();
    return new MarkSession(
        piece,
        labels,
        nearest,
        surface,
        new ArrayList<>(),
        new ArrayList<>(),
        new ArrayList<>(),
        new ArrayList<>());
  }

  /** An independent copy: marks added to one are not seen by the other. */
  public MarkSession copy() {
    return new MarkSession(
        piece,
        labels,
        places,
        surface.copy(),
        new ArrayList<>(marks),
        new ArrayList<>(steps),
        new ArrayList<>(effects),
        new ArrayList<>(notices));
  }

  /** The marks added so far. */
  public List<Mark> marks() {
    return List.copyOf(marks);
  }

  /**
   * Adds a mark after those so far.
   *
   * @throws MarkException if it can't be carried out; this session is of no more use then
   */
  public SurfaceMap.Effect add(Mark mark, Progress progress) throws MarkException {
    int index = marks.size();
    if (mark instanceof Mark.Off) {
      SurfaceMap.Effect nothing = new SurfaceMap.Effect(0, 0);
      marks.add(mark);
      effects.add(nothing);
      return nothing;
    }
    Mark resolved = new FoundAxes(piece, index, notices).resolve(mark);
    List<Step> added = Step.next(index, resolved, steps);
    double coveredMm2 = 0;
    double changedMm2 = 0;
    TreeSet<Integer> under = new TreeSet<>();
    for (int i = 0; i < added.size(); i++) {
      double done = (double) i / added.size();
      SurfaceMap.Effect effect =
          apply(added.get(i), progress.between(done, (i + 1.0) / added.size()));
      coveredMm2 += effect.coveredMm2();
      changedMm2 += effect.changedMm2();
      under.addAll(effect.places());
    }
    if (!(coveredMm2 > 0)) {
      String text = "The " + Marks.called(index, mark) + " covers no surface.";
      notices.add(new Notice(Marks.COVERS_NOTHING, 1, text));
    }
    marks.add(mark);
    steps.addAll(added);
    SurfaceMap.Effect effect = new SurfaceMap.Effect(coveredMm2, changedMm2, List.copyOf(under));
    effects.add(effect);
    return effect;
  }

  /** The cut piece as it is now, with a treatment per face. */
  public SurfaceMap map() {
    return new SurfaceMap(
        surface.toMesh(), surface.parents(), surface.treatments(), effects, notices);
  }

  private SurfaceMap.Effect apply(Step step, Progress progress) throws MarkException {
    progress.at(0);
    Mark mark = step.mark();
    requireNumbers(step.owner(), mark);
    Covering covering = new Covering(piece, labels, surface, step, notices, progress);
    boolean[] covered = surface.faceCount() == 0 ? new boolean[0] : mark.match(covering);
    boolean[] changed =
        surface.facesWhere(f -> covered[f] && surface.treatment(f) != covering.after(f));
    double changedMm2 = Sum.over(covered.length, f -> changed[f] ? surface.area(f) : 0);
    double sameMm2 = Sum.over(covered.length, f -> covered[f] && !changed[f] ? surface.area(f) : 0);
    for (int f = 0; f < changed.length; f++) {
      if (changed[f]) {
        surface.setTreatment(f, covering.after(f));
      }
    }
    double coveredMm2 = changedMm2 + sameMm2;
    return new SurfaceMap.Effect(coveredMm2, changedMm2, under(covered));
  }

  /** Which of the places asked about are covered. */
  private List<Integer> under(boolean[] covered) {
    if (places.isEmpty()) {
      return List.of();
    }
    SurfacePoint[] now = Patch.locate(new Patch.Maker(surface), surface, piece, places);
    return IntStream.range(0, now.length).filter(i -> covered[now[i].face()]).boxed().toList();
  }

  private static void requireNumbers(int index, Mark mark) throws MarkException {
    for (Map.Entry<String, Vector3D> vector : mark.match(new MarkVectors()).entrySet()) {
      requireNumber(index, mark, vector.getKey(), vector.getValue());
    }
  }

  private static void requireNumber(int index, Mark mark, String what, Vector3D value)
      throws MarkException {
    if (!value.isFinite()) {
      throw new MarkException(
          index, mark, what, "a coordinate is not a finite number", "Give three numbers in mm.");
    }
  }
}
