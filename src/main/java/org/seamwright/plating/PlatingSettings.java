package org.seamwright.plating;

/**
 * What the user chose for the deposit, and the shop's own rates.
 *
 * @param recipe the steps
 * @param deposit the metal laid down
 * @param flashUm thickness of the flash, µm
 * @param buildUm thickness of the build layer over it, µm; 0 for none. Flash and build together are
 *     the thickness promised
 * @param lossShare share of the area added for drips and over-deposit: 1/3 means a third more
 * @param solutionGPerL metal in the solution as bought, g/l
 * @param usableShare share of that metal that can be laid down before the solution is spent, above
 *     0 to 1
 * @param secondsPerCm2PerUm time to lay one µm over one cm², s
 * @param efficiency cathode current efficiency, above 0 to 1
 */
public record PlatingSettings(
    Recipe recipe,
    Deposit deposit,
    double flashUm,
    double buildUm,
    double lossShare,
    double solutionGPerL,
    double usableShare,
    double secondsPerCm2PerUm,
    double efficiency) {
  /** Checks the ranges. */
  public PlatingSettings {
    if (!(flashUm > 0) || !(buildUm >= 0) || !(lossShare >= 0)) {
      throw new IllegalArgumentException("Thickness or loss out of range");
    }
    if (!(solutionGPerL > 0)
        || !(usableShare > 0 && usableShare <= 1)
        || !(secondsPerCm2PerUm > 0)
        || !(efficiency > 0 && efficiency <= 1)) {
      throw new IllegalArgumentException("Solution, rate or efficiency out of range");
    }
  }
}
