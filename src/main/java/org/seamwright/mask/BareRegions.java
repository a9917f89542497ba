package org.seamwright.mask;

import java.util.Arrays;
import org.seamwright.region.SurfaceMap;
import org.seamwright.region.Treatment;

/** Faces that stay bare, in regions connected over shared edges. */
final class BareRegions {
  private final int[] faces;
  private final int[] begin;
  private final int count;

  private BareRegions(int[] faces, int[] begin, int count) {
    this.faces = faces;
    this.begin = begin;
    this.count = count;
  }

  /** Finds the regions, in order of their lowest face. */
  static BareRegions of(SurfaceMap map, int[] ring) {
    int n = map.mesh().faceCount();
    byte bare = Treatment.BARE.code();
    boolean[] seen = new boolean[n];
    int[] faces = new int[n];
    int[] begin = new int[16];
    int end = 0;
    int count = 0;
    for (int seed = 0; seed < n; seed++) {
      if (seen[seed] || map.treatment()[seed] != bare) {
        continue;
      }
      if (count + 1 == begin.length) {
        begin = Arrays.copyOf(begin, 2 * begin.length);
      }
      int next = end;
      begin[count++] = end;
      faces[end++] = seed;
      seen[seed] = true;
      while (next < end) {
        int f = faces[next++];
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          for (int g = ring[h]; g != h; g = ring[g]) {
            if (!seen[g / 3] && map.treatment()[g / 3] == bare) {
              seen[g / 3] = true;
              faces[end++] = g / 3;
            }
          }
        }
      }
      Arrays.sort(faces, begin[count - 1], end);
    }
    begin[count] = end;
    return new BareRegions(faces, begin, count);
  }

  int count() {
    return count;
  }

  /** Faces of a region, ascending. */
  int[] faces(int region) {
    return Arrays.copyOfRange(faces, begin[region], begin[region + 1]);
  }
}
