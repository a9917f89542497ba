package org.seamwright.section;

import java.util.Arrays;
import org.seamwright.basis.Progress;

/**
 * Cells over a domain: seeds, weights and what they measure. Cells are additively weighted geodesic
 * Voronoi cells; {@link #relax} moves each seed to the middle of its cell (S. Lloyd, 1982), {@link
 * #balance} pushes borders until all cells of a component have the same worked area (as in
 * capacity-constrained tessellations: M. Balzer and D. Heck, 2008).
 */
final class Partition {
  /** Largest change of a weight in one step, in side lengths of a cell: keeps neighbours alive. */
  private static final double LARGEST_STEP = 0.2;

  /** A cell that was swallowed begins again at this share of the way to where it vanishes. */
  private static final double RESCUED_AT = 0.6;

  /** Rescuing one cell may swallow another; after so many rounds the next step sorts it out. */
  private static final int RESCUES = 6;

  private final Domain domain;
  private int[] seed;
  private double[] weight;
  private int[] component;
  private CellDistances distances;
  private CellMeasure measure;

  /**
   * Starts from seeds.
   *
   * @param domain what to split
   * @param seed one vertex of the domain per cell
   * @param weightMm one weight per cell
   */
  Partition(Domain domain, int[] seed, double[] weightMm) {
    this.domain = domain;
    this.seed = seed.clone();
    this.weight = weightMm.clone();
    this.component = new int[seed.length];
    for (int i = 0; i < seed.length; i++) {
      component[i] = componentOf(seed[i]);
    }
  }

  /** Component of a vertex of the domain. */
  int componentOf(int vertex) {
    int at = Arrays.binarySearch(domain.vertexBegin(), vertex);
    // Components are never empty, so a vertex that begins one is found exactly once.
    return at >= 0 ? at : -at - 2;
  }

  int cells() {
    return seed.length;
  }

  Domain domain() {
    return domain;
  }

  /** Component of a cell. */
  int component(int cell) {
    return component[cell];
  }

  /** Number of cells of each component. */
  int[] cellsOfComponents() {
    int[] cells = new int[domain.components()];
    for (int c : component) {
      cells[c]++;
    }
    return cells;
  }

  /** Seed vertices, one per cell. */
  int[] seeds() {
    return seed.clone();
  }

  /** Weights, one per cell, mm. */
  double[] weightsMm() {
    return weight.clone();
  }

  CellDistances distances() {
    return distances;
  }

  CellMeasure measure() {
    return measure;
  }

  /** Draws the cells anew from seeds and weights. */
  void spread(Progress progress) {
    distances = CellDistances.from(domain.surface(), seed, weight, progress);
    for (int tries = 0; tries < RESCUES && rescueSwallowed(); tries++) {
      distances = CellDistances.from(domain.surface(), seed, weight, progress);
    }
    measure = CellMeasure.of(domain.surface(), distances, seed.length);
  }

  /** Lifts the weight of cells whose own seed lies in another cell; says whether there are any. */
  private boolean rescueSwallowed() {
    boolean any = false;
    double[] lifted = weight.clone();
    for (int i = 0; i < seed.length; i++) {
      int other = distances.cell(seed[i]);
      if (other != i) {
        double apart = distances.key(seed[i], other) + weight[other];
        lifted[i] = weight[other] - RESCUED_AT * apart;
        any = true;
      }
    }
    weight = lifted;
    return any;
  }

  /** Adds a cell at a vertex, with the weight of the cell that it is taken from. */
  void add(int vertex) {
    int from = distances == null ? CellKeys.NONE : distances.cell(vertex);
    int n = seed.length;
    seed = Arrays.copyOf(seed, n + 1);
    weight = Arrays.copyOf(weight, n + 1);
    component = Arrays.copyOf(component, n + 1);
    seed[n] = vertex;
    weight[n] = from >= 0 ? weight[from] : 0;
    component[n] = componentOf(vertex);
  }

  /** The vertex of a cell that is farthest from its seed. */
  int farthestIn(int cell) {
    int best = seed[cell];
    for (int v = 0; v < domain.meshVertex().length; v++) {
      if (distances.cell(v) == cell && distances.key(v, cell) > distances.key(best, cell)) {
        best = v;
      }
    }
    return best;
  }

  /** Takes a cell away; its place goes to the neighbours at the next spread. */
  void remove(int cell) {
    int last = seed.length - 1;
    for (int i = cell; i < last; i++) {
      seed[i] = seed[i + 1];
      weight[i] = weight[i + 1];
      component[i] = component[i + 1];
    }
    seed = Arrays.copyOf(seed, last);
    weight = Arrays.copyOf(weight, last);
    component = Arrays.copyOf(component, last);
  }

  /** Moves each seed to the vertex of its cell that is nearest to the cell's centre of area. */
  void relax() {
    double[] p = domain.surface().mesh().xyz();
    double[] sum = new double[4 * seed.length];
    for (int v = 0; v < domain.vertexMm2().length; v++) {
      int cell = distances.cell(v);
      if (cell >= 0) {
        double area = domain.vertexMm2()[v];
        sum[4 * cell] += area * p[3 * v];
        sum[4 * cell + 1] += area * p[3 * v + 1];
        sum[4 * cell + 2] += area * p[3 * v + 2];
        sum[4 * cell + 3] += area;
      }
    }
    double[] nearest = new double[seed.length];
    Arrays.fill(nearest, Double.POSITIVE_INFINITY);
    for (int v = 0; v < domain.vertexMm2().length; v++) {
      int cell = distances.cell(v);
      if (cell >= 0 && sum[4 * cell + 3] > 0) {
        double dx = p[3 * v] - sum[4 * cell] / sum[4 * cell + 3];
        double dy = p[3 * v + 1] - sum[4 * cell + 1] / sum[4 * cell + 3];
        double dz = p[3 * v + 2] - sum[4 * cell + 2] / sum[4 * cell + 3];
        double far = dx * dx + dy * dy + dz * dz;
        if (far < nearest[cell]) {
          nearest[cell] = far;
          seed[cell] = v;
        }
      }
    }
  }

  /**
   * Pushes borders towards equal worked area within each component.
   *
   * @param workedMm2 one entry per cell: what it has now
   * @param damping share of the full step to take
   */
  void balance(double[] workedMm2, double damping) {
    double[] mean = meanOf(workedMm2);
    double[] change = new double[seed.length];
    for (int i = 0; i < change.length; i++) {
      change[i] = mean[component[i]] - workedMm2[i];
    }
    double[] step = Balance.step(measure.borders(), change);
    for (int i = 0; i < step.length; i++) {
      double most = LARGEST_STEP * Math.sqrt(mean[component[i]]);
      weight[i] += Math.max(-most, Math.min(most, damping * step[i]));
    }
  }

  /** Worked area per cell while the order is open: each border's lap goes half to either side. */
  double[] workedMm2(double lapMm) {
    double[] worked = measure.areaMm2().clone();
    Borders borders = measure.borders();
    for (int i = 0; i < borders.count(); i++) {
      double half = lapMm * borders.lengthMm()[i] / 2;
      worked[borders.low()[i]] += half;
      worked[borders.high()[i]] += half;
    }
    return worked;
  }

  /** Mean per component of a value per cell. */
  double[] meanOf(double[] value) {
    double[] sum = new double[domain.components()];
    int[] count = new int[sum.length];
    for (int i = 0; i < value.length; i++) {
      sum[component[i]] += value[i];
      count[component[i]]++;
    }
    for (int c = 0; c < sum.length; c++) {
      sum[c] /= Math.max(1, count[c]);
    }
    return sum;
  }
}
