/**
 * Amounts as people write them: parsing and formatting lengths, areas, masses, volumes, times and
 * thicknesses in metric and inch units.
 *
 * <p>Lives here: the only home of the units library. May not: arithmetic of plating. Imports only
 * {@code basis}. Inside the program lengths are mm, areas mm², masses g, volumes ml, times s,
 * charge A·h; only files, the command line, the window and papers use this package.
 */
package org.seamwright.units;
