package org.seamwright.plating;

import java.util.List;
import java.util.Locale;

/**
 * The steps for one base metal, in order.
 *
 * @param id stable name used in job files, for example {@code brass}
 * @param base the base metal, for people
 * @param copperBearing whether copper lies at the surface that plating starts from, so that gold
 *     needs a barrier beneath it
 * @param steps in order; exactly one {@link Step.Kind#FLASH}
 * @param notes what to ask or know before starting
 */
public record Recipe(
    String id, String base, boolean copperBearing, List<Step> steps, List<String> notes) {
  /** Metals that keep copper from gold, as steps are named after them. */
  private static final List<String> BARRIERS = List.of("nickel", "palladium", "barrier");

  /** Copies the lists and checks that there is one flash. */
  public Recipe {
    steps = List.copyOf(steps);
    notes = List.copyOf(notes);
    if (steps.stream().filter(s -> s.kind() == Step.Kind.FLASH).count() != 1) {
      throw new IllegalArgumentException("A recipe needs exactly one flash: " + id);
    }
  }

  /** For a base metal without copper. */
  public Recipe(String id, String base, List<Step> steps, List<String> notes) {
    this(id, base, false, steps, notes);
  }

  /**
   * The same steps for laying another metal than gold: what is said of gold's voltage, colour and
   * burns does not hold for it, and its solution's sheet decides.
   *
   * @return this for a gold
   */
  public Recipe laying(Deposit deposit) {
    if (deposit.isGold()) {
      return this;
    }
    List<Step> other =
        steps.stream()
            .map(
                step ->
                    switch (step.kind()) {
                      case FLASH, BUILD -> BenchSteps.layer(step, deposit.name());
                      case DRY_PREPARATION, WET, FINISH -> BenchSteps.ofAnyLayer(step);
                    })
            .toList();
    List<String> kept =
        notes.stream().map(BenchSteps::ofAnyLayer).filter(n -> !n.contains(" gold")).toList();
    return new Recipe(id, base, copperBearing, other, kept);
  }

  /**
   * A recipe of the shop's own for another metal: steps named after gold become that metal's, all
   * else stays as it was written.
   */
  public Recipe inPlaceOfGold(Deposit deposit) {
    if (deposit.isGold()) {
      return this;
    }
    List<Step> other =
        steps.stream()
            .map(
                step ->
                    step.name().startsWith("Gold ")
                            && (step.kind() == Step.Kind.FLASH || step.kind() == Step.Kind.BUILD)
                        ? BenchSteps.layer(step, deposit.name())
                        : step)
            .toList();
    return new Recipe(id, base, copperBearing, other, notes);
  }

  /**
   * The same steps with the voltage of the solution that lays the deposit, if its sheet names one.
   */
  public Recipe using(Solution solution) {
    if (solution.volts().isEmpty()) {
      return this;
    }
    List<Step> other =
        steps.stream()
            .map(
                step ->
                    switch (step.kind()) {
                      case FLASH, BUILD -> BenchSteps.at(solution.volts(), step);
                      case DRY_PREPARATION, WET, FINISH -> step;
                    })
            .toList();
    return new Recipe(id, base, copperBearing, other, notes);
  }

  /**
   * Whether copper would lie right under gold: copper in the base or in a step, and no step after
   * it that lays nickel or palladium. Copper wanders into gold and dulls it (ASTM B488 asks for
   * nickel on copper alloys, secondary copy).
   */
  public boolean lacksBarrier() {
    boolean copper = copperBearing;
    for (Step step : steps) {
      String name = step.name().toLowerCase(Locale.ROOT);
      if (step.kind() == Step.Kind.FLASH) {
        return copper;
      }
      boolean rinse = name.contains("rinse");
      if (!rinse && BARRIERS.stream().anyMatch(name::contains)) {
        copper = false;
      } else if (!rinse && name.contains("copper")) {
        copper = true;
      }
    }
    return copper;
  }
}
