/**
 * Splitting the plated surface into sections that can be kept wet, the seams and laps between them,
 * and the order to work them in.
 *
 * <p>Lives here: partition, laps, order. May not: gold, time, solutions. Imports {@code basis},
 * {@code mesh}, {@code measure}, {@code geodesic}, {@code region}.
 */
package org.seamwright.section;
