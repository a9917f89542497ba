package org.seamwright.region;

import java.util.Arrays;
import java.util.function.Predicate;
import org.seamwright.basis.Progress;
import org.seamwright.basis.Sum;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Area within given distances, along the surface, of some edges of a mesh.
 *
 * <p>Distances are those of {@link SurfaceDistance}, on faces made small enough by {@link Front}
 * around each of the distances; inside a face distance is taken as linear. Ways don't leave the
 * mesh: give the part of the piece that the band may lie on. The mesh itself is not changed.
 */
public final class SurfaceBands {
  /** Each pass halves long edges at least once; a piece is not 2^40 times its band. */
  private static final int MOST_PASSES = 40;

  private SurfaceBands() {}

  /**
   * Areas within distances.
   *
   * @param mesh the surface the band lies on
   * @param halfEdges of the edges that distance is counted from
   * @param levelsMm distances, above 0
   * @return one entry per level, mm²
   */
  public static double[] areasWithin(
      Mesh mesh, int[] halfEdges, double[] levelsMm, Progress progress) {
    return areasWithin(mesh, halfEdges, levelsMm, at -> true, progress);
  }

  /**
   * The same of some faces only; distances still run over all.
   *
   * @param counts told a face's centroid x, y, z: whether it counts; faces are halved on the way,
   *     so what decides must not run through any
   */
  public static double[] areasWithin(
      Mesh mesh,
      int[] halfEdges,
      double[] levelsMm,
      Predicate<double[]> counts,
      Progress progress) {
    EditableSurface surface =
        new EditableSurface(mesh, EdgeRings.of(mesh, Topology.of(mesh)).toArray(), (byte) 0);
    for (int h : halfEdges) {
      surface.mark(h);
    }
    Patch.Maker patches = new Patch.Maker(surface);
    double[] areas = new double[levelsMm.length];
    for (int i = 0; i < areas.length; i++) {
      Progress share = progress.between((double) i / areas.length, (double) (i + 1) / areas.length);
      areas[i] = areaWithin(surface, patches, levelsMm[i], counts, share);
    }
    return areas;
  }

  private static double areaWithin(
      EditableSurface surface,
      Patch.Maker patches,
      double level,
      Predicate<double[]> counts,
      Progress progress) {
    Front front = new Front(surface, level);
    Patch patch = whole(surface, patches);
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      progress.at((double) pass / MOST_PASSES);
      double[] distance = distances(surface, patch, level + patch.longestEdge());
      if (front.refine(patch, distance, level) == 0) {
        break;
      }
      patch = whole(surface, patches);
    }
    double[] distance = distances(surface, patch, level);
    Mesh mesh = patch.mesh();
    progress.at(1);
    return Sum.over(
        mesh.faceCount(),
        f -> {
          double[] at = new double[3];
          Faces.centroid(mesh, f, at);
          return counts.test(at) ? Faces.area(mesh, f) * shareBelow(mesh, f, distance, level) : 0;
        });
  }

  private static Patch whole(EditableSurface surface, Patch.Maker patches) {
    int[] all = new int[surface.faceCount()];
    Arrays.setAll(all, f -> f);
    return patches.of(all);
  }

  private static double[] distances(EditableSurface surface, Patch patch, double level) {
    int[] sources = new int[16];
    int count = 0;
    for (int h = 0; h < 3 * surface.faceCount(); h++) {
      if (surface.isMarked(h)) {
        if (count == sources.length) {
          sources = Arrays.copyOf(sources, 2 * count);
        }
        sources[count++] = h;
      }
    }
    VertexFans fans = patch.fans();
    return SurfaceDistance.toCutAt(
        patch.mesh(),
        patch.topology(),
        fans,
        Sources.edges(Arrays.copyOf(sources, count)),
        level,
        f -> true,
        Progress.NONE);
  }

  /** Share of a face where a value, linear between its corners, is below a level. */
  private static double shareBelow(Mesh mesh, int face, double[] value, double level) {
    double a = value[mesh.corner()[3 * face]];
    double b = value[mesh.corner()[3 * face + 1]];
    double c = value[mesh.corner()[3 * face + 2]];
    double low = Math.min(a, Math.min(b, c));
    double high = Math.max(a, Math.max(b, c));
    if (high <= level) {
      return 1;
    }
    if (low >= level || Double.isInfinite(high)) {
      return 0;
    }
    double middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    return level <= middle
        ? (level - low) / (middle - low) * ((level - low) / (high - low))
        : 1 - (high - level) / (high - low) * ((high - level) / (high - middle));
  }
}
