package org.seamwright.mend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Boundary loops: closed ways along open edges, one around each hole.
 *
 * <p>From an open edge the way goes on by stepping round its end, face by face, to the next open
 * edge there; so two holes that touch in a corner give two loops, and faces turned against each
 * other do no harm. A way that meets an edge of three or more faces is given up. A loop that passes
 * a corner twice is parted there. O(n).
 *
 * @param vertices the loop's corners, in order
 * @param faces one entry per edge of the loop, from its corner to the next: the face beside it
 * @param lengthMm the way around
 * @param forward whether most edges run the way of their face, so that a fill must run against them
 */
record HoleLoops(int[] vertices, int[] faces, double lengthMm, boolean forward) {
  /** Finds all loops, in the order of their first open edge. */
  static List<HoleLoops> of(Mesh mesh, Topology topology) {
    List<HoleLoops> loops = new ArrayList<>();
    boolean[] walked = new boolean[mesh.corner().length];
    for (int h = 0; h < walked.length; h++) {
      if (!walked[h] && Borders.isOpen(mesh, topology, h)) {
        walk(mesh, topology, h, walked, loops);
      }
    }
    return loops;
  }

  private static void walk(
      Mesh mesh, Topology topology, int first, boolean[] walked, List<HoleLoops> loops) {
    Ints vertices = new Ints(16);
    Ints halfEdges = new Ints(16);
    int h = first;
    int start = mesh.corner()[first];
    int at = start;
    while (h >= 0 && !walked[h]) {
      walked[h] = true;
      vertices.add(at);
      halfEdges.add(h);
      at = otherEnd(mesh, h, at);
      h = next(mesh, topology, h, at);
    }
    if (h == first && at == start) {
      part(mesh, vertices.toArray(), halfEdges.toArray(), loops);
    }
  }

  private static int otherEnd(Mesh mesh, int h, int vertex) {
    int a = mesh.corner()[h];
    return a == vertex ? mesh.corner()[Topology.next(h)] : a;
  }

  /** The next open half-edge round a vertex, or -1. */
  private static int next(Mesh mesh, Topology topology, int open, int vertex) {
    int h = open;
    for (int steps = 0; steps <= mesh.faceCount(); steps++) {
      h = otherAt(mesh, h, vertex);
      int twin = topology.twin(h);
      if (twin < 0) {
        return twin == Topology.OPEN ? h : -1;
      }
      h = twin;
    }
    return -1;
  }

  /** The other half-edge of a face that meets a vertex. */
  private static int otherAt(Mesh mesh, int h, int vertex) {
    return mesh.corner()[h] == vertex ? Topology.prev(h) : Topology.next(h);
  }

  /** Parts a loop where it passes a corner again, so that each piece passes its corners once. */
  private static void part(Mesh mesh, int[] vertices, int[] halfEdges, List<HoleLoops> loops) {
    int n = vertices.length;
    int[] stack = new int[n];
    int size = 0;
    java.util.Map<Integer, Integer> place = new java.util.HashMap<>();
    for (int i = 0; i < n; i++) {
      Integer earlier = place.get(vertices[i]);
      if (earlier != null) {
        add(mesh, vertices, halfEdges, Arrays.copyOfRange(stack, earlier, size), loops);
        for (int k = earlier; k < size; k++) {
          place.remove(vertices[stack[k]]);
        }
        size = earlier;
      }
      place.put(vertices[i], size);
      stack[size++] = i;
    }
    add(mesh, vertices, halfEdges, Arrays.copyOf(stack, size), loops);
  }

  private static void add(
      Mesh mesh, int[] vertices, int[] halfEdges, int[] chosen, List<HoleLoops> loops) {
    if (chosen.length < 3) {
      return;
    }
    int[] own = new int[chosen.length];
    int[] faces = new int[chosen.length];
    int forward = 0;
    double length = 0;
    for (int i = 0; i < chosen.length; i++) {
      int h = halfEdges[chosen[i]];
      own[i] = vertices[chosen[i]];
      faces[i] = h / 3;
      forward += mesh.corner()[h] == own[i] ? 1 : -1;
      length += Faces.length(mesh, mesh.corner()[h], mesh.corner()[Topology.next(h)]);
    }
    loops.add(new HoleLoops(own, faces, length, forward >= 0));
  }
}
