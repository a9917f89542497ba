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

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
  void noOrderIsBetter(int sections) {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(100 * sections + seed);
      Coverage activation = random(sections, random);
      Coverage flash = random(sections, random);
      WorkingOrder search = new WorkingOrder(activation, flash, centres(sections, random), STEP);
      int[] best = search.best(Progress.NONE);
      assertThat(best).containsExactlyInAnyOrder(IntStream.range(0, sections).toArray());
      OrderCost cost = search.cost(best);
      double thrice = thriceAndLap(activation, best)[0];
      assertThat(Math.abs(cost.thriceSteps() * STEP - thrice)).isLessThan(STEP);
      for (int[] order : permutations(sections)) {
        assertThat(cost).as("seed %d", seed).isLessThanOrEqualTo(search.cost(order));
        // By the definition, up to the step that areas are counted in.
        assertThat(thrice).isLessThan(thriceAndLap(activation, order)[0] + 2 * STEP);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {9, 15, 60})
  void localSearchBeatsRandomOrders(int sections) {
    Random random = new Random(sections);
    Coverage activation = random(sections, random);
    WorkingOrder search = new WorkingOrder(activation, activation, centres(sections, random), STEP);
    int[] best = search.best(Progress.NONE);
    assertThat(best).containsExactlyInAnyOrder(IntStream.range(0, sections).toArray());
    OrderCost cost = search.cost(best);
    for (int i = 0; i < 2000; i++) {
      int[] order = best.clone();
      for (int k = sections - 1; k > 0; k--) {
        int other = random.nextInt(k + 1);
        int t = order[k];
        order[k] = order[other];
        order[other] = t;
      }
      assertThat(cost).isLessThanOrEqualTo(search.cost(order));
    }
    assertThat(search.best(Progress.NONE)).isEqualTo(best);
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
    int[] order = new WorkingOrder(none, none, centre, STEP).best(Progress.NONE);
    int[] places = Arrays.stream(order).map(s -> place[s]).toArray();
    // Of the two directions the one whose first section has the lower number.
    assertThat(places).containsExactly(0, 1, 2, 3, 4);
  }
}
