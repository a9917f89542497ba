package org.seamwright.section;

/**
 * The line along which two sections meet, all its pieces together.
 *
 * @param earlier id of the section worked first; the laps lie on it
 * @param later id of the section worked later
 * @param lengthMm length of the line on the surface
 * @param activationLapMm2 area of the earlier section that is activated again from this seam
 * @param flashLapMm2 area of the earlier section that is flashed again from this seam
 */
public record Seam(
    int earlier, int later, double lengthMm, double activationLapMm2, double flashLapMm2) {}
