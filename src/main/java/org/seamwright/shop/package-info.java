/**
 * The shop book: bottles, prices, runs and settings in one SQLite file, and what the runs tell.
 *
 * <p>Lives here: all SQL of the project, estimates from runs, which bottles to buy. May not:
 * printing, meshes. Imports {@code basis}, {@code plating} and {@code job}.
 */
package org.seamwright.shop;
