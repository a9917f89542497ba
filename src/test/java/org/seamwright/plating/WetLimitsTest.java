package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WetLimitsTest {
  private static Step step(String name, Step.Kind kind, double pace, int passes, double handling) {
    return new Step(name, "", kind, pace, passes, handling, "made up for the check");
  }

  private static Recipe recipe(Step... steps) {
    return new Recipe("test", "test", List.of(steps), List.of());
  }

  /** (45 − 7) / 0.5 = 76 cm² against (45 − 3) / 0.5 = 84 and (45 − 5) / 0.4 = 100. */
  @Test
  void slowestPairGoverns() throws PlatingException {
    Recipe recipe =
        recipe(
            step("Degrease", Step.Kind.DRY_PREPARATION, 9, 1, 99),
            step("Clean", Step.Kind.WET, 0.5, 3, 99),
            step("Rinse", Step.Kind.WET, 0.2, 1, 3),
            step("Activate", Step.Kind.WET, 0.5, 1, 7),
            step("Second rinse", Step.Kind.WET, 0.2, 1, 3),
            step("Flash", Step.Kind.FLASH, 0.4, 1, 5),
            step("Build", Step.Kind.BUILD, 9, 1, 99));
    WetLimit limit = WetLimits.of(recipe, 45);
    assertThat(limit.limitMm2()).isCloseTo(7600, within(1e-9));
    assertThat(limit.governedBy()).isEqualTo("Rinse to Activate");
    assertThat(limit.explanation())
        .contains("Rinse to Activate leaves 38 s of 45 s", "0.5 s per cm²", "76 cm²", "11.78 in²");
  }

  @Test
  void flashPaceFollowsRateAndThickness() throws PlatingException {
    Recipe recipe =
        recipe(step("Rinse", Step.Kind.WET, 0.2, 1, 3), step("Flash", Step.Kind.FLASH, 99, 1, 5));
    PlatingSettings settings =
        new PlatingSettings(recipe, Deposits.all().get(0), 0.1, 0, 0, 10, 1, 20, 1);
    // 20 s per cm² per µm × 0.1 µm = 2 s per cm²; (45 − 5) / 2 = 20 cm²
    assertThat(WetLimits.of(settings, 45).limitMm2()).isCloseTo(2000, within(1e-9));
  }

  @Test
  void flashAloneIsBoundByTheWindow() throws PlatingException {
    assertThat(WetLimits.of(recipe(step("Flash", Step.Kind.FLASH, 0.5, 1, 9)), 45).limitMm2())
        .isCloseTo(9000, within(1e-9));
  }

  @Test
  void handlingThatTakesTheWindowIsRefused() {
    Recipe recipe =
        recipe(step("Rinse", Step.Kind.WET, 0.2, 1, 3), step("Flash", Step.Kind.FLASH, 0.4, 1, 45));
    assertThatThrownBy(() -> WetLimits.of(recipe, 45))
        .isInstanceOf(PlatingException.class)
        .hasMessageContainingAll("Recipe test", "Rinse to Flash", "45 s", "within reach");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void windowMustBeATime(double window) {
    assertThatThrownBy(() -> WetLimits.of(Recipes.all().get(0), window))
        .isInstanceOf(PlatingException.class)
        .hasMessageContaining("Wet window");
  }

  @Test
  void stepsThatTakeNoTimeLimitNothing() {
    Recipe recipe =
        recipe(step("Rinse", Step.Kind.WET, 0, 1, 3), step("Flash", Step.Kind.FLASH, 0, 1, 5));
    assertThatThrownBy(() -> WetLimits.of(recipe, 45))
        .hasMessageContaining("section limit directly");
  }

  @Test
  void dryStepInTheChainIsRefused() {
    Recipe recipe =
        recipe(
            step("Clean", Step.Kind.WET, 0.2, 1, 3),
            step("Wipe", Step.Kind.DRY_PREPARATION, 0.2, 1, 3),
            step("Flash", Step.Kind.FLASH, 0.4, 1, 5));
    assertThatThrownBy(() -> WetLimits.of(recipe, 45)).hasMessageContaining("Wipe");
  }

  /**
   * Plays the strokes second by second: a place at share x of the sweep is wetted at x of each
   * pass. At the limit the longest wait is the window, just above it the window is broken.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void noPlaceWaitsLongerThanTheWindow(long seed) throws PlatingException {
    Random random = new Random(seed);
    for (int trial = 0; trial < 50; trial++) {
      List<Step> steps = new ArrayList<>();
      int wet = 1 + random.nextInt(6);
      for (int i = 0; i < wet; i++) {
        steps.add(
            step(
                "wet " + i,
                Step.Kind.WET,
                0.05 + random.nextDouble(),
                1 + random.nextInt(4),
                20 * random.nextDouble()));
      }
      steps.add(
          step(
              "flash",
              Step.Kind.FLASH,
              0.05 + 3 * random.nextDouble(),
              1 + random.nextInt(4),
              20 * random.nextDouble()));
      Recipe recipe = recipe(steps.toArray(Step[]::new));
      double window = 25 + 60 * random.nextDouble();
      double cm2 = WetLimits.of(recipe, window).limitMm2() / 100;
      String hint = "seed " + seed + ", trial " + trial;
      assertThat(longestWait(recipe, cm2)).as(hint).isCloseTo(window, within(1e-9));
      assertThat(longestWait(recipe, cm2 * 1.001)).as(hint).isGreaterThan(window);
    }
  }

  private static double longestWait(Recipe recipe, double cm2) {
    double longest = 0;
    for (double x = 0; x <= 1; x += 1.0 / 64) {
      double clock = 0;
      double wetted = Double.NaN;
      for (Step step : recipe.steps()) {
        // the flash's recipe pace is for the whole flash; its passes share it
        double pace =
            step.kind() == Step.Kind.FLASH
                ? step.secondsPerCm2() / step.passes()
                : step.secondsPerCm2();
        clock += step.handlingSeconds();
        for (int pass = 0; pass < step.passes(); pass++) {
          double now = clock + x * pace * cm2;
          longest = Double.isNaN(wetted) ? longest : Math.max(longest, now - wetted);
          wetted = now;
          clock += pace * cm2;
        }
      }
    }
    return longest;
  }
}
