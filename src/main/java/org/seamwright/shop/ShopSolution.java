package org.seamwright.shop;

import java.util.Locale;
import java.util.OptionalDouble;
import org.seamwright.plating.Solution;

/**
 * A solution that the shop works with, as its sheet has it.
 *
 * @param deposit id of the metal
 * @param gPerL metal in it, g/l
 * @param usableShare share of that metal that can be laid down before it is spent, above 0 to 1
 * @param mostAhPerL charge that a litre can take before it is spent, A·h/l, if known
 * @param sheet name, form, voltage, anode, keeping
 */
public record ShopSolution(
    String deposit, double gPerL, double usableShare, OptionalDouble mostAhPerL, Solution sheet) {
  /** For people, on one line. */
  public String line() {
    return sheet.name()
        + " ("
        + deposit
        + "), "
        + sheet.form().name().toLowerCase(Locale.ROOT)
        + String.format(Locale.ROOT, ", %.4g g/l, %.3g %% usable", gPerL, 100 * usableShare)
        + (sheet.volts().isEmpty() ? "" : ", " + sheet.volts());
  }
}
