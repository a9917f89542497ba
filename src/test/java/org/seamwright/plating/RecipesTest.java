package org.seamwright.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecipesTest {
  static Stream<Recipe> all() {
    return Recipes.all().stream();
  }

  private static List<String> names(String id) throws PlatingException {
    return Recipes.byId(id).steps().stream().map(Step::name).toList();
  }

  private static Step step(String id, String name) throws PlatingException {
    return Recipes.byId(id).steps().stream()
        .filter(s -> s.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("all")
  void runsFromPreparationThroughOneWetChainToADryPiece(Recipe recipe) {
    List<Step.Kind> kinds = recipe.steps().stream().map(Step::kind).toList();
    assertThat(kinds).as("preparation, wet, flash, build, finish").isSorted();
    assertThat(kinds).containsOnlyOnce(Step.Kind.FLASH).containsOnlyOnce(Step.Kind.BUILD);
    assertThat(kinds).contains(Step.Kind.WET);
    int last = recipe.steps().size() - 1;
    assertThat(recipe.steps().get(last).name()).isEqualTo("Dry");
    assertThat(recipe.steps().get(last - 1).name()).contains("distilled water");
  }

  @ParameterizedTest
  @MethodSource("all")
  void everyStepSaysWhatWhyAndWhence(Recipe recipe) {
    assertThat(recipe.steps()).extracting(Step::name).doesNotHaveDuplicates();
    assertThat(recipe.steps())
        .allSatisfy(s -> assertThat(s.purpose()).endsWith("."))
        .allSatisfy(s -> assertThat(s.done()).endsWith("."))
        .allSatisfy(s -> assertThat(s.source()).contains("shop setting"))
        .allSatisfy(
            s ->
                assertThat(s.source())
                    .containsAnyOf(
                        "no source", "FAA AC 43.13-1B", "ASTM", "Guidebook", "published"));
    assertThat(recipe.notes()).anySatisfy(n -> assertThat(n).contains("safety data sheets"));
  }

  @ParameterizedTest
  @MethodSource("all")
  void hasAWetLimitWithTheDefaults(Recipe recipe) throws PlatingException {
    PlatingSettings settings = PlatingDefaults.settings(recipe, Deposits.byId("gold-hard"));
    double limit = WetLimits.of(settings, PlatingDefaults.WET_WINDOW_SECONDS).limitMm2();
    assertThat(limit).isGreaterThan(100);
    assertThat(WetLimits.of(recipe, PlatingDefaults.WET_WINDOW_SECONDS).limitMm2())
        .as("the recipe's own flash pace is the default's")
        .isEqualTo(limit);
  }

  /** ASTM B488: nickel between copper alloys and gold. */
  @ParameterizedTest
  @ValueSource(strings = {"brass", "bronze", "copper"})
  void copperAlloysGetANickelBarrier(String id) throws PlatingException {
    assertThat(names(id)).containsSubsequence("Nickel", "Rinse after nickel", "Gold flash");
    assertThat(Recipes.byId(id).notes())
        .anySatisfy(n -> assertThat(n).contains("Nickel lies between copper and gold because"));
    // FAA AC 43.13-1B ¶ 4-62 k: 8–12 V
    assertThat(step(id, "Electroclean").volts()).startsWith("8–12 V");
  }

  /** FAA AC 43.13-1B ¶ 4-62 l: activate 6–20 V, do not rinse, nickel flash at once. */
  @ParameterizedTest
  @ValueSource(strings = {"stainless-steel", "nickel-alloy"})
  void passiveMetalsAreNotRinsedBeforeNickel(String id) throws PlatingException {
    List<String> names = names(id);
    assertThat(names.get(names.indexOf("Activate") + 1)).isEqualTo("Nickel");
    assertThat(step(id, "Electroclean").volts()).startsWith("12–20 V");
    assertThat(step(id, "Activate").volts()).startsWith("6–20 V");
  }

  /** FAA AC 43.13-1B ¶ 4-62 n: etch reverse 8–10 V to grey, rinse, 15–25 V takes the smut off. */
  @Test
  void castIron() throws PlatingException {
    assertThat(names("cast-iron"))
        .containsSubsequence(
            "Electroclean", "Rinse after cleaning", "Etch", "Rinse after etching", "Activate");
    assertThat(step("cast-iron", "Etch").volts()).isEqualTo("8–10 V");
    assertThat(step("cast-iron", "Etch").polarity()).isEqualTo(Step.REVERSE);
    assertThat(step("cast-iron", "Activate").volts()).isEqualTo("15–25 V");
  }

  @Test
  void unknownIdsAreRefusedWithTheOnesThereAre() {
    assertThatThrownBy(() -> Recipes.byId("tin"))
        .isInstanceOf(PlatingException.class)
        .hasMessageContainingAll("\"tin\"", "brass", "pewter");
    assertThatThrownBy(() -> Deposits.byId("gold"))
        .isInstanceOf(PlatingException.class)
        .hasMessageContainingAll("\"gold\"", "gold-hard", "palladium");
  }

  @Test
  void idsFindTheirOwn() throws PlatingException {
    for (Recipe recipe : Recipes.all()) {
      assertThat(Recipes.byId(recipe.id())).isSameAs(recipe);
    }
    for (Deposit deposit : Deposits.all()) {
      assertThat(Deposits.byId(deposit.id())).isSameAs(deposit);
    }
  }

  @Test
  void hardGoldSaysWhyItsDensityIsThatOfPureGold() throws PlatingException {
    assertThat(Deposits.byId("gold-hard").source()).contains("16.0–17.0", "errs towards enough");
  }

  /** ASTM B488 and 16 CFR 23 thresholds as information; flash and build add up in binary. */
  @Test
  void thicknessClasses() {
    double um = PlatingDefaults.FLASH_UM + (0.5 - PlatingDefaults.FLASH_UM);
    assertThat(ThicknessClasses.reachedBy(um))
        .extracting(ThicknessClasses.ThicknessClass::name)
        .containsExactly(
            "gold electroplate",
            "B488 class 0.25",
            "gold plate of reasonable durability",
            "B488 class 0.50");
    assertThat(ThicknessClasses.all())
        .extracting(ThicknessClasses.ThicknessClass::leastUm)
        .isSorted();
    assertThat(ThicknessClasses.reachedBy(0.0762)).isEmpty();
  }

  @Test
  void everyDefaultAndCautionSaysWhereItIsFrom() {
    assertThat(PlatingDefaults.all()).allSatisfy(d -> assertThat(d.source()).isNotBlank());
    assertThat(Cautions.all())
        .allSatisfy(c -> assertThat(c.source()).isNotBlank())
        .anySatisfy(c -> assertThat(c.text()).contains("drips", "waste"));
  }

  /** What is said of gold's voltage and burns must not stand on a sheet for silver. */
  @ParameterizedTest
  @MethodSource("all")
  void otherMetalsGetNoneOfGoldsAdvice(Recipe recipe) throws PlatingException {
    Recipe silver = recipe.laying(Deposits.byId("silver"));
    assertThat(silver.steps())
        .hasSameSizeAs(recipe.steps())
        .extracting(Step::kind)
        .isEqualTo(recipe.steps().stream().map(Step::kind).toList());
    assertThat(silver.steps())
        .filteredOn(s -> s.kind() == Step.Kind.FLASH || s.kind() == Step.Kind.BUILD)
        .hasSize(2)
        .allSatisfy(s -> assertThat(s.name()).startsWith("Silver"))
        .allSatisfy(s -> assertThat(s.toString()).doesNotContainIgnoringCase("gold", "4 V"));
    assertThat(silver.steps())
        .allSatisfy(
            s ->
                assertThat(s.purpose() + s.done() + s.wrong() + s.caution())
                    .doesNotContainIgnoringCase("gold"));
    assertThat(silver.notes()).allSatisfy(n -> assertThat(n).doesNotContainIgnoringCase("gold"));
    assertThat(silver.notes()).anySatisfy(n -> assertThat(n).contains("A layer this thin"));
    assertThat(recipe.laying(Deposits.byId("gold-soft"))).isSameAs(recipe);
  }

  /** A published trade column: strip first, then as nickel plated; no step plates on chromium. */
  @Test
  void chromiumIsTakenOffFirst() throws PlatingException {
    List<String> names = names("chrome-plated");
    assertThat(names.get(0)).contains("stripped");
    assertThat(names.subList(1, names.size())).isEqualTo(names("nickel-plated"));
  }

  /**
   * ASM Handbook vol. 5, table 1: copper 0.013, alkaline nickel 0.017 A·h per in² and 0.0001 in;
   * ten times that thickness at 5 A/in² is 0.026 and 0.034 h, an inch squared being 6.4516 cm².
   */
  @ParameterizedTest
  @CsvSource({"COPPER, 14.508", "NICKEL, 18.972"})
  void scratchesAreFilledAndPolishedBeforeTheFirstStep(
      Underlayers.Levelling with, double secondsPerCm2) throws PlatingException {
    Recipe steel = Recipes.byId("low-carbon-steel");
    Recipe levelled = Underlayers.levelled(steel, with);
    assertThat(levelled.steps().get(0).name()).isEqualTo("Level with " + with.metal());
    assertThat(levelled.steps().get(0).secondsPerCm2()).isCloseTo(secondsPerCm2, within(0.001));
    assertThat(levelled.steps().get(1).name()).isEqualTo("Polish");
    assertThat(levelled.steps().subList(2, levelled.steps().size())).isEqualTo(steel.steps());
    assertThat(levelled.steps()).extracting(Step::kind).isSorted();
  }

  /** Copper laid to fill scratches asks for a barrier, nickel laid for it does not. */
  @Test
  void copperThatLevelsNeedsABarrierToo() throws PlatingException {
    Recipe silver = Recipes.byId("silver");
    assertThat(silver.lacksBarrier()).isFalse();
    assertThat(Underlayers.levelled(silver, Underlayers.Levelling.COPPER).lacksBarrier()).isTrue();
    assertThat(Underlayers.levelled(silver, Underlayers.Levelling.NICKEL).lacksBarrier()).isFalse();
    Recipe barred = Underlayers.withNickelBarrier(silver);
    assertThat(Underlayers.levelled(barred, Underlayers.Levelling.COPPER).lacksBarrier()).isFalse();
    assertThat(barred.steps())
        .extracting(Step::name)
        .containsSubsequence(
            "Rinse after activating", "Nickel", "Rinse after nickel", "Gold flash");
    assertThat(Underlayers.withNickelBarrier(barred)).isSameAs(barred);
  }

  /** A recipe written out still has gold's names; a plan for silver must not repeat its voltage. */
  @Test
  void aRecipeOfTheShopsOwnServesAnotherMetal() throws PlatingException {
    Recipe own = Recipes.byId("pewter").inPlaceOfGold(Deposits.byId("silver"));
    assertThat(own.steps())
        .filteredOn(s -> s.kind() == Step.Kind.FLASH || s.kind() == Step.Kind.BUILD)
        .hasSize(2)
        .allSatisfy(s -> assertThat(s.name()).startsWith("Silver"))
        .allSatisfy(s -> assertThat(s.volts()).doesNotContain("2.5"));
    assertThat(own.notes()).isEqualTo(Recipes.byId("pewter").notes());
  }
}
