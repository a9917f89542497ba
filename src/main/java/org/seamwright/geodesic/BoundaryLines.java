package org.seamwright.geodesic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * The edges where a set of faces ends, as ordered polylines: the edges of a mask, the seams of a
 * section.
 *
 * <p>Lines run as the half-edges of the set do, with the set on the left seen from outside where
 * the faces are turned alike. They are split where more or fewer than two of their edges meet, so a
 * line passes no vertex twice. Starts at the lowest vertex it can: same mesh, same lines. O(n).
 */
public final class BoundaryLines {
  private BoundaryLines() {}

  /**
   * A chain of edges.
   *
   * @param vertices in order; a closed line does not repeat the first at the end
   * @param closed whether the last vertex is joined to the first
   */
  public record Line(int[] vertices, boolean closed) {
    /** Length, mm. */
    public double lengthMm(Mesh mesh) {
      double sum = 0;
      for (int i = 0; i + 1 < vertices.length; i++) {
        sum += Faces.length(mesh, vertices[i], vertices[i + 1]);
      }
      return closed ? sum + Faces.length(mesh, vertices[vertices.length - 1], vertices[0]) : sum;
    }
  }

  /**
   * Lines between a set of faces and the faces beside it. Edges of the set that have no other face
   * (the rim of an open mesh) are left out.
   *
   * @param inside which faces are in the set
   */
  public static List<Line> between(Mesh mesh, Topology topology, IntPredicate inside) {
    return between(mesh, topology, inside, f -> true, false);
  }

  /**
   * Lines between two sets of faces. At an edge with three or more faces there is a line if one is
   * in the one set and another in the other.
   *
   * @param inside the set the lines run round
   * @param outside the set beyond them; faces in both count as inside
   * @param withRim whether edges of the inside without another face are lines too
   */
  public static List<Line> between(
      Mesh mesh, Topology topology, IntPredicate inside, IntPredicate outside, boolean withRim) {
    int[] corner = mesh.corner();
    IntList edges = new IntList(64);
    List<Integer> branching = new ArrayList<>();
    for (int h = 0; h < corner.length; h++) {
      int twin = topology.twin(h);
      if (twin == Topology.BRANCHING) {
        branching.add(h);
      } else if (inside.test(h / 3)) {
        if (twin == Topology.OPEN) {
          // A face that names a vertex twice has no edges, so no rim either.
          if (withRim && isFace(corner, h / 3)) {
            edges.add(h);
          }
        } else if (!inside.test(twin / 3) && outside.test(twin / 3)) {
          edges.add(h);
        }
      }
    }
    addBranching(corner, branching, inside, outside, edges);
    return chains(corner, edges.toArray());
  }

  private static boolean isFace(int[] corner, int f) {
    return corner[3 * f] != corner[3 * f + 1]
        && corner[3 * f + 1] != corner[3 * f + 2]
        && corner[3 * f + 2] != corner[3 * f];
  }

  private static void addBranching(
      int[] corner,
      List<Integer> halfEdges,
      IntPredicate inside,
      IntPredicate outside,
      IntList edges) {
    halfEdges.sort(
        (g, h) -> {
          int byLow = Integer.compare(low(corner, g), low(corner, h));
          int byHigh = byLow != 0 ? byLow : Integer.compare(high(corner, g), high(corner, h));
          return byHigh != 0 ? byHigh : Integer.compare(g, h);
        });
    int from = 0;
    while (from < halfEdges.size()) {
      int first = halfEdges.get(from);
      int in = -1;
      boolean out = false;
      int to = from;
      while (to < halfEdges.size()
          && low(corner, halfEdges.get(to)) == low(corner, first)
          && high(corner, halfEdges.get(to)) == high(corner, first)) {
        int h = halfEdges.get(to++);
        if (inside.test(h / 3)) {
          in = in < 0 ? h : in;
        } else {
          out |= outside.test(h / 3);
        }
      }
      if (in >= 0 && out) {
        edges.add(in);
      }
      from = to;
    }
  }

  private static int low(int[] corner, int h) {
    return Math.min(corner[h], corner[Topology.next(h)]);
  }

  private static int high(int[] corner, int h) {
    return Math.max(corner[h], corner[Topology.next(h)]);
  }

  /** Joins edges end to end. */
  private static List<Line> chains(int[] corner, int[] edges) {
    // Each edge twice, by end: sorted, the ends at one vertex follow one another.
    long[] ends = new long[2 * edges.length];
    for (int i = 0; i < edges.length; i++) {
      ends[2 * i] = (long) corner[edges[i]] << 32 | (2L * i);
      ends[2 * i + 1] = (long) corner[Topology.next(edges[i])] << 32 | (2L * i + 1);
    }
    Arrays.sort(ends);
    // Across a vertex with just two ends the line goes on: the end opposite, else -1.
    int[] onward = new int[ends.length];
    Arrays.fill(onward, -1);
    for (int i = 0; i + 1 < ends.length; i++) {
      long v = ends[i] >>> 32;
      boolean two =
          ends[i + 1] >>> 32 == v
              && (i + 2 == ends.length || ends[i + 2] >>> 32 != v)
              && (i == 0 || ends[i - 1] >>> 32 != v);
      if (two) {
        onward[(int) ends[i]] = (int) ends[i + 1];
        onward[(int) ends[i + 1]] = (int) ends[i];
      }
    }
    List<Line> lines = new ArrayList<>();
    boolean[] used = new boolean[edges.length];
    // Ends that go nowhere start open lines, a line's own start before its last end.
    for (int side = 0; side < 2; side++) {
      for (long entry : ends) {
        int end = (int) entry;
        if (end % 2 == side && onward[end] < 0 && !used[end / 2]) {
          lines.add(walk(corner, edges, onward, used, end));
        }
      }
    }
    for (long entry : ends) {
      int end = (int) entry;
      if (end % 2 == 0 && !used[end / 2]) {
        lines.add(walk(corner, edges, onward, used, end));
      }
    }
    return List.copyOf(lines);
  }

  private static Line walk(int[] corner, int[] edges, int[] onward, boolean[] used, int start) {
    IntList vertices = new IntList(16);
    int end = start;
    while (true) {
      int h = edges[end / 2];
      used[end / 2] = true;
      vertices.add(end % 2 == 0 ? corner[h] : corner[Topology.next(h)]);
      int far = end ^ 1;
      int next = onward[far];
      if (next < 0) {
        int last = far % 2 == 0 ? corner[h] : corner[Topology.next(h)];
        if (last == vertices.get(0)) {
          return new Line(vertices.toArray(), true);
        }
        vertices.add(last);
        return new Line(vertices.toArray(), false);
      }
      if (used[next / 2]) {
        return new Line(vertices.toArray(), true);
      }
      end = next;
    }
  }
}
