/**
 * Cut templates: patches of the surface laid out in the plane, 1:1, with as little stretch as can
 * be, and cut apart where that is too much.
 *
 * <p>Lives here: layout, its stretch, slits and seams, outlines with allowance and match marks. May
 * not: writing files, paper sizes, anything of plating. Imports basis, mesh, geodesic; JTS for
 * plane polygons.
 */
package org.seamwright.flatten;
