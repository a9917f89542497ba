/**
 * A run at the bench: what was done to which section when, kept so that a power cut loses nothing,
 * and what the plater is shown of it.
 *
 * <p>Lives here: the events of a run and their file, the state that they add up to, the wet
 * window's countdown, the number pad, entering the run into the shop book. May not: JavaFX, a clock
 * or a folder of its own choosing; both are handed in. Imports {@code desk}, {@code shop} and what
 * these rest on.
 */
package org.seamwright.bench;
