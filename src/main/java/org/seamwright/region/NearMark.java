package org.seamwright.region;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
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
    Patch patch = patch(places, tube);
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      double done = 0.1 + 0.8 * pass / MOST_PASSES;
      double[] distance =
          SurfaceDistance.from(
              patch.mesh(),
              patch.topology(),
              patch.fans(),
              sources(patch, points),
              radiusMm + patch.longestEdge(),
              fraction -> progress.at(done));
      if (front.refine(patch, distance, radiusMm) == 0) {
        break;
      }
      patch = patch(places, tube);
    }
    double[] distance =
        SurfaceDistance.toCutAt(
            patch.mesh(),
            patch.topology(),
            patch.fans(),
            sources(patch, points),
            radiusMm,
            f -> true,
            fraction -> progress.at(0.9));
    surface.clearMarks();
    return cut(patch, distance, radiusMm);
  }

  /** How many legs of the last path have no surface between their ends. */
  int broken() {
    return broken;
  }

  private Patch patch(List<SurfacePoint> places, Tube tube) {
    SurfacePoint[] located = Patch.locate(patches, surface, piece, places);
    return patches.reached(Arrays.stream(located).mapToInt(SurfacePoint::face).toArray(), tube);
  }

  /** The points of the path and the edges that its legs have become. */
  private Sources sources(Patch patch, int[] points) {
    int[] wanted = points.clone();
    Arrays.sort(wanted);
    int[] vertices = patch.vertices();
    int[] at =
        IntStream.range(0, vertices.length)
            .filter(v -> Arrays.binarySearch(wanted, vertices[v]) >= 0)
            .toArray();
    int[] faces = patch.faces();
    int[] edges =
        IntStream.range(0, 3 * faces.length)
            .filter(h -> surface.isMarked(3 * faces[h / 3] + h % 3))
            .toArray();
    return Sources.vertices(at).and(Sources.edges(edges));
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
