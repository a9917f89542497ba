package org.seamwright.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.Progress;

/** Offsets of a region's edge: what lies within a distance of it along the surface. */
final class GrowMark {
  private final EditableSurface surface;
  private final Progress progress;

  GrowMark(EditableSurface surface, Progress progress) {
    this.surface = surface;
    this.progress = progress;
  }

  /**
   * Cuts out what a region gains when its edge moves outwards.
   *
   * @param region faces that grow; asked again for pieces
   * @param into faces that may be gained; asked again for pieces
   * @return one entry per face of the cut surface: whether it is gained
   */
  boolean[] gained(IntPredicate region, IntPredicate into, double byMm) {
    List<List<Vector3D>> lines = new ArrayList<>();
    List<Integer> seeds = new ArrayList<>();
    for (int h = 0; h < 3 * surface.faceCount(); h++) {
      if (into.test(h / 3) && !region.test(h / 3) && bordersOn(h, region)) {
        seeds.add(h / 3);
        if (!surface.isMarked(h)) {
          surface.mark(h);
          lines.add(List.of(position(surface.from(h)), position(surface.to(h))));
        }
      }
    }
    if (lines.isEmpty()) {
      return new boolean[surface.faceCount()];
    }
    Tube tube = new Tube(surface, lines, byMm);
    Patch.Maker maker = new Patch.Maker(surface);
    int[] start = seeds.stream().mapToInt(Integer::intValue).toArray();
    IntPredicate admitted = f -> into.test(f) && !region.test(f) && tube.test(f);
    return new Band(surface, byMm, true, progress)
        .cut(() -> maker.reached(onEdge(start, admitted), admitted), new int[0]);
  }

  /**
   * Pieces of the faces at the region's edge that still lie at it. Once faces are split the one
   * that keeps a number may be a piece far off.
   */
  private int[] onEdge(int[] start, IntPredicate admitted) {
    return Arrays.stream(PiecesOf.parents(surface, start, surface.faceCount()))
        .filter(
            f ->
                (surface.isMarked(3 * f)
                        || surface.isMarked(3 * f + 1)
                        || surface.isMarked(3 * f + 2))
                    && admitted.test(f))
        .toArray();
  }

  private boolean bordersOn(int h, IntPredicate region) {
    for (int g = surface.ring(h); g != h; g = surface.ring(g)) {
      if (region.test(g / 3)) {
        return true;
      }
    }
    return false;
  }

  private Vector3D position(int vertex) {
    return Vector3D.of(surface.at(vertex, 0), surface.at(vertex, 1), surface.at(vertex, 2));
  }
}
