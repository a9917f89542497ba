package org.seamwright.region;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.Labels;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.SurfacePoint;

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

  /** Share of the piece's diagonal beyond which a point is called far off: a slip, not a scan. */
  private static final double FAR = 0.05;

  /** Diagonals off the surface beyond which a point is refused: cm for mm puts it about 4 off. */
  private static final double LOST = 3;

  private final Piece piece;
  private final EditableSurface surface;
  private final List<Notice> notices = new ArrayList<>();

  private Marks(Mesh mesh, Treatment ground) {
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
    Marks state = new Marks(meshMm, ground);
    List<SurfaceMap.Effect> effects = new ArrayList<>();
    for (int i = 0; i < marks.size(); i++) {
      Progress share = progress.between((double) i / marks.size(), (double) (i + 1) / marks.size());
      effects.add(state.apply(i, marks.get(i), share));
    }
    progress.at(1);
    return new SurfaceMap(
        state.surface.toMesh(),
        state.surface.parents(),
        state.surface.treatments(),
        effects,
        state.notices);
  }

  private SurfaceMap.Effect apply(int index, Mark mark, Progress progress) throws MarkException {
    progress.at(0);
    boolean[] covered = cover(index, mark, progress);
    byte code = mark.treatment().code();
    double coveredMm2 = Sum.over(covered.length, f -> covered[f] ? surface.area(f) : 0);
    double changedMm2 =
        Sum.over(
            covered.length, f -> covered[f] && surface.treatment(f) != code ? surface.area(f) : 0);
    for (int f = 0; f < covered.length; f++) {
      if (covered[f]) {
        surface.setTreatment(f, code);
      }
    }
    if (!(coveredMm2 > 0)) {
      notices.add(
          new Notice(COVERS_NOTHING, 1, "The " + called(index, mark) + " covers no surface."));
    }
    return new SurfaceMap.Effect(coveredMm2, changedMm2);
  }

  /** Cuts along a mark; one entry per face of the cut surface. */
  private boolean[] cover(int index, Mark mark, Progress progress) throws MarkException {
    requireNumbers(index, mark);
    if (surface.faceCount() == 0) {
      return new boolean[0];
    }
    PlaneMarks planes = new PlaneMarks(surface, piece.diagonalMm(), progress);
    if (mark instanceof Mark.HalfSpace halfSpace) {
      return planes.halfSpace(halfSpace);
    } else if (mark instanceof Mark.InBox box) {
      return planes.box(box);
    } else if (mark instanceof Mark.Sector sector) {
      return planes.sector(sector);
    } else if (mark instanceof Mark.CreaseFill fill) {
      int seed = drop(index, mark, List.of(fill.point())).get(0).face();
      boolean[] reached =
          FloodMarks.upToCreases(piece.mesh(), piece.ring(), seed, fill.angleDegrees(), progress);
      tell(index, mark, Pockets.fill(piece.mesh(), piece.ring(), reached));
      return ofParents(reached);
    } else if (mark instanceof Mark.WholePart part) {
      int seed = drop(index, mark, List.of(part.point())).get(0).face();
      return ofParents(FloodMarks.part(piece.parts(), seed));
    } else if (mark instanceof Mark.Near near) {
      List<SurfacePoint> places = drop(index, mark, near.path());
      NearMark work = new NearMark(piece, surface, progress);
      boolean[] covered = work.cover(places, near.radiusMm());
      tellBroken(index, mark, work.broken());
      return covered;
    }
    throw new AssertionError(mark);
  }

  private void tell(int index, Mark mark, Pockets pockets) {
    if (pockets.count() > 0) {
      notices.add(
          new Notice(
              POCKETS,
              pockets.count(),
              String.format(
                  Locale.ROOT,
                  "The %s took in %,d pocket(s) between creases, too small to be worked apart:"
                      + " %.3g mm² together.",
                  called(index, mark),
                  pockets.count(),
                  pockets.areaMm2())));
    }
  }

  private void tellBroken(int index, Mark mark, int legs) {
    if (legs > 0) {
      notices.add(
          new Notice(
              PATH_BROKEN,
              legs,
              "The path of "
                  + called(index, mark)
                  + " jumps between parts that no surface joins; what lies between was left out."));
    }
  }

  private boolean[] ofParents(boolean[] reached) {
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      covered[f] = reached[surface.parent(f)];
    }
    return covered;
  }

  /**
   * The nearest places of the surface; a notice tells of points far off it. A point that lies
   * several sizes of the piece off was given in another unit or for another piece, and is refused.
   * refused.
   */
  private List<SurfacePoint> drop(int index, Mark mark, List<Vector3D> points)
      throws MarkException {
    List<SurfacePoint> dropped = new ArrayList<>();
    int far = 0;
    double furthest = 0;
    for (Vector3D point : points) {
      SurfacePoint at = piece.nearest(point).orElseThrow();
      double distance = piece.position(at).distance(point);
      if (distance > LOST * piece.diagonalMm()) {
        throw new MarkException(
            index,
            mark,
            points.size() == 1 ? "" : "path[" + dropped.size() + "]",
            String.format(
                Locale.ROOT,
                "the point lies %,.1f mm off the surface of a piece that is %,.1f mm large",
                distance,
                piece.diagonalMm()),
            "Give points in mm, in the mesh's own coordinates times its unit; check that unit.");
      }
      if (distance > FAR * piece.diagonalMm()) {
        far++;
        furthest = Math.max(furthest, distance);
      }
      dropped.add(at);
    }
    if (far > 0) {
      notices.add(
          new Notice(
              POINT_FAR,
              far,
              String.format(
                  Locale.ROOT,
                  "The %s has %d of %d points off the surface, by up to %,.1f mm; the nearest"
                      + " place was taken.",
                  called(index, mark),
                  far,
                  points.size(),
                  furthest)));
    }
    return dropped;
  }

  private static String called(int index, Mark mark) {
    String number = "mark " + (index + 1);
    return mark.name().isEmpty() ? number : number + " \"" + mark.name() + "\"";
  }

  private static void requireNumbers(int index, Mark mark) throws MarkException {
    if (mark instanceof Mark.HalfSpace halfSpace) {
      requireNumber(index, mark, "point", halfSpace.point());
    } else if (mark instanceof Mark.InBox box) {
      requireNumber(index, mark, "low", box.low());
      requireNumber(index, mark, "high", box.high());
    } else if (mark instanceof Mark.Sector sector) {
      requireNumber(index, mark, "point", sector.point());
      requireNumber(index, mark, "axis", sector.axis());
      requireNumber(index, mark, "zero", sector.zero());
    } else if (mark instanceof Mark.CreaseFill fill) {
      requireNumber(index, mark, "point", fill.point());
    } else if (mark instanceof Mark.WholePart part) {
      requireNumber(index, mark, "point", part.point());
    } else if (mark instanceof Mark.Near near) {
      for (int i = 0; i < near.path().size(); i++) {
        requireNumber(index, mark, "path[" + i + "]", near.path().get(i));
      }
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
