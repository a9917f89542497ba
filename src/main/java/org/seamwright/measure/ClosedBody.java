package org.seamwright.measure;

import java.util.BitSet;
import java.util.OptionalInt;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Bounds;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Parts;
import org.seamwright.mesh.Topology;

/**
 * A body of closed parts, to be asked whether places are inside.
 *
 * <p>A place is inside a part if a ray from it crosses the part an odd number of times, as for
 * {@link Solid}; so it does not matter which way faces are turned. It is inside the body if it is
 * inside some part and the innermost part round it is no hollow: parts may overlap or stand apart,
 * and a part that lies wholly inside an odd number of others is the wall of a hollow.
 *
 * <p>Cost: O(n log n) to build; a query O(log n) and the faces along the ray. Queries may run on
 * several threads. On the surface itself a place may count as either.
 */
public final class ClosedBody {
  private final Mesh mesh;
  private final FaceTree tree;
  private final Bounds bounds;
  private final int[] part;
  private final int[] depth;

  private ClosedBody(Mesh mesh, int[] part, int[] depth) {
    this.mesh = mesh;
    this.tree = FaceTree.of(mesh);
    this.bounds = mesh.bounds();
    this.part = part;
    this.depth = depth;
  }

  /**
   * Makes a body ready.
   *
   * @param meshMm closed, mm: {@link #gap} finds none
   */
  public static ClosedBody of(Mesh meshMm, Progress progress) {
    Topology topology = Topology.of(meshMm);
    Parts parts = Parts.of(meshMm, topology);
    return new ClosedBody(meshMm, parts.of(), NestedParts.depth(meshMm, topology, parts, progress));
  }

  /** The first half-edge whose edge has an odd number of faces; a closed mesh has none. */
  public static OptionalInt gap(Mesh mesh, Topology topology) {
    EdgeRings rings = topology.branchingEdges() > 0 ? EdgeRings.of(mesh, topology) : null;
    for (int h = 0; h < mesh.corner().length; h++) {
      if (topology.twin(h) == Topology.OPEN) {
        return OptionalInt.of(h);
      }
      if (topology.twin(h) == Topology.BRANCHING) {
        int around = 1;
        for (int g = rings.next(h); g != h; g = rings.next(g)) {
          around++;
        }
        if (around % 2 != 0) {
          return OptionalInt.of(h);
        }
      }
    }
    return OptionalInt.empty();
  }

  /** The body's faces, mm. */
  public Mesh mesh() {
    return mesh;
  }

  /** The tree over its faces. */
  public FaceTree tree() {
    return tree;
  }

  /** Its box, mm. */
  public Bounds bounds() {
    return bounds;
  }

  /** Whether a place is inside. */
  public boolean contains(double x, double y, double z) {
    if (x < bounds.minX()
        || x > bounds.maxX()
        || y < bounds.minY()
        || y > bounds.maxY()
        || z < bounds.minZ()
        || z > bounds.maxZ()) {
      return false;
    }
    BitSet odd = new BitSet();
    tree.inBox(
        new Bounds(x, y, z, bounds.maxX(), y, z),
        f -> {
          if (Solid.crossedBeyond(mesh, f, x, y, z)) {
            odd.flip(part[f]);
          }
        });
    int deepest = -1;
    for (int p = odd.nextSetBit(0); p >= 0; p = odd.nextSetBit(p + 1)) {
      deepest = Math.max(deepest, depth[p]);
    }
    return deepest >= 0 && deepest % 2 == 0;
  }
}
