package org.seamwright.mask;

/**
 * How edges are masked; all of it the shop's settings.
 *
 * @param tapeWidthMm width of the tape laid along an edge, on the bare side
 * @param tapeOverlapMm length that tape laps over itself at a join
 * @param tapeRollMm length of tape on a roll
 * @param splashMm how far along the surface from the edge the bare metal must be covered; the band
 *     beyond the tape is lacquered
 * @param lacquerSolids solids by volume, as a share from 0 to 1
 * @param lacquerDryUm dry film per coat, µm
 * @param lacquerCoats number of coats
 * @param lacquerLoss share of the lacquer that does not end up on the piece, from 0 to below 1
 */
public record MaskSettings(
    double tapeWidthMm,
    double tapeOverlapMm,
    double tapeRollMm,
    double splashMm,
    double lacquerSolids,
    double lacquerDryUm,
    int lacquerCoats,
    double lacquerLoss) {
  /** Checks the ranges. */
  public MaskSettings {
    if (!(tapeWidthMm > 0 && tapeRollMm > 0 && tapeOverlapMm >= 0 && splashMm >= 0)) {
      throw new IllegalArgumentException("Tape lengths must be positive");
    }
    if (!(tapeOverlapMm < tapeRollMm)) {
      throw new IllegalArgumentException("A roll must be longer than the overlap of its tape");
    }
    if (!(lacquerSolids > 0 && lacquerSolids <= 1)
        || !(lacquerDryUm > 0)
        || lacquerCoats < 0
        || !(lacquerLoss >= 0 && lacquerLoss < 1)) {
      throw new IllegalArgumentException("Lacquer settings out of range");
    }
  }
}
