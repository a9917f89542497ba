/**
 * Maker of the sample pieces in {@code models/}: an invented shop's cup, rim and plaque, and their
 * exact areas where a formula gives them.
 *
 * <p>Lives here: shapes and their closed formulas. May not: anything the product needs at run time.
 * Imports {@code basis}, {@code mesh}, {@code meshfile}, {@code job}.
 */
package org.seamwright.sample;
