package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class BenchPaceTest {
  private static BenchPace pace(
      double handling,
      double speed,
      double rinseHandling,
      double rinseSpeed,
      int passes,
      BenchPace.OfStep... steps) {
    return new BenchPace(
        OptionalDouble.of(handling),
        OptionalDouble.of(speed),
        OptionalDouble.of(rinseHandling),
        OptionalDouble.of(rinseSpeed),
        OptionalInt.of(passes),
        List.of(steps));
  }

  @Test
  void withoutAPaceRecipesStay() {
    for (Recipe recipe : Recipes.all()) {
      assertThat(BenchPace.AS_IN_RECIPE.of(recipe)).isEqualTo(recipe);
    }
  }

  /** docs/job-file.md names the pace of known recipes; it is theirs. */
  @Test
  void knownRecipesHaveThePaceThatThePageNames() {
    for (Recipe recipe : Recipes.all()) {
      assertThat(pace(7, 0.5, 4, 0.2, 10).of(recipe)).isEqualTo(recipe);
    }
  }

  @Test
  void aShopsPaceSetsTheLimit() throws PlatingException {
    // Brass: cleaning, rinses, nickel and the flash. With 10 s before a tool and 1 s/cm² the
    // wait before a tool governs: (50 − 10) / 1 = 40 cm²; rinses leave (50 − 2) / 1 = 48 cm².
    BenchPace pace = pace(10, 1, 2, 0.1, 20);
    PlatingSettings usual =
        PlatingDefaults.settings(
            pace.of(Recipes.byId("brass")), Deposits.byId(PlatingDefaults.DEPOSIT));
    WetLimit limit = WetLimits.of(usual, 50);
    assertThat(limit.limitMm2()).isCloseTo(4000, within(1e-9));
    assertThat(limit.leftSeconds()).isCloseTo(40, within(1e-12));
    assertThat(limit.secondsPerCm2()).isCloseTo(1, within(1e-12));
    assertThat(limit.explanation()).contains("leaves 40 s of 50 s");
    assertThat(WetLimits.each(usual, 50).stream().mapToDouble(WetLimit::limitMm2).min())
        .hasValue(limit.limitMm2());
  }

  @Test
  void aStepsOwnPaceComesFirst() throws PlatingException {
    BenchPace pace =
        pace(
            10,
            1,
            2,
            0.1,
            20,
            new BenchPace.OfStep(
                "Nickel", OptionalDouble.of(30), OptionalDouble.empty(), OptionalInt.of(5)));
    Recipe recipe = pace.of(Recipes.byId("brass"));
    Step nickel =
        recipe.steps().stream().filter(s -> s.name().equals("Nickel")).findFirst().orElseThrow();
    assertThat(nickel.handlingSeconds()).isEqualTo(30);
    assertThat(nickel.secondsPerCm2()).isEqualTo(1);
    assertThat(nickel.passes()).isEqualTo(5);
    // (50 − 30) / 1 = 20 cm², by the step before it and Nickel.
    WetLimit limit =
        WetLimits.of(PlatingDefaults.settings(recipe, Deposits.byId(PlatingDefaults.DEPOSIT)), 50);
    assertThat(limit.limitMm2()).isCloseTo(2000, within(1e-9));
    assertThat(limit.governedBy()).endsWith(" to Nickel");
  }

  @Test
  void stepsOutsideTheWetChainStay() {
    BenchPace pace = pace(1, 1, 1, 1, 1);
    for (Recipe recipe : Recipes.all()) {
      for (int i = 0; i < recipe.steps().size(); i++) {
        Step step = recipe.steps().get(i);
        boolean isWet = BenchPace.wetSteps(recipe).contains(step.name());
        assertThat(pace.of(recipe).steps().get(i).equals(step)).isEqualTo(!isWet);
      }
    }
  }

  @Test
  void paceOutOfRangeIsRefused() {
    assertThatThrownBy(() -> pace(-1, 1, 1, 1, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> pace(1, 1, 1, Double.NaN, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> pace(1, 1, 1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}
