/**
 * What every package speaks: notices, refusals of input, progress and cancellation, and sums that
 * do not depend on the number of threads.
 *
 * <p>Lives here: small values without geometry and without units. May not: anything that reads
 * files, prints, or knows of plating. Imports no other package of the project.
 */
package org.seamwright.basis;
