package org.seamwright.plating;

/**
 * The steps that recipes are made of. Speeds, passes and handling are starting values of the shop's
 * own settings, for a small hand tool; each step's source says what else is known of it.
 */
final class BenchSteps {
  static final String PRACTICE = "common practice, no source";
  private static final String PACE = "; speed, passes and handling: shop setting";

  /** The bench's usual grip: putting one tool down, taking the next up. */
  static final double CHANGE_TOOL_S = 7;

  /** Reaching for the rinse bottle while the other hand still holds the piece. */
  static final double REACH_S = 4;

  /** A small tool in a steady hand. */
  static final double TOOL_S_PER_CM2 = 0.5;

  static final double RINSE_S_PER_CM2 = 0.2;

  /**
   * The flash is laid in quick strokes over the whole section, again and again until it is opaque,
   * so that no place waits for its first wetting until its neighbour is done.
   */
  static final int FLASH_PASSES = 10;

  /** Where the sheet that comes with a solution decides. */
  static final String SHEET = "as on the solution's sheet";

  /** Hard gold laid on by hand: common practice, no source. */
  static final String GOLD_VOLTS = "2.5–3 V at work";

  private static final String GOLD_SUPPLY = " Set the supply to about 4 V: it drops on contact.";

  private static final String BURN =
      "A dark or bronze burn: too much voltage, or the tool stood still. Stop, find out why, lower"
          + " the voltage and keep moving; rub the burn off gently, rinse, and go over it again.";

  private BenchSteps() {}

  static Step degrease(String caution) {
    return new Step(
        "Degrease",
        "Takes off oil, wax, polish and finger marks that current alone does not.",
        Step.Kind.DRY_PREPARATION,
        "",
        "",
        0.3,
        2,
        30,
        "A clean white cloth stays white.",
        "Polish or wax left in corners and letters shows in the next step, where water draws back"
            + " from it: degrease again there.",
        join(caution, "Solvents burn and their vapour harms: ventilate, no flame."),
        PRACTICE + PACE);
  }

  static Step electroclean(
      String volts, String polarity, int passes, String caution, String source) {
    return new Step(
        "Electroclean",
        "Lifts the last soil off; only a clean surface stays wet all over.",
        Step.Kind.WET,
        volts,
        polarity,
        TOOL_S_PER_CM2,
        passes,
        CHANGE_TOOL_S,
        "Water runs off in one unbroken film (water-break test, ASTM F22; soap can mask a break).",
        "Water beads or draws back: not clean. Clean again before going on; nothing later mends it.",
        join(caution, "Alkaline: eyes and skin."),
        source + PACE);
  }

  static Step rinse(String after, String source) {
    return new Step(
        "Rinse after " + after,
        "Keeps one solution out of the next; the surface stays wet.",
        Step.Kind.WET,
        "",
        "",
        RINSE_S_PER_CM2,
        2,
        REACH_S,
        "Cold clean tap water has reached every place, laps and crevices too.",
        "Dried anywhere: this section goes back to its first wet step.",
        "Catch the rinse; keep acid and cyanide rinses apart.",
        source + PACE);
  }

  static Step activate(
      String volts, String polarity, int passes, String done, String caution, String source) {
    return new Step(
        "Activate",
        "Takes off the oxide film that deposits do not hold on.",
        Step.Kind.WET,
        volts,
        polarity,
        TOOL_S_PER_CM2,
        passes,
        CHANGE_TOOL_S,
        done,
        "Too long roughens or smuts the metal, and dulls gold laid earlier beside the seam: pass over"
            + " a seam once, quickly.",
        join(caution, "Often acid: eyes and skin."),
        source + PACE);
  }

  static Step copperStrike(String source) {
    return new Step(
        "Copper strike",
        "Covers a metal that acid solutions attack, so that nickel and gold can follow.",
        Step.Kind.WET,
        SHEET,
        Step.DIRECT,
        TOOL_S_PER_CM2,
        2,
        CHANGE_TOOL_S,
        "Even copper colour everywhere, edges and crevices too.",
        "Dark, powdery or peeling copper: too much voltage, or the metal was not clean. Take it off"
            + " and begin again.",
        "Copper strikes may hold cyanide: never near acid, nor their drips and waste.",
        source + PACE);
  }

  /**
   * Nickel under the gold. Its two passes take 1 s/cm²: a layer of 0.00005 in at the alkaline
   * factor 0.017 A·h per in² per 0.0001 in (ASM Handbook vol. 5) and 5 A/in² of contact (Surface
   * Finishing Guidebook's example) comes to 0.95 s per cm² of contact.
   */
  static Step nickel(String purpose, String source) {
    return new Step(
        "Nickel",
        purpose,
        Step.Kind.WET,
        SHEET,
        Step.DIRECT,
        TOOL_S_PER_CM2,
        2,
        CHANGE_TOOL_S,
        "Even nickel colour everywhere, about 1.3–2.5 µm (0.00005–0.0001 in).",
        "Dark, rough edges: too much voltage, or the tool stood still. Nickel that dries grows a film"
            + " that gold does not hold on.",
        "Nickel sensitises skin.",
        source + PACE);
  }

  /** The flash; its speed is that of the default rate and thickness. */
  static Step goldFlash(String source) {
    return new Step(
        "Gold flash",
        "Covers every place with gold while it is still wet and active." + GOLD_SUPPLY,
        Step.Kind.FLASH,
        GOLD_VOLTS,
        Step.DIRECT,
        PlatingDefaults.SECONDS_PER_CM2_PER_UM * PlatingDefaults.FLASH_UM,
        FLASH_PASSES,
        CHANGE_TOOL_S,
        "Opaque: no base colour shows through. Keep the tool moving.",
        BURN,
        "Gold solutions may hold cyanide: never near acid, nor their drips and waste.",
        source + PACE);
  }

  static Step goldBuild() {
    return new Step(
        "Gold build",
        "Brings the gold to the thickness promised, over the whole piece without seams."
            + GOLD_SUPPLY,
        Step.Kind.BUILD,
        GOLD_VOLTS,
        Step.DIRECT,
        PlatingDefaults.SECONDS_PER_CM2_PER_UM
            * (PlatingDefaults.THICKNESS_UM - PlatingDefaults.FLASH_UM),
        1,
        CHANGE_TOOL_S,
        "The planned charge has passed (A·h meter).",
        BURN,
        "As for the flash.",
        PRACTICE + PACE);
  }

  /** A text on what is done before or after gold, said of any layer. */
  static String ofAnyLayer(String text) {
    return text.replace("the gold", "the layer")
        .replace("thin gold", "a thin layer")
        .replace("Gold this thin", "A layer this thin")
        .replace("that gold does", "that a layer does")
        .replace("dulls gold laid", "dulls what was laid")
        .replace("lifts gold", "lifts it")
        .replace("nickel and gold can", "others can")
        .replace("holds gold and", "holds metal and");
  }

  /** A step before or after the layer, said of any layer. */
  static Step ofAnyLayer(Step step) {
    return new Step(
        step.name(),
        ofAnyLayer(step.purpose()),
        step.kind(),
        step.volts(),
        step.polarity(),
        step.secondsPerCm2(),
        step.passes(),
        step.handlingSeconds(),
        ofAnyLayer(step.done()),
        ofAnyLayer(step.wrong()),
        ofAnyLayer(step.caution()),
        step.source());
  }

  /** A flash or build at the voltage that the solution's sheet names. */
  static Step at(String volts, Step step) {
    return new Step(
        step.name(),
        step.purpose().replace(GOLD_SUPPLY, " Set the supply so that this stays on contact."),
        step.kind(),
        volts,
        step.polarity(),
        step.secondsPerCm2(),
        step.passes(),
        step.handlingSeconds(),
        step.done(),
        step.wrong(),
        step.caution(),
        step.source() + "; voltage: the solution's sheet");
  }

  /** A flash or build of gold made one of another metal. */
  static Step layer(Step gold, String metal) {
    boolean flash = gold.kind() == Step.Kind.FLASH;
    return new Step(
        metal + (flash ? " flash" : " build"),
        flash
            ? "Covers every place while it is still wet and active."
            : "Brings the layer to the thickness promised, over the whole piece without seams.",
        gold.kind(),
        SHEET,
        Step.DIRECT,
        gold.secondsPerCm2(),
        gold.passes(),
        gold.handlingSeconds(),
        gold.done(),
        "Dark, rough or peeling: stop, find out why on scrap, and begin again.",
        "Solutions may hold cyanide: never near acid, nor their drips and waste.",
        PRACTICE + PACE);
  }

  static Step finalRinse() {
    return new Step(
        "Rinse, then distilled water",
        "Leaves no salts to stain under the gold.",
        Step.Kind.FINISH,
        "",
        "",
        RINSE_S_PER_CM2,
        2,
        REACH_S,
        "Distilled water last, in every crevice.",
        "Salts left in crevices creep out and stain later: rinse there again.",
        "Catch the first rinse: it holds gold and may hold cyanide.",
        PRACTICE + PACE);
  }

  static Step dry() {
    return new Step(
        "Dry",
        "Drying at once leaves no water spots.",
        Step.Kind.FINISH,
        "",
        "",
        0.1,
        1,
        REACH_S,
        "Dry; on a trial strip, tape pressed on and pulled off in one motion lifts nothing.",
        "Tape lifts gold: the metal beneath was not clean or not active. Stop; find out why on scrap.",
        "",
        "FAA AC 43.13-1B ¶ 4-62: rinse and dry, tape test" + PACE);
  }

  private static String join(String first, String second) {
    return first.isEmpty() ? second : first + " " + second;
  }
}
