/**
 * The edge between plated and bare: its lines on the piece, the tape along them and the lacquer
 * behind.
 *
 * <p>Lives here: mask edges, tape and lacquer amounts. May not: sections, prices. Imports {@code
 * basis}, {@code mesh}, {@code measure}, {@code geodesic}, {@code region}.
 */
package org.seamwright.mask;
