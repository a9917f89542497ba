package org.seamwright.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How fast a shop works through the wet steps, measured on scrap, as far as it differs from the
 * recipe. Two paces hold for all steps of the wet chain: that of steps worked with a tool, and that
 * of rinses. Single steps may have their own.
 *
 * @param handlingSeconds before a step with a tool: putting one down, taking the next up, s
 * @param secondsPerCm2 one pass with a tool over a unit of area, s/cm²; not for the flash
 * @param rinseHandlingSeconds before a rinse: reaching for the bottle, s
 * @param rinseSecondsPerCm2 one pass of a rinse, s/cm²
 * @param flashPasses passes that together lay the flash
 * @param steps steps with a pace of their own
 */
public record BenchPace(
    OptionalDouble handlingSeconds,
    OptionalDouble secondsPerCm2,
    OptionalDouble rinseHandlingSeconds,
    OptionalDouble rinseSecondsPerCm2,
    OptionalInt flashPasses,
    List<OfStep> steps) {
  /** The recipe's own pace. */
  public static final BenchPace AS_IN_RECIPE =
      new BenchPace(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalInt.empty(),
          List.of());

  /**
   * The pace of one step of the wet chain; what is left out is that of all.
   *
   * @param step name of the step, as in the recipe
   * @param handlingSeconds before the step, s
   * @param secondsPerCm2 one pass, s/cm²; not for the flash, whose time follows from its thickness
   * @param passes number of passes
   */
  public record OfStep(
      String step,
      OptionalDouble handlingSeconds,
      OptionalDouble secondsPerCm2,
      OptionalInt passes) {}

  /** Checks the ranges. */
  public BenchPace {
    steps = List.copyOf(steps);
    if (!(handlingSeconds.orElse(0) >= 0)
        || !(secondsPerCm2.orElse(0) >= 0)
        || !(rinseHandlingSeconds.orElse(0) >= 0)
        || !(rinseSecondsPerCm2.orElse(0) >= 0)
        || flashPasses.orElse(1) < 1) {
      throw new IllegalArgumentException("Pace out of range");
    }
  }

  /** Names of the steps of a recipe that belong to the wet chain. */
  public static List<String> wetSteps(Recipe recipe) {
    return recipe.steps().stream().filter(BenchPace::isWet).map(Step::name).toList();
  }

  private static boolean isWet(Step step) {
    return step.kind() == Step.Kind.WET || step.kind() == Step.Kind.FLASH;
  }

  /** A recipe worked at this pace; steps outside of the wet chain stay as they are. */
  public Recipe of(Recipe recipe) {
    List<Step> paced = new ArrayList<>();
    for (Step step : recipe.steps()) {
      paced.add(isWet(step) ? own(general(step)) : step);
    }
    return new Recipe(recipe.id(), recipe.base(), recipe.copperBearing(), paced, recipe.notes());
  }

  private Step general(Step step) {
    if (step.kind() == Step.Kind.FLASH) {
      return step.paced(
          step.secondsPerCm2(),
          flashPasses.orElse(step.passes()),
          handlingSeconds.orElse(step.handlingSeconds()));
    }
    OptionalDouble speed = step.isRinse() ? rinseSecondsPerCm2 : secondsPerCm2;
    OptionalDouble handling = step.isRinse() ? rinseHandlingSeconds : handlingSeconds;
    return step.paced(
        speed.orElse(step.secondsPerCm2()), step.passes(), handling.orElse(step.handlingSeconds()));
  }

  private Step own(Step step) {
    Optional<OfStep> own = steps.stream().filter(s -> s.step().equals(step.name())).findFirst();
    return own.map(
            o ->
                step.paced(
                    o.secondsPerCm2().orElse(step.secondsPerCm2()),
                    o.passes().orElse(step.passes()),
                    o.handlingSeconds().orElse(step.handlingSeconds())))
        .orElse(step);
  }
}
