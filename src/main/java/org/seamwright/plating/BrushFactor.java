package org.seamwright.plating;

import java.util.Map;
import java.util.Optional;

/**
 * Charge that a brush solution needs for a volume of deposit: the factor of the brush-plating
 * handbooks.
 *
 * <p>Handbooks print it in two forms 10⁴ apart, A·h for 0.0001 in on one in² and A·h per in³;
 * {@link #perIn2TenthMil} and {@link #perIn3} make either plain. A factor already holds the current
 * efficiency of its solution: never divide by an efficiency again. Gold's 0.006 against Faraday's
 * 0.0043 means about 72%.
 *
 * <p>Sources: ASM Handbook vol. 5, "Selective (Brush) Plating", table 1; Surface Finishing
 * Guidebook 2011–2012, "Selective plating processes".
 *
 * @param ampHoursPerCm3 A·h per cm³ of deposit
 */
public record BrushFactor(double ampHoursPerCm3) {
  private static final double CM3_PER_IN3 = 2.54 * 2.54 * 2.54;

  /** Volumes of 0.0001 in on 1 in² in one in³. */
  private static final double TENTH_MILS_PER_INCH = 10_000;

  /**
   * ASM Handbook vol. 5, table 1, by deposit id. Nickel is absent because its factor runs from
   * 0.017 to 0.047 with the solution; silver because the printed 0.004 would need 107% efficiency.
   */
  private static final Map<String, Double> HANDBOOK =
      Map.of(
          "gold-hard",
          0.006,
          "gold-soft",
          0.006,
          "copper",
          0.013,
          "palladium",
          0.019,
          "rhodium",
          0.030);

  /** Checks the range. */
  public BrushFactor {
    if (!(ampHoursPerCm3 > 0) || Double.isInfinite(ampHoursPerCm3)) {
      throw new IllegalArgumentException("Brush factor must be above 0: " + ampHoursPerCm3);
    }
  }

  /**
   * From the form "A·h to lay 0.0001 in on one in²".
   *
   * @param ampHours for example 0.006
   */
  public static BrushFactor perIn2TenthMil(double ampHours) {
    return perIn3(ampHours * TENTH_MILS_PER_INCH);
  }

  /**
   * From the form "A·h per in³".
   *
   * @param ampHours for example 150
   */
  public static BrushFactor perIn3(double ampHours) {
    return new BrushFactor(ampHours / CM3_PER_IN3);
  }

  /** The handbook's factor for a metal, where it names one that stands up to Faraday's law. */
  public static Optional<BrushFactor> handbook(Deposit deposit) {
    return Optional.ofNullable(HANDBOOK.get(deposit.id())).map(BrushFactor::perIn2TenthMil);
  }

  /** A·h to lay 0.0001 in on one in². */
  public double perIn2TenthMil() {
    return perIn3() / TENTH_MILS_PER_INCH;
  }

  /** A·h per in³. */
  public double perIn3() {
    return ampHoursPerCm3 * CM3_PER_IN3;
  }

  /**
   * Charge for an even layer, efficiency included.
   *
   * @param areaMm2 mm²
   * @param thicknessUm µm
   * @return A·h
   */
  public double chargeAh(double areaMm2, double thicknessUm) {
    double cm2 = areaMm2 / 100;
    double cm = thicknessUm / 10_000;
    return ampHoursPerCm3 * cm2 * cm;
  }

  /**
   * Current efficiency that the factor holds: Faraday's charge for the same volume over the
   * factor's.
   *
   * @return a share; above 1 the factor cannot be right for that metal
   */
  public double efficiency(Deposit deposit) {
    return Faraday.chargeAh(deposit, deposit.densityGCm3(), 1) / ampHoursPerCm3;
  }

  /**
   * Solution used up by a charge, where its maker limits the charge per litre.
   *
   * @param chargeAh A·h
   * @param mostAhPerL recommended most, A·h/l
   * @return ml
   */
  public static double solutionMl(double chargeAh, double mostAhPerL) {
    return chargeAh / mostAhPerL * 1000;
  }
}
