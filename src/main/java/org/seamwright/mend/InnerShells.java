package org.seamwright.mend;

import org.seamwright.basis.Count;
import org.seamwright.basis.Progress;
import org.seamwright.measure.NestedParts;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * Finds parts that lie wholly inside a closed part, where no brush reaches them: the wall of a
 * hollow, a loose body in it, rubbish under the surface.
 *
 * <p>{@link NestedParts} says which.
 */
final class InnerShells {
  private InnerShells() {}

  static Change drop(Mesh mesh, Topology topology, Progress progress) {
    Parts parts = Parts.of(mesh, topology);
    int[] depth = NestedParts.depth(mesh, topology, parts, progress);
    long count = 0;
    for (int d : depth) {
      count += d > 0 ? 1 : 0;
    }
    String text = Count.of(count, "part") + " inside a closed part dropped";
    return count == 0
        ? Change.none(mesh, text)
        : Change.keeping(mesh, f -> depth[parts.of()[f]] == 0, count, text);
  }
}
