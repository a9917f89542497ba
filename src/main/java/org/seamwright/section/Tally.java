package org.seamwright.section;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/**
 * A weighted sum over the patches of a coverage that follows a changing order: only patches that
 * name a moved section are counted again. Areas are whole numbers of small units, so the sum never
 * drifts.
 */
final class Tally {
  /** Units per step: fine enough that rounding patches to units doesn't show in steps. */
  private static final double UNITS_PER_STEP = 1000;

  private final Coverage coverage;
  private final IntUnaryOperator weightOfLaps;
  private final long[] units;
  private final long[] counted;
  private final int[][] patches;
  private long sum;

  /**
   * Prepares.
   *
   * @param stepMm2 area of a step
   * @param weightOfLaps how much a patch counts by the number of laps on it
   */
  Tally(Coverage coverage, double stepMm2, IntUnaryOperator weightOfLaps) {
    this.coverage = coverage;
    this.weightOfLaps = weightOfLaps;
    units = new long[coverage.count()];
    counted = new long[units.length];
    IntStream.Builder[] naming = new IntStream.Builder[coverage.sections()];
    Arrays.setAll(naming, i -> IntStream.builder());
    for (int p = 0; p < units.length; p++) {
      units[p] = Math.round(coverage.areaMm2()[p] / stepMm2 * UNITS_PER_STEP);
      for (int s : named(p)) {
        naming[s].add(p);
      }
    }
    patches = new int[naming.length][];
    Arrays.setAll(patches, s -> naming[s].build().toArray());
  }

  private int[] named(int patch) {
    IntStream.Builder all = IntStream.builder();
    all.add(coverage.section()[patch]);
    for (int i = coverage.begin()[patch]; i < coverage.begin()[patch + 1]; i++) {
      all.add(coverage.low()[i]);
      all.add(coverage.high()[i]);
    }
    return all.build().sorted().distinct().toArray();
  }

  /** Counts all patches anew. */
  void countAll(int[] position) {
    sum = 0;
    for (int p = 0; p < units.length; p++) {
      counted[p] = weightOfLaps.applyAsInt(coverage.laps(p, position)) * units[p];
      sum += counted[p];
    }
  }

  /** Counts the patches that name a section anew; gives their number. */
  int count(int section, int[] position) {
    for (int p : patches[section]) {
      long now = weightOfLaps.applyAsInt(coverage.laps(p, position)) * units[p];
      sum += now - counted[p];
      counted[p] = now;
    }
    return patches[section].length;
  }

  /** The sum, in steps. */
  long steps() {
    return steps(sum);
  }

  /** A sum of units in steps. */
  long steps(long sumOfUnits) {
    return Math.round(sumOfUnits / UNITS_PER_STEP);
  }

  /** Area of a patch in units. */
  long units(int patch) {
    return units[patch];
  }

  Coverage coverage() {
    return coverage;
  }

  /** Sections that a section has a seam with, or whose bands reach it. */
  int[] neighbours(int section) {
    return Arrays.stream(patches[section])
        .flatMap(p -> Arrays.stream(named(p)))
        .sorted()
        .distinct()
        .toArray();
  }
}
