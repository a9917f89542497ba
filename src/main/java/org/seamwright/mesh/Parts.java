package org.seamwright.mesh;

import java.util.Arrays;

/**
 * Connected parts of a mesh: faces that share an edge, branching edges included, are in one part.
 *
 * @param count number of parts
 * @param of one entry per face: its part, numbered by first face
 */
public record Parts(int count, int[] of) {
  /** Finds the parts by union of faces over shared edges. */
  public static Parts of(Mesh mesh, Topology topology) {
    int faces = mesh.faceCount();
    int[] root = new int[faces];
    for (int f = 0; f < faces; f++) {
      root[f] = f;
    }
    for (int h = 0; h < 3 * faces; h++) {
      if (topology.twin(h) > h) {
        union(root, h / 3, topology.twin(h) / 3);
      }
    }
    if (topology.branchingEdges() > 0) {
      joinBranching(mesh, topology, root);
    }
    int[] of = new int[faces];
    Arrays.fill(of, -1);
    int count = 0;
    for (int f = 0; f < faces; f++) {
      int top = find(root, f);
      if (of[top] < 0) {
        of[top] = count++;
      }
      of[f] = of[top];
    }
    return new Parts(count, of);
  }

  /** Joins faces around branching edges. */
  private static void joinBranching(Mesh mesh, Topology topology, int[] root) {
    EdgeRings rings = EdgeRings.of(mesh, topology);
    for (int h = 0; h < 3 * mesh.faceCount(); h++) {
      if (topology.twin(h) == Topology.BRANCHING) {
        union(root, h / 3, rings.next(h) / 3);
      }
    }
  }

  private static int find(int[] root, int f) {
    int top = f;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  /** The lower number becomes the root, so that parts are numbered by their first face. */
  private static void union(int[] root, int a, int b) {
    int ra = find(root, a);
    int rb = find(root, b);
    if (ra < rb) {
      root[rb] = ra;
    } else {
      root[ra] = rb;
    }
  }
}
