package org.seamwright.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Layers that a piece may need beneath its gold and that a base metal's usual steps leave out.
 *
 * <p>Gold this thin copies what lies beneath it, so scratches are filled with a levelling metal and
 * polished first. A barrier of nickel keeps the metal below from wandering into the gold. Both are
 * put into a copy of the recipe; the shop changes their times to its own.
 */
public final class Underlayers {
  private Underlayers() {}

  /** What scratches are filled with. */
  public enum Levelling {
    /** Soft and quickly polished. */
    COPPER("copper", 0.013),
    /** Harder; keeps copper from gold as well. */
    NICKEL("nickel", 0.017);

    /** Depth that is filled, in: 25.4 µm, a shop setting. */
    private static final double DEPTH_IN = 0.001;

    /** Current on the tool's contact, A/in²: the Surface Finishing Guidebook's example. */
    private static final double AMPERES_PER_IN2 = 5;

    private static final double CM2_PER_IN2 = 6.4516;

    private final String metal;
    private final double ampHoursPerIn2;

    Levelling(String metal, double ampHoursPerIn2) {
      this.metal = metal;
      this.ampHoursPerIn2 = ampHoursPerIn2;
    }

    /** Name of the metal. */
    public String metal() {
      return metal;
    }

    /**
     * Time to fill {@value #DEPTH_IN} in, s per cm² of contact: A·h per in² and 0.0001 in (ASM
     * Handbook vol. 5, "Selective (Brush) Plating", table 1; nickel: alkaline) over the current.
     */
    double secondsPerCm2() {
      return ampHoursPerIn2 * (DEPTH_IN / 1e-4) / AMPERES_PER_IN2 * 3600 / CM2_PER_IN2;
    }
  }

  /** The recipe with scratches filled and polished before its own first step. */
  public static Recipe levelled(Recipe recipe, Levelling with) {
    List<Step> steps = new ArrayList<>();
    steps.add(level(with));
    steps.add(polish());
    steps.addAll(recipe.steps());
    List<String> notes = new ArrayList<>(recipe.notes());
    notes.add(
        "Where "
            + with.metal()
            + " fills marks the surface is "
            + with.metal()
            + ": what is said of activating it holds there. Times for levelling are for the whole"
            + " plated area; where only a few marks are filled, write less.");
    return new Recipe(recipe.id(), recipe.base(), recipe.copperBearing(), steps, notes);
  }

  /**
   * The recipe with nickel and a rinse right before the flash; itself if nickel is laid already.
   */
  public static Recipe withNickelBarrier(Recipe recipe) {
    List<Step> steps = new ArrayList<>(recipe.steps());
    if (steps.stream()
        .anyMatch(s -> !s.isRinse() && s.name().toLowerCase(Locale.ROOT).contains("nickel"))) {
      return recipe;
    }
    int flash = 0;
    while (steps.get(flash).kind() != Step.Kind.FLASH) {
      flash++;
    }
    steps.add(
        flash,
        BenchSteps.nickel(
            "Keeps the metal below from wandering through the gold and dulling it.",
            BenchSteps.PRACTICE));
    steps.add(flash + 1, BenchSteps.rinse("nickel", BenchSteps.PRACTICE));
    return new Recipe(recipe.id(), recipe.base(), recipe.copperBearing(), steps, recipe.notes());
  }

  private static Step level(Levelling with) {
    return new Step(
        "Level with " + with.metal(),
        "Fills scratches and pits, which thin gold would copy. Clean, rinse and activate first as"
            + " the steps below say.",
        Step.Kind.DRY_PREPARATION,
        BenchSteps.SHEET,
        Step.DIRECT,
        with.secondsPerCm2(),
        1,
        BenchSteps.CHANGE_TOOL_S,
        "A fingernail drawn across the marks no longer catches.",
        "Dark or powdery metal: too much voltage, or the tool stood still. Sand it off and go on.",
        with == Levelling.COPPER
            ? "Acid copper eats bare zinc, tin and aluminium and does not hold on bare steel: strike"
                + " first. Alkaline copper may hold cyanide: never near acid."
            : "Nickel sensitises skin; no dust when it is polished.",
        BenchSteps.PRACTICE
            + "; speed from the handbook's factor for 25 µm at 5 A/in² of contact: shop setting");
  }

  private static Step polish() {
    return new Step(
        "Polish",
        "Brings the filled marks level with the rest; gold does not hide them.",
        Step.Kind.DRY_PREPARATION,
        "",
        "",
        5,
        1,
        30,
        "One gloss all over in slanting light, no mark to be seen.",
        "A mark still shows: fill it again before going on.",
        "Dust of metals harms: mask, eyes, no loose sleeves near a wheel.",
        BenchSteps.PRACTICE + "; speed, passes and handling: shop setting");
  }
}
