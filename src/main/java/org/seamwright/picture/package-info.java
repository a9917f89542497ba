/**
 * Pictures without a display: a software renderer, labels and leaders.
 *
 * <p>Lives here: cameras, z-buffer, palettes. May not: files other than images, plating arithmetic.
 * Imports {@code basis}, {@code mesh}, {@code region}, {@code section}.
 */
package org.seamwright.picture;
