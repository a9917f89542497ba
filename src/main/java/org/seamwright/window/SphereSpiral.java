package org.seamwright.window;

/**
 * Directions spread evenly over the sphere along a spiral of golden-angle steps.
 *
 * <p>Source: R. Swinbank and R. Purser, "Fibonacci grids: a novel approach to global modelling",
 * Quarterly Journal of the Royal Meteorological Society 132, 2006 (from memory).
 */
final class SphereSpiral {
  private static final double GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

  private SphereSpiral() {}

  /** Direction {@code index} of {@code count}, a unit vector. */
  static double[] direction(int index, int count) {
    double z = 1 - (2 * index + 1.0) / count;
    double r = Math.sqrt(1 - z * z);
    double turn = GOLDEN_ANGLE * index;
    return new double[] {r * Math.cos(turn), r * Math.sin(turn), z};
  }
}
