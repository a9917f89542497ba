package org.seamwright.shop;

/**
 * One section plated once. A figure that was not noted is NaN; a text that was not, empty.
 *
 * @param id number in the book; 0 before it is entered
 * @param job name of the job
 * @param section name of the section
 * @param deposit id of the metal
 * @param operator who plated
 * @param date ISO date
 * @param solutionMl solution used, ml
 * @param gPerL metal in it, g/l
 * @param usableShare share of that metal that can be laid down
 * @param minutes time under the anode for the build of the layer, min
 * @param ampHours charge, A·h
 * @param beforeG weight before, g
 * @param afterG weight after, g
 * @param readingsUm thickness readings, µm, separated by blanks
 * @param photos paths, one a line
 * @param notes free text
 */
public record Run(
    long id,
    String job,
    String section,
    String deposit,
    String operator,
    String date,
    double solutionMl,
    double gPerL,
    double usableShare,
    double minutes,
    double ampHours,
    double beforeG,
    double afterG,
    String readingsUm,
    String photos,
    String notes) {
  /** Gain in weight, g; NaN if either weight is missing. */
  public double gainG() {
    return afterG - beforeG;
  }
}
