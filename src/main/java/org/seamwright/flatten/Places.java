package org.seamwright.flatten;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.seamwright.mesh.Topology;

/** Pieces that hang together, as places. */
final class Places {
  private Places() {}

  /**
   * The connected places that some pieces make up.
   *
   * @param piece one entry per face: its piece
   * @param wanted the pieces
   * @return faces of each place, ascending, in order of the lowest
   */
  static List<int[]> connected(int[] piece, Topology topology, Set<Integer> wanted) {
    List<int[]> places = new ArrayList<>();
    boolean[] seen = new boolean[piece.length];
    int[] found = new int[piece.length];
    for (int seed = 0; seed < piece.length; seed++) {
      if (seen[seed] || !wanted.contains(piece[seed])) {
        continue;
      }
      int count = 0;
      found[count++] = seed;
      seen[seed] = true;
      for (int next = 0; next < count; next++) {
        for (int h = 3 * found[next]; h < 3 * found[next] + 3; h++) {
          int g = topology.faceAcross(h);
          if (g >= 0 && !seen[g] && wanted.contains(piece[g])) {
            seen[g] = true;
            found[count++] = g;
          }
        }
      }
      int[] place = Arrays.copyOf(found, count);
      Arrays.sort(place);
      places.add(place);
    }
    return places;
  }
}
