/**
 * Distance over the surface, and cutting a mesh along lines of equal value.
 *
 * <p>Lives here: distance fields from points and polylines, cuts through triangles. May not: what a
 * region or seam means. Imports {@code basis} and {@code mesh}.
 */
package org.seamwright.geodesic;
