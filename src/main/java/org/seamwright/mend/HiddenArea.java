package org.seamwright.mend;

import java.util.List;
import java.util.Locale;
import org.seamwright.basis.Notice;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Tells of area that no brush reaches because it lies inside another closed part: shells pushed
 * through each other that a drawing never made one, and shells inside one another. Nothing is
 * changed. Costs nothing on a piece in one part without edges of three or more faces, little where
 * no boxes of parts meet.
 */
public final class HiddenArea {
  /** Code of the notice. */
  public static final String CODE = "area-hidden";

  /** A model in more parts than this is a soup of scraps, and nothing is inside anything. */
  private static final int MOST_PARTS = 500;

  /** Less than this share of the area is not worth telling: fillets that dip into a wall. */
  private static final double LEAST = 1e-4;

  private HiddenArea() {}

  /**
   * Looks for hidden area.
   *
   * @param meshMm the piece, mm
   * @param parts its connected parts
   * @param areaMm2 its area, mm²
   * @return a notice, or none
   */
  public static List<Notice> notices(
      Mesh meshMm, Topology topology, int parts, double areaMm2, Progress progress) {
    boolean alone = parts < 2 && topology.branchingEdges() == 0;
    if (alone || parts > MOST_PARTS) {
      return List.of();
    }
    double[] found = Hidden.measure(meshMm, topology, progress);
    if (!(found[0] > LEAST * areaMm2)) {
      return List.of();
    }
    return List.of(
        new Notice(
            CODE,
            (long) found[1],
            String.format(
                Locale.ROOT,
                "%,.0f mm² (%.1f%% of the area) lies inside another closed part or against it, where"
                    + " no brush reaches: parts touch, are pushed through each other or stand inside"
                    + " one another."
                    + " It is counted in the area. The cleaning step dropHidden takes it out.",
                found[0],
                100 * found[0] / areaMm2)));
  }
}
