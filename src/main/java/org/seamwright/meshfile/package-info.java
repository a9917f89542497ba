/**
 * Readers and writers of mesh files: bytes in, {@code Mesh} out, with every error placed.
 *
 * <p>Lives here: STL, OBJ, PLY, glTF, 3MF and gzip, welding of equal corners. May not: measuring or
 * repairing. Imports {@code basis} and {@code mesh}.
 */
package org.seamwright.meshfile;
