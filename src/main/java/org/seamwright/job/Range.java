package org.seamwright.job;

/**
 * What values a number in the job file may take.
 *
 * @param low lower end
 * @param lowAllowed whether the lower end itself is allowed
 * @param high upper end
 * @param highAllowed whether the upper end itself is allowed
 * @param words how a message says it: "must be above 0"
 */
record Range(double low, boolean lowAllowed, double high, boolean highAllowed, String words) {
  /** A thousand kilometres: no piece is larger, and products of three such lengths stay finite. */
  private static final double HUGE = 1e9;

  static final Range ANY =
      new Range(-HUGE, true, HUGE, true, "must lie between -1,000,000,000 and 1,000,000,000");
  static final Range ABOVE_ZERO =
      new Range(0, false, HUGE, true, "must be above 0 and at most 1,000,000,000");
  static final Range ZERO_UP = new Range(0, true, HUGE, true, "must be from 0 to 1,000,000,000");
  static final Range SHARE = new Range(0, false, 1, true, "must be above 0 and at most 1");
  static final Range TIMES =
      new Range(1, true, 1000, true, "must be from 1 to 1000, as a multiple: 4 for four times");
  static final Range LOSS_SHARE =
      new Range(0, true, 10, true, "must be from 0 to 10, as a share: 0.33 for a third more");
  static final Range LOST_PART =
      new Range(0, true, 1, false, "must be from 0 to below 1, as a share: 0.15 for 15 in 100");
  static final Range LOST_UP_TO_ALL = new Range(0, true, 1, true, "must be from 0 to 1");
  static final Range CREASE = new Range(0, false, 180, true, "must be above 0 and at most 180");
  static final Range COPIES = new Range(2, true, 360, true, "must be a whole number from 2 to 360");
  static final Range STRIPS = new Range(1, true, 400, true, "must be a whole number from 1 to 400");
  static final Range PARTS = new Range(2, true, 100, true, "must be a whole number from 2 to 100");
  static final Range COATS = new Range(0, true, 20, true, "must be a whole number from 0 to 20");

  static final Range PASSES =
      new Range(1, true, 1000, true, "must be a whole number from 1 to 1000");

  static final Range DAYS = new Range(0, true, 3650, true, "must be a whole number from 0 to 3650");

  static final Range COUNT =
      new Range(1, true, 1_000_000, true, "must be a whole number from 1 to 1,000,000");

  /** Whether a value is in the range; never for NaN. */
  boolean holds(double value) {
    return (value > low || (lowAllowed && value == low))
        && (value < high || (highAllowed && value == high));
  }
}
