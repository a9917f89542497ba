package org.seamwright.section;

import java.util.stream.IntStream;
import org.seamwright.basis.Progress;

/**
 * How many cells a domain needs, and where: starts from farthest points, estimates laps as lap
 * width times border length, relaxes and balances the cells, and adds or drops cells until the mean
 * worked area of each component fills the limit but does not pass it.
 *
 * <p>Cost: some {@value #RELAXATIONS} spreads per round and a few rounds, so it is run on a
 * coarsened domain. Cells are at least a square of the lap width in size and at most {@value
 * #MOST_CELLS} in all: beyond that a limit is out of reach and the excess is reported instead.
 */
final class Division {
  /** Most cells in all: a plan of more could not be followed by hand. */
  static final int MOST_CELLS = 400;

  /** Share of the limit that the mean worked area may fill: the rest is for uneven cells. */
  static final double FILL = 0.98;

  private static final int RELAXATIONS = 24;

  /** Vertices of a coarsened domain: enough for borders to settle within a per cent or so. */
  private static final int VERTICES_PER_CELL = 120;

  private static final int LEAST_VERTICES = 1000;

  private static final int ROUNDS = 5;
  private static final double DAMPING = 0.7;

  private final Domain domain;
  private final double limitMm2;
  private final double lapMm;
  private final double[] area;
  private final Partition partition;
  private final boolean[] grown;

  private Division(Domain domain, double limitMm2, double lapMm) {
    this.domain = domain;
    this.limitMm2 = limitMm2;
    this.lapMm = lapMm;
    area = new double[domain.components()];
    for (int c = 0; c < area.length; c++) {
      area[c] = domain.areaMm2(c);
    }
    partition = new Partition(domain, new int[0], new double[0]);
    grown = new boolean[area.length];
  }

  /**
   * Cells on a coarsened domain.
   *
   * @param partition the cells
   * @param owner one entry per vertex of the domain itself: the vertex of the coarsened one that
   *     stands for it
   */
  record Start(Partition partition, int[] owner) {}

  /**
   * Divides a domain on a coarsened one.
   *
   * @param domain what to divide
   * @param limitMm2 largest worked area
   * @param lapMm the wider lap
   * @param progress told how far it is
   */
  static Start coarse(Domain domain, double limitMm2, double lapMm, Progress progress) {
    int[] wanted = new int[domain.components()];
    for (int c = 0; c < wanted.length; c++) {
      double cells = Math.min(mostCells(domain, c, lapMm), Math.ceil(domain.areaMm2(c) / limitMm2));
      wanted[c] = (int) Math.max(LEAST_VERTICES, VERTICES_PER_CELL * cells);
    }
    Coarsening.Clusters clusters = Coarsening.clusters(domain, wanted, progress.between(0, 0.3));
    Partition partition = of(clusters.domain(), limitMm2, lapMm, progress.between(0.3, 1));
    return new Start(partition, clusters.owner());
  }

  /**
   * Divides a domain; every component of it gets at least one cell.
   *
   * @param domain what to divide
   * @param limitMm2 largest worked area
   * @param lapMm the wider lap
   * @param progress told how far it is
   */
  static Partition of(Domain domain, double limitMm2, double lapMm, Progress progress) {
    Division division = new Division(domain, limitMm2, lapMm);
    FarthestPoints points = new FarthestPoints(domain.surface());
    for (int c = 0; c < division.area.length; c++) {
      division.grow(points, c, division.needed(c, 0, 1));
    }
    division.partition.spread(Progress.NONE);
    for (int round = 0; round < ROUNDS; round++) {
      division.relax(progress.between((double) round / ROUNDS, (round + 1.0) / ROUNDS));
      if (!division.adjust(round + 1 < ROUNDS)) {
        break;
      }
    }
    return division.partition;
  }

  private void relax(Progress progress) {
    for (int i = 0; i < RELAXATIONS; i++) {
      progress.at((double) i / RELAXATIONS);
      partition.balance(partition.workedMm2(lapMm), DAMPING);
      partition.relax();
      partition.spread(Progress.NONE);
    }
  }

  /** Brings the number of cells to what the border lengths ask for; says whether it changed. */
  private boolean adjust(boolean mayDrop) {
    int[] cells = partition.cellsOfComponents();
    double[] border = new double[area.length];
    Borders borders = partition.measure().borders();
    for (int i = 0; i < borders.count(); i++) {
      border[partition.component(borders.low()[i])] += borders.lengthMm()[i];
    }
    FarthestPoints points = new FarthestPoints(domain.surface());
    for (int seed : partition.seeds()) {
      points.add(seed);
    }
    int before = partition.cells();
    // Cells are added first and dropped last, from the highest down, so that numbers stay good.
    IntStream.Builder drop = IntStream.builder();
    for (int c = 0; c < cells.length; c++) {
      int needed = needed(c, border[c], cells[c]);
      if (needed > cells[c]) {
        grown[c] = true;
        grow(points, c, needed - cells[c]);
      } else if (needed < cells[c] && mayDrop && !grown[c]) {
        drop.add(smallest(c));
      }
    }
    int[] dropped = drop.build().sorted().toArray();
    boolean changed = dropped.length > 0 || partition.cells() > before;
    for (int i = dropped.length - 1; i >= 0; i--) {
      partition.remove(dropped[i]);
    }
    if (changed) {
      partition.spread(Progress.NONE);
    }
    return changed;
  }

  /**
   * Fewest cells whose mean worked area keeps the limit, if border length grows as the square root
   * of the number of cells.
   */
  private int needed(int c, double borderMm, int cells) {
    int most = mostCells(domain, c, lapMm);
    int n = (int) Math.max(1, Math.min(most, Math.ceil(area[c] / limitMm2)));
    while (n < most
        && (area[c] + lapMm * borderMm * Math.sqrt((double) n / cells)) / n > FILL * limitMm2) {
      n++;
    }
    return n;
  }

  /** Most cells that a component may have: its share of all, and none smaller than a lap. */
  static int mostCells(Domain domain, int c, double lapMm) {
    double total = 0;
    for (int i = 0; i < domain.components(); i++) {
      total += domain.areaMm2(i);
    }
    double area = domain.areaMm2(c);
    double most = MOST_CELLS * area / total;
    if (lapMm > 0) {
      most = Math.min(most, area / (lapMm * lapMm));
    }
    return (int) Math.max(2, most);
  }

  private void grow(FarthestPoints points, int c, int count) {
    int begin = domain.vertexBegin()[c];
    int end = domain.vertexBegin()[c + 1];
    for (int i = 0; i < count; i++) {
      int v = points.farthest(begin, end);
      if (points.isFree(v)) {
        points.add(v);
        partition.add(v);
      }
    }
  }

  private int smallest(int c) {
    double[] net = partition.measure().areaMm2();
    int best = -1;
    for (int i = 0; i < net.length; i++) {
      if (partition.component(i) == c && (best < 0 || net[i] < net[best])) {
        best = i;
      }
    }
    return best;
  }
}
