package org.seamwright.plating;

import java.util.Objects;

/**
 * What the user chose for the deposit, and the shop's own rates.
 *
 * @param recipe the steps
 * @param deposit the metal laid down
 * @param flashUm thickness of the flash, µm
 * @param buildUm thickness of the build layer over it, µm; 0 for none. Flash and build together are
 *     the thickness promised
 * @param loss share of the area added for drips and over-deposit: 1/3 means a third more
 * @param solutionGPerL metal in the solution as bought, g/l
 * @param usableShare share of that metal that can be laid down before the solution is spent, above
 *     0 to 1
 * @param pace time to lay one µm over one cm², s
 * @param efficiency cathode current efficiency, above 0 to 1
 * @param tool what is known of tool and supply
 */
public record PlatingSettings(
    Recipe recipe,
    Deposit deposit,
    double flashUm,
    double buildUm,
    Spread loss,
    double solutionGPerL,
    double usableShare,
    Spread pace,
    double efficiency,
    Tool tool) {
  /** Checks the ranges. */
  public PlatingSettings {
    Objects.requireNonNull(tool, "tool");
    if (!(flashUm > 0) || !(buildUm >= 0) || !(loss.low() >= 0)) {
      throw new IllegalArgumentException("Thickness or loss out of range");
    }
    if (!(solutionGPerL > 0)
        || !(usableShare > 0 && usableShare <= 1)
        || !(pace.low() > 0)
        || !(efficiency > 0 && efficiency <= 1)) {
      throw new IllegalArgumentException("Solution, rate or efficiency out of range");
    }
  }

  /** With loss and rate known to a point, and nothing known of the tool. */
  public PlatingSettings(
      Recipe recipe,
      Deposit deposit,
      double flashUm,
      double buildUm,
      double lossShare,
      double solutionGPerL,
      double usableShare,
      double secondsPerCm2PerUm,
      double efficiency) {
    this(
        recipe,
        deposit,
        flashUm,
        buildUm,
        Spread.point(lossShare),
        solutionGPerL,
        usableShare,
        Spread.point(secondsPerCm2PerUm),
        efficiency,
        Tool.UNKNOWN);
  }

  /** The likely loss. */
  public double lossShare() {
    return loss.likely();
  }

  /** The likely rate, s per cm² and µm. */
  public double secondsPerCm2PerUm() {
    return pace.likely();
  }

  /** Flash and build together, µm. */
  public double thicknessUm() {
    return flashUm + buildUm;
  }

  /**
   * The same for another thickness.
   *
   * @param thicknessUm flash and build together, µm; a thickness below the flash's makes the flash
   *     thinner
   */
  public PlatingSettings withThicknessUm(double thicknessUm) {
    double flash = Math.min(flashUm, thicknessUm);
    return new PlatingSettings(
        recipe,
        deposit,
        flash,
        thicknessUm - flash,
        loss,
        solutionGPerL,
        usableShare,
        pace,
        efficiency,
        tool);
  }
}
