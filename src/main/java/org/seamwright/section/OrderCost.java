package org.seamwright.section;

/**
 * What an order of work costs, compared from left to right: area activated three times or more,
 * area of laps, way of the hand. Areas are counted in steps, so that a shorter way is not given up
 * for less than can be measured.
 *
 * @param thriceSteps area activated three times or more, in steps
 * @param lapSteps area of all laps, in steps
 * @param travelMm way between the centres of sections, one after the other
 */
record OrderCost(long thriceSteps, long lapSteps, double travelMm)
    implements Comparable<OrderCost> {
  /** Shortening of the way, as a share of it, that counts as none: rounding of the sum. */
  static final double TRAVEL_ROUNDING = 1e-12;

  @Override
  public int compareTo(OrderCost other) {
    int order = Long.compare(thriceSteps, other.thriceSteps);
    if (order == 0) {
      order = Long.compare(lapSteps, other.lapSteps);
    }
    if (order == 0
        && Math.abs(travelMm - other.travelMm)
            > TRAVEL_ROUNDING * Math.max(travelMm, other.travelMm)) {
      order = Double.compare(travelMm, other.travelMm);
    }
    return order;
  }
}
