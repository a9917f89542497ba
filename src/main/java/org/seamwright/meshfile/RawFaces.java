package org.seamwright.meshfile;

import java.util.List;
import java.util.Optional;
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
 * @param unit the unit that the file says its numbers are in
 */
record RawFaces(
    Points points,
    int[] corner,
    int[] label,
    List<String> names,
    List<Notice> notices,
    Optional<FileUnit> unit) {

  /** Faces of a format that says no unit. */
  RawFaces(Points points, int[] corner, int[] label, List<String> names, List<Notice> notices) {
    this(points, corner, label, names, notices, Optional.empty());
  }

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
