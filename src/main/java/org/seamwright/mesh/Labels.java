package org.seamwright.mesh;

import java.util.List;
import java.util.Objects;

/**
 * Names that came with the file for its faces: groups, objects, materials.
 *
 * @param names distinct names; {@code names.get(0)} is the empty name of faces without one
 * @param of one entry per face of the mesh as read: an index into {@code names}
 */
public record Labels(List<String> names, int[] of) {
  /** Copies the list; takes the array over. */
  public Labels {
    names = List.copyOf(names);
    Objects.requireNonNull(of, "of");
  }

  /** No names for a mesh of so many faces. */
  public static Labels none(int faceCount) {
    return new Labels(List.of(""), new int[faceCount]);
  }
}
