package org.seamwright.region;

import java.util.Arrays;
import java.util.List;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.SurfacePoint;

/**
 * Discs and strokes: what lies within a distance, along the surface, of points and of the shortest
 * ways between them. The distance never jumps through the piece or to a neighbouring sheet.
 *
 * <p>{@link Stroke} lays the path into the surface, {@link Band} cuts at the distance.
 */
final class NearMark {
  /** Places this near to a vertex or edge, as a share of the radius, are moved onto it. */
  private static final double SNAP_SHARE = 1e-3;

  private final Piece piece;
  private final EditableSurface surface;
  private final Patch.Maker patches;
  private final Progress progress;
  private int broken;

  NearMark(Piece piece, EditableSurface surface, Progress progress) {
    this.piece = piece;
    this.surface = surface;
    this.patches = new Patch.Maker(surface);
    this.progress = progress;
  }

  /**
   * Cuts along the line at the radius.
   *
   * @param places the points of the path, on the piece as read
   * @return one entry per face of the cut surface: whether it is nearer than the radius
   */
  boolean[] cover(List<SurfacePoint> places, double radiusMm) {
    Front front = new Front(surface, radiusMm);
    Stroke stroke = new Stroke(piece, surface, patches, front, SNAP_SHARE * radiusMm);
    int[] points = stroke.lay(places);
    broken = stroke.broken();
    Tube tube = new Tube(surface, stroke.lines(), radiusMm);
    return new Band(surface, radiusMm, false, progress).cut(() -> patch(places, tube), points);
  }

  /** How many legs of the last path have no surface between their ends. */
  int broken() {
    return broken;
  }

  private Patch patch(List<SurfacePoint> places, Tube tube) {
    SurfacePoint[] located = Patch.locate(patches, surface, piece, places);
    return patches.reached(Arrays.stream(located).mapToInt(SurfacePoint::face).toArray(), tube);
  }
}
