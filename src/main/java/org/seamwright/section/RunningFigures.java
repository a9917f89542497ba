package org.seamwright.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Faces;

/**
 * Sums of net areas, laps and seams that follow edits: what a place was worth before an edit is
 * taken off, what it is worth after is added. Kept by the lasting numbers of sections, so that a
 * change of order changes nothing elsewhere.
 */
final class RunningFigures {
  /** Seams shorter than this are what rounding leaves of one that is gone, mm. */
  private static final double NO_SEAM_MM = 1e-6;

  /** By section: net area, activation lap, flash lap, mm². */
  private final Map<Integer, double[]> sections = new TreeMap<>();

  /** By two sections, the lower in the upper half: length, activation lap, flash lap. */
  private final Map<Long, double[]> seams = new TreeMap<>();

  /** Area activated once, twice, more often, mm². */
  private final double[] times = new double[3];

  RunningFigures copy() {
    RunningFigures copy = new RunningFigures();
    sections.forEach((key, value) -> copy.sections.put(key, value.clone()));
    seams.forEach((key, value) -> copy.seams.put(key, value.clone()));
    System.arraycopy(times, 0, copy.times, 0, 3);
    return copy;
  }

  /**
   * Adds or takes off laps.
   *
   * @param order section by id less one
   * @param sign 1 or -1
   */
  void add(Laps laps, List<Integer> order, double sign) {
    addSections(laps.sections(), order, sign);
    addSeams(laps.seams(), order, sign);
    for (int f = 0; f < laps.section().length; f++) {
      if (laps.section()[f] > 0) {
        int often = Math.max(1, Math.min(3, laps.activations()[f]));
        times[often - 1] += sign * Faces.area(laps.cut().mesh(), f);
      }
    }
  }

  /** Adds a whole plan. */
  void add(SectionPlan plan, List<Integer> order) {
    addSections(plan.sections(), order, 1);
    addSeams(plan.seams(), order, 1);
    times[0] += plan.onceMm2();
    times[1] += plan.twiceMm2();
    times[2] += plan.moreMm2();
  }

  private void addSections(List<Section> list, List<Integer> order, double sign) {
    for (Section s : list) {
      double[] sum = sections.computeIfAbsent(order.get(s.id() - 1), k -> new double[3]);
      sum[0] += sign * s.netMm2();
      sum[1] += sign * s.activationLapMm2();
      sum[2] += sign * s.flashLapMm2();
    }
  }

  private void addSeams(List<Seam> list, List<Integer> order, double sign) {
    for (Seam seam : list) {
      int a = order.get(seam.earlier() - 1);
      int b = order.get(seam.later() - 1);
      long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
      double[] sum = seams.computeIfAbsent(key, k -> new double[3]);
      sum[0] += sign * seam.lengthMm();
      sum[1] += sign * seam.activationLapMm2();
      sum[2] += sign * seam.flashLapMm2();
    }
  }

  /** The figures by number in the working order. */
  SectionFigures figures(List<Integer> order, IntFunction<String> name, double limitMm2) {
    List<Section> list = new ArrayList<>();
    for (int i = 0; i < order.size(); i++) {
      double[] sum = sections.get(order.get(i));
      list.add(new Section(i + 1, sum[0], floor(sum[1]), floor(sum[2]), name.apply(order.get(i))));
    }
    Map<Long, Seam> sorted = new TreeMap<>();
    seams.forEach(
        (key, sum) -> {
          int a = order.indexOf((int) (key >> 32)) + 1;
          int b = order.indexOf((int) (long) key) + 1;
          if (a > 0 && b > 0 && sum[0] > NO_SEAM_MM) {
            int earlier = Math.min(a, b);
            int later = Math.max(a, b);
            sorted.put(
                (long) earlier << 32 | later,
                new Seam(earlier, later, sum[0], floor(sum[1]), floor(sum[2])));
          }
        });
    List<Seam> seamList = List.copyOf(sorted.values());
    List<Notice> notices = new ArrayList<>(Sectioning.overLimit(list, limitMm2));
    notices.addAll(Needles.told(list, seamList));
    return new SectionFigures(list, seamList, times[0], floor(times[1]), floor(times[2]), notices);
  }

  /** What rounding leaves below nothing is nothing. */
  private static double floor(double value) {
    return Math.max(0, value);
  }
}
