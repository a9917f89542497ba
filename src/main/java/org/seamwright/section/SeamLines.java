package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * The edges along which faces of different sections meet. Where more than two faces meet along an
 * edge, each pair of sections there has the edge as a seam.
 *
 * @param pairs which sections meet, and along which length
 * @param halfEdge one entry per seam edge and pair: a half-edge on it
 * @param pair one entry per seam edge and pair: its index in {@code pairs}
 */
record SeamLines(Borders pairs, int[] halfEdge, int[] pair) {
  /**
   * Finds the seams of a labelling: O(n).
   *
   * @param faceLabel one entry per face: its section, or a number below {@code first} for none
   * @param first the lowest number that is a section
   */
  static SeamLines of(Mesh mesh, EdgeRings rings, int[] faceLabel, int first) {
    int[] corner = mesh.corner();
    Borders.Builder builder = new Borders.Builder();
    int[] halfEdge = new int[64];
    long[] key = new long[64];
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      int label = faceLabel[h / 3];
      if (label < first) {
        continue;
      }
      for (int other = rings.next(h); other != h; other = rings.next(other)) {
        int otherLabel = faceLabel[other / 3];
        if (otherLabel > label && firstOfPair(rings, faceLabel, h, other)) {
          builder.add(label, otherLabel, length(mesh, h), 0);
          if (count == key.length) {
            key = Arrays.copyOf(key, 2 * count);
            halfEdge = Arrays.copyOf(halfEdge, 2 * count);
          }
          halfEdge[count] = h;
          key[count++] = (long) label << 32 | otherLabel;
        }
      }
    }
    Borders pairs = builder.build();
    int[] pair = new int[count];
    for (int i = 0; i < count; i++) {
      pair[i] = pairs.indexOf((int) (key[i] >> 32), (int) key[i]);
    }
    return new SeamLines(pairs, Arrays.copyOf(halfEdge, count), pair);
  }

  private static double length(Mesh mesh, int h) {
    return Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
  }

  /** Whether no lower half-edges of the same edge stand for the same two labels. */
  private static boolean firstOfPair(EdgeRings rings, int[] faceLabel, int h, int other) {
    for (int k = rings.next(h); k != h; k = rings.next(k)) {
      if (faceLabel[k / 3] == faceLabel[h / 3] && k < h) {
        return false;
      }
      if (faceLabel[k / 3] == faceLabel[other / 3] && k < other) {
        return false;
      }
    }
    return true;
  }
}
