package org.seamwright.plating;

import java.util.List;

/**
 * What a plater watches for and a customer asks about: common practice without a published source,
 * and said so wherever it is shown.
 */
public final class Notes {
  /** What every list of these notes must say. */
  public static final String SOURCE = "common practice, no source";

  private Notes() {}

  /** Colour while working and after. */
  public static List<String> colour() {
    return List.of(
        "Fresh gold looks lighter than it will; the colour settles within about 24 hours.",
        "Gold laid over the flash may look darker at first.",
        "A dark or bronze burn means too much voltage or a tool at rest. Stop and find out why before"
            + " going on; rub it off gently, rinse and go over it again.");
  }

  /** What shortens the life of a deposit. */
  public static List<String> wear() {
    return List.of(
        "Gold wears first where hands and cloths rub: rims, edges, raised letters.",
        "Polish, abrasive cloths and strong cleaners take gold off; wipe with a soft, damp cloth.",
        "Sweat, salt and chlorine reach the metal beneath through the pores of thin gold.");
  }

  /** Anode and sleeve. */
  public static List<String> anode() {
    return List.of(
        "Anode: graphite or platinised, unless the solution's sheet names another. Metals that"
            + " dissolve in the solution spoil it.",
        "A sleeve serves one solution only. Worn through it lets the anode touch the piece: it burns."
            + " Change it before.");
  }

  /** How solutions keep. */
  public static List<String> storage() {
    return List.of(
        "Gel spoils if it freezes; store it and solutions as their sheets say.",
        "Gold that dried in the tray may be revived with a few drops of distilled water.",
        "Solution that was used goes back into a bottle of its own, never into the fresh one; mark it"
            + " with what it can still lay down (MIL-STD-2197A 4.5.9).");
  }

  /** What to do when something goes wrong. */
  public static List<String> rules() {
    return List.of(
        "A section that dries before it is covered starts again from its first step.",
        "Something looks wrong: stop and find out why before going on.");
  }
}
