package org.seamwright.plating;

/**
 * Faraday's law: charge and the metal it lays down.
 *
 * <p>m = η · Q · M / (z · F), with mass m, current efficiency η (share of the charge that lays down
 * metal, above 0 to 1), charge Q, atomic weight M, valence z. Exact but for rounding.
 *
 * <p>F is the product of the elementary charge and the Avogadro constant, both exact since the 2019
 * SI (CODATA 2018).
 */
public final class Faraday {
  /** Charge of one mole of electrons, C/mol. */
  public static final double CONSTANT_C_PER_MOL = 1.602176634e-19 * 6.02214076e23;

  private static final double SECONDS_PER_HOUR = 3600;
  private static final double MM3_PER_CM3 = 1000;
  private static final double UM_PER_MM = 1000;

  private Faraday() {}

  /**
   * Electrochemical equivalent at full efficiency.
   *
   * @return g/A·h
   */
  public static double gramsPerAmpHour(Deposit deposit) {
    return deposit.atomicWeight() * SECONDS_PER_HOUR / (deposit.valence() * CONSTANT_C_PER_MOL);
  }

  /**
   * Metal laid down by a charge.
   *
   * @param chargeAh A·h
   * @param efficiency above 0 to 1
   * @return g
   */
  public static double massG(Deposit deposit, double chargeAh, double efficiency) {
    return gramsPerAmpHour(deposit) * chargeAh * checked(efficiency);
  }

  /**
   * Charge that lays down a mass.
   *
   * @param massG g
   * @param efficiency above 0 to 1
   * @return A·h
   */
  public static double chargeAh(Deposit deposit, double massG, double efficiency) {
    return massG / (gramsPerAmpHour(deposit) * checked(efficiency));
  }

  /**
   * Mass of an even layer.
   *
   * @param areaMm2 mm²
   * @param thicknessUm µm
   * @return g
   */
  public static double layerG(Deposit deposit, double areaMm2, double thicknessUm) {
    return deposit.densityGCm3() * (thicknessUm / UM_PER_MM) * areaMm2 / MM3_PER_CM3;
  }

  /**
   * Rate at which a layer grows under the anode.
   *
   * @param amperesPerDm2 current density, A/dm²
   * @param efficiency above 0 to 1
   * @return µm/min
   */
  public static double umPerMinute(Deposit deposit, double amperesPerDm2, double efficiency) {
    double gramsPerDm2Minute = massG(deposit, amperesPerDm2 / 60, efficiency);
    double mm2PerDm2 = 10_000;
    return gramsPerDm2Minute / layerG(deposit, mm2PerDm2, 1);
  }

  /**
   * Time a charge takes at a current.
   *
   * @param chargeAh A·h
   * @param amperes above 0
   * @return s
   */
  public static double seconds(double chargeAh, double amperes) {
    return chargeAh * SECONDS_PER_HOUR / amperes;
  }

  private static double checked(double efficiency) {
    if (!(efficiency > 0 && efficiency <= 1)) {
      throw new IllegalArgumentException("Efficiency must be above 0, to 1: " + efficiency);
    }
    return efficiency;
  }
}
