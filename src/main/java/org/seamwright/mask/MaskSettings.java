package org.seamwright.mask;

import java.util.List;
import java.util.Optional;

/**
 * How edges are masked; all of it the shop's settings.
 *
 * @param tapeWidthMm how far from an edge tape covers the bare side: the width of the one tape, or
 *     what narrower ones of the list are backed up to
 * @param tapeOverlapMm length that tape laps over itself at a join
 * @param tapeRollMm length of tape on a roll
 * @param splashMm how far along the surface from the edge the bare metal must be covered; the band
 *     beyond the tape is lacquered
 * @param lacquerSolids solids by volume, as a share from 0 to 1
 * @param lacquerDryUm dry film per coat, µm
 * @param lacquerCoats number of coats
 * @param lacquerLoss share of the lacquer that does not end up on the piece, from 0 to below 1
 * @param tapes the tapes that the shop has, to choose from; empty for one that follows any line
 * @param pace how long masking takes
 * @param dip how lacquer is laid by dipping; nothing where it is brushed
 */
public record MaskSettings(
    double tapeWidthMm,
    double tapeOverlapMm,
    double tapeRollMm,
    double splashMm,
    double lacquerSolids,
    double lacquerDryUm,
    int lacquerCoats,
    double lacquerLoss,
    List<TapeKind> tapes,
    MaskPace pace,
    Optional<Dip> dip) {
  /** Checks the ranges. */
  public MaskSettings {
    tapes = List.copyOf(tapes);
    if (tapes.stream().anyMatch(t -> !(tapeOverlapMm < t.rollMm()))) {
      throw new IllegalArgumentException("A roll must be longer than the overlap of its tape");
    }
    if (tapes.stream().map(TapeKind::name).distinct().count() < tapes.size()) {
      throw new IllegalArgumentException("Tapes of a list differ in name");
    }
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

  /** With one tape and the usual pace. */
  public MaskSettings(
      double tapeWidthMm,
      double tapeOverlapMm,
      double tapeRollMm,
      double splashMm,
      double lacquerSolids,
      double lacquerDryUm,
      int lacquerCoats,
      double lacquerLoss) {
    this(
        tapeWidthMm,
        tapeOverlapMm,
        tapeRollMm,
        splashMm,
        lacquerSolids,
        lacquerDryUm,
        lacquerCoats,
        lacquerLoss,
        List.of(),
        MaskPace.USUAL,
        Optional.empty());
  }

  /** The same with lacquer laid another way. */
  public MaskSettings withDip(Optional<Dip> other) {
    return new MaskSettings(
        tapeWidthMm,
        tapeOverlapMm,
        tapeRollMm,
        splashMm,
        lacquerSolids,
        lacquerDryUm,
        lacquerCoats,
        lacquerLoss,
        tapes,
        pace,
        other);
  }

  /** The tapes of the list, or the one tape that stands for it. */
  public List<TapeKind> kinds() {
    return tapes.isEmpty()
        ? List.of(new TapeKind("", tapeWidthMm, 0, tapeRollMm, 0, 0, ""))
        : tapes;
  }
}
