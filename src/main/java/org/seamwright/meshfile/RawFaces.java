package org.seamwright.meshfile;

import java.util.List;
import org.seamwright.basis.Notice;

/**
 * Faces as a parser leaves them, before equal corners are welded: every stage after it is the same
 * for all formats.
 *
 * @param points the corners' places
 * @param corner indices of points, 3 per face; null if the points are themselves the corners, 3 per
 *     face in order
 * @param label one entry per face into {@code names}; empty if no face has a name
 * @param names distinct names, the first of which is empty
 * @param notices what was assumed
 */
record RawFaces(
    Points points, int[] corner, int[] label, List<String> names, List<Notice> notices) {

  /** Coordinates in the width the file gave them: single precision stays four bytes. */
  sealed interface Points {
    int count();

    /** Three floats per point. */
    record Single(float[] xyz) implements Points {
      @Override
      public int count() {
        return xyz.length / 3;
      }
    }

    /** Three doubles per point. */
    record Wide(double[] xyz) implements Points {
      @Override
      public int count() {
        return xyz.length / 3;
      }
    }
  }

  /** Whether faces name points by number, so that two may share one. */
  boolean indexed() {
    return corner != null;
  }
}
