package org.seamwright.mask;

/**
 * One line between plated and bare.
 *
 * @param points coordinates along the line, 3 per point, mm; a closed line does not repeat its
 *     first
 * @param closed whether the last point joins the first
 * @param lengthMm length along the surface
 */
public record MaskEdge(double[] points, boolean closed, double lengthMm) {}
