package org.seamwright.job;

import org.seamwright.basis.Sum;
import org.seamwright.mask.MaskPlan;

/**
 * All masks of a piece together.
 *
 * @param edgeMm length of edge between plated and bare
 * @param tapeMm length of tape to cut
 * @param lacquerMl lacquer used up, brushed and dipped
 */
public record MaskTotals(double edgeMm, double tapeMm, double lacquerMl) {
  /** Adds the masks up. */
  public static MaskTotals of(MaskPlan plan) {
    Sum edge = new Sum();
    Sum tape = new Sum();
    Sum lacquer = new Sum();
    for (MaskPlan.Mask mask : plan.masks()) {
      edge.add(mask.edgeMm());
      mask.tape().forEach(strip -> tape.add(strip.totalMm()));
      lacquer.add(mask.lacquerMl());
    }
    plan.dipped().ifPresent(dipped -> lacquer.add(dipped.usedMl()));
    return new MaskTotals(edge.value(), tape.value(), lacquer.value());
  }
}
