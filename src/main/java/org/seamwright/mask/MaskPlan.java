package org.seamwright.mask;

import java.util.List;
import org.seamwright.basis.Notice;

/**
 * What it takes to cover what stays bare.
 *
 * @param masks one per connected bare region that borders on plating, largest edge first
 * @param notices what was assumed
 */
public record MaskPlan(List<Mask> masks, List<Notice> notices) {
  /** Copies the lists. */
  public MaskPlan {
    masks = List.copyOf(masks);
    notices = List.copyOf(notices);
  }

  /**
   * The masking of one connected bare region.
   *
   * @param id 1, 2, 3 …: the number on the papers, written M1, M2 …
   * @param edges its lines towards plating
   * @param edgeMm their length together
   * @param tape strips along them
   * @param tapeMm2 bare area under the tape
   * @param lacquerMm2 bare area beyond the tape within the splash distance
   * @param lacquerMl lacquer to have ready for all coats, loss included
   * @param areaMm2 area of the bare region
   * @param middleMm middle of the edge, for finding it on the piece: x, y, z
   */
  public record Mask(
      int id,
      List<MaskEdge> edges,
      double edgeMm,
      List<TapeStrip> tape,
      double tapeMm2,
      double lacquerMm2,
      double lacquerMl,
      double areaMm2,
      double[] middleMm) {}

  /**
   * Tape along one edge.
   *
   * @param widthMm width of the tape
   * @param lengthMm length to cut, overlap included
   */
  public record TapeStrip(double widthMm, double lengthMm) {}
}
