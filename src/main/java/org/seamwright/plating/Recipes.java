package org.seamwright.plating;

import static org.seamwright.plating.BenchSteps.PRACTICE;
import static org.seamwright.plating.BenchSteps.SHEET;
import static org.seamwright.plating.BenchSteps.activate;
import static org.seamwright.plating.BenchSteps.copperStrike;
import static org.seamwright.plating.BenchSteps.degrease;
import static org.seamwright.plating.BenchSteps.dry;
import static org.seamwright.plating.BenchSteps.electroclean;
import static org.seamwright.plating.BenchSteps.finalRinse;
import static org.seamwright.plating.BenchSteps.goldBuild;
import static org.seamwright.plating.BenchSteps.goldFlash;
import static org.seamwright.plating.BenchSteps.nickel;
import static org.seamwright.plating.BenchSteps.rinse;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Step lists by base metal, for gold laid on by hand.
 *
 * <p>Where FAA Advisory Circular 43.13-1B, paragraph 4-62 (public US government text, read in a web
 * copy) has a sequence, that is the frame; the nickel under gold comes from gold's own standards.
 * The rest is common practice and says so. The sheet of the solution's maker goes before any of it,
 * and so do safety data sheets, local codes and licensed practice.
 */
public final class Recipes {
  private static final String FAA = "FAA AC 43.13-1B ¶ 4-62 ";
  private static final String MAKER = "Ends as on the solution's sheet.";

  private static final String BARRIER =
      "Keeps copper from wandering through the gold and dulling it.";
  private static final String BARRIER_SOURCE =
      "ASTM B488 (secondary copy): nickel under gold on copper alloys; thickness after the FAA's"
          + " nickel flash";

  private static final String RINSE_AFTER_NICKEL = FAA + "l: rinse after the nickel flash";

  private static final List<String> COPPER_ALLOYS = List.of("brass", "bronze", "copper");

  private static final List<String> ALWAYS =
      List.of(
          "Are scratches and pits filled and polished? Gold this thin copies what lies beneath it: fill"
              + " with levelling copper or nickel and polish first, or agree that they will show"
              + " (common practice, no source).",
          "Make sure of the base metal and of any plate, lacquer or solder on it before starting"
              + " (MIL-STD-2197A asks for it).",
          "Try speeds, handling and wet window on scrap of the same metal before the piece.",
          "Flash all sections before the build; the build then goes over the whole piece, kept wet"
              + " from the last rinse or cleaned again if it dried.",
          "Solution sheets, safety data sheets, local codes and licensed practice go before this"
              + " list.");

  private static final List<Recipe> ALL =
      List.of(
          copperAlloy("brass", "Brass"),
          copperAlloy("bronze", "Bronze"),
          copperAlloy("copper", "Copper"),
          lowCarbonSteel(),
          castIron(),
          passive("stainless-steel", "Stainless steel (300 and 400 series)"),
          passive("nickel-alloy", "Nickel-base or chrome-base alloy"),
          nickelPlated(),
          chromePlated(),
          zincDieCast(),
          aluminium(),
          silver(),
          pewter());

  private Recipes() {}

  /** All recipes, copper alloys first. */
  public static List<Recipe> all() {
    return ALL;
  }

  /**
   * The recipe of an id.
   *
   * @throws PlatingException if there is none; lists the ids there are
   */
  public static Recipe byId(String id) throws PlatingException {
    for (Recipe recipe : ALL) {
      if (recipe.id().equals(id)) {
        return recipe;
      }
    }
    throw new PlatingException(
        "Recipe \"" + id + "\"",
        "",
        "there is no such recipe",
        "Use one of " + ALL.stream().map(Recipe::id).collect(Collectors.joining(", ")) + ".");
  }

  /** A recipe with the gold steps, finish and general notes that all share. */
  private static Recipe recipe(
      String id, String base, List<Step> preparation, String flashSource, String... notes) {
    List<Step> steps = new ArrayList<>(preparation);
    steps.add(goldFlash(flashSource));
    steps.add(goldBuild());
    steps.add(finalRinse());
    steps.add(dry());
    List<String> all = new ArrayList<>(List.of(notes));
    all.addAll(ALWAYS);
    return new Recipe(id, base, COPPER_ALLOYS.contains(id), steps, all);
  }

  private static Recipe copperAlloy(String id, String base) {
    String faa = FAA + "k, copper and copper-base alloys";
    return recipe(
        id,
        base,
        List.of(
            degrease(""),
            electroclean("8–12 V", Step.DIRECT, 3, "", faa),
            rinse("cleaning", faa),
            nickel(BARRIER, BARRIER_SOURCE),
            rinse("nickel", RINSE_AFTER_NICKEL)),
        faa + ": plate immediately",
        "Nickel lies between copper and gold because copper wanders into gold, tarnishes there and"
            + " spoils colour and wear; ASTM B488 asks for it on copper alloys in all its classes"
            + " but 5.0 (secondary copy).",
        "For wear on the skin ask first: nickel sensitises, and EU law limits its release (REACH"
            + " Annex XVII, entry 27).",
        "ASTM B281 is the practice for preparing copper and its alloys.");
  }

  private static Recipe lowCarbonSteel() {
    String faa = FAA + "m, low-carbon steels";
    return recipe(
        "low-carbon-steel",
        "Low-carbon steel",
        List.of(
            degrease("Take rust and scale off first."),
            electroclean("12–20 V", Step.DIRECT, 3, "", faa),
            rinse("cleaning", faa),
            activate(
                SHEET,
                "",
                2,
                "Uniform, free of rust and smut. " + MAKER,
                "",
                PRACTICE + " (the copy read of FAA AC 43.13-1B lacks this step)"),
            rinse("activating", PRACTICE),
            nickel("Closes the pores of thin gold, under which steel rusts.", PRACTICE),
            rinse("nickel", RINSE_AFTER_NICKEL)),
        faa + ": plate immediately; copper and silver need an undercoat",
        "For steel heat-treated to 180,000 psi at most (FAA); harder steel is embrittled by hydrogen"
            + " and needs baking: leave it to a shop that does it.",
        "ASTM B183 is the practice for preparing low-carbon steel.");
  }

  private static Recipe castIron() {
    String faa = FAA + "n, cast iron and high-carbon steels";
    return recipe(
        "cast-iron",
        "Cast iron or high-carbon steel",
        List.of(
            degrease("Take rust and scale off first."),
            electroclean("12–20 V", Step.DIRECT, 3, "", faa),
            rinse("cleaning", faa),
            new Step(
                "Etch",
                "Takes off the skin that deposits do not hold on.",
                Step.Kind.WET,
                "8–10 V",
                Step.REVERSE,
                0.5,
                2,
                7,
                "Uniform grey.",
                "Etched past grey it pits and smuts: stop sooner on the next section.",
                "Acid: eyes and skin. Mind the pole switch.",
                faa + "; speed, passes and handling: shop setting"),
            rinse("etching", faa),
            activate("15–25 V", "", 2, "The smut is off.", "", faa + ": takes off smut"),
            rinse("activating", faa),
            nickel("Closes the pores of thin gold, under which iron rusts.", PRACTICE),
            rinse("nickel", RINSE_AFTER_NICKEL)),
        faa + ": plate immediately; copper and silver need an undercoat",
        "For steel heat-treated to 180,000 psi at most (FAA); harder steel is embrittled by hydrogen"
            + " and needs baking: leave it to a shop that does it.",
        "ASTM B242 is the guide for preparing high-carbon steel.");
  }

  private static Recipe passive(String id, String base) {
    String faa = FAA + "l, stainless steels, nickel-base and chrome-base alloys";
    return recipe(
        id,
        base,
        List.of(
            degrease(""),
            electroclean("12–20 V", Step.DIRECT, 3, "", faa),
            rinse("cleaning", faa),
            activate(
                "6–20 V",
                Step.DIRECT,
                6,
                "1 to 2 minutes. Do not rinse: nickel follows at once.",
                "The film that keeps it stainless grows back in air within moments.",
                faa),
            nickel(
                "Covers the metal before its film grows back.",
                faa + ": nickel flash of 0.00005–0.0001 in at once"),
            rinse("nickel", faa)),
        faa + ": go on immediately",
        "Reverse current in the cleaner makes stainless steel passive: direct current only"
            + " (published trade column).",
        "ASTM B254 is the practice for stainless steel.");
  }

  private static Recipe nickelPlated() {
    String published =
        "Surface Finishing Guidebook 2013 has a tank route: strong activation, then"
            + " straight to gold; by hand: "
            + PRACTICE;
    return recipe(
        "nickel-plated",
        "Nickel plated (any base)",
        List.of(
            degrease(""),
            electroclean(SHEET, "", 2, "", PRACTICE),
            rinse("cleaning", PRACTICE),
            activate(
                SHEET,
                "",
                3,
                MAKER,
                "Nickel grows its film again in air and even in a long rinse.",
                published),
            rinse("activating", "published trade column: rinse briefly")),
        published,
        "Over chromium nothing holds: have the chromium stripped, then treat as nickel plated."
            + " Some strippers make hexavalent chromium, which is poison and hazardous waste.",
        "Nickel worn through to the base is a barrier no longer: plate nickel anew.",
        "ASTM B343 is the practice for plating nickel on nickel.");
  }

  /** Chromium plate: taken off first, then as nickel plated (published trade column). */
  private static Recipe chromePlated() {
    Recipe nickel = nickelPlated();
    List<Step> steps = new ArrayList<>(nickel.steps());
    steps.add(
        0,
        new Step(
            "Have the chromium stripped",
            "Nothing holds on chromium: its film grows back at once.",
            Step.Kind.DRY_PREPARATION,
            "",
            "",
            0,
            1,
            0,
            "The yellowish nickel beneath shows everywhere; no bluish chromium is left in corners.",
            "Bare copper, brass or steel shows: the nickel is worn through. Plate nickel anew.",
            "Leave it to those equipped for it: some strippers make hexavalent chromium, others gas"
                + " violently.",
            "published trade column (plating on chromium itself is possible but very difficult);"
                + " time: shop setting, none is counted here"));
    return new Recipe("chrome-plated", "Chromium plated (any base)", steps, nickel.notes());
  }

  private static Recipe zincDieCast() {
    String b252 =
        "ASTM B252, zinc alloy die castings (order as far as the copper strike); by hand: "
            + PRACTICE;
    return recipe(
        "zinc-die-cast",
        "Zinc die casting",
        List.of(
            degrease("Do not buff through the skin of the casting."),
            electroclean(SHEET, "", 2, "Briefly: zinc dissolves in it.", b252),
            rinse("cleaning", b252),
            activate(
                "", "", 1, "Brief even wetting with a mild acid.", "No strong acid on zinc.", b252),
            rinse("activating", b252),
            copperStrike(b252),
            rinse("copper", b252),
            nickel(BARRIER, PRACTICE),
            rinse("nickel", RINSE_AFTER_NICKEL)),
        PRACTICE,
        "Copper must cover everywhere before nickel: acid nickel eats bare zinc.");
  }

  private static Recipe aluminium() {
    String faa = FAA + "(steps read; that they stand under aluminium is from memory)";
    return recipe(
        "aluminium",
        "Aluminium",
        List.of(
            degrease(""),
            electroclean(SHEET, "", 2, "Alkali attacks aluminium.", faa),
            rinse("cleaning", faa),
            activate("7–10 V", Step.REVERSE, 2, "Uniform grey to black.", "", faa),
            rinse("activating", faa),
            nickel(
                "Covers aluminium while it is still wet; its oxide grows at once in air.",
                faa + ": nickel while still wet"),
            rinse("nickel", RINSE_AFTER_NICKEL)),
        PRACTICE,
        "Anodised aluminium must be stripped first.",
        "ASTM B253 is the guide for preparing aluminium alloys.");
  }

  private static Recipe silver() {
    return recipe(
        "silver",
        "Silver, sterling or silver plate",
        List.of(
            degrease("Take tarnish off first."),
            electroclean(SHEET, "", 2, "", PRACTICE),
            rinse("cleaning", PRACTICE),
            activate(SHEET, "", 1, MAKER, "", PRACTICE),
            rinse("activating", PRACTICE)),
        PRACTICE,
        "Silver wanders through thin gold in time and tarnishes on it; MIL-DTL-45204D bars silver"
            + " under gold (secondary copy). Nickel between helps, and on silver sold as vermeil"
            + " must be told (16 CFR 23).",
        "Thin silver plate may be worn or cleaned through: look for the base.");
  }

  private static Recipe pewter() {
    return recipe(
        "pewter",
        "Pewter and other tin alloys",
        List.of(
            degrease("Soft: no scouring. Melts low: no hot tools."),
            electroclean(SHEET, "", 2, "Briefly: tin dissolves in it.", PRACTICE),
            rinse("cleaning", PRACTICE),
            activate("", "", 1, "Brief even wetting with a mild acid.", "", PRACTICE),
            rinse("activating", PRACTICE),
            copperStrike(PRACTICE),
            rinse("copper", PRACTICE),
            nickel(BARRIER, PRACTICE),
            rinse("nickel", RINSE_AFTER_NICKEL)),
        PRACTICE,
        "Old pewter may hold lead: keep dust and waste off hands and food, and refuse pieces for"
            + " food or drink.");
  }
}
