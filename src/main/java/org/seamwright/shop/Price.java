package org.seamwright.shop;

/**
 * A line of the user's own price list.
 *
 * @param id number in the book; 0 before it is entered
 * @param what what is sold, such as the name of a solution
 * @param size how much is in it, in {@code unit}
 * @param unit "g" (of metal) or "ml"
 * @param hundredths price in hundredths of the currency
 * @param currency as the user writes it
 */
public record Price(
    long id, String what, double size, String unit, long hundredths, String currency) {
  /** Checks the ranges. */
  public Price {
    if (!(size > 0) || hundredths <= 0 || !(unit.equals("g") || unit.equals("ml"))) {
      throw new IllegalArgumentException("Price out of range");
    }
  }
}
