package org.seamwright.desk;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A place that the pointer is on.
 *
 * @param point on the surface, mm
 * @param normal of the face, of length 1, towards the viewer's side of it as the mesh says
 */
public record Touch(Vector3D point, Vector3D normal) {}
