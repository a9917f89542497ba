package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlatingArithmeticTest {
  private static final double MM2_PER_IN2 = 645.16;

  private static Recipe brass() {
    return Recipes.all().get(0);
  }

  private static Deposit gold() {
    return Deposits.all().get(0);
  }

  private static PlatingSettings settings(double flashUm, double buildUm, double loss) {
    return new PlatingSettings(brass(), gold(), flashUm, buildUm, loss, 10, 0.8, 25, 0.72);
  }

  private static double goldG(double um, double loss, double netMm2) {
    return PlatingArithmetic.plan(
            List.of(new SectionArea(1, netMm2, 0, 0)), settings(0.0762, um - 0.0762, loss))
        .totals()
        .goldG();
  }

  /**
   * Common practice, no source: a flat face of 60 in² at 1 µm with a third added for loss takes
   * about 1 g; half of it for 0.5 µm, a quarter for 0.25 µm. By arithmetic 387.096 cm² × 1 µm ×
   * 19.3 g/cm³ × 4/3 = 0.99613 g.
   */
  @ParameterizedTest
  @CsvSource({"1, 0.996127", "0.5, 0.498063", "0.25, 0.249032"})
  void sixtySquareInches(double um, double g) {
    assertThat(goldG(um, 1.0 / 3, 60 * MM2_PER_IN2)).isCloseTo(g, within(1e-6));
  }

  /** Common practice, no source: 1 g of gold covers about 80 in² at 1 µm, nothing lost. */
  @Test
  void eightySquareInches() {
    assertThat(goldG(1, 0, 80 * MM2_PER_IN2)).isCloseTo(0.996127, within(1e-6));
  }

  /**
   * Torus R 100 mm, r 10 mm: area 4π²Rr = 39 478.4176 mm²; 2.5 µm at 19.3 g/cm³ is 1.904834 g, and
   * Au(I) at 70% takes 0.370276 A·h, both by hand from the formulas.
   */
  @Test
  void torus() {
    double area = 4 * Math.PI * Math.PI * 100 * 10;
    PlatingSettings settings = new PlatingSettings(brass(), gold(), 0.1, 2.4, 0, 10, 1, 25, 0.7);
    PlatingPlan plan = PlatingArithmetic.plan(List.of(new SectionArea(1, area, 0, 0)), settings);
    assertThat(plan.totals().goldG()).isCloseTo(1.904834, within(1e-6));
    assertThat(plan.totals().chargeAh()).isCloseTo(0.370276, within(1e-6));
    assertThat(plan.totals().solutionMl()).isCloseTo(190.4834, within(1e-4));
  }

  /** Flash over net and lap, build over net: 110 and 100 cm² at 0.1 and 0.4 µm, by hand. */
  @Test
  void lapsGetFlashButNoBuild() {
    PlatingPlan.SectionAmounts amounts =
        PlatingArithmetic.plan(
                List.of(new SectionArea(7, 10_000, 400, 1000)), settings(0.1, 0.4, 0.5))
            .sections()
            .get(0);
    assertThat(amounts.id()).isEqualTo(7);
    assertThat(amounts.flashG()).isCloseTo(110 * 0.1e-4 * 19.3, within(1e-15));
    assertThat(amounts.buildG()).isCloseTo(100 * 0.4e-4 * 19.3, within(1e-15));
    assertThat(amounts.lossG())
        .isCloseTo(0.5 * (amounts.flashG() + amounts.buildG()), within(1e-15));
    assertThat(amounts.goldG())
        .isCloseTo(1.5 * (amounts.flashG() + amounts.buildG()), within(1e-15));
    assertThat(amounts.solutionMl()).isCloseTo(amounts.goldG() / 8 * 1000, within(1e-12));
    // loss is not in the charge: what drips off has not been laid down
    assertThat(Faraday.massG(gold(), amounts.chargeAh(), 0.72))
        .isCloseTo(amounts.flashG() + amounts.buildG(), within(1e-15));
  }

  @Test
  void everyStepCoversItsOwnArea() {
    Recipe recipe =
        new Recipe(
            "test",
            "test",
            List.of(
                step(Step.Kind.DRY_PREPARATION, 0.3, 2, 30),
                step(Step.Kind.WET, 0.5, 3, 7),
                step(Step.Kind.FLASH, 99, 4, 6),
                step(Step.Kind.BUILD, 99, 1, 5),
                step(Step.Kind.FINISH, 0.2, 2, 4)),
            List.of());
    PlatingSettings settings = new PlatingSettings(recipe, gold(), 0.1, 0.4, 0, 10, 1, 20, 1);
    PlatingPlan.SectionAmounts amounts =
        PlatingArithmetic.plan(List.of(new SectionArea(1, 10_000, 400, 1000)), settings)
            .sections()
            .get(0);
    assertThat(amounts.steps())
        .containsExactly(
            2 * 0.3 * 110 + 30, // net and the wider lap
            3 * 0.5 * 104 + 7, // net and activation lap
            20 * 0.1 * 110 + 6, // net and flash lap, by thickness
            20 * 0.4 * 100 + 5, // net, by thickness
            2 * 0.2 * 100 + 4.0); // net
    assertThat(amounts.seconds()).isCloseTo(96 + 163 + 226 + 805 + 44, within(1e-9));
  }

  private static Step step(Step.Kind kind, double pace, int passes, double handling) {
    return new Step(kind.name(), "", kind, pace, passes, handling, "made up for the check");
  }

  /**
   * Common practice, no source: gold is opaque at about 3 µin, which takes 10–15 s per in²; 10–12
   * µin take 3–4 times as long. The default rate must make both.
   */
  @Test
  void defaultRateMakesGoldOpaqueInTime() {
    double perIn2 = PlatingDefaults.SECONDS_PER_CM2_PER_UM * 6.4516;
    double opaque = perIn2 * 3 * 0.0254;
    assertThat(opaque).isBetween(10.0, 15.0);
    assertThat(perIn2 * 10 * 0.0254 / opaque).isBetween(3.0, 4.0);
    assertThat(perIn2 * 12 * 0.0254 / opaque).isBetween(3.0, 4.0 + 1e-12);
    assertThat(PlatingDefaults.FLASH_UM).isCloseTo(3 * 0.0254, within(1e-15));
  }

  @Test
  void noLapsNoBuild() {
    PlatingPlan plan =
        PlatingArithmetic.plan(List.of(new SectionArea(1, 10_000, 0, 0)), settings(0.1, 0, 0));
    PlatingPlan.SectionAmounts amounts = plan.sections().get(0);
    assertThat(amounts.buildG()).isZero();
    assertThat(amounts.lossG()).isZero();
    int build = brass().steps().stream().map(Step::kind).toList().indexOf(Step.Kind.BUILD);
    assertThat(amounts.steps().get(build)).as("a build left out takes no handling").isZero();
    assertThat(plan.totals().workedMm2()).isEqualTo(10_000);
  }

  @Test
  void nothingToPlate() {
    PlatingPlan plan = PlatingArithmetic.plan(List.of(), settings(0.1, 0.4, 0.33));
    assertThat(plan.sections()).isEmpty();
    assertThat(plan.totals()).isEqualTo(new PlatingPlan.Totals(0, 0, 0, 0, 0, 0));
    assertThat(plan.trace()).isNotEmpty();
  }

  /** Cutting a piece into more sections without laps costs no gold, only handling. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void sectionsWithoutLapsCostHandlingOnly(long seed) {
    Random random = new Random(seed);
    List<SectionArea> pieces = new ArrayList<>();
    double net = 0;
    for (int i = 1; i <= 200; i++) {
      double area = 5000 * random.nextDouble();
      net += area;
      pieces.add(new SectionArea(i, area, 0, 0));
    }
    PlatingSettings settings = settings(0.0762, 0.42, 0.33);
    PlatingPlan.Totals many = PlatingArithmetic.plan(pieces, settings).totals();
    PlatingPlan.Totals one =
        PlatingArithmetic.plan(List.of(new SectionArea(1, net, 0, 0)), settings).totals();
    double handling = brass().steps().stream().mapToDouble(Step::handlingSeconds).sum();
    String hint = "seed " + seed;
    assertThat(many.goldG()).as(hint).isCloseTo(one.goldG(), within(1e-12 * one.goldG()));
    assertThat(many.chargeAh()).as(hint).isCloseTo(one.chargeAh(), within(1e-12));
    assertThat(many.seconds() - one.seconds()).as(hint).isCloseTo(199 * handling, within(1e-6));
  }

  @Test
  void totalsAreTheSums() {
    List<SectionArea> areas =
        List.of(new SectionArea(1, 3000, 0, 0), new SectionArea(2, 2000, 300, 200));
    PlatingPlan plan = PlatingArithmetic.plan(areas, settings(0.1, 0.4, 0.33));
    assertThat(plan.totals().netMm2()).isEqualTo(5000);
    assertThat(plan.totals().workedMm2()).isEqualTo(5300);
    assertThat(plan.totals().goldG())
        .isCloseTo(plan.sections().get(0).goldG() + plan.sections().get(1).goldG(), within(1e-15));
  }

  @Test
  void everyKindOfFigureIsTraced() {
    PlatingPlan plan =
        PlatingArithmetic.plan(
            List.of(new SectionArea(1, 10_000, 0, 500)), settings(0.1, 0.4, 0.33));
    assertThat(plan.trace())
        .extracting(PlatingPlan.Trace::figure)
        .contains(
            "Area worked",
            "Metal in the flash",
            "Metal in the build",
            "Metal lost",
            "Metal to have ready",
            "Solution",
            "Charge",
            "Charge, checked another way",
            "Time, all steps")
        .containsAll(brass().steps().stream().map(s -> "Time: " + s.name()).toList())
        .doesNotHaveDuplicates();
    assertThat(plan.trace())
        .allSatisfy(t -> assertThat(t.source()).isNotBlank())
        .allSatisfy(t -> assertThat(t.inputs()).isNotBlank());
  }

  /** With the default efficiency both ways to the charge differ by its rounding only. */
  @Test
  void chargeByFactorAgreesWithFaraday() {
    PlatingPlan plan =
        PlatingArithmetic.plan(List.of(new SectionArea(1, 10_000, 0, 0)), settings(0.5, 2, 0));
    // 0.0915356 A·h: 100 cm², 2.5 µm, factor 0.006, by hand; 0.0656544 / 0.72 by Faraday's law
    assertThat(plan.totals().chargeAh()).isCloseTo(0.0656544 / 0.72, within(1e-6));
    assertThat(plan.trace())
        .filteredOn(t -> t.figure().equals("Charge, checked another way"))
        .singleElement()
        .satisfies(t -> assertThat(t.inputs()).contains("0.09154 A·h", "0.7173"));
  }

  @Test
  void areasOutOfRangeAreProgrammingErrors() {
    for (double bad : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(
              () ->
                  PlatingArithmetic.plan(
                      List.of(new SectionArea(1, bad, 0, 0)), settings(0.1, 0.4, 0)))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
