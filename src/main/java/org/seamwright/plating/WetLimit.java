package org.seamwright.plating;

/**
 * The largest area that stays wet through every step of the wet chain.
 *
 * @param limitMm2 the limit, mm²
 * @param governedBy the step, or pair of steps, that sets it: "Rinse to Activate"
 * @param explanation one sentence with the figures
 */
public record WetLimit(double limitMm2, String governedBy, String explanation) {}
