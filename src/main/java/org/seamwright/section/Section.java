package org.seamwright.section;

/**
 * One section: a connected piece of the plated surface that is worked at one go.
 *
 * <p>A lap belongs to the section worked later and lies on a neighbour worked earlier.
 *
 * @param id 1, 2, 3 … in working order: the number on every paper
 * @param netMm2 area of the section's own faces
 * @param activationLapMm2 area of earlier neighbours that is activated again with it
 * @param flashLapMm2 area of earlier neighbours that its flash laps onto; contains the activation
 *     lap where the flash lap is the wider
 * @param name what the user calls it; may be empty
 */
public record Section(
    int id, double netMm2, double activationLapMm2, double flashLapMm2, String name) {
  /** A section without a name. */
  public Section(int id, double netMm2, double activationLapMm2, double flashLapMm2) {
    this(id, netMm2, activationLapMm2, flashLapMm2, "");
  }

  /** The same section with another name. */
  public Section named(String other) {
    return new Section(id, netMm2, activationLapMm2, flashLapMm2, other);
  }

  /** Area that is worked and must stay wet: net area and the wider lap, mm². */
  public double workedMm2() {
    return netMm2 + Math.max(activationLapMm2, flashLapMm2);
  }
}
