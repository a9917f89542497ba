package org.seamwright.plating;

/**
 * The largest area that stays wet from one wetting to the next.
 *
 * @param limitMm2 the limit, mm²
 * @param governedBy the step, or pair of steps, that sets it: "Rinse to Activate"
 * @param windowSeconds how long a wetted place stays wet, s
 * @param handlingSeconds what handling before the second step takes of it, s
 * @param secondsPerCm2 one pass of the slower of the two steps, s/cm²
 * @param explanation one sentence with the figures
 */
public record WetLimit(
    double limitMm2,
    String governedBy,
    double windowSeconds,
    double handlingSeconds,
    double secondsPerCm2,
    String explanation) {
  /** What is left of the window for the two passes, s. */
  public double leftSeconds() {
    return windowSeconds - handlingSeconds;
  }
}
