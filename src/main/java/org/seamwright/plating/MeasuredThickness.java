package org.seamwright.plating;

import org.seamwright.basis.Sum;

/**
 * Mean thickness of what was laid down, from what was measured at the bench, with its uncertainty.
 *
 * <p>By mass gain t = Δm / (ρ A), by solution used t = c V s / (ρ A), by charge t = η Q M / (z F ρ
 * A). Uncertainties are standard ones (one sigma), combined to first order for independent inputs:
 * for a product the relative ones add in squares (JCGM 100:2008, 5.1.2 and 5.1.6). A reading of
 * resolution d has u = d/√12 (F.2.2.1). The density of the deposit is taken as given; 19.3 g/cm³
 * for a lighter hard gold reads thin. Published methods, as information: mass ASTM B767; XRF ASTM
 * B568 and ISO 3497 (numbers from memory).
 *
 * @param um mean thickness, µm
 * @param standardUm standard uncertainty, µm
 */
public record MeasuredThickness(double um, double standardUm) {
  private static final double MM3_PER_CM3 = 1000;
  private static final double UM_PER_MM = 1000;
  private static final double ML_PER_L = 1000;
  private static final double MM2_PER_CM2 = 100;
  private static final double SECONDS_PER_MINUTE = 60;

  /**
   * A value with its standard uncertainty, both in the unit of the value.
   *
   * @param value above 0
   * @param standard not negative
   */
  public record Figure(double value, double standard) {
    /** Checks the ranges. */
    public Figure {
      if (!(value > 0) || !(standard >= 0) || Double.isInfinite(value)) {
        throw new IllegalArgumentException("Out of range: " + value + " ± " + standard);
      }
    }

    /** A reading of an instrument that shows steps of {@code resolution}: u = d/√12. */
    public static Figure read(double value, double resolution) {
      return new Figure(value, resolution / Math.sqrt(12));
    }

    private double relative() {
      return standard / value;
    }
  }

  /**
   * What is missing to a target.
   *
   * @param um µm still to lay down; 0 if the target is reached
   * @param massG g
   * @param chargeAh A·h
   * @param minutes min
   */
  public record Missing(double um, double massG, double chargeAh, double minutes) {}

  /**
   * From the gain in mass.
   *
   * @param beforeG reading before, g
   * @param afterG reading after, g; above {@code beforeG}
   * @param resolutionG step of the scale, g; both readings carry it
   * @param areaMm2 plated area, mm²
   */
  public static MeasuredThickness fromMassGain(
      Deposit deposit, double beforeG, double afterG, double resolutionG, Figure areaMm2) {
    return from(deposit, new Figure(afterG - beforeG, resolutionG / Math.sqrt(6)), areaMm2);
  }

  /**
   * From the solution used up.
   *
   * @param gPerL metal in the solution, g/l
   * @param usedMl solution used, ml
   * @param laidShare share of its metal that is on the piece, up to 1
   * @param areaMm2 plated area, mm²
   */
  public static MeasuredThickness fromSolution(
      Deposit deposit, Figure gPerL, Figure usedMl, Figure laidShare, Figure areaMm2) {
    if (laidShare.value() > 1) {
      throw new IllegalArgumentException("A share is at most 1: " + laidShare.value());
    }
    double massG = gPerL.value() * usedMl.value() / ML_PER_L * laidShare.value();
    double relative =
        Math.hypot(Math.hypot(gPerL.relative(), usedMl.relative()), laidShare.relative());
    return from(deposit, new Figure(massG, massG * relative), areaMm2);
  }

  /**
   * From the charge passed.
   *
   * @param chargeAh A·h
   * @param efficiency cathode current efficiency, up to 1
   * @param areaMm2 plated area, mm²
   */
  public static MeasuredThickness fromCharge(
      Deposit deposit, Figure chargeAh, Figure efficiency, Figure areaMm2) {
    double massG = Faraday.massG(deposit, chargeAh.value(), efficiency.value());
    double relative = Math.hypot(chargeAh.relative(), efficiency.relative());
    return from(deposit, new Figure(massG, massG * relative), areaMm2);
  }

  private static MeasuredThickness from(Deposit deposit, Figure massG, Figure areaMm2) {
    double um =
        massG.value() * (MM3_PER_CM3 * UM_PER_MM) / (deposit.densityGCm3() * areaMm2.value());
    return new MeasuredThickness(um, um * Math.hypot(massG.relative(), areaMm2.relative()));
  }

  /**
   * How much more to lay down to reach a target on the mean.
   *
   * @param targetUm µm
   * @param areaMm2 area, mm²
   * @param efficiency cathode current efficiency, above 0 to 1
   * @param secondsPerCm2PerUm plating rate, s
   */
  public Missing missing(
      Deposit deposit,
      double targetUm,
      double areaMm2,
      double efficiency,
      double secondsPerCm2PerUm) {
    double more = Math.max(0, targetUm - um);
    double massG = Faraday.layerG(deposit, areaMm2, more);
    return new Missing(
        more,
        massG,
        Faraday.chargeAh(deposit, massG, efficiency),
        more * (areaMm2 / MM2_PER_CM2) * secondsPerCm2PerUm / SECONDS_PER_MINUTE);
  }

  /**
   * Spot readings of one section, such as by XRF.
   *
   * @param count how many
   * @param meanUm mean, µm
   * @param spreadUm sample standard deviation (n − 1), µm; 0 for a single reading
   * @param leastUm least reading, µm
   */
  public record Spots(int count, double meanUm, double spreadUm, double leastUm) {
    /** Sums up readings, of which there is at least one, µm. */
    public static Spots of(double... um) {
      if (um.length == 0) {
        throw new IllegalArgumentException("No readings");
      }
      Sum sum = new Sum();
      double least = um[0];
      for (double reading : um) {
        sum.add(reading);
        least = Math.min(least, reading);
      }
      double mean = sum.value() / um.length;
      Sum squares = new Sum();
      for (double reading : um) {
        squares.add((reading - mean) * (reading - mean));
      }
      double spread = um.length == 1 ? 0 : Math.sqrt(squares.value() / (um.length - 1));
      return new Spots(um.length, mean, spread, least);
    }
  }
}
