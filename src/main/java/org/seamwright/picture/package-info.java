/**
 * Pictures without a display: a software renderer, labels and leaders, and the choice of sides that
 * show a section.
 *
 * <p>The piece's z axis points up and its front looks towards −y. Section colours are the
 * colour-blind-safe set of Okabe and Ito (2008), lightened, each with a pattern of its own.
 *
 * <p>Lives here: cameras, z-buffer, palettes, fonts. May not: files other than images, plating
 * arithmetic. Imports {@code basis}, {@code mesh}, {@code region}, {@code section}.
 */
package org.seamwright.picture;
