/**
 * Marks: what the user says of a place on the piece, and the map of plated, bare and out-of-scope
 * faces that they add up to.
 *
 * <p>Lives here: mark kinds and their evaluation. May not: the job file's spelling, sections.
 * Imports {@code basis}, {@code mesh}, {@code measure}, {@code geodesic}.
 */
package org.seamwright.region;
