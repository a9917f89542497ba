package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.seamwright.basis.Parallel;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;

/**
 * Fits sections to the limit. Laps depend on the order, worked areas on laps, and seams on worked
 * areas; so: search seams ({@link SeamSearch}), smooth them ({@link SeamFields}), choose an order,
 * search again with the laps that it gives, cut, measure exactly, push borders by what was
 * measured, and again, until all sections keep the limit. Where a component is too full for that it
 * gets another cell. Of all tries the one with the least excess is kept.
 *
 * <p>Cost per try: one search, one smoothing, one cut, and the distances of all laps.
 */
final class Fitting {
  /** Room below the limit that a fit must leave: cuts move by less than this. */
  private static final double ROOM = 1e-4;

  /** Share of the limit that is searched for: smoothing and laps move areas by a little. */
  private static final double SEARCHED = 0.99;

  /** A section is no smaller than this share of what is left for each: nobody masks off a scrap. */
  private static final double LEAST_SHARE = 0.35;

  /** Share of the limit that borders are pushed to. */
  private static final double PUSHED = 0.998;

  private static final int GROWTHS = 6;
  private static final int TRIES = 4;
  private static final int PUSHES = 8;

  /** Largest push of a border at a time, in radii of its crookedness. */
  private static final double LARGEST_PUSH = 0.5;

  /** Starts that seams are searched from. */
  private static final int SEARCHES = 2;

  /** Rounds in which places where three sections meet are moved apart. */
  private static final int SPACINGS = 3;

  private static final int SPACING_PUSHES = 4;
  private static final int FIRST_PUSHES = 12;

  /** Cells are even enough to start from when none is more than this above their mean. */
  private static final double EVEN = 0.02;

  private static final int RELAXATIONS = 8;
  private static final double DAMPING = 0.7;

  private final Mesh mesh;
  private final int[] whole;
  private final int wholeCount;
  private final SectionSettings settings;
  private final double lapMm;
  private final Ground ground;
  private final Partition partition;
  private final Patches patches;
  private final double radius;
  private Layout best;

  /**
   * Prepares a fit.
   *
   * @param mesh the whole piece
   * @param whole one entry per face: number of the component that is to be a section as it is, or
   *     negative
   * @param wholeCount number of those components
   * @param ground all other components
   * @param start cells on them
   */
  Fitting(
      Mesh mesh,
      int[] whole,
      int wholeCount,
      Ground ground,
      Division.Start start,
      SectionSettings settings) {
    this.mesh = mesh;
    this.whole = whole;
    this.wholeCount = wholeCount;
    this.ground = ground;
    this.partition = start.partition();
    this.settings = settings;
    lapMm = Math.max(settings.activationLapMm(), settings.flashLapMm());
    patches = Patches.of(ground, start.owner());
    Domain coarse = partition.domain();
    double area = Arrays.stream(coarse.surface().areaMm2()).sum();
    radius = Math.sqrt(area / Math.max(1, coarse.meshVertex().length));
  }

  /** Fits; progress runs to 1. */
  Layout run(Progress progress) {
    for (int growth = 0; growth <= GROWTHS; growth++) {
      // Most pieces fit at once; the rest share what is left of the scale.
      double from = 1 - Math.pow(0.3, growth);
      Progress part = progress.between(from, 1 - Math.pow(0.3, growth + 1.0));
      double[] worked = tries(part);
      if (worked.length == 0 || !grow(worked)) {
        break;
      }
    }
    progress.at(1);
    return best;
  }

  /**
   * Tries to fit with the cells there are; gives what each has in the end, or nothing if it fits.
   */
  private double[] tries(Progress progress) {
    int cells = partition.cells();
    int[] label = firstSearch();
    Shape first = new Shape(label);
    first.push(new int[0], new double[cells]);
    SeamCut cut = first.cut();
    progress.at(0.2);
    int[] order = SectionOrder.of(cut, settings, progress.between(0.2, 0.5));
    int[] rank = rankOfCells(cut, order);
    double[] extra = new double[cells];
    double[] worked = new double[0];
    Progress rest = progress.between(0.5, 1);
    for (int i = 0; i < TRIES; i++) {
      Progress part = rest.between((double) i / TRIES, (i + 1.0) / TRIES);
      SeamSearch search = search(label, rank, extra);
      int[] before = label;
      label = search.run();
      Shape shape = first;
      if (i == 0 && Arrays.equals(before, label)) {
        shape.pushBack();
      } else {
        shape = new Shape(label);
      }
      double[] missing = new double[cells];
      for (int push = 0; push < 2; push++) {
        shape.push(rank, missing);
        cut = shape.cut();
        if (cut.sections() != order.length) {
          order = SectionOrder.of(cut, settings, part.between(0.2, 0.6));
          rank = rankOfCells(cut, order);
        }
        Layout layout = Layout.of(cut, order, lapMm, part.between(0.6, 1));
        keepBetter(layout);
        if (kept(layout)) {
          moveApart(label, order);
          return new double[0];
        }
        worked = workedOfCells(layout);
        missing = difference(worked, shape.estimate(rank));
      }
      double[] graph = search(label, rank, new double[cells]).workedMm2();
      // What laps really are, beside what the graph says; shares that pushes moved don't count.
      double[] moved = difference(shape.measure.areaMm2(), areaOf(label, cells));
      extra = difference(difference(worked, graph), moved);
    }
    return worked;
  }

  /** Draws seams anew where three sections meet twice within a lap, if that helps. */
  private void moveApart(int[] found, int[] order) {
    int[] label = found;
    Mesh middles = partition.domain().surface().mesh();
    Spacing spacing = new Spacing(patches, middles, partition.cells(), lapMm, radius);
    Junctions junctions = Junctions.of(best.from(), lapMm);
    for (int round = 0; round < SPACINGS && !junctions.close().isEmpty(); round++) {
      int[] rank = rankOfCells(best.cut(), order);
      int[] cellOfId = new int[order.length + 1];
      for (int i = 0; i < order.length; i++) {
        int origin = best.cut().origin()[order[i]];
        cellOfId[i + 1] = origin < partition.cells() ? origin : -1;
      }
      double[] none = new double[partition.cells()];
      int[] changed =
          spacing.apart(label, junctions, cellOfId, l -> search(l, rank, none).totalMm());
      if (Arrays.equals(changed, label)) {
        break;
      }
      Optional<Layout> layout = pushed(new Shape(changed), rank, order);
      if (layout.isEmpty()) {
        break;
      }
      Junctions now = Junctions.of(layout.get().from(), lapMm);
      if (now.close().size() >= junctions.close().size()) {
        break;
      }
      best = layout.get();
      junctions = now;
      label = changed;
    }
  }

  /** Pushes a shape's borders until all sections keep the limit; nothing if they don't. */
  private Optional<Layout> pushed(Shape shape, int[] rank, int[] order) {
    double[] missing = new double[partition.cells()];
    for (int push = 0; push < SPACING_PUSHES; push++) {
      shape.push(rank, missing);
      SeamCut cut = shape.cut();
      if (!Arrays.equals(cut.origin(), best.cut().origin())) {
        break;
      }
      Layout layout = Layout.of(cut, order, lapMm, Progress.NONE);
      if (kept(layout)) {
        return Optional.of(layout);
      }
      missing = difference(workedOfCells(layout), shape.estimate(rank));
    }
    return Optional.empty();
  }

  private AreaPrice price() {
    double[] area = new double[partition.cells()];
    for (int c = 0; c < area.length; c++) {
      area[c] = partition.domain().areaMm2(partition.component(c));
    }
    int[] count = partition.cellsOfComponents();
    double cap = SEARCHED * settings.limitMm2();
    double[] floor = new double[area.length];
    for (int c = 0; c < floor.length; c++) {
      floor[c] = Math.min(cap, LEAST_SHARE * area[c] / count[partition.component(c)]);
    }
    return new AreaPrice(cap, floor);
  }

  private double[] areaOf(int[] label, int cells) {
    double[] area = new double[cells];
    for (int p = 0; p < label.length; p++) {
      area[label[p]] += patches.areaMm2()[p];
    }
    return area;
  }

  /** The cells on patches, evened out as well as cells of their kind can be. */
  private int[] firstLabels() {
    int[] best = new int[0];
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < FIRST_PUSHES; i++) {
      int[] label = new int[patches.count()];
      for (int p = 0; p < label.length; p++) {
        label[p] = partition.distances().cell(patches.cluster()[p]);
      }
      patches.graph().connect(label, partition.cells());
      double[] worked = search(label, new int[0], new double[partition.cells()]).workedMm2();
      double uneven = uneven(worked);
      if (uneven < least) {
        least = uneven;
        best = label;
      }
      if (uneven < EVEN) {
        break;
      }
      partition.balance(worked, DAMPING);
      partition.spread(Progress.NONE);
    }
    return best;
  }

  /** The cheapest of searches from several starts. */
  private int[] firstSearch() {
    int cells = partition.cells();
    if (cells == 0) {
      return new int[0];
    }
    List<int[]> known = new ArrayList<>(List.of(firstLabels()));
    if (partition.domain().components() == 1) {
      int[] natural = NaturalFaces.start(ground, patches, cells);
      if (natural.length > 0) {
        patches.graph().connect(natural, cells);
        known.add(natural);
      }
    }
    List<int[]> starts = multilevel(cells).best(known);
    int[][] found = starts.subList(0, Math.min(SEARCHES, starts.size())).toArray(int[][]::new);
    double[] total = new double[found.length];
    Parallel.each(
        found.length,
        i -> {
          SeamSearch search = search(found[i], new int[0], new double[cells]);
          found[i] = search.run();
          total[i] = search.totalMm();
        });
    int best = 0;
    for (int i = 0; i < found.length; i++) {
      best = total[i] < total[best] ? i : best;
    }
    return found[best];
  }

  private Multilevel multilevel(int cells) {
    int[] group = new int[patches.count()];
    for (int p = 0; p < group.length; p++) {
      group[p] = partition.componentOf(patches.cluster()[p]);
    }
    int[][] cellsOf = new int[partition.domain().components()][];
    for (int g = 0; g < cellsOf.length; g++) {
      int component = g;
      cellsOf[g] =
          IntStream.range(0, cells).filter(c -> partition.component(c) == component).toArray();
    }
    return new Multilevel(patches.graph(), group, cellsOf, lapMm, price());
  }

  private double uneven(double[] worked) {
    double[] mean = partition.meanOf(worked);
    double most = 0;
    for (int c = 0; c < worked.length; c++) {
      most = Math.max(most, worked[c] / mean[partition.component(c)] - 1);
    }
    return most;
  }

  private SeamSearch search(int[] label, int[] rank, double[] extraMm2) {
    return new SeamSearch(patches, label, lapMm, price(), rank, extraMm2);
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
      labels[f] = whole[f] >= 0 ? partition.cells() + whole[f] : CellKeys.NONE;
    }
    return labels;
  }

  /** Smooth seams from patches, and what lies between them. */
  private final class Shape {
    final SeamFields fields;
    private final int[] lines;
    private final int[] across;
    CellMeasure measure;

    Shape(int[] label) {
      int[] wayLabel = new int[patches.of().length];
      Arrays.setAll(wayLabel, f -> label[patches.of()[f]]);
      fields = SeamFields.of(ground, wayLabel, partition.cells(), radius);
      lines = fields.lines();
      across = fields.acrossLines();
      measure();
    }

    private void measure() {
      measure = CellMeasure.of(ground.domain().surface(), fields, partition.cells(), lines, across);
    }

    /** Takes all pushes back. */
    void pushBack() {
      fields.pushBack();
      fields.spread();
      measure();
    }

    SeamCut cut() {
      return SeamCut.of(mesh, ground.domain(), fields, labels(), partition.cells() + wholeCount);
    }

    /** Worked area per cell; with no order each lap goes half to either side. */
    double[] estimate(int[] rank) {
      double[] worked = measure.areaMm2().clone();
      Borders borders = measure.borders();
      for (int i = 0; i < borders.count(); i++) {
        int a = borders.low()[i];
        int b = borders.high()[i];
        double lap = lapMm * borders.lengthMm()[i];
        double toA = rank.length == 0 ? 0.5 : rank[a] > rank[b] ? 1 : 0;
        worked[a] += toA * lap;
        worked[b] += (1 - toA) * lap;
      }
      return worked;
    }

    /** Pushes borders outward from cells over the limit, by estimate and what it was missing. */
    void push(int[] rank, double[] missing) {
      double target = PUSHED * settings.limitMm2();
      for (int i = 0; i < PUSHES; i++) {
        double[] worked = estimate(rank);
        for (int c = 0; c < worked.length; c++) {
          worked[c] += missing[c];
        }
        double[] change = Evening.change(measure.borders(), worked, target);
        if (Arrays.stream(change).allMatch(x -> x == 0)) {
          break;
        }
        double[] step = Balance.step(measure.borders(), change);
        for (int c = 0; c < step.length; c++) {
          double most = LARGEST_PUSH * radius;
          fields.push(c, Math.max(-most, Math.min(most, step[c])));
        }
        fields.spread();
        measure();
      }
    }
  }

  private static double[] difference(double[] a, double[] b) {
    double[] difference = new double[a.length];
    Arrays.setAll(difference, i -> a[i] - b[i]);
    return difference;
  }

  private int[] rankOfCells(SeamCut cut, int[] order) {
    int[] rank = new int[partition.cells()];
    for (int i = 0; i < order.length; i++) {
      int origin = cut.origin()[order[i]];
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

  /** Adds a cell to each component with a cell over the limit, farthest out in its worst cell. */
  private boolean grow(double[] worked) {
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
      partition.spread(Progress.NONE);
      for (int i = 0; i < RELAXATIONS; i++) {
        partition.balance(partition.workedMm2(lapMm), DAMPING);
        partition.relax();
        partition.spread(Progress.NONE);
      }
    }
    return any;
  }
}
