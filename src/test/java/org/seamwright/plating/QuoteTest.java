package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Prices worked out by hand, of invented rates. */
class QuoteTest {
  private static final Quote.Masking TAPED = new Quote.Masking(5_000, 40);

  /** 100 cm², one flash of 1 µm at 36 s/cm²: 1 h; 19.3 g/cm³ × 0.01 cm³ = 0.193 g, a half lost. */
  private static PlatingSettings settings(Spread loss, Spread pace) {
    Step flash = new Step("Flash", "", Step.Kind.FLASH, 0, 1, 0, "made up for the check");
    Step build = new Step("Build", "", Step.Kind.BUILD, 0, 1, 0, "made up for the check");
    return new PlatingSettings(
        new Recipe("test", "test", List.of(flash, build), List.of()),
        new Deposit("gold-test", "test", 19.3, 197, 1, "made up for the check"),
        1,
        0,
        loss,
        10,
        0.5,
        pace,
        1,
        Tool.UNKNOWN);
  }

  private static final List<SectionArea> AREAS = List.of(new SectionArea(1, 10_000, 0, 0));

  private static QuoteRates rates(double minimum) {
    return new QuoteRates("XTS", 60, 0.5, 100, 0.4, 50, 12.5, 0.2, 0.1, minimum, 0.19, 30, true);
  }

  private static Quote quote(Spread loss, Spread pace, double minimum) {
    return Quote.of(AREAS, settings(loss, pace), TAPED, rates(minimum));
  }

  /**
   * Labour 1.5 h × 60 = 90; metal 0.193 × 1.5 = 0.2895 g × 100 = 28.95; tape 5 m × 0.4 = 2; lacquer
   * 0.04 l × 50 = 2; materials 12.50: 135.45. Overhead 27.09; margin 10% of 162.54 = 16.25
   * (16.254); net 178.79; tax 33.97 (33.9701); total 212.76.
   */
  @Test
  void linesAddUpAsWorkedByHand() {
    Quote quote = quote(Spread.point(0.5), Spread.point(36), 0);
    assertThat(quote.lines().stream().map(l -> l.amount().toPlainString()))
        .containsExactly("90.00", "28.95", "2.00", "2.00", "12.50", "27.09", "16.25");
    assertThat(quote.net()).isEqualTo(new BigDecimal("178.79"));
    assertThat(quote.tax()).isEqualTo(new BigDecimal("33.97"));
    assertThat(quote.total()).isEqualTo(new BigDecimal("212.76"));
    assertThat(quote.range().p10()).isCloseTo(212.76, within(0.011));
    assertThat(quote.range().isWide()).isFalse();
  }

  @Test
  void leastPriceHoldsBeforeTax() {
    Quote quote = quote(Spread.point(0.5), Spread.point(36), 200);
    assertThat(quote.net()).isEqualTo(new BigDecimal("200.00"));
    assertThat(quote.total()).isEqualTo(new BigDecimal("238.00"));
    assertThat(quote.range()).isEqualTo(new Band(238, 238));
  }

  /** Only the loss is spread: P90 of the total is the total at the loss's own P90. */
  @Test
  void rangeOfOneSpreadIsThePriceAtItsPercentile() {
    Spread loss = new Spread(0.2, 0.5, 1.1);
    Quote quote = quote(loss, Spread.point(36), 0);
    Quote high = quote(Spread.point(loss.quantile(0.9)), Spread.point(36), 0);
    assertThat(quote.range().p90()).isCloseTo(high.total().doubleValue(), within(0.03));
    assertThat(quote.total()).isEqualTo(quote(Spread.point(0.5), Spread.point(36), 0).total());
  }

  @Test
  void rangeOfTwoSpreadsIsNarrowerThanBothAtTheirWorst() {
    Spread loss = new Spread(0.2, 0.5, 1.1);
    Spread pace = new Spread(20, 36, 60);
    Band both = quote(loss, pace, 0).range();
    double worst =
        quote(Spread.point(loss.quantile(0.9)), Spread.point(pace.quantile(0.9)), 0)
            .total()
            .doubleValue();
    double paceAlone = quote(Spread.point(0.5), pace, 0).range().p90();
    assertThat(both.p90()).isGreaterThan(paceAlone).isLessThan(worst);
  }

  /** Twice the thickness takes twice the metal and, without handling, twice the time. */
  @Test
  void otherThicknessesArePricedToo() {
    Quote quote = quote(Spread.point(0.5), Spread.point(36), 0);
    Quote.AtThickness one = at(quote, 1);
    Quote.AtThickness five = at(quote, 5);
    assertThat(one.total()).isEqualTo(quote.total());
    assertThat(five.metalG()).isCloseTo(5 * one.metalG(), within(1e-12));
    assertThat(five.seconds()).isCloseTo(5 * one.seconds(), within(1e-9));
    assertThat(quote.byThickness()).extracting(Quote.AtThickness::thicknessUm).isSorted();
  }

  private static Quote.AtThickness at(Quote quote, double um) {
    return quote.byThickness().stream()
        .filter(a -> a.thicknessUm() == um)
        .findFirst()
        .orElseThrow();
  }

  /** Bands of metal and time are the point plan at the spreads' own percentiles. */
  @Test
  void bandsOfAmountsAreThoseOfTheSpreads() {
    Spread loss = new Spread(0.2, 0.33, 0.8);
    Spread pace = new Spread(20, 25, 60);
    PlatingPlan plan = PlatingArithmetic.plan(AREAS, settings(loss, pace));
    PlatingPlan low =
        PlatingArithmetic.plan(
            AREAS, settings(Spread.point(loss.quantile(0.1)), Spread.point(pace.quantile(0.1))));
    assertThat(plan.bands().goldG().p10()).isCloseTo(low.totals().goldG(), within(1e-12));
    assertThat(plan.bands().solutionMl().p10()).isCloseTo(low.totals().solutionMl(), within(1e-9));
    assertThat(plan.bands().seconds().p10()).isCloseTo(low.totals().seconds(), within(1e-9));
  }
}
