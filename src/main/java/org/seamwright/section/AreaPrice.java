package org.seamwright.section;

/**
 * What cells pay for areas that they should not have, in millimetres of seam: beyond the limit, and
 * below a floor, since a seam costs least round nothing at all. The price grows faster than what is
 * over or short, so that a little everywhere is taken before much in one place.
 *
 * @param capMm2 worked area to keep to
 * @param floorMm2 one entry per cell: worked area to have at least
 */
record AreaPrice(double capMm2, double[] floorMm2) {
  /** What excess costs in the end; less, at first, lets cheap places be found. */
  static final double HARDEST = 100;

  /** Price as a share of a side's length per cell area; and growing. */
  private static final double LINEAR = 2;

  private static final double QUADRATIC = 200;

  /** Side of a square as large as the limit, mm. */
  double sideMm() {
    return Math.sqrt(capMm2);
  }

  /** Number of cells. */
  int cells() {
    return floorMm2.length;
  }

  /** The price that a cell pays, times a hardness, mm. */
  double of(int cell, double workedMm2, double hardness) {
    double off = Math.max(workedMm2 - capMm2, floorMm2[cell] - workedMm2);
    return off <= 0 ? 0 : hardness * off / sideMm() * (LINEAR + QUADRATIC * off / capMm2);
  }

  /** What more area costs, mm per mm²: negative where a cell is short of it. */
  double slope(int cell, double workedMm2, double hardness) {
    double off = Math.max(workedMm2 - capMm2, floorMm2[cell] - workedMm2);
    if (off <= 0) {
      return 0;
    }
    double steep = hardness * (LINEAR + 2 * QUADRATIC * off / capMm2) / sideMm();
    return workedMm2 > capMm2 ? steep : -steep;
  }
}
