package org.seamwright.region;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;

/**
 * Carries out marks on a piece: cuts its faces along the edge of each mark and gives the faces
 * inside their treatment, later marks over earlier ones.
 *
 * <p>Planes are cut exactly; discs and strokes along the line of equal distance over the surface,
 * with an area up to 3 parts in 10 000 too small where that is round (see {@link Front}); fills and
 * parts take whole faces of the piece as read. Cuts stay near the mark, neighbours stay welded, and
 * no area is lost or made beyond rounding.
 *
 * <p>Cost: one topology of the piece, then per mark a look at each vertex plus work in proportion
 * to the faces it cuts. Same input, same arrays.
 */
public final class Marks {
  /** Code of the notice that points of a mark lie far off the surface. */
  public static final String POINT_FAR = "mark-point-far";

  /** Code of the notice that a mark covers no area. */
  public static final String COVERS_NOTHING = "mark-covers-nothing";

  /** Code of the notice that a fill took in pockets too small to be worked apart. */
  public static final String POCKETS = "small-pockets-filled";

  /** Code of the notice that a stroke jumps between parts that no surface joins. */
  public static final String PATH_BROKEN = "mark-path-broken";

  private final Piece piece;
  private final Labels labels;
  private final EditableSurface surface;
  private final List<Notice> notices = new ArrayList<>();

  private Marks(Mesh mesh, Labels labels, Treatment ground) {
    this.labels = labels;
    piece = new Piece(mesh);
    surface = new EditableSurface(mesh, piece.ring(), ground.code());
  }

  /**
   * Evaluates marks in order.
   *
   * @param meshMm the piece as read, in mm; any triangle soup
   * @param labels names that came with its faces
   * @param ground treatment where no mark applies
   * @param marks in order; a later one overrides an earlier one
   * @param progress told the share done; may cancel
   * @return the cut piece with a treatment per face
   */
  public static SurfaceMap evaluate(
      Mesh meshMm, Labels labels, Treatment ground, List<Mark> marks, Progress progress)
      throws MarkException {
    if (labels.of().length != meshMm.faceCount()) {
      throw new IllegalArgumentException("Labels don't fit the mesh");
    }
    Marks state = new Marks(meshMm, labels, ground);
    List<Step> steps = Step.of(marks);
    double[] coveredMm2 = new double[marks.size()];
    double[] changedMm2 = new double[marks.size()];
    for (int i = 0; i < steps.size(); i++) {
      Progress share = progress.between((double) i / steps.size(), (double) (i + 1) / steps.size());
      SurfaceMap.Effect effect = state.apply(steps.get(i), share);
      coveredMm2[steps.get(i).owner()] += effect.coveredMm2();
      changedMm2[steps.get(i).owner()] += effect.changedMm2();
    }
    List<SurfaceMap.Effect> effects = new ArrayList<>();
    for (int i = 0; i < marks.size(); i++) {
      effects.add(new SurfaceMap.Effect(coveredMm2[i], changedMm2[i]));
      if (!(coveredMm2[i] > 0)) {
        String text = "The " + called(i, marks.get(i)) + " covers no surface.";
        state.notices.add(new Notice(COVERS_NOTHING, 1, text));
      }
    }
    progress.at(1);
    return new SurfaceMap(
        state.surface.toMesh(),
        state.surface.parents(),
        state.surface.treatments(),
        effects,
        state.notices);
  }

  private SurfaceMap.Effect apply(Step step, Progress progress) throws MarkException {
    progress.at(0);
    Mark mark = step.mark();
    requireNumbers(step.owner(), mark);
    boolean[] covered =
        surface.faceCount() == 0
            ? new boolean[0]
            : mark.match(new Covering(piece, labels, surface, step, notices, progress));
    double coveredMm2 = Sum.over(covered.length, f -> covered[f] ? surface.area(f) : 0);
    double changedMm2 =
        Sum.over(
            covered.length,
            f -> covered[f] && surface.treatment(f) != after(mark, f) ? surface.area(f) : 0);
    for (int f = 0; f < covered.length; f++) {
      if (covered[f]) {
        surface.setTreatment(f, after(mark, f));
      }
    }
    return new SurfaceMap.Effect(coveredMm2, changedMm2);
  }

  /** What a mark that covers a face makes of it. */
  private byte after(Mark mark, int face) {
    if (mark instanceof Mark.Place place) {
      return place.treatment().code();
    }
    return surface.treatment(face) == Treatment.PLATE.code()
        ? Treatment.BARE.code()
        : Treatment.PLATE.code();
  }

  /** A mark as messages name it. */
  static String called(int index, Mark mark) {
    String number = "mark " + (index + 1);
    return mark.name().isEmpty() ? number : number + " \"" + mark.name() + "\"";
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
