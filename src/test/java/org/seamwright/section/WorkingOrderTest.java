package org.seamwright.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;

class WorkingOrderTest {
  private static final double STEP = 0.1;

  /** Seams and overlaps at random: any coverage is a possible one to the search. */
  private static Coverage random(int sections, Random random) {
    List<int[]> pairs = new ArrayList<>();
    Borders.Builder borders = new Borders.Builder();
    for (int a = 0; a < sections; a++) {
      for (int b = a + 1; b < sections; b++) {
        if (random.nextInt(3) > 0) {
          pairs.add(new int[] {a, b});
          borders.add(a, b, 1, 0);
        }
      }
    }
    Coverage.Builder coverage = new Coverage.Builder(sections);
    for (int i = 0; i < 4 * sections && !pairs.isEmpty(); i++) {
      int[] seams =
          random.ints(1 + random.nextInt(3), 0, pairs.size()).sorted().distinct().toArray();
      coverage.add(random.nextInt(sections), seams, 5 * random.nextDouble());
    }
    return coverage.build(borders.build());
  }

  private static double[] centres(int sections, Random random) {
    return random.doubles(3L * sections, 0, 100).toArray();
  }

  /** Activated areas straight from the definition: sets of sections that lap onto each patch. */
  private static double[] thriceAndLap(Coverage coverage, int[] order) {
    double thrice = 0;
    double lap = 0;
    int[] position = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      position[order[i]] = i;
    }
    for (int p = 0; p < coverage.count(); p++) {
      List<Integer> lapping = new ArrayList<>();
      for (int i = coverage.begin()[p]; i < coverage.begin()[p + 1]; i++) {
        int a = coverage.low()[i];
        int b = coverage.high()[i];
        int later = position[a] > position[b] ? a : b;
        if (position[later] > position[coverage.section()[p]] && !lapping.contains(later)) {
          lapping.add(later);
        }
      }
      lap += coverage.areaMm2()[p] * lapping.size();
      thrice += lapping.size() >= 2 ? coverage.areaMm2()[p] : 0;
    }
    return new double[] {thrice, lap};
  }

  private static List<int[]> permutations(int n) {
    if (n == 0) {
      return List.of(new int[0]);
    }
    List<int[]> result = new ArrayList<>();
    for (int[] shorter : permutations(n - 1)) {
      for (int at = 0; at < n; at++) {
        int[] order = new int[n];
        System.arraycopy(shorter, 0, order, 0, at);
        order[at] = n - 1;
        System.arraycopy(shorter, at, order, at + 1, n - 1 - at);
        result.add(order);
      }
    }
    return result;
  }

  private static WorkingOrder costs(Coverage activation, Coverage flash, double[] centres) {
    return new WorkingOrder(activation, flash, centres, STEP, STEP);
  }

  private static int[] best(WorkingOrder costs) {
    return costs.best(Precedence.none(costs.sections()), Progress.NONE);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void noOrderIsBetter(int sections) {
    for (int seed = 0; seed < (sections < 8 ? 12 : 4); seed++) {
      Random random = new Random(100 * sections + seed);
      Coverage activation = random(sections, random);
      Coverage flash = random(sections, random);
      WorkingOrder costs = costs(activation, flash, centres(sections, random));
      int[] best = best(costs);
      assertThat(best).containsExactlyInAnyOrder(IntStream.range(0, sections).toArray());
      OrderCost cost = costs.cost(best);
      double thrice = thriceAndLap(activation, best)[0];
      assertThat(Math.abs(cost.thriceSteps() * STEP - thrice)).isLessThan(STEP);
      for (int[] order : permutations(sections)) {
        assertThat(cost).as("seed %d", seed).isLessThanOrEqualTo(costs.cost(order));
        // By the definition, up to the step that areas are counted in.
        assertThat(thrice).isLessThan(thriceAndLap(activation, order)[0] + 2 * STEP);
      }
    }
  }

  /** From any order that is known; a good one would hide faults of the proof. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 5, 6, 7})
  void theProofNeedsNoGoodStart(int sections) {
    for (int seed = 0; seed < (sections < 7 ? 40 : 12); seed++) {
      Random random = new Random(9000 + 100 * sections + seed);
      WorkingOrder costs =
          costs(random(sections, random), random(sections, random), centres(sections, random));
      int[] known = IntStream.range(0, sections).toArray();
      int[] best = new ExactOrder(costs, Precedence.none(sections)).best(known);
      OrderCost cost = costs.cost(best);
      for (int[] order : permutations(sections)) {
        assertThat(cost).as("seed %d", seed).isLessThanOrEqualTo(costs.cost(order));
      }
    }
  }

  /** Without any area the way alone decides; without activation laps, then the area of laps. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 7, 8})
  void tiesGoToTheNextCost(int sections) {
    Coverage none = new Coverage.Builder(sections).build(new Borders.Builder().build());
    for (int seed = 0; seed < 3; seed++) {
      Random random = new Random(7000 + 10 * sections + seed);
      for (Coverage flash : List.of(none, random(sections, random))) {
        WorkingOrder costs = costs(none, flash, centres(sections, random));
        OrderCost cost = costs.cost(best(costs));
        for (int[] order : permutations(sections)) {
          assertThat(cost).as("seed %d", seed).isLessThanOrEqualTo(costs.cost(order));
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void pinsAreKeptAndNoOrderThatKeepsThemIsBetter(long seed) {
    Random random = new Random(seed);
    int sections = 4 + random.nextInt(4);
    WorkingOrder costs =
        costs(random(sections, random), random(sections, random), centres(sections, random));
    Precedence pins = Precedence.none(sections);
    int[] rank = new Random(seed).ints(sections, 0, 1000).toArray();
    for (int i = 0; i < sections / 2; i++) {
      int a = random.nextInt(sections);
      int b = random.nextInt(sections);
      if (rank[a] < rank[b]) {
        assertThat(pins.require(a, b)).isTrue();
      }
    }
    int[] best = costs.best(pins, Progress.NONE);
    assertThat(pins.allows(best)).isTrue();
    assertThat(pins.allows(costs.searched(pins, Progress.NONE))).isTrue();
    OrderCost cost = costs.cost(best);
    for (int[] order : permutations(sections)) {
      if (pins.allows(order)) {
        assertThat(cost).isLessThanOrEqualTo(costs.cost(order));
      }
    }
  }

  @Test
  void demandsThatContradictOthersAreNotTakenUp() {
    Precedence pins = Precedence.none(4);
    assertThat(pins.require(0, 1)).isTrue();
    assertThat(pins.require(1, 2)).isTrue();
    assertThat(pins.require(2, 0)).isFalse();
    assertThat(pins.require(3, 3)).isFalse();
    assertThat(pins.require(3, 0)).isTrue();
    assertThat(pins.isBefore(3, 2)).isTrue();
    assertThat(pins.allows(new int[] {3, 0, 1, 2})).isTrue();
    assertThat(pins.allows(new int[] {0, 3, 1, 2})).isFalse();
  }

  /** The promise for counts beyond proof, on cases of 10 where the best is known. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void theSearchIsWithinTwoPercentOfTheBest(long seed) {
    Random random = new Random(seed);
    Coverage activation = random(10, random);
    Coverage flash = random(10, random);
    WorkingOrder costs = costs(activation, flash, centres(10, random));
    OrderCost best = costs.cost(best(costs));
    OrderCost found = costs.cost(costs.searched(Precedence.none(10), Progress.NONE));
    assertThat(found).isGreaterThanOrEqualTo(best);
    assertThat((double) found.thriceSteps()).isLessThanOrEqualTo(1.02 * best.thriceSteps());
    if (found.thriceSteps() == best.thriceSteps()) {
      assertThat((double) found.lapSteps()).isLessThanOrEqualTo(1.02 * best.lapSteps());
      if (found.lapSteps() == best.lapSteps()) {
        assertThat(found.travelMm()).isLessThanOrEqualTo(1.02 * best.travelMm());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {11, 15, 60})
  void localSearchBeatsRandomOrders(int sections) {
    Random random = new Random(sections);
    Coverage activation = random(sections, random);
    WorkingOrder costs = costs(activation, activation, centres(sections, random));
    int[] best = best(costs);
    assertThat(best).containsExactlyInAnyOrder(IntStream.range(0, sections).toArray());
    OrderCost cost = costs.cost(best);
    for (int i = 0; i < 2000; i++) {
      int[] order = best.clone();
      for (int k = sections - 1; k > 0; k--) {
        int other = random.nextInt(k + 1);
        int t = order[k];
        order[k] = order[other];
        order[other] = t;
      }
      assertThat(cost).isLessThanOrEqualTo(costs.cost(order));
    }
    assertThat(best(costs)).isEqualTo(best);
  }

  @Test
  void countingAfterAMoveIsCountingAnew() {
    Random random = new Random(7);
    Coverage coverage = random(12, random);
    Tally tally = new Tally(coverage, STEP, laps -> laps);
    int[] position = IntStream.range(0, 12).toArray();
    tally.countAll(position);
    for (int i = 0; i < 200; i++) {
      int a = random.nextInt(12);
      int b = random.nextInt(12);
      int t = position[a];
      position[a] = position[b];
      position[b] = t;
      tally.count(a, position);
      tally.count(b, position);
      Tally fresh = new Tally(coverage, STEP, laps -> laps);
      fresh.countAll(position);
      assertThat(tally.steps()).isEqualTo(fresh.steps());
    }
  }

  @Test
  void aChainWithoutOverlapsIsWorkedFromEndToEnd() {
    // Five sections in a row, numbered at random; no place is activated three times in any order,
    // and all laps are alike, so the shortest way decides.
    int[] place = {3, 0, 4, 1, 2};
    double[] centre = new double[15];
    for (int s = 0; s < 5; s++) {
      centre[3 * s] = 10 * place[s];
    }
    Coverage none = new Coverage.Builder(5).build(new Borders.Builder().build());
    int[] order = best(costs(none, none, centre));
    int[] places = Arrays.stream(order).map(s -> place[s]).toArray();
    // Of the two directions the one whose first section has the lower number.
    assertThat(places).containsExactly(0, 1, 2, 3, 4);
  }
}
