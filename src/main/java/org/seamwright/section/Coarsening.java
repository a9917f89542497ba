package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * A domain with far fewer vertices for the many rounds in which cells find their places: clusters
 * of vertices around centres that lie a radius apart, joined by the triangles in which three
 * clusters meet (the dual of their Voronoi cells). Where a strip is one cluster wide and no three
 * meet, clusters are joined by a face without extent, {@code (a, b, b)}, that stands for the strip.
 *
 * <p>Areas are those of the fine faces: each cluster's is shared out among its coarse faces. The
 * vertices of the coarse domain are vertices of the fine one, {@link Domain#meshVertex}. Cost: O(n
 * log n) in the fine vertices.
 */
final class Coarsening {
  /** Area per centre, in squares of the radius, when points are put down one by one at random. */
  private static final double AREA_PER_CENTRE = 1.44;

  /** Components with no more than this many times the vertices wanted stay as they are. */
  private static final double NOT_WORTH_IT = 2;

  private static final int REPORT_EVERY = 1 << 12;

  /** Bits per vertex in a key of three. */
  private static final int BITS = 21;

  private final Domain fine;
  private final int[] owner;
  private final double[] distance;
  private final KeyHeap heap = new KeyHeap();
  private final int[] vertexBegin;
  private int[] centre = new int[256];
  private int centres;

  private Coarsening(Domain fine) {
    this.fine = fine;
    int vertices = fine.meshVertex().length;
    owner = new int[vertices];
    distance = new double[vertices];
    Arrays.fill(distance, Double.POSITIVE_INFINITY);
    vertexBegin = new int[fine.components() + 1];
  }

  /**
   * Coarsens a domain.
   *
   * @param fine the domain
   * @param wanted vertices wanted, one entry per component
   */
  static Domain of(Domain fine, int[] wanted, Progress progress) {
    return clusters(fine, wanted, progress).domain();
  }

  /**
   * A coarsened domain and what its vertices stand for.
   *
   * @param domain the coarse domain, or the fine one itself where it isn't worth coarsening
   * @param owner one entry per vertex of the fine domain: the vertex that stands for it
   */
  record Clusters(Domain domain, int[] owner) {}

  /** Coarsens a domain and tells which vertices became one. */
  static Clusters clusters(Domain fine, int[] wanted, Progress progress) {
    Coarsening coarsening = new Coarsening(fine);
    int before = 0;
    for (int c = 0; c < fine.components(); c++) {
      before += fine.vertexBegin()[c + 1] - fine.vertexBegin()[c];
      coarsening.cluster(c, wanted[c], progress);
    }
    if (coarsening.centres == before || coarsening.centres >= 1 << BITS) {
      Arrays.setAll(coarsening.owner, v -> v);
      return new Clusters(fine, coarsening.owner);
    }
    return new Clusters(coarsening.coarse(), coarsening.owner);
  }

  private void cluster(int c, int wanted, Progress progress) {
    int begin = fine.vertexBegin()[c];
    int end = fine.vertexBegin()[c + 1];
    boolean keep = end - begin <= NOT_WORTH_IT * wanted;
    double radius = keep ? 0 : Math.sqrt(fine.areaMm2(c) / wanted / AREA_PER_CENTRE);
    for (int v = begin; v < end; v++) {
      if ((v & (REPORT_EVERY - 1)) == 0) {
        progress.at((double) v / fine.meshVertex().length);
      }
      if (distance[v] == Double.POSITIVE_INFINITY) {
        if (centres == centre.length) {
          centre = Arrays.copyOf(centre, 2 * centres);
        }
        centre[centres] = v;
        gather(v, centres++, radius);
      }
    }
    vertexBegin[c + 1] = centres;
  }

  private void gather(int from, int label, double radius) {
    int[] corner = fine.surface().way();
    double[] edge = fine.surface().edgeMm();
    VertexFans fans = fine.surface().fans();
    offer(from, label, 0);
    while (!heap.isEmpty()) {
      int v = heap.vertex();
      double far = heap.key();
      heap.pop();
      if (far == distance[v] && owner[v] == label) {
        for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
          int h = fans.halfEdge(i);
          int prev = Topology.prev(h);
          if (far + edge[h] <= radius) {
            offer(corner[Topology.next(h)], label, far + edge[h]);
          }
          if (far + edge[prev] <= radius) {
            offer(corner[prev], label, far + edge[prev]);
          }
        }
      }
    }
  }

  private void offer(int v, int label, double far) {
    if (far < distance[v]) {
      distance[v] = far;
      owner[v] = label;
      heap.push(far, v, label);
    }
  }

  private Domain coarse() {
    long[] keys = faces();
    int[] corner = new int[3 * keys.length];
    long mask = (1L << BITS) - 1;
    for (int f = 0; f < keys.length; f++) {
      corner[3 * f] = (int) (keys[f] >> (2 * BITS));
      corner[3 * f + 1] = (int) ((keys[f] >> BITS) & mask);
      corner[3 * f + 2] = (int) (keys[f] & mask);
    }
    int[] vertex = Arrays.copyOf(centre, centres);
    double[] xyz = new double[3 * centres];
    for (int i = 0; i < centres; i++) {
      System.arraycopy(fine.surface().mesh().xyz(), 3 * vertex[i], xyz, 3 * i, 3);
    }
    Mesh mesh = Mesh.of(xyz, corner);
    double[] clusterMm2 = new double[centres];
    for (int v = 0; v < owner.length; v++) {
      clusterMm2[owner[v]] += fine.vertexMm2()[v];
    }
    Surface surface = Surface.coarse(mesh, share(mesh, clusterMm2));
    return new Domain(surface, faceBegin(corner), vertexBegin, new int[0], vertex, clusterMm2);
  }

  /** Sorted keys of all faces: lowest, middle and highest vertex. */
  private long[] faces() {
    int[] corner = fine.surface().way();
    long[] triangles = new long[64];
    long[] pairs = new long[64];
    int triangleCount = 0;
    int pairCount = 0;
    for (int f = 0; f < corner.length / 3; f++) {
      int a = owner[corner[3 * f]];
      int b = owner[corner[3 * f + 1]];
      int c = owner[corner[3 * f + 2]];
      int low = Math.min(a, Math.min(b, c));
      int high = Math.max(a, Math.max(b, c));
      if (a != b && b != c && c != a) {
        triangles = withRoom(triangles, triangleCount);
        triangles[triangleCount++] = key(low, a + b + c - low - high, high);
      } else if (low != high) {
        pairs = withRoom(pairs, pairCount);
        pairs[pairCount++] = key(low, high, high);
      }
    }
    triangles = distinct(triangles, triangleCount);
    pairs = strips(distinct(pairs, pairCount), triangles);
    long[] all = Arrays.copyOf(triangles, triangles.length + pairs.length);
    System.arraycopy(pairs, 0, all, triangles.length, pairs.length);
    Arrays.sort(all);
    return all;
  }

  private static long key(int low, int middle, int high) {
    return ((long) low << (2 * BITS)) | ((long) middle << BITS) | high;
  }

  private static long[] withRoom(long[] list, int count) {
    return count < list.length ? list : Arrays.copyOf(list, 2 * count);
  }

  private static long[] distinct(long[] list, int count) {
    long[] sorted = Arrays.copyOf(list, count);
    Arrays.sort(sorted);
    int kept = 0;
    for (int i = 0; i < count; i++) {
      if (i == 0 || sorted[i] != sorted[i - 1]) {
        sorted[kept++] = sorted[i];
      }
    }
    return Arrays.copyOf(sorted, kept);
  }

  /** The pairs that are no edge of a triangle. */
  private static long[] strips(long[] pairs, long[] triangles) {
    long[] edges = new long[3 * triangles.length];
    long mask = (1L << BITS) - 1;
    for (int i = 0; i < triangles.length; i++) {
      int low = (int) (triangles[i] >> (2 * BITS));
      int middle = (int) ((triangles[i] >> BITS) & mask);
      int high = (int) (triangles[i] & mask);
      edges[3 * i] = key(low, middle, middle);
      edges[3 * i + 1] = key(low, high, high);
      edges[3 * i + 2] = key(middle, high, high);
    }
    Arrays.sort(edges);
    return Arrays.stream(pairs).filter(p -> Arrays.binarySearch(edges, p) < 0).toArray();
  }

  private int[] faceBegin(int[] corner) {
    int[] begin = new int[vertexBegin.length];
    int f = 0;
    for (int c = 0; c + 1 < begin.length; c++) {
      begin[c] = f;
      while (3 * f < corner.length && corner[3 * f] < vertexBegin[c + 1]) {
        f++;
      }
    }
    begin[begin.length - 1] = f;
    return begin;
  }

  /** Shares the area of clusters out among their faces: triangles by size, strips evenly. */
  private static double[] share(Mesh mesh, double[] clusterMm2) {
    int[] corner = mesh.corner();
    double[] weight = new double[mesh.faceCount()];
    double[] sum = new double[clusterMm2.length];
    for (int f = 0; f < weight.length; f++) {
      int a = corner[3 * f];
      int b = corner[3 * f + 1];
      weight[f] =
          corner[3 * f + 2] == b
              ? (clusterMm2[a] + clusterMm2[b]) / 2
              : Math.max(Double.MIN_NORMAL, Faces.area(mesh, f));
      for (int k = 0; k < 3; k++) {
        sum[corner[3 * f + k]] += weight[f];
      }
    }
    double[] area = new double[weight.length];
    for (int h = 0; h < corner.length; h++) {
      area[h / 3] += clusterMm2[corner[h]] * weight[h / 3] / sum[corner[h]];
    }
    return area;
  }
}
