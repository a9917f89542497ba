package org.seamwright.measure;

import org.seamwright.basis.Sum;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/** Area of facets as they are, in mm²; the same digits on any number of cores. */
public final class Area {
  private Area() {}

  /** Sum of the areas of all faces, mm². Overlapping and repeated faces count each time. */
  public static double ofFaces(Mesh mesh) {
    return Sum.over(mesh.faceCount(), f -> Faces.area(mesh, f));
  }
}
