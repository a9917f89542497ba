package org.seamwright.job;

import org.seamwright.mask.MaskSettings;
import org.seamwright.plating.PlatingDefaults;

/**
 * What a job holds where its file is silent. Each figure is a starting point for the shop's own,
 * common practice without a published source unless said otherwise; {@code docs/job-file.md} lists
 * them all.
 */
public final class JobDefaults {
  /** Base metal that a new job is written for unless another is named. */
  public static final String RECIPE = "brass";

  private static final double INCH_MM = 25.4;

  private JobDefaults() {}

  /** Name of the piece: that of its mesh file without folder and ending. */
  public static String piece(String meshFile) {
    String name = meshFile.substring(meshFile.lastIndexOf('/') + 1);
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  /** The limit that the usual wet window allows; the usual laps. */
  public static Job.SectionRules sections() {
    return new Job.SectionRules(
        new Job.Limit.Wet(PlatingDefaults.WET_WINDOW_SECONDS),
        PlatingDefaults.ACTIVATION_LAP_MM,
        PlatingDefaults.FLASH_LAP_MM);
  }

  /**
   * The usual thickness, loss and rates, whose sources stand in {@link PlatingDefaults}.
   *
   * @param recipe id of the recipe, which depends on the base metal and has no default
   */
  public static Job.PlatingRules plating(String recipe) {
    return new Job.PlatingRules(
        recipe,
        PlatingDefaults.DEPOSIT,
        PlatingDefaults.FLASH_UM,
        PlatingDefaults.THICKNESS_UM,
        PlatingDefaults.LOSS_SHARE,
        PlatingDefaults.SOLUTION_G_PER_L,
        PlatingDefaults.USABLE_SHARE,
        PlatingDefaults.SECONDS_PER_CM2_PER_UM,
        PlatingDefaults.EFFICIENCY);
  }

  /** Half-inch tape, 5 mm over itself at a join; two coats of lacquer for 50 mm beyond. */
  public static MaskSettings masking() {
    return new MaskSettings(INCH_MM / 2, 5, 33_000, 50, 0.25, 25, 2, 0.15);
  }
}
