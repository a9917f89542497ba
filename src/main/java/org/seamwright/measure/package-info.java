/**
 * What is known of a piece: area, the area of the smooth surface behind the facets with its error
 * bar, volume, creases, and the survey that gathers them.
 *
 * <p>Lives here: figures taken from a mesh. May not: files, marks, printing. Imports {@code basis}
 * and {@code mesh}.
 */
package org.seamwright.measure;
