package org.seamwright.plating;

import java.util.List;

/**
 * What the plating takes.
 *
 * @param sections by id
 * @param totals the sums
 * @param bands how far the sums may lie off, from the spread of loss and rate
 * @param trace how each kind of figure came about, for the last page of the bench sheet
 */
public record PlatingPlan(
    List<SectionAmounts> sections, Totals totals, Bands bands, List<Trace> trace) {
  /** Copies the lists. */
  public PlatingPlan {
    sections = List.copyOf(sections);
    trace = List.copyOf(trace);
  }

  /**
   * Amounts for one section.
   *
   * @param id its number in working order
   * @param flashG metal in its flash, laps included, g
   * @param buildG metal in its build layer, g
   * @param lossG metal lost, g
   * @param goldG the three together: metal to have ready, g
   * @param solutionMl solution that holds it, ml
   * @param chargeAh charge for flash and build at the stated efficiency, A·h
   * @param seconds all steps, handling included, s
   * @param steps seconds of each step of the recipe, in order, handling included
   */
  public record SectionAmounts(
      int id,
      double flashG,
      double buildG,
      double lossG,
      double goldG,
      double solutionMl,
      double chargeAh,
      double seconds,
      List<Double> steps) {}

  /**
   * Sums over the sections.
   *
   * @param netMm2 plated area
   * @param workedMm2 area worked, laps counted again
   * @param goldG metal to have ready, g
   * @param solutionMl solution that holds it, ml
   * @param chargeAh charge, A·h
   * @param seconds all steps of all sections, s
   */
  public record Totals(
      double netMm2,
      double workedMm2,
      double goldG,
      double solutionMl,
      double chargeAh,
      double seconds) {}

  /**
   * What the sums are likely to be: exact percentiles, since each depends on one spread.
   *
   * @param goldG metal to have ready, g
   * @param solutionMl solution that holds it, ml
   * @param seconds all steps, s
   */
  public record Bands(Band goldG, Band solutionMl, Band seconds) {}

  /**
   * Where a figure comes from.
   *
   * @param figure what it is: "Gold for the flash"
   * @param formula with symbols explained: "m = ρ · t · A"
   * @param inputs the values put in, with units
   * @param source a published source, or "shop setting", or "common practice, no source"
   */
  public record Trace(String figure, String formula, String inputs, String source) {}
}
