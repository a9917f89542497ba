package org.seamwright.region;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
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
 * to the faces it cuts. Same input, same arrays. {@link MarkSession} adds marks one by one.
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

  /** Code of the notice that the edge of what a tip reaches was left coarse. */
  public static final String REACH_COARSE = "reach-coarse";

  /** Code of the notice that says which axis a mark was carried out about. */
  public static final String AXIS_FOUND = "mark-axis-found";

  private Marks() {}

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
    return evaluate(meshMm, labels, ground, marks, List.of(), progress);
  }

  /**
   * Evaluates marks in order and tells which of them cover some places.
   *
   * @param places anywhere, mm; the nearest places of the piece count
   * @see #evaluate(Mesh, Labels, Treatment, List, Progress)
   */
  public static SurfaceMap evaluate(
      Mesh meshMm,
      Labels labels,
      Treatment ground,
      List<Mark> marks,
      List<Vector3D> places,
      Progress progress)
      throws MarkException {
    MarkSession session = MarkSession.of(meshMm, labels, ground, places);
    for (int i = 0; i < marks.size(); i++) {
      double done = (double) i / marks.size();
      session.add(marks.get(i), progress.between(done, (i + 1.0) / marks.size()));
    }
    progress.at(1);
    return session.map();
  }

  /** A mark as messages name it. */
  static String called(int index, Mark mark) {
    String number = "mark " + (index + 1);
    return mark.name().isEmpty() ? number : number + " \"" + mark.name() + "\"";
  }
}
