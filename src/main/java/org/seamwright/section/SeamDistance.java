package org.seamwright.section;

import java.util.Arrays;
import java.util.function.ObjIntConsumer;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.geodesic.Sources;
import org.seamwright.geodesic.SurfaceDistance;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;
import org.seamwright.region.SubMesh;

/**
 * Distance from seams over the plated faces of a mesh: ways lead over nothing else.
 *
 * @param mesh the piece with seams along edges
 * @param topology of the mesh
 * @param fans of the mesh
 * @param section one entry per face
 * @param first lowest section number; faces with a lower one are not plated
 * @param reachMm one entry per vertex: its longest edge on a plated face, 0 where it has none
 */
record SeamDistance(
    Mesh mesh, Topology topology, VertexFans fans, int[] section, int first, double[] reachMm) {
  /** The longest edge itself must not be missed by rounding. */
  private static final double ROUNDING = 1 + 1e-9;

  /** How far apart the ends are taken that faces must be near to, as a share of the reach. */
  private static final double SPARSE = 0.15;

  /**
   * Edges of a seam in the width of a lap beyond which ways from them are followed further: where a
   * seam of very short edges leads into larger faces the band would else be up to 1.5% too narrow.
   */
  private static final double FINE_EDGES = 50;

  /** Sets worked out side by side: enough for a few cores, few enough for memory. */
  static final int BATCH = 4;

  /** Prepares a mesh. */
  static SeamDistance of(Mesh mesh, Topology topology, int[] section, int first) {
    int[] corner = mesh.corner();
    double[] reach = new double[mesh.vertexCount()];
    for (int h = 0; h < corner.length; h++) {
      if (section[h / 3] >= first) {
        int a = corner[h];
        int b = corner[Topology.next(h)];
        double length = Faces.length(mesh, a, b);
        reach[a] = Math.max(reach[a], length);
        reach[b] = Math.max(reach[b], length);
      }
    }
    return new SeamDistance(mesh, topology, VertexFans.of(mesh), section, first, reach);
  }

  /**
   * Distances near some edges: a surface of its own, no larger than it has to be.
   *
   * @param sub the plated faces near the edges
   * @param distanceMm one entry per vertex of it: known at all corners of faces with a corner
   *     nearer than the width, infinite far beyond
   */
  record Near(SubMesh sub, double[] distanceMm) {}

  /**
   * Working space for one thread: a stamp per vertex and face, and what {@link SubMesh} needs. Most
   * bands are small beside the mesh; clearing arrays as large as it for each would cost more than
   * the distances.
   */
  private static final class Space {
    final int[] vertexStamp;
    final int[] faceStamp;
    final int[] local;
    int stamp;

    Space(Mesh mesh) {
      vertexStamp = new int[mesh.vertexCount()];
      faceStamp = new int[mesh.faceCount()];
      local = new int[mesh.vertexCount()];
    }
  }

  /** Distance from edges: in time that depends on what lies near them. */
  private Near from(int[] halfEdges, double widthMm, Space space) {
    double beyond = 0;
    double longest = 0;
    double length = 0;
    int[] ends = new int[2 * halfEdges.length];
    for (int i = 0; i < halfEdges.length; i++) {
      int a = mesh.corner()[halfEdges[i]];
      int b = mesh.corner()[Topology.next(halfEdges[i])];
      ends[2 * i] = a;
      ends[2 * i + 1] = b;
      beyond = Math.max(beyond, Math.max(reachMm[a], reachMm[b]));
      double here = Faces.length(mesh, a, b);
      longest = Math.max(longest, here);
      length += here;
    }
    boolean isFine = length / halfEdges.length < widthMm / FINE_EDGES;
    while (true) {
      // A corner of a face with a nearer corner is no further than one edge beyond the width.
      double reach = widthMm + beyond * ROUNDING;
      double apart = SPARSE * reach;
      int[] faces =
          facesNear(ends, sparse(ends, apart), (reach + longest / 2 + apart) * ROUNDING, space);
      SubMesh sub = SubMesh.of(mesh, faces, space.local);
      int[] own = new int[halfEdges.length];
      for (int i = 0; i < own.length; i++) {
        own[i] = 3 * Arrays.binarySearch(faces, halfEdges[i] / 3) + halfEdges[i] % 3;
      }
      double[] distance =
          SurfaceDistance.from(
              sub.mesh(),
              Topology.of(sub.mesh()),
              VertexFans.of(sub.mesh()),
              isFine ? Sources.edges(own).bent() : Sources.edges(own),
              reach,
              Progress.NONE);
      double needed = beyond;
      for (int v = 0; v < distance.length; v++) {
        if (distance[v] < widthMm) {
          needed = Math.max(needed, reachMm[sub.vertices()[v]]);
        }
      }
      if (needed == beyond) {
        return new Near(sub, distance);
      }
      beyond = needed;
    }
  }

  /**
   * Some of the vertices, so that each other one lies no further than a distance from one of them.
   */
  private int[] sparse(int[] vertices, double apartMm) {
    int[] some = new int[vertices.length];
    int count = 0;
    for (int v : vertices) {
      if (nearEnd(v, some, count, apartMm) < 0) {
        some[count++] = v;
      }
    }
    return Arrays.copyOf(some, count);
  }

  /**
   * All plated faces at vertices that a way from the edges may reach, ascending: those joined to
   * them and no further in space than a distance from one of some ends. No way is shorter than the
   * straight line, no place of an edge is further from an end than half its length, and no end from
   * one of those than they were taken apart.
   */
  private int[] facesNear(int[] ends, int[] some, double reachMm, Space space) {
    int stamp = ++space.stamp;
    int[] queue = new int[Math.max(64, ends.length)];
    int[] nearest = new int[queue.length];
    int[] faces = new int[64];
    int queued = 0;
    int count = 0;
    for (int v : ends) {
      if (space.vertexStamp[v] != stamp) {
        space.vertexStamp[v] = stamp;
        queue[queued] = v;
        nearest[queued++] = v;
      }
    }
    for (int i = 0; i < queued; i++) {
      int v = queue[i];
      int end =
          Faces.length(mesh, v, nearest[i]) <= reachMm
              ? nearest[i]
              : nearEnd(v, some, some.length, reachMm);
      if (end < 0) {
        continue;
      }
      for (int k = fans.begin(v); k < fans.begin(v + 1); k++) {
        int f = fans.halfEdge(k) / 3;
        if (section[f] < first || space.faceStamp[f] == stamp) {
          continue;
        }
        space.faceStamp[f] = stamp;
        faces = count == faces.length ? Arrays.copyOf(faces, 2 * count) : faces;
        faces[count++] = f;
        for (int c = 3 * f; c < 3 * f + 3; c++) {
          int next = mesh.corner()[c];
          if (space.vertexStamp[next] != stamp) {
            space.vertexStamp[next] = stamp;
            if (queued == queue.length) {
              queue = Arrays.copyOf(queue, 2 * queued);
              nearest = Arrays.copyOf(nearest, 2 * queued);
            }
            queue[queued] = next;
            nearest[queued++] = end;
          }
        }
      }
    }
    int[] found = Arrays.copyOf(faces, count);
    Arrays.sort(found);
    return found;
  }

  /** One of the first vertices of a list that is within reach of a vertex; -1 for none. */
  private int nearEnd(int v, int[] some, int count, double reachMm) {
    for (int i = 0; i < count; i++) {
      if (Faces.length(mesh, v, some[i]) <= reachMm) {
        return some[i];
      }
    }
    return -1;
  }

  /**
   * Distances from several sets of edges, worked out side by side.
   *
   * @param halfEdges one set per result; an empty one gives no distances
   * @param widthMm how far
   * @param action told the number of each set that has edges, in order, with its distances
   */
  void each(int[][] halfEdges, double widthMm, ObjIntConsumer<Near> action, Progress progress) {
    Space[] spaces = new Space[BATCH];
    for (int begin = 0; begin < halfEdges.length; begin += BATCH) {
      progress.at((double) begin / halfEdges.length);
      int at = begin;
      Near[] near = new Near[Math.min(BATCH, halfEdges.length - begin)];
      Parallel.each(
          near.length,
          i -> {
            if (halfEdges[at + i].length > 0) {
              spaces[i] = spaces[i] == null ? new Space(mesh) : spaces[i];
              near[i] = from(halfEdges[at + i], widthMm, spaces[i]);
            }
          });
      for (int i = 0; i < near.length; i++) {
        if (near[i] != null) {
          action.accept(near[i], at + i);
        }
      }
    }
  }
}
