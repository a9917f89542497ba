package org.seamwright.section;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;

/**
 * Fits sections to the limit. Laps depend on the order, worked areas on laps, and borders on worked
 * areas; so: cut along the cells, choose an order, measure exactly, push borders by what was
 * measured, and again, until all sections keep the limit. Where a component is too full for that it
 * gets another cell. Of all tries the one with the least excess is kept.
 *
 * <p>Cost per try: one spread for each push, one cut, and the distances of all laps.
 */
final class Fitting {
  /** Room below the limit that a fit must leave: cuts move by less than this. */
  private static final double ROOM = 1e-4;

  private static final int TRIES = 16;
  private static final int PUSHES = 6;

  /** Pushing ends when no cell is further from the mean than this share of it. */
  private static final double EVEN = 5e-3;

  /** The same while the order is open: knowing it will move borders by more. */
  private static final double ROUGHLY_EVEN = 2e-2;

  /** A component whose mean is nearer to the limit than this can't be made even enough. */
  private static final double FULL = 0.995;

  private static final int TRIES_BEFORE_GROWING = 3;
  private static final int RELAXATIONS = 8;
  private static final double DAMPING = 0.7;
  private static final double FIRST_PUSH = 0.15;

  private final Mesh mesh;
  private final int[] whole;
  private final int wholeCount;
  private final SectionSettings settings;
  private final double lapMm;
  private final Partition partition;
  private Layout best;

  /**
   * Prepares a fit.
   *
   * @param mesh the whole piece
   * @param whole one entry per face: number of the component that is to be a section as it is, or
   *     negative
   * @param wholeCount number of those components
   * @param partition cells of all other components
   */
  Fitting(Mesh mesh, int[] whole, int wholeCount, Partition partition, SectionSettings settings) {
    this.mesh = mesh;
    this.whole = whole;
    this.wholeCount = wholeCount;
    this.partition = partition;
    this.settings = settings;
    lapMm = Math.max(settings.activationLapMm(), settings.flashLapMm());
  }

  /** Fits; progress runs to 1. */
  Layout run(Progress progress) {
    push(null, new double[partition.cells()], progress.between(0, FIRST_PUSH));
    int[] order = null;
    int sinceGrown = 0;
    Progress tries = progress.between(FIRST_PUSH, 1);
    for (int i = 0; i < TRIES; i++) {
      // Most fits need two or three tries; the rest share what is left of the scale.
      Progress part = tries.between(1 - Math.pow(0.5, i), 1 - Math.pow(0.5, i + 1));
      SeamCut cut = SeamCut.of(mesh, partition, labels(), partition.cells() + wholeCount);
      if (order == null || order.length != cut.sections()) {
        order = SectionOrder.of(cut, settings, part.between(0.05, 0.4));
      }
      Layout layout = Layout.of(cut, order, lapMm, part.between(0.4, 0.6));
      keepBetter(layout);
      if (kept(layout)) {
        break;
      }
      double[] worked = workedOfCells(layout);
      if (sinceGrown++ < TRIES_BEFORE_GROWING && !full(worked)) {
        int[] rank = rankOfCells(layout);
        push(rank, difference(worked, estimate(rank)), part.between(0.6, 1));
      } else if (grow(worked, part.between(0.6, 1))) {
        order = null;
        sinceGrown = 0;
      } else {
        break;
      }
    }
    progress.at(1);
    return best;
  }

  private boolean kept(Layout layout) {
    // Components that are one section each are not ours to fit.
    for (int s = 0; s < layout.workedMm2().length; s++) {
      if (layout.workedMm2()[s] > settings.limitMm2() * (1 - ROOM)
          && layout.cut().origin()[s] < partition.cells()) {
        return false;
      }
    }
    return true;
  }

  private void keepBetter(Layout layout) {
    double limit = settings.limitMm2() * (1 - ROOM);
    if (best == null || layout.excessMm2(limit) < best.excessMm2(limit)) {
      best = layout;
    }
  }

  private int[] labels() {
    int[] labels = new int[whole.length];
    for (int f = 0; f < labels.length; f++) {
      labels[f] = whole[f] >= 0 ? partition.cells() + whole[f] : CellDistances.NONE;
    }
    return labels;
  }

  /** Pushes borders until the cells are even by estimate plus what was found to be missing. */
  private void push(int[] rank, double[] missing, Progress progress) {
    for (int i = 0; i < PUSHES; i++) {
      double[] worked = estimate(rank);
      for (int c = 0; c < worked.length; c++) {
        worked[c] += missing[c];
      }
      if (uneven(worked) < (rank == null ? ROUGHLY_EVEN : EVEN)) {
        break;
      }
      partition.balance(worked, 1);
      partition.spread(progress.between((double) i / PUSHES, (i + 1.0) / PUSHES));
    }
  }

  private double uneven(double[] worked) {
    double[] mean = partition.meanOf(worked);
    double most = 0;
    for (int c = 0; c < worked.length; c++) {
      most = Math.max(most, Math.abs(worked[c] / mean[partition.component(c)] - 1));
    }
    return most;
  }

  /** Worked area per cell from border lengths; with no order each lap goes half to either side. */
  private double[] estimate(int[] rank) {
    double[] worked = partition.measure().areaMm2().clone();
    Borders borders = partition.measure().borders();
    for (int i = 0; i < borders.count(); i++) {
      int a = borders.low()[i];
      int b = borders.high()[i];
      double lap = lapMm * borders.lengthMm()[i];
      if (rank == null) {
        worked[a] += lap / 2;
        worked[b] += lap / 2;
      } else {
        worked[rank[a] > rank[b] ? a : b] += lap;
      }
    }
    return worked;
  }

  private static double[] difference(double[] a, double[] b) {
    double[] difference = new double[a.length];
    Arrays.setAll(difference, i -> a[i] - b[i]);
    return difference;
  }

  private int[] rankOfCells(Layout layout) {
    int[] rank = new int[partition.cells()];
    for (int i = 0; i < layout.order().length; i++) {
      int origin = layout.cut().origin()[layout.order()[i]];
      if (origin < rank.length) {
        rank[origin] = i;
      }
    }
    return rank;
  }

  private double[] workedOfCells(Layout layout) {
    double[] worked = new double[partition.cells()];
    for (int s = 0; s < layout.workedMm2().length; s++) {
      int origin = layout.cut().origin()[s];
      if (origin < worked.length) {
        worked[origin] = layout.workedMm2()[s];
      }
    }
    return worked;
  }

  private boolean full(double[] worked) {
    double[] mean = partition.meanOf(worked);
    return Arrays.stream(mean).anyMatch(m -> m > FULL * settings.limitMm2());
  }

  /** Adds a cell to each component with a cell over the limit, farthest out in its worst cell. */
  private boolean grow(double[] worked, Progress progress) {
    int[] cells = partition.cellsOfComponents();
    int[] worst = new int[cells.length];
    Arrays.fill(worst, -1);
    for (int c = 0; c < worked.length; c++) {
      int component = partition.component(c);
      if (worked[c] > settings.limitMm2() * (1 - ROOM)
          && cells[component] < Division.mostCells(partition.domain(), component, lapMm)
          && (worst[component] < 0 || worked[c] > worked[worst[component]])) {
        worst[component] = c;
      }
    }
    boolean any = false;
    for (int cell : IntStream.of(worst).filter(c -> c >= 0).toArray()) {
      partition.add(partition.farthestIn(cell));
      any = true;
    }
    if (any) {
      partition.spread(progress.between(0, 0.05));
      Progress relaxing = progress.between(0.05, 0.7);
      for (int i = 0; i < RELAXATIONS; i++) {
        partition.balance(estimate(null), DAMPING);
        partition.relax();
        partition.spread(relaxing.between(i / (double) RELAXATIONS, (i + 1.0) / RELAXATIONS));
      }
      push(null, new double[partition.cells()], progress.between(0.7, 1));
    }
    return any;
  }
}
