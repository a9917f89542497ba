package org.seamwright.plating;

import java.util.List;

/**
 * What every bench of this kind must heed, with public limits where they were read. A reminder for
 * papers, not a safety plan: safety data sheets, local codes and licensed practice go before it.
 */
public final class Cautions {
  private static final List<Caution> ALL =
      List.of(
          new Caution(
              "Cyanide and acid never meet",
              "Many gold, silver and copper solutions hold cyanide; with acid they give off hydrogen"
                  + " cyanide, which kills. Keep them apart: bottles, tools, drips, rinses, waste"
                  + " and run-off too. Smell is no warning.",
              "Cyanides (as CN): 5 mg/m³ over 8 h, skin; 4.7 ppm (5 mg/m³) ceiling over 10 min;"
                  + " immediately dangerous at 25 mg/m³",
              "MIL-STD-2197A 4.6.5; 29 CFR 1910.1000; OSHA sampling page CH_230400 (NIOSH limits)"),
          new Caution(
              "Nickel sensitises",
              "Skin once made allergic stays so. No skin contact with nickel solutions, salts or"
                  + " dust; think of who will wear the piece.",
              "Nickel: 1 mg/m³ (OSHA), 0.015 mg/m³ (NIOSH); release to skin 0.5 µg/cm² a week (EU)",
              "NIOSH Pocket Guide; REACH Annex XVII, entry 27"),
          new Caution(
              "Hexavalent chromium",
              "Stripping chromium can make it. Leave chromium plate to those equipped for it.",
              "5 µg/m³ over 8 h, action level 2.5 µg/m³",
              "29 CFR 1910.1026"),
          new Caution(
              "Sulfite gold",
              "With acid, sulfite solutions give off sulfur dioxide.",
              "Sulfur dioxide: 5 ppm (13 mg/m³) over 8 h",
              "OSHA method 1011"),
          new Caution(
              "Air, hands, eyes",
              "Ventilate at the work. Goggles, apron, gloves that resist acid and alkali, taped to"
                  + " the sleeves. A quick eye wash in the work area; 15 minutes of flushing.",
              "Eye wash within 10 s, 1.5 l/min for 15 min",
              "29 CFR 1910.151(c); ANSI Z358.1; MIL-STD-2197A 4.6.3"),
          new Caution(
              "Current",
              "Low voltage, high current, wet hands: sound leads, no bare joints, supply off before"
                  + " tools are changed over. Mind the pole switch.",
              "",
              "common practice, no source"),
          new Caution(
              "Solvents and lacquer",
              "They burn and their vapour harms: no flame, ventilate, lids on.",
              "",
              "common practice, no source"),
          new Caution(
              "Waste",
              "Spent solutions, rinses, wipes, tape and sludge are collected and handed to licensed"
                  + " disposal or, for their gold, to a refiner; nothing goes down the drain.",
              "Sludge of electroplating is listed waste F006",
              "40 CFR 261.31"));

  private Cautions() {}

  /**
   * One caution.
   *
   * @param title a few words
   * @param text what to do
   * @param limits public limits; empty where there is none to name
   * @param source where the limits and the rule were read, or "common practice, no source"
   */
  public record Caution(String title, String text, String limits, String source) {}

  /** All cautions, the deadliest first. */
  public static List<Caution> all() {
    return ALL;
  }

  /** The sentence that belongs under every list of cautions. */
  public static String rule() {
    return "Safety data sheets, local codes and licensed practice go before anything said here.";
  }
}
