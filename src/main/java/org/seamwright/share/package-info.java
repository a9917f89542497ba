/**
 * What a customer can turn about on a screen: the piece made light enough for a phone, as one page
 * that needs nothing else, or as a glTF file.
 *
 * <p>Lives here: simplifying for display, the page, the GLB writer. May not: figures of its own;
 * areas are those of the full model. Imports {@code basis}, {@code units}, {@code mesh}, {@code
 * region}, {@code section}, {@code plating}, {@code job}, {@code picture}.
 */
package org.seamwright.share;
