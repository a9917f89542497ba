package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Sum;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * Connected pieces of labelled faces: faces of the same label that share an edge are in one piece.
 * Faces with a negative label, and faces without edges (a corner named twice), are in none.
 *
 * <p>Cost: O(n α(n)), two ints per face.
 *
 * @param count number of pieces
 * @param of one entry per face: its piece, numbered by first face, or -1
 * @param label one entry per piece: the label of its faces
 * @param areaMm2 one entry per piece
 */
record Pieces(int count, int[] of, int[] label, double[] areaMm2) {
  /** Piece of a face that is in none. */
  static final int NONE = -1;

  /** Finds the pieces of a labelling. */
  static Pieces of(Mesh mesh, EdgeRings rings, int[] faceLabel) {
    int faces = mesh.faceCount();
    int[] root = new int[faces];
    for (int f = 0; f < faces; f++) {
      root[f] = f;
    }
    for (int h = 0; h < 3 * faces; h++) {
      int f = h / 3;
      if (faceLabel[f] >= 0) {
        int other = rings.next(h);
        // A ring of two is seen from both sides; one is enough. Longer rings are linked step by
        // step, but two faces of a label need not be neighbours in the ring.
        for (; other != h; other = rings.next(other)) {
          if (other < h && faceLabel[other / 3] == faceLabel[f]) {
            union(root, f, other / 3);
          }
        }
      }
    }
    return number(mesh, faceLabel, root);
  }

  private static Pieces number(Mesh mesh, int[] faceLabel, int[] root) {
    int faces = mesh.faceCount();
    int[] of = new int[faces];
    Arrays.fill(of, NONE);
    int[] label = new int[16];
    int count = 0;
    for (int f = 0; f < faces; f++) {
      if (faceLabel[f] >= 0 && hasEdges(mesh, f)) {
        int top = find(root, f);
        if (of[top] < 0) {
          if (count == label.length) {
            label = Arrays.copyOf(label, 2 * count);
          }
          label[count] = faceLabel[f];
          of[top] = count++;
        }
        of[f] = of[top];
      }
    }
    return new Pieces(count, of, Arrays.copyOf(label, count), areas(mesh, of, count));
  }

  private static double[] areas(Mesh mesh, int[] of, int count) {
    Sum[] sums = new Sum[count];
    Arrays.setAll(sums, i -> new Sum());
    for (int f = 0; f < of.length; f++) {
      if (of[f] >= 0) {
        sums[of[f]].add(Faces.area(mesh, f));
      }
    }
    double[] area = new double[count];
    Arrays.setAll(area, i -> sums[i].value());
    return area;
  }

  private static boolean hasEdges(Mesh mesh, int f) {
    int[] corner = mesh.corner();
    return corner[3 * f] != corner[3 * f + 1]
        && corner[3 * f + 1] != corner[3 * f + 2]
        && corner[3 * f + 2] != corner[3 * f];
  }

  static int find(int[] root, int f) {
    int top = f;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  /** The lower number becomes the root, so that pieces are numbered by their first face. */
  static void union(int[] root, int a, int b) {
    int ra = find(root, a);
    int rb = find(root, b);
    if (ra < rb) {
      root[rb] = ra;
    } else {
      root[ra] = rb;
    }
  }
}
