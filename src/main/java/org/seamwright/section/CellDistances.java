package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Distance over a surface from many weighted seeds at once. A vertex belongs to the seed with the
 * least key, distance minus weight (additively weighted Voronoi cells). Besides its own cell each
 * vertex keeps the keys of cells that end nearby, so that borders can be drawn through triangles.
 *
 * <p>Wavefronts go from triangle to triangle by unfolding about a virtual source (M. Novotni and R.
 * Klein, "Computing geodesic distances on triangular meshes", WSCG 2002), as label-correcting
 * search: a vertex is taken up again when a later triangle shortens its distance, so obtuse
 * triangles need no special care.
 *
 * <p>Exact on a plane while no hole is in the way, within 2% elsewhere on the shapes tested. Cost:
 * O(n log n); each vertex is visited about once, and a few times near borders. Memory: {@value
 * #KEPT} slots per vertex.
 */
final class CellDistances implements CellKeys {
  /** Cells kept per vertex: at a place where three meet, those three and one to spare. */
  static final int KEPT = 4;

  /**
   * How far beyond the border a cell's distances are kept, in longest edges of the vertex: two so
   * that every cell of a neighbour is known here, and one more for the triangles they come from.
   */
  private static final double BEYOND_EDGES = 3;

  /**
   * A distance is taken up again only if it shrinks by this share of the vertex's longest edge.
   * Around slivers two vertices can go on shortening each other's distance by ever less; leaving
   * that out costs at most this share of the way and ends the search.
   */
  private static final double LEAST_GAIN = 1e-4;

  private static final int REPORT_EVERY = 1 << 15;

  private final Surface surface;
  private final double[] weight;
  private final int[] label;
  private final double[] distance;
  private final KeyHeap heap = new KeyHeap();

  private CellDistances(Surface surface, double[] weight) {
    this.surface = surface;
    this.weight = weight;
    int slots = KEPT * surface.mesh().vertexCount();
    label = new int[slots];
    distance = new double[slots];
    Arrays.fill(label, NONE);
  }

  /**
   * Spreads from seeds.
   *
   * @param surface where to
   * @param seed one vertex per cell
   * @param weightMm one weight per cell, mm: how far its border is pushed outward
   * @param progress told how far the spread is
   */
  static CellDistances from(Surface surface, int[] seed, double[] weightMm, Progress progress) {
    CellDistances result = new CellDistances(surface, weightMm.clone());
    for (int i = 0; i < seed.length; i++) {
      result.offer(seed[i], i, 0);
    }
    result.spread(progress);
    return result;
  }

  private void spread(Progress progress) {
    int popped = 0;
    double expected = Math.max(1, 1.5 * surface.mesh().vertexCount());
    while (!heap.isEmpty()) {
      if (popped++ % REPORT_EVERY == 0) {
        progress.at(Math.min(1, popped / expected));
      }
      int vertex = heap.vertex();
      int cell = heap.label();
      double key = heap.key();
      heap.pop();
      int slot = slot(vertex, cell);
      if (slot >= 0 && distance[slot] - weight[cell] == key) {
        leave(vertex, cell, distance[slot]);
      }
    }
    progress.at(1);
  }

  private void leave(int vertex, int cell, double far) {
    VertexFans fans = surface.fans();
    double[] edge = surface.edgeMm();
    int[] corner = surface.way();
    int end = fans.begin(vertex + 1);
    for (int i = fans.begin(vertex); i < end; i++) {
      int h = fans.halfEdge(i);
      int next = Topology.next(h);
      int prev = Topology.prev(h);
      int a = corner[next];
      int b = corner[prev];
      double va = edge[h];
      double ab = edge[next];
      double vb = edge[prev];
      double reachedA = far + va;
      double reachedB = far + vb;
      int slotA = slot(a, cell);
      if (slotA >= 0) {
        reachedB = Math.min(reachedB, unfold(far, distance[slotA], va, vb, ab));
      }
      int slotB = slot(b, cell);
      if (slotB >= 0) {
        reachedA = Math.min(reachedA, unfold(far, distance[slotB], vb, va, ab));
      }
      offer(a, cell, reachedA);
      offer(b, cell, reachedB);
    }
  }

  /**
   * Distance of the third corner w of a triangle (u, v, w) from the virtual source that lies at
   * {@code du} from u and {@code dv} from v on the far side of uv; infinite if the straight line
   * from there to w misses the edge uv.
   */
  static double unfold(double du, double dv, double uv, double uw, double vw) {
    double sx = (du * du - dv * dv + uv * uv) / (2 * uv);
    double sy2 = du * du - sx * sx;
    if (!(sy2 > 0)) {
      return Double.POSITIVE_INFINITY;
    }
    double sy = Math.sqrt(sy2);
    double wx = (uw * uw - vw * vw + uv * uv) / (2 * uv);
    double wy = Math.sqrt(Math.max(0, uw * uw - wx * wx));
    double crossing = (sx * wy + wx * sy) / (sy + wy);
    if (!(crossing >= 0) || !(crossing <= uv)) {
      return Double.POSITIVE_INFINITY;
    }
    double dx = wx - sx;
    double dy = wy + sy;
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** Keeps a distance if it is new here or shorter, and not far behind the vertex's own cell. */
  private void offer(int vertex, int cell, double far) {
    int base = KEPT * vertex;
    double key = far - weight[cell];
    double reach = surface.reachMm()[vertex];
    int slot = base;
    while (slot < base + KEPT && label[slot] != cell && label[slot] != NONE) {
      slot++;
    }
    if (slot > base && key > key(base) + BEYOND_EDGES * reach) {
      return;
    }
    if (slot == base + KEPT) {
      slot--;
      if (!(key < key(slot))) {
        return;
      }
    } else if (label[slot] == cell && !(far < distance[slot] - LEAST_GAIN * reach)) {
      return;
    }
    label[slot] = cell;
    distance[slot] = far;
    while (slot > base && key(slot) < key(slot - 1)) {
      int otherLabel = label[slot - 1];
      double otherDistance = distance[slot - 1];
      label[slot - 1] = label[slot];
      distance[slot - 1] = distance[slot];
      label[slot] = otherLabel;
      distance[slot] = otherDistance;
      slot--;
    }
    heap.push(key, vertex, cell);
  }

  private int slot(int vertex, int cell) {
    int base = KEPT * vertex;
    for (int slot = base; slot < base + KEPT; slot++) {
      if (label[slot] == cell) {
        return slot;
      }
    }
    return -1;
  }

  private double key(int slot) {
    return distance[slot] - weight[label[slot]];
  }

  @Override
  public int cell(int vertex) {
    return label[KEPT * vertex];
  }

  /**
   * Key of a cell at a vertex, mm: distance minus weight. For a cell that is not kept there, a
   * bound that it certainly doesn't beat.
   */
  @Override
  public double key(int vertex, int cell) {
    int slot = slot(vertex, cell);
    return slot >= 0 ? key(slot) : key(KEPT * vertex) + BEYOND_EDGES * surface.reachMm()[vertex];
  }

  @Override
  public int tiedFace(int face) {
    throw new IllegalStateException("Distances leave no vertex tied");
  }
}
