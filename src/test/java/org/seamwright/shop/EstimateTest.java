package org.seamwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.plating.Deposits;

class EstimateTest {
  /**
   * NIST/SEMATECH e-Handbook, 7.2.6.2, gauge study (from memory): the 90th percentile is 95.1981.
   */
  @Test
  void percentileOfTheHandbook() {
    Estimate got =
        Estimate.of(
            95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065,
            95.0925, 95.1990, 95.1682);
    assertThat(got.high()).isCloseTo(95.1981, within(5e-5));
    assertThat(got.runs()).isEqualTo(12);
  }

  @Test
  void fewRuns() {
    assertThat(Estimate.of(3)).isEqualTo(new Estimate(1, 3, 3, 3));
    assertThat(Estimate.of(1, 3)).isEqualTo(new Estimate(2, 2, 1, 3));
  }

  /** 100 ml × 20 g/l × 0.5 = 1 g usable; 0.8 g gained: a quarter more was needed. */
  @Test
  void lossAndRateOfOneRun() throws Exception {
    List<Run> runs = List.of(ShopBookTest.run("cup", "gold-hard", 0.8));
    assertThat(Estimate.lossShare(runs).orElseThrow().median()).isCloseTo(0.25, within(1e-12));
    // 10 min for 0.8 g: 0.8/19.3 cm³ = 414.508 cm²·µm, 600 s of them.
    assertThat(Estimate.secondsPerCm2PerUm(runs, Deposits.byId("gold-hard")).orElseThrow().median())
        .isCloseTo(600 / (0.8 / 19.3 * 1e4), within(1e-12));
  }

  @Test
  void runsWithoutAGainTellNothing() {
    assertThat(Estimate.lossShare(List.of(ShopBookTest.run("cup", "gold-hard", 0)))).isEmpty();
    assertThat(Estimate.lossShare(List.of(ShopBookTest.run("cup", "g", Double.NaN)))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void buyingAgreesWithTryingAll(long seed) throws Exception {
    Random random = new Random(seed);
    for (int round = 0; round < 40; round++) {
      List<Price> list = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        list.add(
            new Price(0, "x", (1 + random.nextInt(12)) / 2.0, "g", 1 + random.nextInt(500), "EUR"));
      }
      double needed = random.nextInt(60) / 4.0;
      long best = Long.MAX_VALUE;
      double least = 0;
      for (int code = 0; code < 31 * 31 * 31; code++) {
        int a = code % 31;
        int b = code / 31 % 31;
        int c = code / 961;
        double amount = a * list.get(0).size() + b * list.get(1).size() + c * list.get(2).size();
        long cost =
            a * list.get(0).hundredths()
                + b * list.get(1).hundredths()
                + c * list.get(2).hundredths();
        if (amount >= needed && (cost < best || (cost == best && amount < least))) {
          best = cost;
          least = amount;
        }
      }
      BottlesToBuy got = BottlesToBuy.cheapest(needed, list);
      assertThat(got.hundredths()).as("seed %d, round %d", seed, round).isEqualTo(best);
      assertThat(got.amount()).isEqualTo(least);
      assertThat(got.left()).isEqualTo(least - needed);
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        sum += got.counts().get(i) * list.get(i).size();
      }
      assertThat(sum).isEqualTo(least);
    }
  }
}
