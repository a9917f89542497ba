package org.seamwright.section;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.seamwright.basis.Parallel;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Topology;
import org.seamwright.mesh.VertexFans;

/**
 * Smooth fields whose borders are the seams: for every cell a field that is 1 inside, 0 outside and
 * even in between, made from the crooked borders of patches by two steps of heat flow near them.
 * Where the fields of two cells are equal runs a seam that is short for its surroundings (B.
 * Merriman, J. Bence and S. Osher, "Diffusion generated motion by mean curvature", 1992). Heat
 * flows slower where seams are cheap, which draws them there.
 *
 * <p>Runs of a seam along a line it keeps to ({@link SeamCost#isLine}) stay exactly there: their
 * vertices are ties, and no heat passes them. A weight per cell pushes its other borders outward.
 *
 * <p>Cost: O(n) and a few dozen sweeps over the vertices near seams; cells are worked out side by
 * side, each by itself, so the result does not depend on the number of cores.
 */
final class SeamFields implements CellKeys {
  /** Fields kept per vertex, the largest. */
  private static final int KEPT = 4;

  /** Width of the band worked out on either side of a seam, in radii. */
  private static final double BAND = 3;

  /** Shortest run along a line that a seam keeps to, in radii: less is not worth the jog. */
  private static final double LEAST_RUN = 4;

  /** Fields below this don't reach a vertex. */
  private static final float LEAST = 1e-3f;

  /** Largest weight, in radii: beyond, fields are too flat to tell where a border should lie. */
  private static final double FURTHEST_PUSH = 1;

  private static final double RESIDUAL = 1e-3;
  private static final int SWEEPS = 300;

  /** Largest cotangent taken: needles must not stiffen the flow beyond all numbers. */
  private static final double STEEPEST = 1e4;

  private final Ground ground;
  private final Domain domain;
  private final Surface surface;
  private final int[] wayLabel;
  private final boolean[] tie;
  private final int[] line;
  private final double radius;
  private final double scale;
  private final int[] slotLabel;
  private final float[] slot;
  private final int[] cell;
  private final double[] weight;
  private final double[] vertexFactor;
  private final int mostNeighbours;

  private SeamFields(Ground ground, int[] wayLabel, int cells, double radiusMm) {
    this.ground = ground;
    this.domain = ground.domain();
    this.surface = domain.surface();
    this.wayLabel = wayLabel;
    this.radius = radiusMm;
    // Slope of the twice smoothed step in its middle is a quarter per radius.
    this.scale = 4 * radiusMm;
    int vertices = surface.mesh().vertexCount();
    tie = new boolean[vertices];
    line = keptLines();
    slotLabel = new int[KEPT * vertices];
    slot = new float[slotLabel.length];
    cell = new int[vertices];
    weight = new double[cells];
    vertexFactor = factors();
    int most = 0;
    for (int v = 0; v < vertices; v++) {
      most = Math.max(most, surface.fans().begin(v + 1) - surface.fans().begin(v));
    }
    mostNeighbours = 2 * most;
    Arrays.fill(slotLabel, NONE);
  }

  /**
   * Makes the fields.
   *
   * @param wayLabel one entry per intrinsic triangle: its cell
   * @param radiusMm how crooked borders are
   */
  static SeamFields of(Ground ground, int[] wayLabel, int cells, double radiusMm) {
    SeamFields fields = new SeamFields(ground, wayLabel, cells, radiusMm);
    fields.flow(cells);
    fields.spread();
    return fields;
  }

  /** Half-edges of runs along lines that are long enough to keep to; their ends become ties. */
  private int[] keptLines() {
    EdgeRings rings = ground.wayRings();
    int[] corner = surface.way();
    int[] kept =
        IntStream.range(0, corner.length)
            .filter(
                h ->
                    ground.cost().isLine(h)
                        && rings.next(h) > h
                        && wayLabel[rings.next(h) / 3] != wayLabel[h / 3])
            .toArray();
    int[] root = new int[tie.length];
    Arrays.setAll(root, v -> v);
    for (int h : kept) {
      int a = find(root, corner[h]);
      int b = find(root, corner[Topology.next(h)]);
      root[Math.max(a, b)] = Math.min(a, b);
    }
    double[] length = new double[root.length];
    for (int h : kept) {
      length[find(root, corner[h])] += surface.edgeMm()[h];
    }
    int[] longOnes =
        Arrays.stream(kept)
            .filter(h -> length[find(root, corner[h])] >= LEAST_RUN * radius)
            .toArray();
    for (int h : longOnes) {
      tie[corner[h]] = true;
      tie[corner[Topology.next(h)]] = true;
    }
    return longOnes;
  }

  private static int find(int[] root, int v) {
    int top = v;
    while (root[top] != top) {
      root[top] = root[root[top]];
      top = root[top];
    }
    return top;
  }

  private double[] factors() {
    int[] corner = surface.way();
    double[] sum = new double[tie.length];
    double[] area = new double[tie.length];
    for (int h = 0; h < corner.length; h++) {
      sum[corner[h]] += ground.cost().face()[h / 3] * ground.wayMm2()[h / 3];
      area[corner[h]] += ground.wayMm2()[h / 3];
    }
    for (int v = 0; v < sum.length; v++) {
      sum[v] = area[v] > 0 ? sum[v] / area[v] : 1;
    }
    return sum;
  }

  private void flow(int cells) {
    int[] corner = surface.way();
    for (int h = 0; h < corner.length; h++) {
      slotLabel[KEPT * corner[h]] = wayLabel[h / 3];
      slot[KEPT * corner[h]] = 1;
    }
    int[][] sources = sources(cells);
    Heat[] heat = new Heat[cells];
    Parallel.split(
        cells,
        Parallel.ranges(cells, 1),
        (from, to) -> {
          Band band = new Band();
          for (int c = from; c < to; c++) {
            heat[c] = band.around(c, sources[c]);
            heat[c].run();
          }
        });
    for (Heat h : heat) {
      for (int v : h.vertex) {
        slotLabel[KEPT * v] = NONE;
        slot[KEPT * v] = 0;
      }
    }
    for (int c = 0; c < cells; c++) {
      for (int i = 0; i < heat[c].vertex.length; i++) {
        keep(heat[c].vertex[i], c, (float) heat[c].x[i]);
      }
    }
  }

  private void keep(int v, int label, float value) {
    if (value < LEAST) {
      return;
    }
    int at = KEPT * v + KEPT;
    while (at > KEPT * v && (slotLabel[at - 1] == NONE || slot[at - 1] < value)) {
      at--;
    }
    for (int i = KEPT * v + KEPT - 1; i > at; i--) {
      slotLabel[i] = slotLabel[i - 1];
      slot[i] = slot[i - 1];
    }
    if (at < KEPT * v + KEPT) {
      slotLabel[at] = label;
      slot[at] = value;
    }
  }

  /** Vertices on the crooked seams of each cell. */
  private int[][] sources(int cells) {
    EdgeRings rings = ground.wayRings();
    int[] corner = surface.way();
    int[][] list = new int[cells][16];
    int[] count = new int[cells];
    for (int h = 0; h < corner.length; h++) {
      for (int other = rings.next(h); other != h; other = rings.next(other)) {
        int a = wayLabel[h / 3];
        if (wayLabel[other / 3] != a) {
          for (int v : new int[] {corner[h], corner[Topology.next(h)]}) {
            if (!tie[v]) {
              list[a] = count[a] < list[a].length ? list[a] : Arrays.copyOf(list[a], 2 * count[a]);
              list[a][count[a]++] = v;
            }
          }
        }
      }
    }
    for (int c = 0; c < cells; c++) {
      list[c] = Arrays.copyOf(list[c], count[c]);
    }
    return list;
  }

  /** Chooses the cells of all vertices by fields and weights. */
  void spread() {
    for (int v = 0; v < cell.length; v++) {
      if (tie[v]) {
        cell[v] = TIE;
        continue;
      }
      int best = slotLabel[KEPT * v];
      for (int i = KEPT * v + 1; i < KEPT * v + KEPT; i++) {
        if (slotLabel[i] != NONE && key(i) < key(v, best)) {
          best = slotLabel[i];
        }
      }
      cell[v] = best;
    }
  }

  private double key(int at) {
    return scale * (1 - slot[at]) - weight[slotLabel[at]];
  }

  @Override
  public int cell(int vertex) {
    return cell[vertex];
  }

  @Override
  public double key(int vertex, int label) {
    for (int i = KEPT * vertex; i < KEPT * vertex + KEPT; i++) {
      if (slotLabel[i] == label) {
        return key(i);
      }
    }
    return scale - weight[label];
  }

  @Override
  public int tiedFace(int face) {
    int[] corner = surface.mesh().corner();
    int any = NONE;
    for (int k = 0; k < 3; k++) {
      int v = corner[3 * face + k];
      VertexFans fans = surface.fans();
      for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
        int h = fans.halfEdge(i);
        if (ground.meshEdge()[h] >= 0 && ground.meshEdge()[h] / 3 == face) {
          return wayLabel[h / 3];
        }
        any = wayLabel[h / 3];
      }
    }
    // No edge of the face lies on a line, but all of its corners do: any side will serve.
    return any;
  }

  /** Half-edges of the mesh that seams are kept to. */
  int[] lines() {
    return Arrays.stream(line).map(h -> ground.meshEdge()[h]).toArray();
  }

  /** The half-edges on the other side of {@link #lines}. */
  int[] acrossLines() {
    return Arrays.stream(line).map(h -> ground.meshEdge()[ground.wayRings().next(h)]).toArray();
  }

  /**
   * Pushes the border of a cell outward, but never further than fields reach; takes effect with the
   * next {@link #spread}.
   */
  void push(int label, double mm) {
    double most = FURTHEST_PUSH * radius;
    weight[label] = Math.max(-most, Math.min(most, weight[label] + mm));
  }

  /** Takes all pushes back; takes effect with the next {@link #spread}. */
  void pushBack() {
    Arrays.fill(weight, 0);
  }

  /** Finds the vertices near seams; holds scratch that is used for one cell after the other. */
  private final class Band {
    private final double[] far = new double[tie.length];
    private final int[] number = new int[tie.length];
    private final KeyHeap heap = new KeyHeap();

    Band() {
      Arrays.fill(far, Double.POSITIVE_INFINITY);
      Arrays.fill(number, -1);
    }

    Heat around(int label, int[] sources) {
      int[] vertex = new int[256];
      int count = 0;
      int[] corner = surface.way();
      double[] edge = surface.edgeMm();
      VertexFans fans = surface.fans();
      for (int v : sources) {
        offer(v, 0);
      }
      while (!heap.isEmpty()) {
        int v = heap.vertex();
        double here = heap.key();
        heap.pop();
        if (here > far[v] || number[v] >= 0) {
          continue;
        }
        vertex = count < vertex.length ? vertex : Arrays.copyOf(vertex, 2 * count);
        number[v] = count;
        vertex[count++] = v;
        for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
          int h = fans.halfEdge(i);
          offer(corner[Topology.next(h)], here + edge[h]);
          offer(corner[Topology.prev(h)], here + edge[Topology.prev(h)]);
        }
      }
      Heat heat = new Heat(Arrays.copyOf(vertex, count), label, number);
      for (int i = 0; i < count; i++) {
        number[vertex[i]] = -1;
        far[vertex[i]] = Double.POSITIVE_INFINITY;
      }
      return heat;
    }

    private void offer(int v, double there) {
      if (!tie[v] && there <= BAND * radius && there < far[v]) {
        far[v] = there;
        heap.push(there, v, 0);
      }
    }
  }

  /** Two implicit steps of heat flow for one cell, by conjugate gradients. */
  private final class Heat {
    final int[] vertex;
    final double[] x;
    private final double[] mass;
    private final double[] outside;
    private final double[] diagonal;
    private final int[] begin;
    private int[] column;
    private float[] flow;

    Heat(int[] vertex, int label, int[] number) {
      this.vertex = vertex;
      int n = vertex.length;
      x = new double[n];
      mass = new double[n];
      outside = new double[n];
      diagonal = new double[n];
      begin = new int[n + 1];
      column = new int[7 * n + 16];
      flow = new float[column.length];
      double time = radius * radius;
      int[] around = new int[mostNeighbours];
      double[] conductance = new double[mostNeighbours];
      for (int i = 0; i < n; i++) {
        int v = vertex[i];
        x[i] = share(v, label);
        // A vertex whose faces have no area takes what its neighbours have.
        mass[i] = Math.max(domain.vertexMm2()[v], Double.MIN_NORMAL);
        int neighbours = neighbours(v, around, conductance);
        diagonal[i] = mass[i];
        begin[i + 1] = begin[i];
        for (int k = 0; k < neighbours; k++) {
          int u = around[k];
          double through =
              time * Math.max(0, conductance[k]) * (vertexFactor[u] + vertexFactor[v]) / 2;
          if (!tie[u] && through > 0) {
            diagonal[i] += through;
            if (number[u] < 0) {
              outside[i] += slotLabel[KEPT * u] == label ? through : 0;
            } else {
              add(i, number[u], through);
            }
          }
        }
      }
    }

    private void add(int row, int to, double through) {
      if (begin[row + 1] == column.length) {
        column = Arrays.copyOf(column, 2 * column.length);
        flow = Arrays.copyOf(flow, column.length);
      }
      column[begin[row + 1]] = to;
      flow[begin[row + 1]++] = (float) through;
    }

    /** Share of the surroundings of a vertex that are of a cell. */
    private double share(int v, int label) {
      VertexFans fans = surface.fans();
      double sum = 0;
      double own = 0;
      for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
        int f = fans.halfEdge(i) / 3;
        sum += ground.wayMm2()[f];
        own += wayLabel[f] == label ? ground.wayMm2()[f] : 0;
      }
      return sum > 0 ? own / sum : slotLabel[KEPT * v] == label ? 1 : 0;
    }

    private int neighbours(int v, int[] around, double[] conductance) {
      int[] corner = surface.way();
      double[] edge = surface.edgeMm();
      VertexFans fans = surface.fans();
      int count = 0;
      for (int i = fans.begin(v); i < fans.begin(v + 1); i++) {
        int h = fans.halfEdge(i);
        int next = Topology.next(h);
        int prev = Topology.prev(h);
        count = collect(around, conductance, count, corner[next], half(edge, h, next, prev));
        count = collect(around, conductance, count, corner[prev], half(edge, prev, h, next));
      }
      return count;
    }

    private int collect(int[] around, double[] conductance, int count, int u, double value) {
      for (int k = 0; k < count; k++) {
        if (around[k] == u) {
          conductance[k] += value;
          return count;
        }
      }
      around[count] = u;
      conductance[count] = value;
      return count + 1;
    }

    /** Half the cotangent of the angle between sides b and c, which lies opposite side a. */
    private double half(double[] edge, int a, int b, int c) {
      double x = edge[a];
      double y = edge[b];
      double z = edge[c];
      double s = (x + y + z) / 2;
      double area = Math.sqrt(Math.max(0, s * (s - x) * (s - y) * (s - z)));
      double cotangent = (y * y + z * z - x * x) / (4 * area);
      return Math.max(-STEEPEST, Math.min(STEEPEST, Double.isNaN(cotangent) ? 0 : cotangent)) / 2;
    }

    void run() {
      double[] right = new double[x.length];
      for (int step = 0; step < 2; step++) {
        for (int i = 0; i < right.length; i++) {
          right[i] = mass[i] * x[i] + outside[i];
        }
        solve(right);
      }
      // Only x is asked for; all cells' equations at once would fill the memory.
      column = new int[0];
      flow = new float[0];
    }

    private void solve(double[] right) {
      int n = x.length;
      double[] r = new double[n];
      double[] p = new double[n];
      double[] ap = new double[n];
      apply(x, ap);
      double goal = 0;
      double rz = 0;
      for (int i = 0; i < n; i++) {
        r[i] = right[i] - ap[i];
        p[i] = r[i] / diagonal[i];
        rz += r[i] * p[i];
        goal += right[i] * right[i] / diagonal[i];
      }
      goal *= RESIDUAL * RESIDUAL;
      for (int sweep = 0; sweep < SWEEPS && rz > goal; sweep++) {
        apply(p, ap);
        double pap = 0;
        for (int i = 0; i < n; i++) {
          pap += p[i] * ap[i];
        }
        double alpha = rz / pap;
        double next = 0;
        for (int i = 0; i < n; i++) {
          x[i] += alpha * p[i];
          r[i] -= alpha * ap[i];
          next += r[i] * r[i] / diagonal[i];
        }
        double beta = next / rz;
        for (int i = 0; i < n; i++) {
          p[i] = r[i] / diagonal[i] + beta * p[i];
        }
        rz = next;
      }
    }

    private void apply(double[] from, double[] to) {
      for (int i = 0; i < from.length; i++) {
        double sum = diagonal[i] * from[i];
        for (int k = begin[i]; k < begin[i + 1]; k++) {
          sum -= flow[k] * from[column[k]];
        }
        to[i] = sum;
      }
    }
  }
}
