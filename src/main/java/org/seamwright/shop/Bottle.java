package org.seamwright.shop;

/**
 * A bottle of solution.
 *
 * @param id number in the book; 0 before it is entered
 * @param solution what it is called, the same as in the price list
 * @param deposit id of the metal
 * @param fullG metal in it when full, g
 * @param gPerL metal per litre, g/l
 * @param openedOn ISO date; empty if not opened
 * @param remainingG metal left, g
 */
public record Bottle(
    long id,
    String solution,
    String deposit,
    double fullG,
    double gPerL,
    String openedOn,
    double remainingG) {
  /** Checks the ranges. */
  public Bottle {
    if (!(fullG > 0) || !(gPerL > 0) || !(remainingG >= 0 && remainingG <= fullG)) {
      throw new IllegalArgumentException("Bottle out of range");
    }
  }
}
