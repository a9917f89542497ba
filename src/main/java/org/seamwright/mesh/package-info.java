/**
 * The piece as a triangle mesh: coordinates and corners in flat arrays, which faces meet along
 * which edges, spatial search, and what is wrong with it.
 *
 * <p>Lives here: connectivity and the geometry of single faces. May not: files, units other than
 * millimetres, anything about plating. Imports only {@code basis}.
 */
package org.seamwright.mesh;
