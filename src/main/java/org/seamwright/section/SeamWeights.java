package org.seamwright.section;

/**
 * What a millimetre of seam costs in places where a plater likes to have it, or not, beside 1 on an
 * open, even surface. Where several hold, they multiply.
 *
 * @param crease along an edge of the piece that stands out, such as a box's; above 0 to 1
 * @param valley along an inner edge, such as the foot of a wall; above 0 to 1
 * @param hidden where nothing of the surroundings is seen; between there and a place that sees all
 *     in front of it the cost goes up evenly; above 0 to 1
 * @param show on faces marked as show faces; 1 or more
 */
public record SeamWeights(double crease, double valley, double hidden, double show) {
  /** Common practice, no source: seams in valleys first, then along edges and out of sight. */
  public static final SeamWeights DEFAULT = new SeamWeights(0.6, 0.4, 0.5, 4);

  /** Length alone counts. */
  public static final SeamWeights EVEN = new SeamWeights(1, 1, 1, 1);

  /** Checks the ranges. */
  public SeamWeights {
    checkShare("crease", crease);
    checkShare("valley", valley);
    checkShare("hidden", hidden);
    if (!(show >= 1) || show == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("Weight of a seam on show must be 1 or more: " + show);
    }
  }

  private static void checkShare(String name, double weight) {
    if (!(weight > 0) || !(weight <= 1)) {
      throw new IllegalArgumentException(
          "Weight of a seam, " + name + ", must be above 0 and at most 1: " + weight);
    }
  }
}
