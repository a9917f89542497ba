package org.seamwright.mend;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Mesh;

/**
 * What a repair made of a mesh.
 *
 * @param mesh the mesh after it
 * @param parent one entry per face: the face before that it is, or is a piece of; {@link
 *     Mended#FILLED} for one that is new
 * @param count how many things were repaired
 * @param text what was done, a clause without a final stop
 */
record Change(Mesh mesh, int[] parent, long count, String text) {
  /** Nothing to repair. */
  static Change none(Mesh mesh, String text) {
    int[] parent = new int[mesh.faceCount()];
    Arrays.setAll(parent, f -> f);
    return new Change(mesh, parent, 0, text);
  }

  /** The mesh without some faces; vertices stay. */
  static Change keeping(Mesh mesh, IntPredicate kept, long count, String text) {
    int[] parent = new int[mesh.faceCount()];
    int[] corner = new int[3 * parent.length];
    int faces = 0;
    for (int f = 0; f < parent.length; f++) {
      if (kept.test(f)) {
        System.arraycopy(mesh.corner(), 3 * f, corner, 3 * faces, 3);
        parent[faces++] = f;
      }
    }
    Mesh left = Mesh.of(mesh.xyz(), Arrays.copyOf(corner, 3 * faces));
    return new Change(left, Arrays.copyOf(parent, faces), count, text);
  }

  /** This change and then another one as one change of the mesh before this. */
  Change then(Change next) {
    int[] first = next.parent.clone();
    for (int f = 0; f < first.length; f++) {
      first[f] = first[f] < 0 ? first[f] : parent[first[f]];
    }
    return new Change(next.mesh, first, next.count, next.text);
  }
}
