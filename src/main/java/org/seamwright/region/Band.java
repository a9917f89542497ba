package org.seamwright.region;

import java.util.Arrays;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;

/**
 * What lies within a distance, along the surface, of points and of marked edges, cut out exactly.
 *
 * <p>Distances are those of {@link SurfaceDistance}, on faces that {@link Front} has made small
 * enough along the edge of the band. Only faces that come within the radius are looked at, so the
 * cost follows the band and not the piece.
 */
final class Band {
  /** Each pass halves long edges at least once; a piece is not 2^40 times its mark. */
  private static final int MOST_PASSES = 40;

  private final EditableSurface surface;
  private final double radiusMm;
  private final boolean isBent;
  private final Progress progress;

  /**
   * Makes a band.
   *
   * @param isBent whether the sources are bent lines: {@link Sources#bent}
   */
  Band(EditableSurface surface, double radiusMm, boolean isBent, Progress progress) {
    this.surface = surface;
    this.isBent = isBent;
    this.radiusMm = radiusMm;
    this.progress = progress;
  }

  /**
   * Cuts along the line at the radius and takes all marks of edges off.
   *
   * @param patches gives the faces that may be in the band, anew after each change
   * @param points vertices that are sources; marked edges are too
   * @return one entry per face of the cut surface: whether it is nearer than the radius
   */
  boolean[] cut(Supplier<Patch> patches, int[] points) {
    Front front = new Front(surface, radiusMm);
    Patch patch = patches.get();
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
      patch = patches.get();
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
    return cutAt(patch, distance);
  }

  /** The points and the marked edges, as a patch numbers them. */
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
    Sources sources = Sources.vertices(at).and(Sources.edges(edges));
    return isBent ? sources.bent() : sources;
  }

  private boolean[] cutAt(Patch patch, double[] distance) {
    // Vertices off the patch have no number for a value, and no edge at them is cut.
    double[] field = new double[surface.vertexCount()];
    Arrays.fill(field, Double.NaN);
    for (int v = 0; v < distance.length; v++) {
      if (Double.isFinite(distance[v])) {
        field[patch.vertices()[v]] = distance[v] - radiusMm;
      }
    }
    double[] cut = surface.cutAlongZero(field, f -> true, fraction -> progress.at(1));
    return surface.facesWhere(
        f ->
            cut[surface.from(3 * f)] + cut[surface.from(3 * f + 1)] + cut[surface.from(3 * f + 2)]
                <= 0);
  }
}
