package org.seamwright.mend;

import org.seamwright.basis.Count;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Finds parts that lie wholly inside a closed part, where no brush reaches them: the wall of a
 * hollow, a loose body in it, rubbish under the surface.
 *
 * <p>A part counts as inside if its box lies in the other's and its corners lie inside it ({@link
 * #MOST_CORNERS} of them, evenly chosen, on large parts). O(n log n) and pairs of parts whose boxes
 * lie in each other.
 */
final class InnerShells {
  private static final int MOST_CORNERS = 4096;

  private InnerShells() {}

  static Change drop(Mesh mesh, Topology topology, Progress progress) {
    Parts parts = Parts.of(mesh, topology);
    int[] depth = depth(mesh, topology, parts, progress);
    long count = 0;
    for (int d : depth) {
      count += d > 0 ? 1 : 0;
    }
    String text = Count.of(count, "part") + " inside a closed part dropped";
    return count == 0
        ? Change.none(mesh, text)
        : Change.keeping(mesh, f -> depth[parts.of()[f]] == 0, count, text);
  }

  /** One entry per part: how many closed parts it lies inside. */
  static int[] depth(Mesh mesh, Topology topology, Parts parts, Progress progress) {
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
