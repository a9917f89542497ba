/**
 * Cleaning a model before anything is measured or marked on it: choosing parts, cutting off a
 * table, closing holes, taking hidden faces away. Each repair tells the area it gained and lost.
 *
 * <p>Lives here: the kinds of repair, carrying them out, and advice on which would help. May not:
 * the job file's spelling, files, marks. Imports {@code basis}, {@code mesh}, {@code measure},
 * {@code geodesic}.
 */
package org.seamwright.mend;
