package org.seamwright.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.SurfacePoint;

/**
 * Discs and strokes: what lies within a distance, along the surface, of points and of the shortest
 * ways between them. The distance never jumps through the piece or to a neighbouring sheet.
 *
 * <p>Distances are those of {@link SurfaceDistance}, on faces that {@link Front} has made small
 * enough along the edge of the mark. Only faces that come within the radius are looked at, so the
 * cost follows the mark and not the piece.
 */
final class NearMark {
  /** Each pass halves long edges at least once; a piece is not 2^40 times its mark. */
  private static final int MOST_PASSES = 40;

  private final Piece piece;
  private final EditableSurface surface;
  private final Patch.Maker patches;
  private final Progress progress;

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
    List<List<Vector3D>> lines = new ArrayList<>();
    for (SurfacePoint place : places) {
      lines.add(List.of(piece.position(place)));
    }
    Tube tube = new Tube(surface, lines, radiusMm);
    Front front = new Front(surface, radiusMm);
    Patch patch = patch(places, tube);
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      progress.at((double) pass / MOST_PASSES);
      double[] distance = distances(patch, places, radiusMm + patch.longestEdge(), false);
      if (front.refine(patch, distance, radiusMm) == 0) {
        break;
      }
      patch = patch(places, tube);
    }
    return cut(patch, distances(patch, places, radiusMm, true), radiusMm);
  }

  private Patch patch(List<SurfacePoint> places, Tube tube) {
    SurfacePoint[] located = Patch.locate(patches, surface, piece, places);
    return patches.reached(Arrays.stream(located).mapToInt(SurfacePoint::face).toArray(), tube);
  }

  private double[] distances(
      Patch patch, List<SurfacePoint> places, double reachMm, boolean toCut) {
    Sources sources = sources(patch, places);
    return toCut
        ? SurfaceDistance.toCutAt(
            patch.mesh(),
            patch.topology(),
            patch.fans(),
            sources,
            reachMm,
            f -> true,
            fraction -> progress.at(0.95))
        : SurfaceDistance.from(
            patch.mesh(), patch.topology(), patch.fans(), sources, reachMm, Progress.NONE);
  }

  private Sources sources(Patch patch, List<SurfacePoint> places) {
    SurfacePoint[] located = Patch.locate(patches, surface, piece, places);
    Sources sources = Sources.point(patch.inPatch(located[0]));
    for (int i = 1; i < located.length; i++) {
      sources = sources.and(Sources.point(patch.inPatch(located[i])));
    }
    return sources;
  }

  private boolean[] cut(Patch patch, double[] distance, double radiusMm) {
    // Vertices off the patch have no number for a value, and no edge at them is cut.
    double[] field = new double[surface.vertexCount()];
    Arrays.fill(field, Double.NaN);
    for (int v = 0; v < distance.length; v++) {
      if (Double.isFinite(distance[v])) {
        field[patch.vertices()[v]] = distance[v] - radiusMm;
      }
    }
    field = surface.cutAlongZero(field, f -> true, fraction -> progress.at(1));
    boolean[] covered = new boolean[surface.faceCount()];
    for (int f = 0; f < covered.length; f++) {
      covered[f] =
          field[surface.from(3 * f)]
                  + field[surface.from(3 * f + 1)]
                  + field[surface.from(3 * f + 2)]
              <= 0;
    }
    return covered;
  }
}
