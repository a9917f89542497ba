package org.seamwright.measure;

import org.seamwright.basis.Progress;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Which parts of a mesh lie wholly inside closed ones.
 *
 * <p>A part counts as inside if its box lies in the other's and its corners lie inside it ({@link
 * #MOST_CORNERS} of them, evenly chosen, on large parts). O(n log n) and pairs of parts whose boxes
 * lie in each other.
 */
public final class NestedParts {
  private static final int MOST_CORNERS = 4096;

  private NestedParts() {}

  /** One entry per part: how many closed parts it lies inside. */
  public static int[] depth(Mesh mesh, Topology topology, Parts parts, Progress progress) {
    int[] depth = new int[parts.count()];
    if (parts.count() < 2) {
      return depth;
    }
    PartBoxes boxes = new PartBoxes(mesh, topology, parts);
    for (int inner = 0; inner < parts.count(); inner++) {
      progress.at((double) inner / parts.count());
      for (int outer : boxes.meeting(inner)) {
        if (within(boxes.box(inner), boxes.box(outer))) {
          depth[inner] += inside(mesh, boxes.faces(inner), boxes.solid(outer)) ? 1 : 0;
        }
      }
    }
    return depth;
  }

  private static boolean within(Bounds inner, Bounds outer) {
    return inner.minX() > outer.minX()
        && inner.minY() > outer.minY()
        && inner.minZ() > outer.minZ()
        && inner.maxX() < outer.maxX()
        && inner.maxY() < outer.maxY()
        && inner.maxZ() < outer.maxZ();
  }

  private static boolean inside(Mesh mesh, int[] faces, Solid solid) {
    int tried = Math.min(3 * faces.length, MOST_CORNERS);
    for (int i = 0; i < tried; i++) {
      int k = (int) (3L * faces.length * i / tried);
      int v = mesh.corner()[3 * faces[k / 3] + k % 3];
      if (!solid.contains(mesh.x(v), mesh.y(v), mesh.z(v))) {
        return false;
      }
    }
    return true;
  }
}
