package org.seamwright.mask;

/**
 * How far stop-off lacquer goes.
 *
 * <p>Of a wet film only the solids stay, so a volume V leaves V × solids and covers V × solids ÷
 * dry film. That is the theoretical spreading rate of coating makers' general notes: m²/l = 10 ×
 * volume solids in per cent ÷ dry film in µm. What brush, roller or roughness lose comes on top as
 * a share: amounts are divided by 1 − loss.
 */
public final class Lacquer {
  /** A US gallon is 231 cubic inches exactly; a litre 1000 cm³ (NIST SP 811). */
  private static final double LITRES_PER_US_GALLON = 231 * 2.54 * 2.54 * 2.54 / 1000;

  private static final double M2_PER_FT2 = 0.3048 * 0.3048;

  private Lacquer() {}

  /**
   * Theoretical spreading rate of one coat, m²/l.
   *
   * @param solids solids by volume, as a share above 0 up to 1
   * @param dryUm dry film of the coat, µm, above 0
   */
  public static double spreadingM2PerL(double solids, double dryUm) {
    if (!(solids > 0 && solids <= 1) || !(dryUm > 0)) {
      throw new IllegalArgumentException(
          "Solids must be in (0, 1] and the dry film above 0 µm: " + solids + ", " + dryUm);
    }
    return 1000 * solids / dryUm;
  }

  /** The same in square feet per US gallon. */
  public static double spreadingFt2PerUsGallon(double solids, double dryUm) {
    return spreadingM2PerL(solids, dryUm) * LITRES_PER_US_GALLON / M2_PER_FT2;
  }

  /** Wet film that dries to a dry film, µm. */
  public static double wetUm(double solids, double dryUm) {
    return 1000 / spreadingM2PerL(solids, dryUm);
  }

  /**
   * Lacquer to have ready for an area, all coats, loss included.
   *
   * @return ml
   */
  public static double volumeMl(double areaMm2, MaskSettings settings) {
    double rate = spreadingM2PerL(settings.lacquerSolids(), settings.lacquerDryUm());
    double litres = areaMm2 * 1e-6 * settings.lacquerCoats() / rate / (1 - settings.lacquerLoss());
    return litres * 1000;
  }
}
