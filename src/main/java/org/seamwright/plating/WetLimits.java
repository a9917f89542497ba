package org.seamwright.plating;

import java.util.ArrayList;
import java.util.List;

/**
 * How large a section may be so that no place of it dries between two wettings.
 *
 * <p>A step wets the section at p seconds per unit of area in one pass. If each step goes over it
 * in the same direction, a place at share x of the way waits {@code A·p·(1 − x) + h + A·p_next·x}
 * between the last pass of one step and the first of the next, at most {@code h + A·max(p,
 * p_next)}, with h the handling before the next step; and {@code A·p} between passes of one step,
 * which is never more. So with a wet window W the limit is the least of {@code (W − h) / max(p,
 * p_next)} over the pairs of the wet chain, which ends in the flash. Worked area, laps included, is
 * what must stay below it.
 *
 * <p>The flash's p is the time for its thickness at the shop's rate, over its passes: with one pass
 * a place is left only when it is covered.
 */
public final class WetLimits {
  private static final double MM2_PER_CM2 = 100;
  private static final double CM2_PER_IN2 = 6.4516;

  private WetLimits() {}

  /**
   * The limit with the rate and flash thickness of a job.
   *
   * @param settings recipe, rate, flash thickness
   * @param windowSeconds how long a wetted place stays wet, s
   * @throws PlatingException if handling alone takes the window, or the window is no time
   */
  public static WetLimit of(PlatingSettings settings, double windowSeconds)
      throws PlatingException {
    double flash = settings.secondsPerCm2PerUm() * settings.flashUm();
    return of(settings.recipe(), windowSeconds, flash);
  }

  /**
   * The limit with the speed that stands in the recipe's own flash step.
   *
   * @param windowSeconds how long a wetted place stays wet, s
   * @throws PlatingException if handling alone takes the window, or the window is no time
   */
  public static WetLimit of(Recipe recipe, double windowSeconds) throws PlatingException {
    for (Step step : recipe.steps()) {
      if (step.kind() == Step.Kind.FLASH) {
        return of(recipe, windowSeconds, step.secondsPerCm2());
      }
    }
    throw new IllegalArgumentException("A recipe has a flash: " + recipe.id());
  }

  private static WetLimit of(Recipe recipe, double windowSeconds, double flashSecondsPerCm2)
      throws PlatingException {
    if (!(windowSeconds > 0) || Double.isInfinite(windowSeconds)) {
      throw new PlatingException(
          "Wet window",
          "",
          Figures.of(windowSeconds) + " s is no time in which a place could stay wet",
          "Give the seconds that a wetted trial piece of the same metal stays wet all over.");
    }
    WetLimit least = null;
    for (WetLimit limit : each(recipe, windowSeconds, flashSecondsPerCm2)) {
      least = least == null || limit.limitMm2() < least.limitMm2() ? limit : least;
    }
    if (least == null || Double.isInfinite(least.limitMm2())) {
      throw new PlatingException(
          "Recipe " + recipe.id(),
          "",
          "no step of its wet chain takes any time, so nothing limits a section",
          "Set the section limit directly.");
    }
    return least;
  }

  /**
   * What each pair of steps of the wet chain allows, in order; the least of them is the limit.
   *
   * @param settings recipe, rate, flash thickness
   * @param windowSeconds how long a wetted place stays wet, s
   * @throws PlatingException if handling alone takes the window
   */
  public static List<WetLimit> each(PlatingSettings settings, double windowSeconds)
      throws PlatingException {
    double flash = settings.secondsPerCm2PerUm() * settings.flashUm();
    return each(settings.recipe(), windowSeconds, flash);
  }

  private static List<WetLimit> each(Recipe recipe, double windowSeconds, double flashSecondsPerCm2)
      throws PlatingException {
    List<Step> chain = chain(recipe);
    List<WetLimit> limits = new ArrayList<>();
    if (chain.size() == 1) { // a flash that nothing goes before is bound by its own passes
      Step flash = chain.get(0);
      limits.add(limit(recipe, flash.name(), windowSeconds, 0, pace(flash, flashSecondsPerCm2)));
    }
    for (int i = 0; i + 1 < chain.size(); i++) {
      Step step = chain.get(i);
      Step next = chain.get(i + 1);
      double slower = Math.max(pace(step, flashSecondsPerCm2), pace(next, flashSecondsPerCm2));
      String pair = step.name() + " to " + next.name();
      limits.add(limit(recipe, pair, windowSeconds, next.handlingSeconds(), slower));
    }
    return limits;
  }

  private static List<Step> chain(Recipe recipe) throws PlatingException {
    List<Step> chain = new ArrayList<>();
    for (Step step : recipe.steps()) {
      switch (step.kind()) {
        case WET -> chain.add(step);
        case FLASH -> {
          chain.add(step);
          return chain;
        }
        default -> {
          if (!chain.isEmpty()) {
            throw new PlatingException(
                "Recipe " + recipe.id(),
                step.name(),
                "the piece may dry here, in the midst of the wet steps",
                "Move the step before the first wet one or behind the flash.");
          }
        }
      }
    }
    return chain;
  }

  private static WetLimit limit(
      Recipe recipe, String pair, double windowSeconds, double handling, double slower)
      throws PlatingException {
    double left = windowSeconds - handling;
    if (!(left > 0)) {
      throw new PlatingException(
          "Recipe " + recipe.id(),
          pair,
          "handling takes "
              + Figures.of(handling)
              + " s, all of the "
              + Figures.of(windowSeconds)
              + " s that a place stays wet",
          "Lay tools and bottles within reach, or keep the piece wet for longer, or set the section"
              + " limit directly.");
    }
    double limitCm2 = left / slower;
    String explanation =
        pair
            + " leaves "
            + Figures.of(left)
            + " s of "
            + Figures.of(windowSeconds)
            + " s; at "
            + Figures.of(slower)
            + " s per cm² in one pass that wets "
            + Figures.of(limitCm2)
            + " cm² ("
            + Figures.of(limitCm2 / CM2_PER_IN2)
            + " in²).";
    return new WetLimit(limitCm2 * MM2_PER_CM2, pair, windowSeconds, handling, slower, explanation);
  }

  /** Seconds per cm² of one pass. */
  private static double pace(Step step, double flashSecondsPerCm2) {
    return step.kind() == Step.Kind.FLASH
        ? flashSecondsPerCm2 / step.passes()
        : step.secondsPerCm2();
  }
}
