package org.seamwright.region;

import java.util.Arrays;
import java.util.BitSet;

/** Lists all pieces of those faces of the piece as read that some faces belong to. */
final class PiecesOf {
  private PiecesOf() {}

  /**
   * Lists pieces.
   *
   * @param faces some faces
   * @param from faces from this number on count too
   * @return all pieces of their parents, each once
   */
  static int[] parents(EditableSurface surface, int[] faces, int from) {
    BitSet parents = new BitSet();
    for (int f : faces) {
      parents.set(surface.parent(f));
    }
    for (int f = from; f < surface.faceCount(); f++) {
      parents.set(surface.parent(f));
    }
    int[] pieces = new int[64];
    int count = 0;
    for (int p = parents.nextSetBit(0); p >= 0; p = parents.nextSetBit(p + 1)) {
      for (int f = p; f >= 0; f = surface.nextPiece(f)) {
        pieces = count == pieces.length ? Arrays.copyOf(pieces, 2 * count) : pieces;
        pieces[count++] = f;
      }
    }
    return Arrays.copyOf(pieces, count);
  }
}
