package org.seamwright.section;

/**
 * What the split must keep to.
 *
 * @param limitMm2 largest worked area of a section (net and laps), mm²
 * @param activationLapMm width of the activation lap along the surface, mm; 0 for none
 * @param flashLapMm width of the flash lap along the surface, mm; 0 for none
 * @param pins what is asked of the order of work
 * @param seams what seams cost where
 * @param rings whether sections may close on themselves, as a band round a rim does
 */
public record SectionSettings(
    double limitMm2,
    double activationLapMm,
    double flashLapMm,
    OrderPins pins,
    SeamWeights seams,
    boolean rings) {
  /** Settings that leave the order free, with the usual weights of seams. */
  public SectionSettings(double limitMm2, double activationLapMm, double flashLapMm) {
    this(limitMm2, activationLapMm, flashLapMm, OrderPins.NONE);
  }

  /** Settings with the usual weights of seams. */
  public SectionSettings(
      double limitMm2, double activationLapMm, double flashLapMm, OrderPins pins) {
    this(limitMm2, activationLapMm, flashLapMm, pins, SeamWeights.DEFAULT);
  }

  /** Settings that allow rings. */
  public SectionSettings(
      double limitMm2,
      double activationLapMm,
      double flashLapMm,
      OrderPins pins,
      SeamWeights seams) {
    this(limitMm2, activationLapMm, flashLapMm, pins, seams, true);
  }

  /** Checks the ranges. */
  public SectionSettings {
    if (!(limitMm2 > 0)) {
      throw new IllegalArgumentException("Section limit must be above 0: " + limitMm2);
    }
    if (!(activationLapMm >= 0) || !(flashLapMm >= 0)) {
      throw new IllegalArgumentException(
          "Lap widths must not be negative: " + activationLapMm + ", " + flashLapMm);
    }
  }
}
