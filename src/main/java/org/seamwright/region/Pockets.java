package org.seamwright.region;

import org.seamwright.basis.Sum;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Small pockets that a fill up to creases went round: on a rough scan single faces stand at a steep
 * angle to all their neighbours, and would be left as crumbs of another treatment.
 *
 * <p>A pocket is a connected set of faces that the fill did not reach and that borders on nothing
 * but the fill. O(n).
 *
 * @param count pockets filled
 * @param areaMm2 their area together
 */
record Pockets(int count, double areaMm2) {
  /**
   * Largest pocket, as a share of the filled area: a speck of 10 mm² on a surface of 1000 cm². What
   * a user would mark on its own is larger.
   */
  private static final double LARGEST_SHARE = 1e-4;

  /**
   * Adds pockets to a fill.
   *
   * @param ring {@link EdgeRings} of the piece
   * @param reached one entry per face; faces of small pockets are set
   */
  static Pockets fill(Mesh mesh, int[] ring, boolean[] reached) {
    int faces = mesh.faceCount();
    double largest = LARGEST_SHARE * Sum.over(faces, f -> reached[f] ? Faces.area(mesh, f) : 0);
    boolean[] seen = reached.clone();
    int[] queue = new int[faces];
    int count = 0;
    double area = 0;
    for (int start = 0; start < faces; start++) {
      if (seen[start]) {
        continue;
      }
      int end = 0;
      queue[end++] = start;
      seen[start] = true;
      boolean touches = false;
      double pocketMm2 = 0;
      for (int begin = 0; begin < end; begin++) {
        int f = queue[begin];
        pocketMm2 += Faces.area(mesh, f);
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          for (int g = ring[h]; g != h; g = ring[g]) {
            touches |= reached[g / 3];
            if (!seen[g / 3]) {
              seen[g / 3] = true;
              queue[end++] = g / 3;
            }
          }
        }
      }
      if (touches && pocketMm2 <= largest) {
        count++;
        area += pocketMm2;
        for (int i = 0; i < end; i++) {
          reached[queue[i]] = true;
        }
      }
    }
    return new Pockets(count, area);
  }
}
