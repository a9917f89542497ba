/**
 * The plating arithmetic: metals, deposits, solutions, recipes, wet limit, gold, charge and time.
 *
 * <p>Lives here: areas in, amounts out, each with formula and source. May not: anything of meshes.
 * Imports only {@code basis}.
 */
package org.seamwright.plating;
