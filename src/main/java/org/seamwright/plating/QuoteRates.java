package org.seamwright.plating;

import java.util.Objects;

/**
 * What the shop charges: its own rates, currency and tax. Money in units of the currency.
 *
 * @param currency as it is to be shown, such as {@code EUR}
 * @param labourPerHour wage and machine, per hour
 * @param extraHours hours beside the work at the piece: masking, setting up, packing
 * @param goldPerG price of a gram of the metal laid down, in its solution
 * @param tapePerMetre price of tape
 * @param lacquerPerLitre price of stop-off lacquer
 * @param materials everything else that the job uses up, as one sum
 * @param overhead share of labour, metal and materials added for running the shop
 * @param margin share of all of that added
 * @param minimum least price before tax
 * @param tax share of the price added
 * @param validDays how long the price holds, days; 0 for no word about it
 * @param onSheet whether the customer sheet shows the price
 */
public record QuoteRates(
    String currency,
    double labourPerHour,
    double extraHours,
    double goldPerG,
    double tapePerMetre,
    double lacquerPerLitre,
    double materials,
    double overhead,
    double margin,
    double minimum,
    double tax,
    int validDays,
    boolean onSheet) {
  /** Checks the ranges. */
  public QuoteRates {
    Objects.requireNonNull(currency, "currency");
    double[] all = {
      labourPerHour,
      extraHours,
      goldPerG,
      tapePerMetre,
      lacquerPerLitre,
      materials,
      overhead,
      margin,
      minimum,
      tax,
      validDays
    };
    for (double rate : all) {
      if (!(rate >= 0) || Double.isInfinite(rate)) {
        throw new IllegalArgumentException("Rates are not negative: " + rate);
      }
    }
  }
}
