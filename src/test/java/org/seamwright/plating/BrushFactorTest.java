package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BrushFactorTest {
  private static final double MM2_PER_IN2 = 645.16;
  private static final double UM_PER_IN = 25_400;

  /**
   * Surface Finishing Guidebook 2011–2012, selective plating, worked example: bore of 37.7 in²,
   * 0.002 in, factor 150: 11.31 A·h; at 30 A 22.6 min; at 44.5 A·h/l 0.25 l.
   */
  @Test
  void guidebookExample() {
    double charge = BrushFactor.perIn3(150).chargeAh(37.7 * MM2_PER_IN2, 0.002 * UM_PER_IN);
    assertThat(charge).isCloseTo(11.31, within(1e-12));
    double contactIn2 = 6;
    double amperesPerIn2 = 5;
    double minutes = Faraday.seconds(charge, contactIn2 * amperesPerIn2) / 60;
    assertThat(minutes).isCloseTo(22.6, within(0.05));
    assertThat(BrushFactor.solutionMl(charge, 44.5)).isCloseTo(250, within(5.0));
  }

  /** The two printed forms are 10⁴ apart: 150 A·h/in³ is 0.0150 for 0.0001 in on one in². */
  @Test
  void bothForms() {
    assertThat(BrushFactor.perIn3(150).perIn2TenthMil()).isCloseTo(0.0150, within(1e-16));
    assertThat(BrushFactor.perIn2TenthMil(0.006).perIn3()).isCloseTo(60, within(1e-12));
    assertThat(BrushFactor.perIn3(150).ampHoursPerCm3()).isCloseTo(9.15356, within(5e-6));
    assertThat(BrushFactor.perIn2TenthMil(0.006).chargeAh(MM2_PER_IN2, 2.54))
        .isCloseTo(0.006, within(1e-17));
  }

  /**
   * ASM Handbook vol. 5 prints 0.006 for gold; Faraday's law asks for 0.0043035 at 19.3 g/cm³, so
   * the factor holds about 72% efficiency. Both ways to the charge must then agree.
   */
  @Test
  void goldFactorHoldsItsEfficiency() throws PlatingException {
    Deposit gold = Deposits.byId("gold-hard");
    BrushFactor factor = BrushFactor.handbook(gold).orElseThrow();
    double efficiency = factor.efficiency(gold);
    assertThat(efficiency).isCloseTo(0.0043035 / 0.006, within(1e-5));
    assertThat(efficiency).isCloseTo(PlatingDefaults.EFFICIENCY, within(0.005));
    double byFaraday = Faraday.chargeAh(gold, Faraday.layerG(gold, 10_000, 2.5), efficiency);
    assertThat(factor.chargeAh(10_000, 2.5)).isCloseTo(byFaraday, within(1e-15));
  }

  /** ASM Handbook vol. 5, table 1: share of Faraday's charge; rounded to whole per cent by hand. */
  @ParameterizedTest
  @CsvSource({"copper, 0.013, 0.95", "palladium, 0.019, 0.52", "rhodium, 0.030, 0.53"})
  void otherFactors(String id, double printed, double share) throws PlatingException {
    BrushFactor factor = BrushFactor.handbook(Deposits.byId(id)).orElseThrow();
    assertThat(factor.perIn2TenthMil()).isCloseTo(printed, within(1e-15));
    assertThat(factor.efficiency(Deposits.byId(id))).isCloseTo(share, within(0.005));
  }

  /** The printed silver factor 0.004 would take more than every electron: it is not offered. */
  @Test
  void impossibleSilverFactorIsNotOffered() throws PlatingException {
    Deposit silver = Deposits.byId("silver");
    assertThat(BrushFactor.perIn2TenthMil(0.004).efficiency(silver)).isGreaterThan(1);
    assertThat(BrushFactor.handbook(silver)).isEmpty();
  }

  @Test
  void everyFactorOfferedIsPossible() {
    for (Deposit deposit : Deposits.all()) {
      BrushFactor.handbook(deposit)
          .ifPresent(f -> assertThat(f.efficiency(deposit)).as(deposit.id()).isLessThan(1));
    }
  }
}
