package org.seamwright.plating;

/**
 * What the arithmetic needs to know of a section.
 *
 * @param id its number in working order
 * @param netMm2 its own area, mm²
 * @param activationLapMm2 area of earlier neighbours activated again, mm²
 * @param flashLapMm2 area of earlier neighbours flashed again, mm²
 */
public record SectionArea(int id, double netMm2, double activationLapMm2, double flashLapMm2) {
  /** Area that is worked: net area and the wider lap, mm². */
  public double workedMm2() {
    return netMm2 + Math.max(activationLapMm2, flashLapMm2);
  }
}
