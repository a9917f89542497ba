package org.seamwright.section;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * The surface to divide, with what seams on it cost. Costs and patches live on the intrinsic
 * triangles {@link Surface#way}, which are well shaped whatever the mesh is like; lines that seams
 * keep to are edges of both.
 *
 * @param domain the faces to divide
 * @param rings edges of the domain's mesh
 * @param wayRings edges of the intrinsic triangles
 * @param cost of seams on the intrinsic triangles
 * @param wayMm2 one entry per intrinsic triangle: its area
 * @param meshEdge one entry per half-edge of the intrinsic triangles: the same half-edge in the
 *     mesh if it lies on a line, else -1
 */
record Ground(
    Domain domain,
    EdgeRings rings,
    EdgeRings wayRings,
    SeamCost cost,
    double[] wayMm2,
    int[] meshEdge) {
  /**
   * Takes components out of a mesh.
   *
   * @param mesh the whole piece
   * @param component one entry per face: its component from 0, or negative to leave it out
   * @param components number of components
   * @param faceFactor cost of a seam per length on a face of the mesh
   * @param leastMm shortest line of edges that seams keep to
   */
  static Ground of(
      Mesh mesh,
      int[] component,
      int components,
      SeamWeights weights,
      IntToDoubleFunction faceFactor,
      double leastMm) {
    EdgeRings[] rings = new EdgeRings[1];
    SeamCost[] cost = new SeamCost[1];
    Domain domain =
        Domain.of(
            mesh,
            component,
            components,
            part -> {
              float[] even = new float[part.faceCount()];
              Arrays.fill(even, 1);
              rings[0] = EdgeRings.of(part, Topology.of(part));
              cost[0] = SeamCost.of(part, rings[0], weights, even, leastMm);
              return Surface.of(part, rings[0].topology(), cost[0]::isLine);
            });
    Surface surface = domain.surface();
    Mesh way = Mesh.of(surface.mesh().xyz(), surface.way());
    int[] meshEdge = sameEdges(surface.mesh().corner(), surface.way(), cost[0]);
    float[] edge = new float[meshEdge.length];
    for (int h = 0; h < edge.length; h++) {
      edge[h] = meshEdge[h] < 0 ? 1 : cost[0].edge()[meshEdge[h]];
    }
    return new Ground(
        domain,
        rings[0],
        EdgeRings.of(way, Topology.of(way)),
        new SeamCost(edge, wayFactors(domain, faceFactor)),
        areas(surface.edgeMm()),
        meshEdge);
  }

  /**
   * Makes seams cheaper where little is seen from.
   *
   * @param piece the whole piece
   * @param start clusters whose middles are looked from
   * @param hidden weight of a seam where nothing is seen
   */
  void hide(Mesh piece, Division.Start start, double hidden) {
    Domain coarse = start.partition().domain();
    boolean same = coarse.meshVertex().length == domain.meshVertex().length;
    int[] vertex = new int[coarse.meshVertex().length];
    Arrays.setAll(vertex, i -> same ? i : coarse.meshVertex()[i]);
    double spacing = Math.sqrt(Arrays.stream(wayMm2).sum() / Math.max(1, vertex.length));
    double[] open = Openness.of(piece, domain, vertex, spacing);
    int[] way = domain.surface().way();
    for (int f = 0; f < cost.face().length; f++) {
      double sees = 0;
      for (int k = 0; k < 3; k++) {
        sees += open[start.owner()[way[3 * f + k]]] / 3;
      }
      cost.face()[f] *= (float) (hidden + (1 - hidden) * sees);
    }
  }

  /** Half-edges of the mesh on lines, by half-edge of the other triangles between the same ends. */
  private static int[] sameEdges(int[] corner, int[] way, SeamCost cost) {
    int[] same = new int[way.length];
    Arrays.fill(same, -1);
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      count += cost.isLine(h) ? 1 : 0;
    }
    long[] key = new long[count];
    count = 0;
    for (int h = 0; h < corner.length; h++) {
      if (cost.isLine(h)) {
        key[count++] = key(corner, h);
      }
    }
    Arrays.sort(key);
    int[] at = new int[count];
    for (int h = 0; h < corner.length; h++) {
      if (cost.isLine(h)) {
        at[Arrays.binarySearch(key, key(corner, h))] = h;
      }
    }
    for (int h = 0; h < way.length && count > 0; h++) {
      int found = Arrays.binarySearch(key, key(way, h));
      same[h] = found < 0 ? -1 : at[found];
    }
    return same;
  }

  private static long key(int[] corner, int h) {
    return (long) corner[h] << 32 | corner[Topology.next(h)];
  }

  /** Factors of intrinsic triangles: means over their corners of the faces around. */
  private static float[] wayFactors(Domain domain, IntToDoubleFunction faceFactor) {
    int[] corner = domain.surface().mesh().corner();
    double[] area = domain.surface().areaMm2();
    double[] sum = new double[domain.vertexMm2().length];
    for (int f = 0; f < domain.meshFace().length; f++) {
      double share = faceFactor.applyAsDouble(domain.meshFace()[f]) * area[f] / 3;
      for (int k = 0; k < 3; k++) {
        sum[corner[3 * f + k]] += share;
      }
    }
    for (int v = 0; v < sum.length; v++) {
      sum[v] = domain.vertexMm2()[v] > 0 ? sum[v] / domain.vertexMm2()[v] : 1;
    }
    int[] way = domain.surface().way();
    float[] factor = new float[way.length / 3];
    for (int f = 0; f < factor.length; f++) {
      factor[f] = (float) ((sum[way[3 * f]] + sum[way[3 * f + 1]] + sum[way[3 * f + 2]]) / 3);
    }
    return factor;
  }

  private static double[] areas(double[] edge) {
    double[] area = new double[edge.length / 3];
    for (int f = 0; f < area.length; f++) {
      area[f] = IntrinsicDelaunay.area(edge[3 * f], edge[3 * f + 1], edge[3 * f + 2]);
    }
    return area;
  }
}
