package org.seamwright.plating;

import java.util.OptionalDouble;

/**
 * What is known of the plating tool and its solution. All of it is the shop's to measure or to read
 * off the solution's sheet: no published figure for gold laid on by hand was found.
 *
 * @param dipMl solution that the sleeve takes up in one dip, ml
 * @param contactMm2 area that the tool touches at once, mm²
 * @param amperesPerCm2 mean current density on that area, A/cm²
 * @param mostAhPerL charge that a litre of solution can take before it is spent, A·h/l
 */
public record Tool(
    OptionalDouble dipMl,
    OptionalDouble contactMm2,
    OptionalDouble amperesPerCm2,
    OptionalDouble mostAhPerL) {
  /** Nothing known. */
  public static final Tool UNKNOWN =
      new Tool(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  private static final double MM2_PER_CM2 = 100;

  /** Checks the ranges. */
  public Tool {
    for (OptionalDouble figure :
        new OptionalDouble[] {dipMl, contactMm2, amperesPerCm2, mostAhPerL}) {
      if (figure.isPresent() && !(figure.getAsDouble() > 0)) {
        throw new IllegalArgumentException("Figures of a tool are above 0: " + figure);
      }
    }
  }

  /**
   * Current that the tool draws: contact area × mean current density (Surface Finishing Guidebook
   * 2011–2012, "Selective plating processes").
   *
   * @return A; empty unless both are known
   */
  public OptionalDouble amperes() {
    return contactMm2.isPresent() && amperesPerCm2.isPresent()
        ? OptionalDouble.of(contactMm2.getAsDouble() / MM2_PER_CM2 * amperesPerCm2.getAsDouble())
        : OptionalDouble.empty();
  }

  /**
   * Time to pass a charge, s: charge over current (same source).
   *
   * @param chargeAh A·h
   * @return s; empty unless the current is known
   */
  public OptionalDouble seconds(double chargeAh) {
    OptionalDouble amperes = amperes();
    return amperes.isPresent()
        ? OptionalDouble.of(chargeAh * 3600 / amperes.getAsDouble())
        : OptionalDouble.empty();
  }

  /**
   * Solution that a charge uses up: charge over the most per litre (same source).
   *
   * @param chargeAh A·h
   * @return ml; empty unless the most per litre is known
   */
  public OptionalDouble solutionMl(double chargeAh) {
    return mostAhPerL.isPresent()
        ? OptionalDouble.of(BrushFactor.solutionMl(chargeAh, mostAhPerL.getAsDouble()))
        : OptionalDouble.empty();
  }

  /**
   * Dips into the solution.
   *
   * @param solutionMl solution used, ml
   * @return whole dips; empty unless the sleeve's take is known
   */
  public OptionalDouble dips(double solutionMl) {
    return dipMl.isPresent()
        ? OptionalDouble.of(Math.ceil(solutionMl / dipMl.getAsDouble() - 1e-9))
        : OptionalDouble.empty();
  }
}
