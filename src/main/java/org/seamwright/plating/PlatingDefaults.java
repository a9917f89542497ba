package org.seamwright.plating;

import java.util.List;

/**
 * What a new job starts with. Every value is the shop's to replace after a trial on scrap; each
 * says where it comes from.
 */
public final class PlatingDefaults {
  private static final String SHOP = "shop setting";
  private static final String PRACTICE = "common practice, no source";

  /** Metal of a new job. */
  public static final String DEPOSIT = "gold-hard";

  /** Flash, µm: 3 µin, at which gold covers (common practice, no source). */
  public static final double FLASH_UM = 0.0762;

  /** Flash and build together, µm: what 16 CFR 23 takes for reasonable durability (from memory). */
  public static final double THICKNESS_UM = 0.5;

  /** Share added for drips and over-deposit: a third (common practice, no source). */
  public static final double LOSS_SHARE = 0.33;

  /** Gold in the solution, g/l: a lean one, so that enough is bought (shop setting). */
  public static final double SOLUTION_G_PER_L = 8;

  /** Share of that gold that can be laid down (shop setting). */
  public static final double USABLE_SHARE = 0.8;

  /**
   * Time to lay 1 µm on 1 cm², s: makes 3 µin take 12.3 s per in², inside the 10–15 s that opaque
   * gold is said to take (common practice, no source).
   */
  public static final double SECONDS_PER_CM2_PER_UM = 25;

  /** Current efficiency: what gold's brush factor 0.006 comes to (ASM Handbook vol. 5). */
  public static final double EFFICIENCY = 0.72;

  /** How long a wetted place stays wet, s (shop setting). */
  public static final double WET_WINDOW_SECONDS = 45;

  /** Width of the activation lap, mm (shop setting). */
  public static final double ACTIVATION_LAP_MM = 2;

  /** Width of the flash lap, mm (shop setting). */
  public static final double FLASH_LAP_MM = 5;

  private static final List<Default> ALL =
      List.of(
          new Default("flash thickness", FLASH_UM, "µm", PRACTICE + ": gold is opaque at 3 µin"),
          new Default(
              "thickness",
              THICKNESS_UM,
              "µm",
              "16 CFR 23, \"reasonable durability\" (from memory); ASTM B488 class 0.50"),
          new Default("loss share", LOSS_SHARE, "", PRACTICE + ": a third added"),
          new Default(
              "metal in the solution",
              SOLUTION_G_PER_L,
              "g/l",
              SHOP
                  + ": read it off the bottle. Tank gold rarely holds more than 8.2 g/l (Metals"
                  + " Handbook); brush solutions often do (from memory)"),
          new Default("usable share", USABLE_SHARE, "", SHOP),
          new Default(
              "plating rate",
              SECONDS_PER_CM2_PER_UM,
              "s per cm² per µm",
              PRACTICE + ": 3 µin in 10–15 s per in²"),
          new Default(
              "efficiency",
              EFFICIENCY,
              "",
              "ASM Handbook vol. 5, brush factor 0.006 A·h per in² per 0.0001 in, against Faraday's"
                  + " law"),
          new Default("wet window", WET_WINDOW_SECONDS, "s", SHOP),
          new Default("activation lap", ACTIVATION_LAP_MM, "mm", SHOP),
          new Default("flash lap", FLASH_LAP_MM, "mm", SHOP));

  private PlatingDefaults() {}

  /**
   * One starting value.
   *
   * @param name what it is
   * @param value the value
   * @param unit its unit; empty for a share
   * @param source a published source, "shop setting", or "common practice, no source"
   */
  public record Default(String name, double value, String unit, String source) {}

  /** All starting values with their sources, for help and papers. */
  public static List<Default> all() {
    return ALL;
  }

  /**
   * Settings of a new job for a base metal and a metal laid down.
   *
   * @param recipe steps
   * @param deposit metal
   */
  public static PlatingSettings settings(Recipe recipe, Deposit deposit) {
    return new PlatingSettings(
        recipe,
        deposit,
        FLASH_UM,
        THICKNESS_UM - FLASH_UM,
        LOSS_SHARE,
        SOLUTION_G_PER_L,
        USABLE_SHARE,
        SECONDS_PER_CM2_PER_UM,
        EFFICIENCY);
  }
}
